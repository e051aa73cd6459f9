"""Tables as spreadsheets of other countries and habits write them."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchpack.errors import DataError
from benchpack.files import delimited_body
from benchpack.files.tables import read_packs, read_sheet
from tests.unit.files.sheets import errors, names, packs_of, places, written


@pytest.fixture(params=["small", "large"], autouse=True)
def _either_way(
    request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Split files by the csv module, and by pandas as if they were large."""
    if request.param == "large":
        monkeypatch.setattr(delimited_body, "SMALL_BYTES", 0)


def test_a_german_table(tmp_path: Path) -> None:
    text = (
        "Bezeichnung;Nutzbare Energie (kWh);Masse (kg);Masse ± (kg);Zellmasse [kg];"
        "Baujahr;Bemerkung\r\n"
        "Größe 1;82,5;1.089,3;2,5;k.A.;2024;schön ±2\r\n"
        "Größe 2;75;439;–;301,2;-;\r\n"
    )
    sheet = read_sheet(written(tmp_path, text, encoding="cp1252"))
    reading = read_packs(sheet)
    assert reading.problems == ()
    one, two = reading.packs
    assert (one.name, one.energy_kwh, one.energy_basis) == ("Größe 1", 82.5, "usable")
    assert (one.mass_kg, one.mass_tolerance_kg, one.year) == (1089.3, 2.5, 2024)
    assert (one.cells_mass_kg, one.note) == (None, "schön ±2")
    assert (two.mass_tolerance_kg, two.cells_mass_kg, two.year) == (None, 301.2, None)


def test_a_french_table(tmp_path: Path) -> None:
    text = "Modèle;Énergie brute (kWh);Poids (kg)\nUn;82,5;1\u202f089,3\nDeux;75;439\n"
    reading = packs_of(tmp_path, text)
    assert reading.problems == ()
    assert [p.mass_kg for p in reading.packs] == [1089.3, 439]
    assert {p.energy_basis for p in reading.packs} == {"gross"}


@pytest.mark.parametrize(
    ("head", "basis"),
    [
        ("Pack,kWh (usable),kg", "usable"),
        ("Pack,gross kWh,Pack kg", "gross"),
        ("Pack,Usable [kWh],Total (kg)", "usable"),
        ("Pack,kWh,kg", "unknown"),
        ("Pack,net energy in kWh,Weight kg", "usable"),
    ],
)
def test_a_unit_alone_is_head_enough(tmp_path: Path, head: str, basis: str) -> None:
    reading = packs_of(tmp_path, f"{head}\na,80,450\n")
    (pack,) = reading.packs
    assert (pack.energy_kwh, pack.mass_kg, pack.energy_basis) == (80, 450, basis)


@pytest.mark.parametrize("row", [",MJ,lb", ",[MJ],[lb]", "-,(MJ),(lb)"])
def test_units_may_stand_in_a_row_of_their_own(tmp_path: Path, row: str) -> None:
    reading = packs_of(tmp_path, f"pack,energy,mass\n{row}\na,288,1000\nb,?,1000\n")
    (pack,) = reading.packs
    assert pack.energy_kwh == pytest.approx(80)
    assert pack.mass_kg == pytest.approx(453.59237)
    assert places(reading) == [(4, "energy [MJ]", "?")]


def test_one_letter_below_the_heads_is_a_name(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack,energy,mass\nF,,\nb,80,450\n")
    assert {row for row, _, _ in places(reading)} == {2}


@pytest.mark.parametrize(
    ("energy", "mass", "kg"),
    [
        ("82,5", "1.089", 1089.0),
        ("82,5", "1.089 kg", 1089.0),
        ("82.5", "1,089", 1089.0),
        ("82.5", "1.089", 1.089),
        ("82,5", "439.5", 439.5),
        ("82", "1.089", 1.089),
    ],
)
def test_one_column_says_the_decimal_mark_of_all(
    tmp_path: Path, energy: str, mass: str, kg: float
) -> None:
    reading = packs_of(tmp_path, f"pack;energy;mass\na;{energy};{mass}\nb;80;450\n")
    assert [p.mass_kg for p in reading.packs] == [kg, 450]


def test_a_column_that_marks_decimals_both_ways_is_not_guessed(tmp_path: Path) -> None:
    text = "pack;energy;mass\na;82,5;489\nb;75.5;439\nc;1.082;489\nd;1,082;489\n"
    reading = packs_of(tmp_path, text)
    assert [p.energy_kwh for p in reading.packs] == [82.5, 75.5]
    assert places(reading) == [(4, "energy", "1.082"), (5, "energy", "1,082")]


def test_heads_longer_than_the_part_that_is_looked_at(tmp_path: Path) -> None:
    more = [f"measure {i}" for i in range(7000)]
    head = ",".join(["pack", "energy", "mass", *more])
    assert len(head) > 65536
    row = ",".join(["a", "80", "450", *("1" for _ in more)])
    reading = packs_of(tmp_path, f"{head}\n{row}\n")
    (pack,) = reading.packs
    assert pack.note.startswith("measure 0: 1; measure 1: 1")
    assert pack.note.endswith("measure 6999: 1")


def test_names_that_only_look_alike_are_pointed_out(tmp_path: Path) -> None:
    text = "pack,energy,mass\n" + "".join(
        f"{name},80,450\n" for name in ("A b", "a B", "\u00c4", "A\u0308", "A\u00a0b")
    )
    reading = packs_of(tmp_path, text)
    assert len(reading.packs) == 5
    assert errors(reading) == []
    assert [(p.row, p.column) for p in reading.problems] == [
        (3, "pack"),
        (5, "pack"),
        (6, "pack"),
    ]
    assert "row 2" in reading.problems[0].what


def test_a_very_long_name_does_not_fill_the_message(tmp_path: Path) -> None:
    name = "N" * 10_000
    reading = packs_of(
        tmp_path, f"pack,energy,mass\n{name},80,450\n{name},81,450\nx,80,450\n"
    )
    assert names(reading) == [name, "x"]
    assert len(str(errors(reading)[0])) < 200


@pytest.mark.parametrize(
    "start", [b"<html>", b"\xef\xbb\xbf  <!DOCTYPE html>", b'<?xml version="1.0"?>']
)
def test_a_web_page_is_called_one(tmp_path: Path, start: bytes) -> None:
    path = tmp_path / "packs.xls"
    path.write_bytes(start + b"<table><tr><td>pack</td></tr></table>")
    with pytest.raises(DataError, match="web page"):
        read_sheet(path)
