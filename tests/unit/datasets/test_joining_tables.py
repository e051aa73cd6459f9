"""The program's tables of joining hold what the shipped tables hold, and no more."""

from __future__ import annotations

import csv
import math
from pathlib import Path

import pytest

from benchpack.model.designation import read_designation
from benchpack.model.families import (
    FAMILIES,
    FAMILY_NAMES,
    GASKET_KINDS,
    Counted,
    JointFamily,
    family_of,
    gasket_kind,
)
from benchpack.model.fastener_masses import TABLE_MASSES, table_mass
from benchpack.model.fastener_sizes import COARSE_PITCHES_MM, HEADS, property_class
from benchpack.model.tightening_words import method_of
from benchpack.results.joint_shapes import shape_of

DATASETS = Path(__file__).parents[3] / "datasets"

Row = dict[str, str]


def _read(name: str) -> list[Row]:
    with (DATASETS / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


FASTENERS = _read("fasteners.csv")
JOINTS = _read("demo/joints.csv")
PARTS = {(row["pack"], row["part"]): row for row in _read("demo/parts.csv")}
METALS = {r["material"] for r in _read("materials.csv") if r["kind"] == "metal"}


def _as_row(family: JointFamily) -> dict[str, object]:
    return {
        "family": family.name,
        "counted by": str(family.counted),
        "time low [s]": family.time_s.low,
        "time likely [s]": family.time_s.likely,
        "time high [s]": family.time_s.high,
        "cost low [EUR]": family.cost.low,
        "cost likely [EUR]": family.cost.likely,
        "cost high [EUR]": family.cost.high,
        "mass [g]": family.mass_g,
        "source": family.source,
        "mark": family.mark,
    }


def _figure(text: str) -> float | None:
    return float(text) if text else None


def test_families_are_the_rows_of_the_joining_table() -> None:
    rows = [
        {name: _figure(cell) if "[" in name else cell for name, cell in row.items()}
        for row in _read("joining.csv")
    ]
    assert [_as_row(family) for family in FAMILIES] == rows


def test_families_keep_their_lists_apart() -> None:
    assert tuple(row["family"] for row in _read("joining.csv")) == FAMILY_NAMES
    for family in FAMILIES:
        assert family.mass_g is None or family.mass_g >= 0
        assert family.counted is not Counted.LINE or family.mass_g is not None


@pytest.mark.parametrize(
    "row", FASTENERS, ids=lambda row: f"{row['standard']} {row['size']}"
)
def test_heads_are_those_of_the_fastener_table(row: Row) -> None:
    diameter = row["diameter [mm]"]
    if row["pitch [mm]"]:
        assert COARSE_PITCHES_MM[float(diameter)] == float(row["pitch [mm]"])
    head = HEADS.get((row["standard"], f"M{diameter}"))
    columns = {
        "across flats [mm]": head and head.across_flats_mm,
        "head diameter [mm]": head and head.head_diameter_mm,
        "head height [mm]": head and head.head_height_mm,
        "flange [mm]": head and head.flange_thickness_mm,
        "drive size [mm]": head and head.drive_size_mm,
        "drive depth [mm]": head and head.drive_depth_mm,
    }
    if row["standard"] == "DIN 985":
        assert head is not None
        assert math.isnan(head.head_height_mm)
        assert not any(row[name] for name in columns)
        return
    assert columns == {name: _figure(row[name]) for name in columns}


def test_masses_are_those_of_the_fastener_table() -> None:
    """Both ways, but for the rows that are computed from head and thread."""
    known = {standard for standard, _ in TABLE_MASSES}
    rows = {
        (row["standard"], row["size"]): (
            float(row["mass each [g]"]),
            float(row["mass +- [%]"]) / 100,
            row["source"],
            row["mark"],
        )
        for row in FASTENERS
        if row["standard"] in known
    }
    assert rows == {
        key: (found.mass_g, found.tolerance, found.source, found.mark)
        for key, found in TABLE_MASSES.items()
    }


def test_the_other_masses_of_the_fastener_table_are_those_worked_out() -> None:
    known = {standard for standard, _ in TABLE_MASSES}
    rows = [row for row in FASTENERS if row["standard"] not in known]
    assert {row["standard"] for row in rows} == {
        "EN 1661",
        "EN 1665",
        "ISO 4017",
        "ISO 4032",
        "ISO 7380-1",
    }
    for row in rows:
        text = f"{row['standard']} {row['size']}"
        family = family_of(row["family"])
        assert family is not None
        shape = shape_of(read_designation(text), family)
        assert shape is not None, text
        assert float(row["mass each [g]"]) == pytest.approx(shape.mass_g, abs=6e-3)
        assert float(row["mass +- [%]"]) == pytest.approx(100 * shape.tolerance)
        assert row["mark"] == "derived"


def test_every_row_of_the_fastener_table_can_be_written_as_a_designation() -> None:
    for row in FASTENERS:
        text = f"{row['standard']} {row['size']}"
        read = read_designation(text)
        assert read.understood, text
        assert read.family == row["family"], text
        assert read.size == row["size"], text
        assert read.length_mm == _figure(row["length [mm]"]), text


@pytest.mark.parametrize(
    "row", JOINTS, ids=lambda row: f"{row['pack']}, {row['joint']}"
)
def test_every_joint_of_the_demo_is_understood(row: Row) -> None:
    family = family_of(row["family"])
    assert family is not None
    read = read_designation(row["designation"], family=row["family"])
    assert read.understood
    assert read.family == read.standard_family or not read.standard_family
    alone = read_designation(row["designation"])
    assert alone.size == read.size
    assert alone.family in ("", family.name)
    assert bool(read.thread) == family.threaded
    assert not row["property class"] or property_class(row["property class"])
    assert not row["tightening"] or method_of(row["tightening"])


def test_the_demo_shows_every_kind_of_gasket() -> None:
    shown = set()
    for row in JOINTS:
        kind = gasket_kind(row["family"], row["designation"])
        assert (kind is not None) == (row["family"] in ("gasket", "sealant bead"))
        if kind is None:
            continue
        shown.add(kind.name)
        if kind.metal_flanges_only:
            flanges = [PARTS[row["pack"], row[side]] for side in ("joins", "to")]
            assert {part["material"] for part in flanges} <= METALS
    assert shown == {kind.name for kind in GASKET_KINDS}


def test_sixteen_screws_hold_one_moulded_plate() -> None:
    row = next(
        row
        for row in JOINTS
        if (row["pack"], row["joint"]) == ("Avocet 81", "connector plate screws")
    )
    plate = PARTS["Avocet 81", row["joins"]]
    assert (row["count"], plate["count"]) == ("16", "1")
    assert plate["process"] == "injection moulded"
    assert plate["carry-over"] == row["carry-over"] == "false"
    found = table_mass("ISO 4762", "socket screw", "M6x20")
    assert found is not None
    assert 16 * found.mass_g == pytest.approx(104)
