"""Workbooks: XLSX and ODS in, XLSX out."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest
import xlsxwriter

from benchpack.errors import DataError
from benchpack.files.demo import demo_library
from benchpack.files.reading import read_any, write_any
from benchpack.files.tables import read_packs, read_sheet
from benchpack.files.workbook_reading import Workbook
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from tests.unit.files.sheets import names, places


def _xlsx(path: Path, sheets: dict[str, list[list[object]]]) -> Path:
    book = xlsxwriter.Workbook(str(path))
    for name, rows in sheets.items():
        sheet = book.add_worksheet(name)
        for i, row in enumerate(rows):
            for j, cell in enumerate(row):
                if isinstance(cell, dt.date):
                    form = book.add_format({"num_format": "yyyy-mm-dd"})
                    sheet.write_datetime(i, j, cell, form)
                else:
                    sheet.write(i, j, cell)
    book.close()
    return path


def test_numbers_text_and_units_in_a_sheet(tmp_path: Path) -> None:
    rows: list[list[object]] = [
        ["Benchmark"],
        [],
        ["Pack", "Energy [MJ]", "Mass (lb)", "SOP", "own", "year"],
        ["a", 180, 700.5, dt.date(2024, 5, 1), True, 2024],
        [7, "50,5 kWh", "0,3 t", "", "", ""],
        [],
        ["c", 180, "heavy", "", "", ""],
        ["d", 180, 700, "", "", "", "more"],
    ]
    sheet = read_sheet(_xlsx(tmp_path / "book.xlsx", {"Sheet1": rows}))
    assert sheet.header_row == 3
    reading = read_packs(sheet)
    assert names(reading) == ["a", "7"]
    assert [p.energy_kwh for p in reading.packs] == [50, 50.5]
    assert reading.packs[0].mass_kg == pytest.approx(700.5 * 0.45359237)
    assert reading.packs[1].mass_kg == 300
    assert reading.packs[0].note == "SOP: 2024-05-01; own: true"
    assert places(reading) == [(7, "Mass (lb)", "heavy"), (8, "", "")]


def test_the_sheet_that_looks_like_packs_is_taken(tmp_path: Path) -> None:
    table: list[list[object]] = [["pack", "energy", "mass"], ["a", 50, 300]]
    path = _xlsx(tmp_path / "b.xlsx", {"Cover": [["Hello", "you"]], "Data": table})
    sheet = read_sheet(path)
    assert (sheet.name, sheet.sheet_names) == ("Data", ("Cover", "Data"))
    assert names(read_packs(read_sheet(path, sheet="Data"))) == ["a"]
    with pytest.raises(DataError, match="Cover, Data"):
        read_sheet(path, sheet="Other")
    assert read_any(path).library.packs.names.tolist() == ["a"]


def test_opendocument_sheets_are_read(tmp_path: Path) -> None:
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P

    book = OpenDocumentSpreadsheet()
    table = Table(name="packs")
    for row in (["pack", "energy [kWh]", "mass [kg]"], ["a", 50.5, "300,25 kg"]):
        line = TableRow()
        for cell in row:
            if isinstance(cell, float):
                made = TableCell(valuetype="float", value=str(cell))
            else:
                made = TableCell(valuetype="string")
            made.addElement(P(text=str(cell)))
            line.addElement(made)
        table.addElement(line)
    book.spreadsheet.addElement(table)
    path = tmp_path / "book.ods"
    book.save(str(path))
    pack = read_any(path).library.packs[0]
    assert (pack.name, pack.energy_kwh, pack.mass_kg) == ("a", 50.5, 300.25)


def test_the_demo_comes_back_from_a_workbook(tmp_path: Path) -> None:
    library = demo_library()
    path = tmp_path / "demo.xlsx"
    write_any(library, path, currency="EUR")
    reading = read_any(path)
    assert [p for p in reading.problems if p.severity == "error"] == []
    for name in ("packs", "parts", "joints", "materials", "sources", "studies"):
        assert getattr(reading.library, name) == getattr(library, name)
    assert reading.currency == "EUR"


def test_nothing_in_a_workbook_runs(tmp_path: Path) -> None:
    packs = [Pack("=1+1", 50, 300, note="http://a.example"), Pack("{=2}", 50, 300)]
    path = tmp_path / "a.xlsx"
    library = Library(packs=PackTable.from_packs(packs))
    write_any(library, path, currency="EUR")
    rows = Workbook(path).rows("packs")
    assert [row[0] for row in rows] == ["pack", "=1+1", "{=2}"]
    import zipfile

    with zipfile.ZipFile(path) as archive:
        xml = archive.read("xl/worksheets/sheet1.xml").decode()
    assert "<f>" not in xml
    assert "hyperlink" not in xml
    assert 'state="frozen"' in xml


def test_a_text_too_long_for_a_workbook_is_refused(tmp_path: Path) -> None:
    pack = Pack("a", 50, 300, note="x" * 40_000)
    path = tmp_path / "a.xlsx"
    with pytest.raises(DataError, match="too long"):
        write_any(Library(packs=PackTable.from_packs([pack])), path, currency="EUR")
    assert list(tmp_path.iterdir()) == []


def test_an_empty_or_missing_workbook_is_refused(tmp_path: Path) -> None:
    path = _xlsx(tmp_path / "empty.xlsx", {"Sheet1": []})
    with pytest.raises(DataError, match="no table"):
        read_any(path)
    with pytest.raises(DataError, match="no such file"):
        read_any(tmp_path / "none.xlsx")
