"""What a spreadsheet hides is reported, never taken for an empty cell."""

from __future__ import annotations

from pathlib import Path

import xlsxwriter

from benchpack.files.reading import Reading, read_any

HEADS = ["pack", "energy [kWh]", "mass [kg]", "cells mass [kg]", "note"]


def names(reading: Reading) -> list[str]:
    found: list[str] = reading.library.packs.names.tolist()
    return found


def read_text(folder: Path, *lines: str) -> Reading:
    path = folder / "packs.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return read_any(path)


def test_the_error_of_a_formula_refuses_its_row(tmp_path: Path) -> None:
    path = tmp_path / "packs.xlsx"
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet()
        sheet.write_row(0, 0, HEADS)
        sheet.write_row(1, 0, ["Alder", 80, 450])
        sheet.write_formula(1, 3, "=1/0", None, "#DIV/0!")
        sheet.write_row(2, 0, ["Birch", 70, 430, 280])
    reading = read_any(path)
    assert names(reading) == ["Birch"]
    (problem,) = reading.problems
    assert (problem.row, problem.column) == (2, "cells mass [kg]")
    assert "#DIV/0!" in problem.what


def test_a_stray_quotation_mark_swallows_nothing_unseen(tmp_path: Path) -> None:
    reading = read_text(
        tmp_path,
        ",".join(HEADS),
        'Alder,80,450,,a 5" plate',
        'Birch,70,430,,"open',
        "Cedar,60,400,,x",
        'Dogwood,50,350,,y"',
        "Elm,66,410,,z",
    )
    assert names(reading) == ["Alder", "Elm"]
    (problem,) = reading.problems
    assert problem.row == 3
    assert "3 lines" in problem.what


def test_a_note_over_several_lines_is_no_row(tmp_path: Path) -> None:
    reading = read_text(
        tmp_path, ",".join(HEADS), 'Alder,80,450,300,"two\nlines"', "Elm,66,410,,z"
    )
    assert names(reading) == ["Alder", "Elm"]
    assert reading.problems == ()
    assert reading.library.packs.columns["note"][0] == "two\nlines"


def test_words_for_nothing_known_are_empty_cells(tmp_path: Path) -> None:
    reading = read_text(
        tmp_path, ",".join(HEADS), "Alder,80,450,n/a,", "Elm,66,410,–,", "Fir,66,tbd,,"
    )
    assert names(reading) == ["Alder", "Elm"]
    (problem,) = reading.problems
    assert (problem.row, problem.column) == (4, "mass [kg]")


def test_a_line_of_totals_is_no_pack(tmp_path: Path) -> None:
    reading = read_text(
        tmp_path, ",".join(HEADS), "Alder,80,450,,", "Elm,66,410,,", "Total,146,860,,"
    )
    assert names(reading) == ["Alder", "Elm"]
    (problem,) = reading.problems
    assert problem.row == 4


def test_units_may_stand_in_a_row_of_their_own(tmp_path: Path) -> None:
    reading = read_text(
        tmp_path, "pack,energy,mass", ",MJ,lb", "Alder,288,1000", "Elm,252,900"
    )
    assert names(reading) == ["Alder", "Elm"]
    assert reading.library.packs.columns["energy_kwh"].tolist() == [80, 70]
    assert reading.library.packs.columns["mass_kg"][0] == 453.59237


def test_a_row_of_letters_is_a_row_not_units(tmp_path: Path) -> None:
    for first in ("C,J,kg", "pack,energy [MJ],mass [lb]\nF,F,F"):
        lines = first if first.startswith("pack") else f"pack,energy,mass\n{first}"
        reading = read_text(tmp_path, *lines.split("\n"), "Elm,252,900")
        assert names(reading) == ["Elm"]
        assert {problem.row for problem in reading.problems} == {2}
