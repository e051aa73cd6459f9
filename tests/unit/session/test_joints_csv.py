"""The joints table written for a spreadsheet: columns, schema, the way back."""

from __future__ import annotations

import csv
import json
import math
from dataclasses import replace
from pathlib import Path

import pytest
from frictionless import Resource, Schema

from benchpack.errors import DataError
from benchpack.files.package import write_package
from benchpack.files.reading import read_any
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.library import Library
from benchpack.model.words import KnownBy
from benchpack.report.joints_print import inventory_text
from benchpack.results.inventory import inventory
from benchpack.results.joint_facts import joint_mass_each_g
from benchpack.session.handover import write_joints_csv
from benchpack.session.joints_request import take_inventory
from tests.unit.results.joint_samples import EUR, PLATE, joint, stock, stocked, weighed

JOINTS = (
    PLATE,
    weighed("gasket", 52.2, family="gasket", length_mm=900.0, carry_over=True),
    joint(
        "seam", family="arc weld", designation="aluminium fillet a3", length_mm=500.0
    ),
    joint("bead", family="sealant bead", length_mm=2000.0, time_each_s=16.0),
    joint("clips", family="clip", designation="edge clip", count=64, cost_each=0.06),
    joint("odd", note='a "quoted" note, with a comma\nand a line', reason="+1"),
)

SEAM_G = joint_mass_each_g(JOINTS[2])[0]
"""Half a metre of a fillet in aluminium as it is laid, g."""


def written(tmp_path: Path, *joints: Joint) -> Path:
    out = tmp_path / "joints.csv"
    write_joints_csv(stock(*joints), out)
    return out


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_the_columns_are_those_of_joints_in_every_file(tmp_path: Path) -> None:
    rows = rows_of(written(tmp_path, *JOINTS))
    heads = [field.header(currency="EUR") for field in JOINT_FIELDS]
    assert list(rows[0]) == heads
    assert "cost each [EUR]" in heads
    assert [row["joint"] for row in rows] == [one.name for one in JOINTS]


def test_worked_out_masses_are_filled_in_and_say_so(tmp_path: Path) -> None:
    rows = {row["joint"]: row for row in rows_of(written(tmp_path, *JOINTS))}
    assert pytest.approx(0.5 * 1.2 * 3**2 * 2.7) == SEAM_G
    said = {name: (row["mass each [g]"], row["known by"]) for name, row in rows.items()}
    assert said == {
        "plate screws": ("5.8", "standard table"),
        "gasket": ("52.2", "weighed"),
        "seam": (repr(SEAM_G), "geometry"),
        "bead": ("52.0", "estimate"),
        "clips": ("", ""),
        "odd": ("", ""),
    }


def test_time_and_cost_are_as_entered(tmp_path: Path) -> None:
    rows = {row["joint"]: row for row in rows_of(written(tmp_path, *JOINTS))}
    assert rows["plate screws"]["time each [s]"] == ""
    assert rows["bead"]["time each [s]"] == "16.0"
    assert rows["clips"]["cost each [EUR]"] == "0.06"
    assert rows["gasket"]["carry-over"] == "true"


def test_the_schema_beside_it_validates_the_table(tmp_path: Path) -> None:
    path = written(tmp_path, *JOINTS)
    described = json.loads(path.with_suffix(".schema.json").read_text("utf-8"))
    report = Resource(
        path=path.name, basepath=str(tmp_path), schema=Schema.from_descriptor(described)
    ).validate()
    assert report.valid, report.flatten(["title", "message"])
    kinds = {field["name"]: field["type"] for field in described["fields"]}
    assert kinds["count"] == "integer"
    assert kinds["mass each [g]"] == "number"
    assert kinds["carry-over"] == "boolean"
    assert all(field["description"] for field in described["fields"])


