"""The CSV meant for spreadsheets and its schema."""

from __future__ import annotations

import csv
import errno
import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError, RequestError
from benchpack.files.gap_csv import (
    TableColumn,
    harmless,
    spreadsheet_cell,
    without_apostrophe,
    write_rows,
)

SCHEMA = [
    TableColumn("pack", "string", description="The subject."),
    TableColumn("gap [kg]", "number", "kg", "The gap."),
]
HEADER = ["pack", "gap [kg]"]


def test_bytes_of_a_small_table(tmp_path: Path) -> None:
    path = tmp_path / "gaps.csv"
    rows = [("Ävocet, 81", -0.1), ("=1+1", float("nan")), ("-x", None), ("", 12)]
    write_rows(path, HEADER, rows, schema=SCHEMA)
    assert path.read_bytes().decode("utf-8") == (
        "pack,gap [kg]\r\n\"Ävocet, 81\",-0.1\r\n'=1+1,\r\n'-x,\r\n,12\r\n"
    )
    schema = json.loads((tmp_path / "gaps.schema.json").read_text("utf-8"))
    assert schema["fields"][1] == {
        "name": "gap [kg]",
        "type": "number",
        "unit": "kg",
        "description": "The gap.",
    }


@pytest.mark.parametrize(
    "start", ["=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r"]
)
@pytest.mark.parametrize("before", ["", " ", "\u00a0 ", "\ufeff"])
def test_text_that_would_run_gets_an_apostrophe(start: str, before: str) -> None:
    text = f"{before}{start}cmd"
    expected = text if before and start in "\t\r" else "'" + text
    assert harmless(text) == expected


@pytest.mark.parametrize("text", ["", "a=1", "1-2", "Dunlin -74", "'x", "ü"])
def test_other_text_stays(text: str) -> None:
    assert harmless(text) == text


@given(st.text(alphabet="'=+-@ \ta\u200b", max_size=6) | st.text())
def test_the_apostrophe_is_taken_away_again(text: str) -> None:
    assert without_apostrophe(harmless(text)) == text


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_numbers_keep_every_digit_and_their_sign(value: float) -> None:
    assert float(spreadsheet_cell(value)) == value
    assert spreadsheet_cell(np.float64(value)) == spreadsheet_cell(value)


def test_words_for_other_values() -> None:
    assert [spreadsheet_cell(v) for v in (True, False, np.inf, np.int64(3))] == [
        "true",
        "false",
        "",
        "3",
    ]


def test_a_table_that_does_not_fit_its_schema_is_refused(tmp_path: Path) -> None:
    with pytest.raises(RequestError, match="heads"):
        write_rows(tmp_path / "a.csv", ["pack"], [], schema=SCHEMA)
    with pytest.raises(RequestError, match="1 cells"):
        write_rows(tmp_path / "a.csv", HEADER, [("a",)], schema=SCHEMA)
    assert list(tmp_path.iterdir()) == []


def test_a_table_that_cannot_be_written_leaves_the_old_one(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    write_rows(path, HEADER, [("a", 1.0)], schema=SCHEMA)
    before = path.read_bytes()
    with pytest.raises(DataError, match="no character"):
        write_rows(path, HEADER, [("\ud800", 1.0)], schema=SCHEMA)
    assert path.read_bytes() == before
    with pytest.raises(DataError, match="no such file"):
        write_rows(tmp_path / "none" / "a.csv", HEADER, [], schema=SCHEMA)
    assert len(list(tmp_path.iterdir())) == 2


@pytest.mark.parametrize("written", [0, 1])
def test_table_and_schema_are_there_together_or_not_at_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, written: int
) -> None:
    path = tmp_path / "gaps.csv"
    write = Path.write_bytes
    done: list[Path] = []

    def fill_up(file: Path, content: bytes) -> int:
        if len(done) == written:
            raise OSError(errno.ENOSPC, "No space left on device")
        done.append(file)
        return write(file, content)

    path.write_text("mine")
    monkeypatch.setattr(Path, "write_bytes", fill_up)
    with pytest.raises(DataError, match="disk is full"):
        write_rows(path, HEADER, [("a", 1.0)], schema=SCHEMA)
    assert path.read_text() == "mine"
    assert list(tmp_path.iterdir()) == [path]


def test_the_table_validates_with_an_independent_package(tmp_path: Path) -> None:
    # Independent package: frictionless.
    path = tmp_path / "a.csv"
    write_rows(path, HEADER, [("a", -1.5), ("b\nc", None)], schema=SCHEMA)
    with path.open(encoding="utf-8", newline="") as stream:
        assert list(csv.reader(stream))[2] == ["b\nc", ""]
    import warnings

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import frictionless

        report = frictionless.validate(
            "a.csv", schema="a.schema.json", basepath=str(tmp_path)
        )
    assert report.valid, report.to_summary()
