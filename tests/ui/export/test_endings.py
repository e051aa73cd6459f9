from __future__ import annotations

from pathlib import Path

import pytest

from benchpack.ui.export.endings import with_ending


@pytest.mark.parametrize(
    ("typed", "chosen", "written"),
    [
        ("packs", "Workbook (*.xlsx)", "packs.xlsx"),
        ("packs", "Library (*.benchpack)", "packs.benchpack"),
        ("Avocet 81.5", "CSV (*.csv)", "Avocet 81.5.csv"),
        ("packs.CSV", "Library (*.benchpack)", "packs.CSV"),
        ("packs.xlsx", "Packs as CSV (*.csv)", "packs.xlsx"),
        ("packs", "Data Package, a folder (*)", "packs"),
        ("packs", "", "packs"),
    ],
)
def test_a_name_gets_the_ending_of_its_kind(
    tmp_path: Path, typed: str, chosen: str, written: str
) -> None:
    assert with_ending(tmp_path / typed, chosen) == tmp_path / written


def test_an_ending_never_leads_onto_a_file(tmp_path: Path) -> None:
    (tmp_path / "packs.csv").touch()
    (tmp_path / "packs 2.csv").touch()
    made = with_ending(tmp_path / "packs", "CSV (*.csv)")
    assert made == tmp_path / "packs 3.csv"
