"""Parts and joints from loose tables."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from benchpack.errors import CancelledError, DataError, Severity
from benchpack.files.tables import RecordsReading, read_joints, read_parts, read_sheet
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.words import KnownBy, Subsystem
from tests.unit.files.sheets import written


def _parts(folder: Path, text: str, **options: Any) -> RecordsReading[Part]:
    return read_parts(read_sheet(written(folder, text)), packs=["a", "b"], **options)


def _joints(folder: Path, text: str, **options: Any) -> RecordsReading[Joint]:
    return read_joints(read_sheet(written(folder, text)), packs=["a"], **options)


def test_parts_with_units_words_and_flags(tmp_path: Path) -> None:
    text = (
        "Pack;Component;Qty;mass each [g];thickness [in];area (cm2);carry over;group;"
        "known by;colour\n"
        "a;lid;1;4310,5;0,04;12000;yes;LID;Weighed Batch;grey\n"
        "b;rail;2;;;;;frame;;\n"
    )
    reading = _parts(tmp_path, text)
    assert reading.problems == ()
    lid, rail = reading.records
    assert (lid.mass_each_kg, lid.area_m2, lid.carry_over) == (4.3105, 1.2, True)
    assert lid.thickness_mm == pytest.approx(1.016)
    assert (lid.subsystem, lid.known_by) == (Subsystem.LID, KnownBy.WEIGHED_BATCH)
    assert lid.note == "colour: grey"
    assert (rail.count, rail.mass_each_kg, rail.carry_over) == (2, None, False)


def test_joints_weigh_in_grams_and_cost_money(tmp_path: Path) -> None:
    text = "pack,joint,mass each [kg],cost each [EUR],time\na,clip,0.004,0.07 EUR,3 s\n"
    reading = _joints(tmp_path, text)
    assert reading.problems == ()
    joint = reading.records[0]
    assert (joint.mass_each_g, joint.cost_each, joint.time_each_s) == (4, 0.07, 3)
    other = _joints(tmp_path, text, currency="USD")
    assert [(p.row, p.column) for p in other.problems] == [(2, "cost each [EUR]")]


def test_refused_rows_say_row_column_and_value(tmp_path: Path) -> None:
    text = (
        "pack,part,count,mass each [kg],carry-over,governs\n"
        "a,lid,1,4.3,,\n"
        "a,lid,1,4.3,,\n"
        "ghost,lid,1,4.3,,\n"
        "a,,1,4.3,,\n"
        "a,rail,1.5,4.3,,\n"
        "a,bar,1,-4.3,,\n"
        "a,pin,1,4.3,perhaps,\n"
        "a,cap,1,4.3,,luck\n"
        "b,lid,1,2000,,\n"
    )
    reading = _parts(tmp_path, text)
    found = [
        (p.row, p.column, p.value)
        for p in reading.problems
        if p.severity is Severity.ERROR
    ]
    assert found == [
        (3, "part", "lid"),
        (4, "pack", "ghost"),
        (5, "part", ""),
        (6, "count", "1.5"),
        (7, "mass each [kg]", "-4.3"),
        (8, "carry-over", "perhaps"),
        (9, "governs", "luck"),
    ]
    assert [(part.pack, part.name) for part in reading.records] == [
        ("a", "lid"),
        ("b", "lid"),
    ]
    assert (reading.rows_read, reading.accepted, reading.refused) == (9, 2, 7)
    warned = [p for p in reading.problems if p.severity is Severity.WARNING]
    assert [(p.row, p.value) for p in warned] == [(10, "2000")]


def test_parts_without_a_pack_column_are_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="no column for pack"):
        _parts(tmp_path, "part,count\nlid,1\n")


def test_reading_parts_can_be_stopped(tmp_path: Path) -> None:
    with pytest.raises(CancelledError):
        _parts(tmp_path, "pack,part\na,lid\n", cancelled=lambda: True)
