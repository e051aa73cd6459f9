from __future__ import annotations

from pathlib import Path

import pytest

from benchpack.ui.export.endings import with_ending, with_own_ending


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


@pytest.mark.parametrize(
    ("typed", "ending", "written"),
    [
        ("brief", ".pdf", "brief.pdf"),
        ("brief.PDF", ".pdf", "brief.PDF"),
        ("brief.csv", ".pdf", "brief.csv.pdf"),
        ("Avocet 81.5", ".xlsx", "Avocet 81.5.xlsx"),
        ("tray", ".bundle.zip", "tray.bundle.zip"),
        ("tray.zip", ".bundle.zip", "tray.zip"),
    ],
)
def test_a_file_of_one_kind_has_its_ending(
    tmp_path: Path, typed: str, ending: str, written: str
) -> None:
    assert with_own_ending(tmp_path / typed, ending) == tmp_path / written


def test_its_own_ending_never_leads_onto_a_file(tmp_path: Path) -> None:
    (tmp_path / "brief.pdf").touch()
    assert with_own_ending(tmp_path / "brief", ".pdf") == tmp_path / "brief 2.pdf"
