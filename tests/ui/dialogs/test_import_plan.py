"""What is made of a loose table before anyone is asked."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from benchpack.errors import DataError
from benchpack.files.sheet import Sheet
from benchpack.files.tables import read_sheet
from benchpack.ui.dialogs.import_plan import (
    Plan,
    read_plan,
    suggest_plan,
)
from benchpack.ui.dialogs.import_preview import Preview, preview_of, sample_of
from benchpack.ui.dialogs.import_words import result_sentence
from benchpack.units.formatting import NumberStyle

PACKS = """pack;mass [lb];energy [MJ];bench remark
Ruff 70;987,6;252;ok
Godwit 66;;237,6;
Snipe 52;720;-187;
"""
PARTS = """pack,part,mass each [kg],count
Avocet 81,tray,20,1
Dunlin 74,tray,19,1
Avocet 81,lid,5,1
Knot 1,lid,5,1
"""
JOINTS = "pack,joint,family,count\nAvocet 81,lid screw,hex screw,40\n"


@pytest.fixture
def table(tmp_path: Path) -> Path:
    return tmp_path / "table.csv"


def written(path: Path, text: str) -> Sheet:
    path.write_text(text, encoding="utf-8")
    return read_sheet(path)


def previewed(sheet: Sheet, plan: Plan, count: int = 100) -> Preview:
    return preview_of(
        sample_of(sheet, count),
        plan,
        packs={"Avocet 81", "Dunlin 74"},
        currency="EUR",
        style=NumberStyle(),
    )


@pytest.mark.parametrize(
    ("text", "kind"), [(PACKS, "packs"), (PARTS, "parts"), (JOINTS, "joints")]
)
def test_the_kind_is_told_by_the_heads(table: Path, text: str, kind: str) -> None:
    plan = suggest_plan(written(table, text))
    assert plan.kind == kind
    assert plan.missing() == ()


def test_unknown_heads_are_taken_as_packs_with_what_is_missing(table: Path) -> None:
    plan = suggest_plan(written(table, "colour;shape\nred;round\n"))
    assert plan.kind == "packs"
    assert plan.missing() == ("pack", "energy", "mass")


def test_preview_shows_values_as_recorded_and_refused_cells_as_written(
    table: Path,
) -> None:
    """987.6 lb x 0.45359237 kg/lb = 447.97 kg; 252 MJ / 3.6 = 70 kWh."""
    sheet = written(table, PACKS)
    preview = previewed(sheet, suggest_plan(sheet))
    assert [f.title for f in preview.fields] == ["pack", "mass", "energy", "note"]
    assert preview.rows[0].cells == ("Ruff 70", "448.0", "70.0", "bench remark: ok")
    assert [row.is_refused for row in preview.rows] == [False, True, True]
    assert preview.rows[1].cells[:3] == ("Godwit 66", "", "237,6")
    assert "empty" in preview.rows[1].marks[1].what
    assert preview.rows[2].marks[2].value == "-187"
    assert (preview.rows_read, preview.refused, preview.is_whole) == (3, 2, True)


def test_parts_keep_the_order_of_the_file(table: Path) -> None:
    sheet = written(table, PARTS)
    preview = previewed(sheet, suggest_plan(sheet))
    assert [row.cells[:2] for row in preview.rows] == [
        ("Avocet 81", "tray"),
        ("Dunlin 74", "tray"),
        ("Avocet 81", "lid"),
        ("Knot 1", "lid"),
    ]
    assert [row.is_refused for row in preview.rows] == [False, False, False, True]


def test_a_sample_knows_that_it_is_one(table: Path) -> None:
    sheet = written(table, PACKS)
    preview = previewed(sheet, suggest_plan(sheet), count=2)
    assert (preview.rows_read, preview.is_whole) == (2, False)


def test_rows_with_too_many_cells_are_marked_as_a_whole(table: Path) -> None:
    sheet = written(table, "pack,energy [kWh],mass [kg]\nRuff 70,70,448,left over\n")
    row = previewed(sheet, suggest_plan(sheet)).rows[0]
    assert row.is_refused
    assert list(row.marks) == [-1]


def test_the_library_decides_which_names_are_taken(table: Path) -> None:
    sheet = written(table, "pack,energy [kWh],mass [kg]\nAvocet 81,80,490\n")
    plan = suggest_plan(sheet)
    names = {"Avocet 81"}
    assert read_plan(sheet, plan, packs=names).refused == 1
    replacing = replace(plan, replace=True)
    taken = read_plan(sheet, replacing, packs=names)
    assert (taken.refused, taken.replaced) == (0, 1)
    assert read_plan(sheet, replace(plan, as_new=True), packs=names).refused == 0
    assert result_sentence(taken, replacing, "x.csv") == (
        "1\u00a0pack read from x.csv, 1 of them in place of another, no row refused"
    )


def test_a_needed_column_that_is_missing_is_said(table: Path) -> None:
    sheet = written(table, "pack,energy [kWh]\nRuff 70,70\n")
    with pytest.raises(DataError, match="mass"):
        previewed(sheet, suggest_plan(sheet))