def test_it_reads_back_as_a_table_of_joints(tmp_path: Path) -> None:
    """Beside the packs, the written table takes the place of the package's own."""
    write_package(stocked(*JOINTS), tmp_path, currency="EUR")
    (tmp_path / "datapackage.json").unlink()
    written(tmp_path, *JOINTS)
    reading = read_any(tmp_path)
    assert [p for p in reading.problems if "joint" in p.source] == []
    back = reading.library.joints_of("Heron 70")
    expected = (
        replace(JOINTS[0], mass_each_g=5.8, known_by=KnownBy.STANDARD_TABLE),
        JOINTS[1],
        replace(JOINTS[2], mass_each_g=SEAM_G, known_by=KnownBy.GEOMETRY),
        replace(JOINTS[3], mass_each_g=52.0, known_by=KnownBy.ESTIMATE),
        JOINTS[4],
        JOINTS[5],
    )
    assert back == expected
    again = inventory(reading.library, EUR, "Heron 70").totals
    before = stock(*JOINTS).totals
    assert again.mass_kg == pytest.approx(before.mass_kg, rel=1e-12)
    assert (again.seconds, again.money) == (before.seconds, before.money)


def test_it_reads_back_alone_to_equal_joints(tmp_path: Path) -> None:
    """Masses worked out stay what they were; all else is as entered."""
    harmful = joint("=1+1", designation="@x", joins="'tis", note="-2 pieces\nlost")
    path = written(tmp_path, *JOINTS, harmful)
    first = rows_of(path)
    reading = read_any(path)
    assert (reading.problems, reading.alone) == ((), ("joints",))
    back = reading.library.joints_of("Heron 70")
    assert back[4:] == (JOINTS[4], JOINTS[5], harmful)
    assert back[1] == JOINTS[1]
    held, study = take_inventory(reading.library, "Heron 70", currency="EUR")
    assert study.currency == "EUR"
    assert math.isnan(held.energy_kwh)
    assert held.totals.mass_kg == pytest.approx(stock(*JOINTS).totals.mass_kg)
    again = tmp_path / "again.csv"
    write_joints_csv(held, again)
    assert rows_of(again) == first


def test_totals_without_the_pack_say_what_is_unknown(tmp_path: Path) -> None:
    library = read_any(written(tmp_path, PLATE)).library
    text = inventory_text(*take_inventory(library, "Heron 70", currency="EUR"))
    assert text.startswith("Joints of Heron 70: 1 row, 16 screws.")
    assert text.endswith(
        "Per kWh, and as a share of the structure's mass: unknown, for the file holds "
        "no record of Heron 70."
    )
    recorded = take_inventory(stocked(PLATE), "Heron 70", currency="EUR")
    assert "Per kWh" not in inventory_text(*recorded)


def test_a_pack_that_a_table_of_joints_lacks(tmp_path: Path) -> None:
    library = read_any(written(tmp_path, PLATE)).library
    with pytest.raises(DataError, match="Did you mean 'Heron 70'"):
        take_inventory(library, "heron 70")


def test_a_pack_without_joints_writes_nothing(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="No joints of Heron 70 are recorded"):
        written(tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_the_request_takes_the_stored_study_or_says_whose_money_it_is() -> None:
    library = stocked(PLATE)
    held, study = take_inventory(library, "Heron 70")
    assert (study.currency, held.totals.unknown_money) == ("CUR", 1)
    held, study = take_inventory(library, "Heron 70", currency="EUR")
    assert (study.currency, held.totals.unknown_money) == ("EUR", 0)
    stored = Library(library.packs, joints=library.joints, studies=(EUR,))
    assert take_inventory(stored, "Heron 70", currency="EUR")[1] is EUR
    with pytest.raises(DataError, match="no exchange rates"):
        take_inventory(stored, "Heron 70", currency="USD")


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("heron  70", "Did you mean 'Heron 70'?"),
        ("Heron 7", "Did you mean 'Heron 70'?"),
        ("Zebra", "It is not in the file, or its row was refused."),
        ("Egret 80", "No joints of Egret 80 are recorded."),
    ],
)
def test_a_pack_that_is_not_there_or_has_no_joints(name: str, said: str) -> None:
    with pytest.raises(DataError) as caught:
        take_inventory(stocked(PLATE), name)
    assert said in str(caught.value)
