"""Packs from loose tables: what is understood, what is refused, and how it is said."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from benchpack.errors import CancelledError, DataError, Severity
from benchpack.files.tables import read_packs, read_sheet
from tests.unit.files.sheets import errors, names, packs_of, places, written


def test_pounds_megajoules_and_commas_with_exactly_three_bad_rows(
    tmp_path: Path,
) -> None:
    """
    Benchmark of the spring;;;
    Pack;usable energy [MJ];Mass (lbs);Remark
    Avocet 81;291,6;1098,1;
    Dunlin 74;267,84;;on loan
    Curlew 60;216,0;792,5;
    Avocet 81;290,0;1100,0;second scale
    Godwit 55;-198,0;750,0;
    Plover 45;162,0;650,25;
    """
    text = "\n".join(
        line.strip()
        for line in (
            test_pounds_megajoules_and_commas_with_exactly_three_bad_rows.__doc__ or ""
        ).splitlines()[1:-1]
    )
    reading = packs_of(tmp_path, text)
    assert places(reading) == [
        (4, "Mass (lbs)", ""),
        (6, "Pack", "Avocet 81"),
        (7, "usable energy [MJ]", "-198,0"),
    ]
    assert names(reading) == ["Avocet 81", "Curlew 60", "Plover 45"]
    assert (reading.rows_read, reading.accepted, reading.refused) == (6, 3, 3)
    first = reading.packs[0]
    assert first.energy_kwh == 291.6 / 3.6
    assert first.mass_kg == pytest.approx(1098.1 * 0.45359237, rel=1e-15)
    assert first.energy_basis == "usable"
    said = [str(problem) for problem in errors(reading)]
    assert said[0].startswith("packs.csv, row 4, column Mass (lbs): mass is empty.")
    assert "row 3" in said[1]
    assert "above zero" in said[2]


@pytest.mark.parametrize(
    ("cells", "energy_kwh", "mass_kg"),
    [
        ("78 kWh,431 kg", 78.0, 431.0),
        ('78,"0,45 t"', 78.0, 450.0),
        ("281 MJ,950 lb", 281 / 3.6, 950 * 0.45359237),
        ("78000 Wh,431000 g", 78.0, 431.0),
        ("7.8e1,431.", 78.0, 431.0),
        ('"1 078,5 MJ",431', 1078.5 / 3.6, 431.0),
    ],
)
def test_cells_carry_their_own_units(
    tmp_path: Path, cells: str, energy_kwh: float, mass_kg: float
) -> None:
    reading = packs_of(tmp_path, f"pack,energy,mass\na,{cells}\n")
    assert errors(reading) == []
    assert reading.packs[0].energy_kwh == pytest.approx(energy_kwh, rel=1e-15)
    assert reading.packs[0].mass_kg == pytest.approx(mass_kg, rel=1e-15)


@pytest.mark.parametrize(
    "head",
    [
        "mass [lb]",
        "Mass (lbs)",
        "mass_lb",
        "mass lb",
        "Mass in lb",
        "mass / lb",
        "WEIGHT [lb]",
        "pack mass (lb)",
        "total mass, lb",
    ],
)
def test_heads_state_the_unit_in_every_style(tmp_path: Path, head: str) -> None:
    reading = packs_of(tmp_path, f'pack,energy_kWh,"{head}"\na,50,700\n')
    assert reading.packs[0].mass_kg == pytest.approx(700 * 0.45359237, rel=1e-15)


def test_a_gross_head_says_the_basis_unless_a_column_does(tmp_path: Path) -> None:
    head = "pack,gross energy [kWh],mass [kg]"
    assert packs_of(tmp_path, f"{head}\na,50,300").packs[0].energy_basis == "gross"
    text = f"{head},energy basis\na,50,300,Usable\nb,50,300,\n"
    reading = packs_of(tmp_path, text)
    assert [pack.energy_basis for pack in reading.packs] == ["usable", "unknown"]


def test_columns_without_a_meaning_go_to_the_note(tmp_path: Path) -> None:
    text = "pack,energy,mass,colour,note,plant\na,50,300,red,mine,north\nb,50,300,,,\n"
    reading = packs_of(tmp_path, text)
    assert reading.packs[0].note == "mine; colour: red; plant: north"
    assert reading.packs[1].note == ""


def test_the_best_head_wins_and_the_others_go_to_the_note(tmp_path: Path) -> None:
    text = "vehicle,pack,weight,mass,energy\nvan,a,999,300,50\n"
    reading = packs_of(tmp_path, text)
    assert (names(reading), reading.packs[0].mass_kg) == (["a"], 300)
    assert reading.packs[0].note == "vehicle: van; weight: 999"


@pytest.mark.parametrize(
    ("column", "cell", "words"),
    [
        ("voltage", "many", "many"),
        ("voltage", "nan", "nan"),
        ("voltage", "400 kg", "400 kg"),
        ("voltage", "inf", "inf"),
        ("voltage", "1e999", "too large"),
        ("cell count", "96.5", "whole"),
        ("state of health [%]", "150", "110"),
        ("energy basis", "rated", "gross, usable"),
        ("mass known by", "guess", "estimate"),
        ("boundary", "coolant=maybe", "in, out"),
        ("cells mass [kg]", "301", "more than"),
    ],
)
def test_a_figure_or_word_that_cannot_stand_refuses_its_row(
    tmp_path: Path, column: str, cell: str, words: str
) -> None:
    text = f"pack,energy,mass,{column}\na,50,300,{cell}\nb,50,300,\n"
    reading = packs_of(tmp_path, text)
    assert places(reading) == [(2, column, cell)]
    assert words in str(errors(reading)[0])
    assert names(reading) == ["b"]


def test_an_unusual_figure_warns_and_is_accepted(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack,energy,mass\na,50,1300\nb,2000,9000\n")
    assert reading.accepted == 2
    warned = [(p.row, p.column, p.severity) for p in reading.problems]
    assert (2, "mass", Severity.WARNING) in warned
    assert (3, "energy", Severity.WARNING) in warned


def test_every_fault_of_a_row_is_said(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack,energy,mass,voltage\n,-1,0,x\n")
    assert [p.column for p in errors(reading)] == ["voltage", "pack", "energy", "mass"]
    assert (reading.rows_read, reading.refused) == (1, 1)


def test_an_ambiguous_comma_needs_the_mark(tmp_path: Path) -> None:
    text = "pack;energy;mass\na;50;1,234\n"
    assert places(packs_of(tmp_path, text)) == [(2, "mass", "1,234")]
    assert packs_of(tmp_path, text, decimal=".").packs[0].mass_kg == 1234
    assert packs_of(tmp_path, text, decimal=",").packs[0].mass_kg == 1.234
    settled = packs_of(tmp_path, text + "b;50;300,5\n")
    assert settled.packs[0].mass_kg == 1.234


def test_a_column_of_commas_turns_points_into_thousands(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack;energy;mass\na;50;1.234\nb;50;300,5\n")
    assert [pack.mass_kg for pack in reading.packs] == [1234, 300.5]


def test_names_of_the_library_are_taken_or_replaced(tmp_path: Path) -> None:
    text = "pack,energy,mass\na,50,300\nb,50,300\n"
    refused = packs_of(tmp_path, text, existing={"a"})
    assert places(refused) == [(2, "pack", "a")]
    taken = packs_of(tmp_path, text, existing={"a"}, replace_existing=True)
    assert (taken.accepted, taken.replaced, errors(taken)) == (2, 1, [])


def test_a_sheet_shows_its_first_rows_and_their_decimal_marks(tmp_path: Path) -> None:
    text = "Benchmark\npack;energy;mass;year\na;50,5;1.234,5;2024\n\nb;60;1.5;2025\n"
    sheet = read_sheet(written(tmp_path, text))
    assert sheet.header == ("pack", "energy", "mass", "year")
    assert sheet.head(1) == [["a", "50,5", "1.234,5", "2024"]]
    assert len(sheet.head()) == 2
    assert sheet.decimal_marks == (None, ",", None, None)
    assert [column.tolist() for column in sheet.columns][3] == ["2024", "2025"]


def test_a_person_may_assign_columns(tmp_path: Path) -> None:
    sheet = read_sheet(written(tmp_path, "Nummer,Inhalt,Last\nx,50,700\n"))
    from benchpack.files.tables import suggest_mapping

    mapping = suggest_mapping(sheet)
    assert mapping.column_of("mass_kg") is None
    fields, units = ("name", "energy_kwh", "mass_kg"), ("", "", "lb")
    reading = read_packs(sheet, replace(mapping, fields=fields, units=units))
    assert reading.packs[0].mass_kg == pytest.approx(700 * 0.45359237)


def test_a_table_without_mass_says_which_heads_it_has(tmp_path: Path) -> None:
    with pytest.raises(DataError) as caught:
        packs_of(tmp_path, "pack,energy,mass [kWh]\na,50,3\n")
    said = str(caught.value)
    assert "no column for mass [kg]" in said
    assert "mass [kWh]" in said
    assert caught.value.problems[0].row == 1


def test_progress_is_told_and_reading_can_be_stopped(tmp_path: Path) -> None:
    rows = "\n".join(f"p{i},50,1200" for i in range(100_000))
    sheet = read_sheet(written(tmp_path, f"pack,energy,mass\n{rows}\n"))
    told: list[tuple[int, int, str]] = []
    reading = read_packs(
        sheet, progress=lambda done, total, words: told.append((done, total, words))
    )
    assert reading.accepted == 100_000
    assert told[-1] == (100_000, 100_000, "Done")
    assert len(told) >= 5
    asked = iter([False, False, False])
    with pytest.raises(CancelledError):
        read_packs(sheet, cancelled=lambda: next(asked, True))
