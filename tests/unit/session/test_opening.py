"""Names of files that are made from names of records."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.session.opening import file_stem


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("Avocet 81 against Dunlin 74", "Avocet 81 against Dunlin 74"),
        ("../../81\\kWh: 2/3?", "81 kWh 2 3"),
        (" ... ", "Library"),
        ("\U0001f50b", "Library"),
        ("Cafe\u0301", "Caf\u00e9"),
        ("CON", "_CON"),
        ("lpt1.study", "_lpt1.study"),
        ("Console", "Console"),
        ("tab\tand\x00\x1b bell", "tab and bell"),
    ],
)
def test_a_name_becomes_one_of_a_file(name: str, stem: str) -> None:
    assert file_stem(name) == stem


@pytest.mark.parametrize("letter", ["x", "\u96fb", "\U0002000b"])
def test_a_long_name_leaves_room_for_what_stands_behind_it(
    tmp_path: Path, letter: str
) -> None:
    stem = file_stem(letter * 300)
    assert set(stem) == {letter}
    made = tmp_path / f"{stem} chart, what the worth of a kilogram is made of.svg"
    made.write_text("whole")
    assert len(os.fsencode(made.name)) <= 255


@given(st.text())
def test_any_name_stays_in_its_folder(name: str) -> None:
    stem = file_stem(name)
    assert Path(stem).name == stem
    assert stem == stem.strip(" .")
    assert 0 < len(stem) <= 81
    assert len(stem.encode()) <= 161
