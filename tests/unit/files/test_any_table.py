"""Properties of reading tables: nothing is lost, nothing else than a DataError."""

from __future__ import annotations

import csv
import io
import tempfile
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError, Problem, Severity
from benchpack.files import delimited_body
from benchpack.files.pack_reading import suspicious
from benchpack.files.sheet import Cells
from benchpack.files.tables import TableReading, read_packs, read_sheet
from benchpack.model.pack import Pack, pack_problems

CELLS = st.sampled_from(
    [
        "",
        " ",
        "50",
        "-50",
        "0",
        "300,5",
        "1,234",
        "1e3",
        "nan",
        "inf",
        "True",
        "431 kg",
        "0,45 t",
        "78 kWh",
        "=1+1",
        'a "b"',
        "x\ny",
        "usable",
        "coolant=out",
        "12345678901234567890123",
        "0x1A",
        "1_000",
        "٣",
        "\x1f",
        "\u2028",
    ]
) | st.text(
    st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=4
)
HEADS = (
    "pack",
    "energy [MJ]",
    "mass [lb]",
    "energy basis",
    "cell count",
    "boundary",
    "colour",
    "note",
)
ROWS = st.lists(st.lists(CELLS, max_size=len(HEADS) + 1), max_size=6)


def _csv(rows: list[list[str]]) -> bytes:
    stream = io.StringIO(newline="")
    csv.writer(stream).writerows([list(HEADS), *rows])
    return stream.getvalue().encode()


def _read(data: bytes, small_bytes: int) -> TableReading:
    with tempfile.TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        patch.setattr(delimited_body, "SMALL_BYTES", small_bytes)
        path = Path(folder) / "packs.csv"
        path.write_bytes(data)
        return read_packs(read_sheet(path))


@settings(deadline=None)
@given(ROWS)
def test_every_row_is_accepted_or_reported(rows: list[list[str]]) -> None:
    reading = _read(_csv(rows), 10**9)
    refused = {p.row for p in reading.problems if p.severity is Severity.ERROR}
    filled = sum(any(map(str.strip, row)) for row in rows)
    assert reading.rows_read == filled
    assert reading.accepted + len(refused) == filled
    assert all(p.column or p.what.startswith("The row") for p in reading.problems)
    assert [Pack.__name__ for _ in reading.packs] == ["Pack"] * reading.accepted


@settings(deadline=None)
@given(ROWS)
def test_both_ways_of_splitting_read_the_same(rows: list[list[str]]) -> None:
    one, other = _read(_csv(rows), 10**9), _read(_csv(rows), 0)
    assert one.packs == other.packs
    assert one.problems == other.problems
    assert one.rows_read == other.rows_read


def test_large_files_are_split_by_pandas(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(delimited_body, "SMALL_BYTES", 0)
    path = tmp_path / "packs.csv"
    path.write_bytes(b"pack,energy,mass\na,50,300\n")
    columns = read_sheet(path).body.load([1, 2]).columns
    assert [column.dtype.kind for column in columns] == ["O", "f", "f"]
    assert isinstance(read_sheet(path).body.load([]), Cells)


def _coded(text: str) -> bytes:
    return f"pack,energy,mass\n{text}".encode("utf-8", errors="replace")


@settings(deadline=None, max_examples=200)
@given(st.binary(max_size=80) | st.text(max_size=60).map(_coded))
def test_any_bytes_give_a_table_or_a_data_error(data: bytes) -> None:
    problems: list[Problem]
    try:
        reading = _read(data, 10**9)
    except DataError as error:
        problems = list(error.problems)
    else:
        problems = [p for p in reading.problems if p.severity is Severity.ERROR]
        assert reading.refused == len({problem.row for problem in problems})
    assert all(problem.what and problem.source for problem in problems)


@settings(deadline=None)
@given(
    st.fixed_dictionaries(
        {
            "energy_kwh": st.floats(0.1, 30_000),
            "mass_kg": st.floats(1, 150_000),
            "cells_mass_kg": st.none() | st.floats(-1, 5000),
            "volume_l": st.none() | st.floats(-1, 5000),
            "cells_volume_l": st.none() | st.floats(0, 5000),
            "cell_count": st.none() | st.floats(0, 2e6),
            "year": st.none() | st.integers(1900, 2300),
            "state_of_health_pct": st.none() | st.floats(0, 120),
            "voltage_v": st.none() | st.floats(0, 6000),
        }
    )
)
def test_masks_miss_nothing_that_the_model_finds(values: dict[str, Any]) -> None:
    try:
        found = bool(pack_problems(Pack(name="a", **values)))
    except DataError:
        found = True
    columns = {
        name: np.array([np.nan if value is None else float(value)])
        for name, value in values.items()
    }
    assert bool(suspicious(columns)[0]) or not found


@pytest.mark.parametrize("word", ["True", "FALSE"])
def test_a_word_is_never_a_number(word: str) -> None:
    rows = [["Alder", word, "400"], ["Birch", "270", "410"]]
    reading = _read(_csv(rows), 0)
    assert [p.value for p in reading.problems if p.severity is Severity.ERROR] == [word]
    assert reading.packs.names.tolist() == ["Birch"]


@pytest.mark.parametrize("end", [[], ["", "", ""]])
@pytest.mark.parametrize("small_bytes", [0, 10**9])
def test_a_note_of_two_lines_is_one_row(small_bytes: int, end: list[str]) -> None:
    rows = [["A", "300,5", "x\ny", "300,5", *end], ["B", "50", "300", "", *end]]
    reading = _read(_csv(rows), small_bytes)
    assert not any("rows of their own" in problem.what for problem in reading.problems)
