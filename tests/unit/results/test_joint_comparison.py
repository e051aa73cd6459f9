"""Two packs' joining beside each other, and what fasteners are worth."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from numpy.testing import assert_allclose

from benchpack.model.joint import Joint
from benchpack.model.words import EnergyBasis, KnownBy
from benchpack.results.inventory import Inventory, inventory
from benchpack.results.joint_comparison import (
    ComparedRow,
    compare_joints,
    fastener_worth,
)
from tests.unit.results.joint_samples import EUR, PER_S, joint, stock, stocked, weighed
from tests.unit.results.packs import pack

SCREWS = weighed(
    "lid screws",
    10.0,
    family="flange screw",
    designation="EN 1665 M6x25",
    count=70,
    time_each_s=6.0,
    cost_each=0.1,
    role="clamp and seal",
)
GASKET = weighed(
    "gasket",
    100.0,
    family="gasket",
    length_mm=5000.0,
    time_each_s=150.0,
    cost_each=10.0,
    carry_over=True,
)
OTHER = Joint(
    "Egret 80",
    "lid screws",
    family="flange screw",
    designation="EN 1665 M6x25",
    count=40,
    mass_each_g=10.0,
    known_by=KnownBy.WEIGHED,
    time_each_s=6.0,
    cost_each=0.1,
)


def pair(*joints: Joint, **packs: str) -> tuple[Inventory, Inventory]:
    kinds = {"subject": "gross", "reference": "gross", **packs}
    library = stocked(
        *joints,
        packs=(
            pack(
                "Heron 70",
                70,
                460,
                cells_mass_kg=300,
                energy_basis=EnergyBasis(kinds["subject"]),
            ),
            pack("Egret 80", 80, 470, energy_basis=EnergyBasis(kinds["reference"])),
        ),
    )
    subject = inventory(library, EUR, "Heron 70")
    return subject, inventory(library, EUR, "Egret 80")


def rows(*joints: Joint, **packs: str) -> dict[str, ComparedRow]:
    return {row.label: row for row in compare_joints(*pair(*joints, **packs))}


def test_every_row_is_worked_by_hand() -> None:
    found = rows(SCREWS, GASKET, OTHER)
    seconds = (70 * 6 + 150, 40 * 6)
    money = (70 * 0.1 + 10 + seconds[0] * PER_S, 40 * 0.1 + seconds[1] * PER_S)
    expected = {
        "Pieces": (70, 40),
        "Pieces per kWh": (1, 0.5),
        "Seams and beads": (5, 0),
        "Seal": (5, 0),
        "Mass": (0.8, 0.4),
        "Mass per kWh": (0.8 / 70, 0.4 / 80),
        "Time": seconds,
        "Time per kWh": (seconds[0] / 70, seconds[1] / 80),
        "Money": money,
        "Money per kWh": (money[0] / 70, money[1] / 80),
        "Stations at the takt time": (10, 4),
        "Distinct sizes": (1, 1),
        "Distinct drives": (1, 1),
        "Pieces that have to stay": (0, 0),
    }
    for label, (subject, reference) in expected.items():
        row = found[label]
        assert_allclose((row.subject, row.reference), (subject, reference))
        assert_allclose(row.difference, subject - reference)
    assert found["Money"].unit == "EUR"
    assert found["Money per kWh"].unit == "EUR/kWh"


def test_screws_on_a_seal_go_by_its_metres() -> None:
    row = rows(SCREWS, GASKET, OTHER)["Screws on a seal, per metre"]
    assert row.subject == 14
    assert math.isnan(row.reference)
    assert math.isnan(row.difference)
    assert row.note == "No length of seal is recorded for Egret 80."


def test_a_screw_and_its_nut_on_a_seal_are_one() -> None:
    between: dict[str, Any] = {"joins": "lid", "to": "tray"}
    screws = replace(SCREWS, **between)
    nuts = joint("nuts", family="nut", designation="EN 1661 M6", count=70, **between)
    nuts = replace(nuts, role="clamp and seal")
    for held in ((screws, nuts), (screws,), (nuts,)):
        row = rows(*held, GASKET, OTHER)["Screws on a seal, per metre"]
        assert row.subject == 14


def test_the_share_of_the_structure_needs_the_cells() -> None:
    row = rows(SCREWS, GASKET, OTHER)["Share of the structure's mass"]
    assert_allclose(row.subject, 0.8 / 160)
    assert math.isnan(row.reference)
    assert row.note == "The mass of the cells of Egret 80 is not recorded."
    assert row.unit == "%"


def test_unlike_energies_are_not_compared_and_the_row_says_why() -> None:
    found = rows(SCREWS, OTHER, reference="usable")
    for label, row in found.items():
        if "kWh" in row.unit:
            assert math.isnan(row.difference)
            assert math.isfinite(row.subject)
            assert row.note == (
                "The energy of Heron 70 is gross, that of Egret 80 usable: "
                "not compared."
            )
        else:
            assert "energy" not in row.note, label


def test_an_unstated_energy_is_compared_with_a_note() -> None:
    row = rows(SCREWS, OTHER, subject="unknown")["Mass per kWh"]
    assert math.isfinite(row.difference)
    assert row.note == (
        "Whether the energy of Heron 70 is gross or usable is not recorded."
    )


def test_what_both_packs_lack_is_said() -> None:
    clips = joint("clips", family="clip", designation="edge clip", count=3)
    bad = replace(
        OTHER,
        name="odd",
        family="magnet",
        designation="",
        mass_each_g=None,
        time_each_s=None,
    )
    found = rows(SCREWS, clips, OTHER, bad)
    assert found["Mass"].note == (
        "1 of 2 rows of Heron 70 has no mass. 1 of 2 rows of Egret 80 has no mass."
    )
    assert found["Time"].note == "1 of 2 rows of Egret 80 has no time."
    assert found["Money"].note == "1 of 2 rows of Egret 80 has no cost or time."
    assert found["Pieces"].note == ""


def test_a_pack_without_joints_is_said_and_not_zero_by_chance() -> None:
    for row in rows(SCREWS).values():
        assert "No joints of Egret 80 are recorded." in row.note


def test_a_pack_of_nothing_but_cells_has_no_share() -> None:
    library = stocked(SCREWS, packs=(pack("Heron 70", 70, 460, cells_mass_kg=460),))
    held = inventory(library, EUR, "Heron 70")
    found = {row.label: row for row in compare_joints(held, held)}
    assert math.isnan(found["Share of the structure's mass"].subject)


def test_what_all_fasteners_weigh_are_worth_and_cost() -> None:
    worth = fastener_worth(stock(SCREWS, GASKET), EUR)
    assert worth.fasteners.rows == 1
    assert_allclose(worth.fasteners.mass_kg, 0.7)
    assert_allclose(worth.worth_likely, 2.1)
    assert_allclose(worth.piece_money, 7)
    assert_allclose(worth.time_money, 420 * PER_S)
    assert_allclose(worth.piece_money + worth.time_money, worth.fasteners.money)
    assert worth.unknown_pieces == 0


def test_what_is_unknown_of_fasteners_is_counted() -> None:
    clips = joint("clips", family="clip", designation="edge clip", count=3)
    dollars = replace(EUR, currency="USD")
    worth = fastener_worth(stock(SCREWS, clips, study=dollars), dollars)
    assert (worth.fasteners.unknown_mass, worth.unknown_pieces) == (1, 1)
    assert_allclose(worth.piece_money, 7)
    assert_allclose(worth.time_money, (420 + 9) * PER_S)


@pytest.mark.parametrize("family", ["", "gasket", "spot weld", "snap fit", "press fit"])
def test_what_is_no_bought_piece_is_no_fastener(family: str) -> None:
    worth = fastener_worth(stock(joint("x", family=family, mass_each_g=5.0)), EUR)
    assert worth.fasteners.rows == 0
    assert (worth.piece_money, worth.time_money, worth.worth_likely) == (0, 0, 0)
