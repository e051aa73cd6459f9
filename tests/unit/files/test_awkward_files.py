"""Files as they come: encodings, delimiters, quotes, ragged rows, and no tables."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import numpy as np
import pytest

from benchpack.errors import DataError
from benchpack.files import delimited_body
from benchpack.files.tables import read_packs, read_sheet
from tests.unit.files.sheets import errors, names, packs_of, places, written

PLAIN = "pack,energy,mass,note\r\nÄvocet,50,300,ø\r\nb,60,310,\r\n"


@pytest.fixture(params=["small", "large"])
def _either_way(
    request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Split files by the csv module, and by pandas as if they were large."""
    if request.param == "large":
        monkeypatch.setattr(delimited_body, "SMALL_BYTES", 0)


pytestmark = pytest.mark.usefixtures("_either_way")


@pytest.mark.parametrize(
    ("encoding", "told"),
    [
        ("utf-8", "utf-8"),
        ("utf-8-sig", "utf-8-sig"),
        ("utf-16", "utf-16"),
        ("utf-16-le", "utf-16-le"),
        ("utf-16-be", "utf-16-be"),
        ("cp1252", "cp1252"),
    ],
)
def test_encodings(tmp_path: Path, encoding: str, told: str) -> None:
    sheet = read_sheet(written(tmp_path, PLAIN, encoding=encoding))
    assert sheet.encoding == told
    reading = read_packs(sheet)
    assert names(reading) == ["Ävocet", "b"]
    assert reading.packs[0].note == "ø"


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_delimiters_and_line_ends(tmp_path: Path, delimiter: str, end: str) -> None:
    text = PLAIN.replace(",", delimiter).replace("\r\n", end)
    sheet = read_sheet(written(tmp_path, text))
    assert sheet.delimiter == delimiter
    assert names(read_packs(sheet)) == ["Ävocet", "b"]


def test_semicolons_win_where_commas_mark_decimals(tmp_path: Path) -> None:
    text = "pack;energy [kWh];mass [kg]\na;50,5;300,5\nb;60,5;310,5\n"
    reading = packs_of(tmp_path, text)
    assert [pack.mass_kg for pack in reading.packs] == [300.5, 310.5]


def test_quotes_hold_delimiters_line_ends_and_quotes(tmp_path: Path) -> None:
    text = (
        'pack,energy,mass,note\n"a, the ""first""\nof many",50,300,"x\r\ny"\n'
        "b,50,bad,\n"
    )
    reading = packs_of(tmp_path, text)
    assert names(reading) == ['a, the "first"\nof many']
    assert reading.packs[0].note == "x\r\ny"
    # Row 3 of a spreadsheet: a record over several lines is one row.
    assert places(reading) == [(3, "mass", "bad")]


def test_a_head_may_run_over_two_lines(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, 'pack,energy,"mass\n[lb]"\na,50,700\nb,50,x\n')
    assert reading.packs[0].mass_kg == pytest.approx(317.514659)
    assert places(reading)[0][0] == 3


def test_heads_below_a_title_and_blank_lines(tmp_path: Path) -> None:
    text = "\n\nBenchmark,2026,,\n\npack,energy,mass\na,50,300\n\n,,\nb,50,\n\n\n,,\n"
    sheet = read_sheet(written(tmp_path, text))
    assert sheet.header_row == 5
    reading = read_packs(sheet)
    assert (names(reading), reading.rows_read) == (["a"], 2)
    assert places(reading) == [(9, "mass", "")]


def test_short_rows_are_filled_and_long_ones_refused(tmp_path: Path) -> None:
    text = (
        "pack,energy,mass,note,year\na,50,300\nb,50,300,x,2024,,\nc,50,300,x,2024,y\n"
    )
    reading = packs_of(tmp_path, text)
    assert names(reading) == ["a", "b"]
    assert [(p.row, p.what) for p in errors(reading)] == [
        (4, "The row has 6 cells, the heads are 5.")
    ]


def test_repeated_and_empty_heads_go_to_the_note(tmp_path: Path) -> None:
    text = "pack,energy,mass,mass,,colour\na,50,300,301,x,\n"
    reading = packs_of(tmp_path, text)
    assert reading.packs[0].mass_kg == 300
    assert reading.packs[0].note == "mass: 301; column 5: x"


def test_empty_columns_are_no_matter(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack,energy,mass,voltage,note\na,50,300,,\n")
    assert (reading.packs[0].voltage_v, reading.packs[0].note) == (None, "")


def test_a_table_of_heads_alone_has_no_packs(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack,energy,mass\n")
    assert (len(reading.packs), reading.rows_read, reading.problems) == (0, 0, ())


def test_names_stay_as_they_are_written(tmp_path: Path) -> None:
    rows = [f"{name},50,300" for name in ("007", "true", "NaN", "1e3", " =x ")]
    text = "\n".join(("pack,energy,mass", *rows))
    assert names(packs_of(tmp_path, text)) == ["007", "true", "NaN", "1e3", "=x"]


def test_figures_are_read_exactly(tmp_path: Path) -> None:
    figures = [0.1 + 0.2, 1 / 3, 5e-324, 123.456, float(np.nextafter(300, 301))]
    rows = "\n".join(f"p{i},50,300,{x!r}" for i, x in enumerate(figures))
    reading = packs_of(tmp_path, f"pack,energy,mass,mass +- [kg]\n{rows}\n")
    assert [pack.mass_tolerance_kg for pack in reading.packs] == figures


def test_values_are_reported_as_written(tmp_path: Path) -> None:
    reading = packs_of(tmp_path, "pack,energy,mass\na,50,-300.50\nb,50,TRUE\n")
    assert [value for _, _, value in places(reading)] == ["-300.50", "TRUE"]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "empty"),
        (b"\n \r\n", "empty"),
        (b"\xef\xbb\xbf", "no table"),
        (bytes(range(256)) * 8, "no text"),
        (b"\x89PNG\r\n\x1a\n" + bytes(40), "picture"),
        (b"%PDF-1.7\n", "PDF"),
        (b"\x1f\x8b\x08" + bytes(20), "compressed"),
        (b"PK\x03\x04 not really", "damaged"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600), "damaged"),
        (b"pack,energy,mass\na\x00b,1,2\n", "no text"),
        (b'pack,energy,mass\na,50,300\n"b,50,300\nc,50,300\n', "never closed"),
        (b"just a sentence", "no column"),
    ],
)
def test_what_is_no_table_is_refused_in_words(
    tmp_path: Path, data: bytes, words: str
) -> None:
    path = tmp_path / "packs.csv"
    path.write_bytes(data)
    with pytest.raises(DataError, match=words) as caught:
        read_packs(read_sheet(path))
    assert caught.value.problems[0].remedy
    assert "packs.csv" in caught.value.problems[0].source


def test_missing_files_folders_and_databases_are_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="no such file"):
        read_sheet(tmp_path / "none.csv")
    with pytest.raises(DataError, match="folder"):
        read_sheet(tmp_path)
    path = tmp_path / "a.csv"
    with sqlite3.connect(path) as connection:
        connection.execute("CREATE TABLE a (b)")
    connection.close()
    with pytest.raises(DataError, match="database"):
        read_sheet(path)
