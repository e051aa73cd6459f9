"""Workbooks that would fill the memory, and sheets that would be lost."""

from __future__ import annotations

import zipfile
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pytest
import xlsxwriter

from benchpack.errors import DataError, Severity
from benchpack.files import workbook_scan
from benchpack.files.reading import read_any
from benchpack.files.tables import read_packs, read_sheet
from benchpack.files.workbook_scan import check_size, scan_sheet
from tests.unit.files.sheets import names

HEADS = ["pack", "energy [kWh]", "mass [kg]"]


def _book(path: Path, sheets: Mapping[str, Sequence[Sequence[object]]]) -> Path:
    with xlsxwriter.Workbook(path) as book:
        for name, rows in sheets.items():
            sheet = book.add_worksheet(name)
            for i, row in enumerate(rows):
                sheet.write_row(i, 0, row)
    return path


def _rewritten(path: Path, change: Callable[[bytes], bytes]) -> Path:
    """Change the first sheet of a workbook behind the writer's back."""
    with zipfile.ZipFile(path) as old:
        parts = {name: old.read(name) for name in old.namelist()}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name, data in parts.items():
            new.writestr(name, change(data) if "sheet1.xml" in name else data)
    return path


@pytest.fixture
def book(tmp_path: Path) -> Path:
    return _book(tmp_path / "a.xlsx", {"S": [HEADS, ["a", 80, 450], ["b", 70, 420]]})


def test_a_scan_sees_what_the_sheet_holds(tmp_path: Path) -> None:
    path = tmp_path / "a.xlsx"
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("one & only")
        sheet.write(119_999, 29, "end")
        sheet.write_formula(2, 1, "=A1/0", None, "#DIV/0!")
        sheet.write_formula(3, 27, "=NA()", None, "#N/A")
    scan = scan_sheet(path, "one & only")
    assert (scan.rows, scan.columns, scan.cells) == (120_000, 30, 3)
    assert scan.corner == "AD120000"
    assert dict(scan.errors) == {(2, 1): "#DIV/0!", (3, 27): "#N/A"}
    assert scan_sheet(path, "none").cells == 0


def test_errors_are_found_wherever_a_sheet_is_cut(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.xlsx"
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("S")
        for i in range(40):
            sheet.write_formula(i, i % 3, "=1/0", None, "#DIV/0!")
    for size in (1, 37, 256, 1000):
        monkeypatch.setattr(workbook_scan, "_CHUNK", size)
        scan = scan_sheet(path, "S")
        assert (scan.rows, len(scan.errors)) == (40, 40)


@pytest.mark.parametrize("cell", [b"XFD1048576", b"ZZZZ99999999", b"XFD90000"])
def test_a_cell_far_from_the_table_is_refused_before_it_is_loaded(
    book: Path, cell: bytes
) -> None:
    _rewritten(book, lambda data: data.replace(b'r="C3"', b'r="' + cell + b'"'))
    with pytest.raises(DataError, match=cell.decode()) as caught:
        read_any(book)
    assert "far from the table" in caught.value.problems[0].remedy


def test_a_filled_sheet_of_any_size_is_not_scattered() -> None:
    assert not workbook_scan.SheetScan(1_000_000, 200, 150_000_000).is_scattered
    assert workbook_scan.SheetScan(1_000_000, 200, 1000).is_scattered


def test_a_workbook_that_unpacks_without_end_is_refused(book: Path) -> None:
    spaces = b" " * 250_000_000
    _rewritten(book, lambda data: data.replace(b"<sheetData>", spaces + b"<sheetData>"))
    assert book.stat().st_size < 1_000_000
    with pytest.raises(DataError, match="unpacks to 250 MB"):
        read_any(book)


def test_what_is_no_archive_is_left_to_the_reader(tmp_path: Path) -> None:
    path = tmp_path / "a.xlsx"
    path.write_bytes(b"PK\x03\x04 and no more")
    check_size(path)
    assert scan_sheet(path, "S").cells == 0
    with pytest.raises(DataError, match="damaged"):
        read_any(path)


def test_other_sheets_with_packs_are_named(tmp_path: Path) -> None:
    rows: dict[str, list[list[object]]] = {
        str(year): [[*HEADS], [f"a {year}", 80, 450]] for year in (2024, 2025, 2026)
    }
    reading = read_any(_book(tmp_path / "a.xlsx", {**rows, "about": [["words"]]}))
    assert reading.library.packs.names.tolist() == ["a 2024"]
    assert [p.source for p in reading.problems] == [
        "a.xlsx, sheet 2025",
        "a.xlsx, sheet 2026",
    ]
    assert {p.severity for p in reading.problems} == {Severity.WARNING}


def test_a_sheet_that_no_library_has_is_named(tmp_path: Path) -> None:
    rows: dict[str, list[list[object]]] = {
        "packs": [[*HEADS], ["a", 80, 450]],
        "remarks": [["weighed in May"]],
    }
    reading = read_any(_book(tmp_path / "a.xlsx", rows))
    assert len(reading.library.packs) == 1
    assert [p.source for p in reading.problems] == ["a.xlsx, sheet remarks"]


def test_a_hidden_sheet_comes_last(tmp_path: Path) -> None:
    path = tmp_path / "a.xlsx"
    with xlsxwriter.Workbook(path) as book:
        old, new = book.add_worksheet("old"), book.add_worksheet("new")
        for sheet, name in ((old, "before"), (new, "now")):
            sheet.write_row(0, 0, HEADS)
            sheet.write_row(1, 0, [name, 80, 450])
        old.hide()
        new.activate()
        new.set_first_sheet()
    assert names(read_packs(read_sheet(path))) == ["now"]
