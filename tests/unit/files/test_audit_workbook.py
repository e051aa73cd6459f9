"""The audit workbook as a file: nothing runs, names hold, it prints and reads well."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from dataclasses import replace
from pathlib import Path

import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet

from benchpack.errors import DataError
from benchpack.files.audit_workbook import write_audit_workbook
from benchpack.files.gap_csv import harmless, without_apostrophe
from benchpack.report.audit import names
from benchpack.report.audit.record import AuditCell, AuditSheet, formula, text
from tests.unit.report.audit import audit_samples as samples


def sheet(*cells: AuditCell, title: str = "Some sheet") -> AuditSheet:
    rows = {(row, 0): cell for row, cell in enumerate((text("head"), *cells))}
    return AuditSheet(title, "Some cells.", rows, (20.0,), head_row=0)


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the workbook of a study with changes of most kinds."""
    found = tmp_path_factory.mktemp("audit") / "audit.xlsx"
    write_audit_workbook(samples.sheets_of(*samples.every_kind()), found)
    return found


def text_cells(book: openpyxl.Workbook) -> list[str]:
    return [
        cell.value
        for page in book
        for row in page.iter_rows()
        for cell in row
        if cell.data_type == "s"
    ]


def test_names_that_would_run_are_neutralised(tmp_path: Path) -> None:
    path = tmp_path / "audit.xlsx"
    sheets = samples.sheets_of(*samples.hostile())
    write_audit_workbook(sheets, path)
    book = openpyxl.load_workbook(path)
    said = text_cells(book)
    for name in samples.HOSTILE:
        # XML makes a lone carriage return a line feed unless it is escaped.
        assert harmless(name) in [one.replace("_x000D_", "\r") for one in said]
    runs = [one for one in said if one[:1] in "=+-@\t\r" and one]
    assert runs == []
    ours = {cell.formula for sheet in sheets for cell in sheet.cells.values()}
    found = {
        cell.value
        for page in book
        for row in page.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }
    assert found
    assert found <= ours


def test_there_are_no_macros_links_or_connections(path: Path) -> None:
    with zipfile.ZipFile(path) as parts:
        listed = [name.casefold() for name in parts.namelist()]
        sheets = [parts.read(n) for n in parts.namelist() if "worksheets/" in n]
    for word in ("vba", "macro", "externallink", "connections", "embeddings"):
        assert not [name for name in listed if word in name]
    assert not [one for one in sheets if b"<hyperlink" in one]


def test_every_formula_carries_our_figure(path: Path) -> None:
    expected = samples.formulas_of(samples.sheets_of(*samples.every_kind()))
    book = openpyxl.load_workbook(path, data_only=True)
    for (title, cell), value in expected.items():
        assert book[title][cell].value == (None if value in ("", None) else value)


def test_names_lead_to_their_cells(path: Path) -> None:
    sheets = samples.sheets_of(*samples.every_kind())
    book = openpyxl.load_workbook(path)
    assert set(book.defined_names) == set(samples.named_cells(sheets))
    for name, (title, cell) in samples.named_cells(sheets).items():
        ((found_title, found_cell),) = book.defined_names[name].destinations
        assert (found_title, found_cell.replace("$", "")) == (title, cell)


def test_each_sheet_keeps_its_heads_in_view_and_prints(path: Path) -> None:
    book = openpyxl.load_workbook(path)
    for page, own in zip(book, samples.sheets_of(*samples.every_kind()), strict=True):
        assert isinstance(page, Worksheet)
        assert page.freeze_panes is not None
        assert str(page.freeze_panes).endswith(str(own.head_row + 2))
        assert str(page.print_title_rows).endswith(f"${own.head_row + 1}")
        assert page.print_area
        assert page.page_setup.paperSize == 9
        assert page.page_setup.fitToHeight == 0
        assert page.column_dimensions["A"].width > 4


def test_what_may_be_changed_is_held_to_what_can_be(path: Path) -> None:
    book = openpyxl.load_workbook(path)
    cells = samples.named_cells(samples.sheets_of(*samples.every_kind()))
    page = book["Assumptions"]
    rules = {
        str(cell): rule
        for rule in page.data_validations.dataValidation
        for cell in rule.cells
    }
    assert "at equal energy" in rules[cells[names.BASIS][1]].formula1
    assert float(rules[cells[names.SHARE_CAPTURED][1]].formula2) == 1.0
    shaded = page[cells[names.WORTH[1]][1]].fill.fgColor.rgb
    assert shaded != page["A4"].fill.fgColor.rgb


def test_text_stays_text_whatever_it_looks_like(tmp_path: Path) -> None:
    path = tmp_path / "audit.xlsx"
    said = ["12", "http://localhost", "=1+1", "mailto:a", "1e5"]
    write_audit_workbook([sheet(*map(text, said))], path)
    page = openpyxl.load_workbook(path)["Some sheet"]
    found = [page.cell(row, 1) for row in range(2, 7)]
    assert [without_apostrophe(str(cell.value)) for cell in found] == said
    assert {cell.data_type for cell in found} == {"s"}
    assert not [cell for cell in found if cell.hyperlink]


def test_what_is_infinite_says_never(tmp_path: Path) -> None:
    path = tmp_path / "audit.xlsx"
    cells = (
        formula("1/3", 1 / 3, name="Third"),
        formula('"never"', float("inf")),
        formula('""', float("nan")),
    )
    write_audit_workbook([sheet(*cells)], path)
    page = openpyxl.load_workbook(path, data_only=True)["Some sheet"]
    assert [page.cell(row, 1).value for row in (2, 3, 4)] == [1 / 3, "never", None]


def test_the_same_sheets_give_the_same_file(tmp_path: Path) -> None:
    one, other = tmp_path / "one.xlsx", tmp_path / "other.xlsx"
    for path in (one, other):
        write_audit_workbook(samples.sheets_of(*samples.merged()), path)
    assert one.read_bytes() == other.read_bytes()


def test_a_text_that_is_too_long_is_refused_and_the_file_stays(tmp_path: Path) -> None:
    path = tmp_path / "audit.xlsx"
    path.write_bytes(b"before")
    with pytest.raises(DataError, match="too long"):
        write_audit_workbook([sheet(text("a" * 40_000))], path)
    assert path.read_bytes() == b"before"
    assert list(tmp_path.iterdir()) == [path]


def test_a_folder_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(DataError):
        write_audit_workbook([sheet(text("a"))], tmp_path / "none" / "audit.xlsx")


def test_more_rows_than_a_sheet_holds_are_refused(tmp_path: Path) -> None:
    large = replace(sheet(text("a")), cells={(1_048_576, 0): text("a")})
    with pytest.raises(DataError, match="at most 1048575 rows"):
        write_audit_workbook([large], tmp_path / "audit.xlsx")


def test_the_writer_loads_when_it_is_first_used() -> None:
    code = (
        "import sys, benchpack.files.audit_workbook, benchpack.report.audit.sheets\n"
        "assert 'xlsxwriter' not in sys.modules\n"
        "assert 'scipy.stats' not in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
