"""One row of the inventory: kilograms, seconds, money, and what is amiss."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from numpy.testing import assert_allclose

from benchpack.model.words import KnownBy
from benchpack.results.inventory import inventory, joining, totals_of
from benchpack.results.joint_facts import facts_of, joint_facts
from tests.unit.results.joint_samples import (
    EUR,
    PER_S,
    PLATE,
    facts,
    joint,
    stocked,
    weighed,
)


def test_sixteen_screws_hold_one_moulded_connector_plate() -> None:
    """Counted in seconds at the bench, answered at once: kg, s, money."""
    found = joint_facts(PLATE, EUR)
    # 5.8 g each (published table), 6 s and 0.06 EUR each (usual for a socket screw).
    assert_allclose(found.mass_kg, 16 * 0.0058)
    assert_allclose(found.seconds, 96)
    assert_allclose(found.money, 16 * (0.06 + 6 * PER_S))
    assert found.is_mass_computed
    assert found.is_time_usual
    assert found.is_cost_usual
    assert found.known_by is KnownBy.STANDARD_TABLE
    assert (found.kind, found.size, found.drive) == (
        "socket screw",
        "M6x16",
        "socket 5",
    )
    assert found.problems == ()


def test_what_goes_when_the_plate_is_moulded_in() -> None:
    """The totals of a removal are those of the facts of the joints that go."""
    others = (
        weighed("lid screws", 8.7, count=84, joins="lid"),
        weighed(
            "plate gasket", 52.2, family="gasket", joins="tray", to="connector plate"
        ),
    )
    held = inventory(stocked(PLATE, *others), EUR, "Heron 70")
    going = [held.facts[place] for place in joining(held, "connector plate")]
    assert [found.joint.name for found in going] == ["plate screws", "plate gasket"]
    gone, left = totals_of(going), totals_of(set(held.facts) - set(going))
    assert_allclose(gone.mass_kg, 16 * 0.0058 + 0.0522)
    assert_allclose(gone.mass_kg + left.mass_kg, held.totals.mass_kg)
    assert gone.pieces + left.pieces == held.totals.pieces


def test_entered_figures_go_before_usual_ones() -> None:
    found = facts(family="hex screw", count=10, time_each_s=9.0, cost_each=0.2)
    assert (found.seconds, found.is_time_usual, found.is_cost_usual) == (
        90,
        False,
        False,
    )
    assert_allclose(found.money, 10 * (0.2 + 9 * PER_S))


def test_a_line_is_one_row_and_its_usual_figures_are_per_metre() -> None:
    found = facts(family="gasket", designation="silicone foam 12x6", length_mm=5920.0)
    assert (found.pieces, found.line_mm, found.length_each_mm) == (0, 5920, 5920)
    assert_allclose(found.seconds, 5.92 * 30)
    assert_allclose(found.money, 5.92 * (2.2 + 30 * PER_S))
    assert_allclose(found.mass_kg, 5.92 * 0.018)
    whole = facts(
        family="gasket", length_mm=5920.0, time_each_s=177.6, mass_each_g=106.6
    )
    assert (whole.seconds, whole.mass_kg) == (177.6, 0.1066)


def test_two_beads_of_one_row_are_twice_the_length() -> None:
    found = facts(family="gasket", length_mm=1000.0, count=2)
    assert (found.line_mm, found.seconds) == (2000, 60)


def test_seams_without_a_length_count_as_pieces() -> None:
    found = facts(family="laser weld", count=372, time_each_s=0.5, cost_each=0.01)
    assert (found.pieces, found.line_mm, found.seconds) == (372, 0, 186)
    assert found.mass_kg == 0


def test_usual_costs_are_euros_and_never_called_by_another_name() -> None:
    dollars = replace(EUR, currency="USD")
    unknown = joint_facts(PLATE, dollars)
    assert math.isnan(unknown.money)
    assert math.isnan(unknown.cost_each)
    assert not unknown.is_cost_usual
    assert unknown.seconds == 96
    entered = joint_facts(replace(PLATE, cost_each=0.08), dollars)
    assert_allclose(entered.money, 16 * (0.08 + 6 * PER_S))


def test_rates_of_nothing_leave_the_pieces() -> None:
    free = replace(EUR, labour_rate_per_h=0.0, station_rate_per_h=0.0)
    assert_allclose(joint_facts(PLATE, free).money, 16 * 0.06)


def test_the_pieces_of_a_row_err_alike() -> None:
    found = facts(family="hex screw", designation="ISO 4017 M8x25", count=40)
    assert_allclose(found.mass_u_kg, found.mass_kg * 0.07 / math.sqrt(3))


def test_many_rows_are_worked_out_as_one_by_one() -> None:
    joints = [PLATE, weighed("a", 3.0, family="clip"), joint("b", family="gasket")]
    for one, found in zip(joints, facts_of(joints, EUR), strict=True):
        alone = joint_facts(one, EUR)
        assert found.joint is one
        assert found.problems == alone.problems
        assert repr(found) == repr(alone)
    assert facts_of((), EUR) == ()


@pytest.mark.parametrize(
    ("values", "expected"),
    [
        ({"designation": "ISO 4017 M8x25"}, ("hex 13", "hex 13")),
        ({"designation": "ISO 7380-1 M6x16"}, ("socket 4", "socket 4")),
        ({"designation": "EN 1661 M8"}, ("hex 13", "hex 13")),
        (
            {"family": "flow-drill screw", "designation": "M5x20"},
            ("", "flow-drill screw M5"),
        ),
        ({"family": "blind rivet", "designation": "4.8x12"}, ("", "blind rivet 4.8")),
        ({"family": "arc weld", "designation": "fillet a3"}, ("", "arc weld")),
        ({"family": "clip", "designation": "edge clip"}, ("", "")),
        ({"designation": "what is this"}, ("", "")),
    ],
)
def test_what_the_line_needs_for_it(
    values: dict[str, Any], expected: tuple[str, str]
) -> None:
    found = facts(**values)
    assert (found.drive, found.tool) == expected


@pytest.mark.parametrize(
    ("values", "is_seal"),
    [
        ({"family": "gasket"}, True),
        ({"family": "sealant bead", "role": "fill"}, True),
        ({"family": "structural adhesive", "role": "carry and seal"}, True),
        ({"family": "structural adhesive", "role": "carry"}, False),
        ({"family": "friction stir weld", "role": "carry and seal"}, False),
        ({"family": "hex screw", "role": "clamp and seal"}, False),
    ],
)
def test_what_counts_as_a_length_of_seal(values: dict[str, Any], is_seal: bool) -> None:
    assert facts(length_mm=1000.0, **values).is_seal_line is is_seal


def test_only_screws_and_nuts_clamp_a_seal() -> None:
    families = ("flange screw", "nut", "stud", "clip", "gasket", "")
    clamps = [f for f in families if facts(family=f, role="Clamp and Seal").clamps_seal]
    assert clamps == ["flange screw", "nut", "stud"]
