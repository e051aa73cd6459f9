"""Audit sheets as a workbook: live formulas, defined names, nothing that runs."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import UTC, datetime
from enum import Enum, auto
from pathlib import Path
from typing import Any, Protocol

from benchpack.errors import DataError, Problem
from benchpack.files.faults import fault
from benchpack.files.gap_csv import harmless
from benchpack.files.workbook_writing import MOST_ROWS
from benchpack.files.xlsx_book import new_book

_A4 = 9
_WIDE = 40
"""From this width on a column is for sentences."""
_LINE_POINTS, _MOST_LINES = 15, 20
_CHARACTERS = 1.1
"""Characters of usual text in the width of one figure."""
_PAGE_WIDE, _PAGE_HIGH = 240, 160
"""Characters that a printed page holds across and upright, and can still be read."""
_INPUT, _SHADE, _VALUE, _RULE = "#00507F", "#FFF4CC", "#EDEDED", "#9A9A9A"
_MADE = datetime(2000, 1, 1, tzinfo=UTC)


class Cell(Protocol):
    """A cell as this module writes it; see `report.audit.record.AuditCell`."""

    @property
    def content(self) -> str | float | None:
        """Text, a number, or the figure of a formula."""

    @property
    def look(self) -> str:
        """How the cell is meant."""

    @property
    def formula(self) -> str:
        """The formula with its equals sign, empty where there is none."""

    @property
    def number_format(self) -> str:
        """How its number is shown."""

    @property
    def name(self) -> str:
        """Its defined name, empty where it has none."""

    @property
    def choices(self) -> Sequence[str]:
        """The words that may be chosen in it."""

    @property
    def limits(self) -> tuple[float, float] | None:
        """Least and greatest number that may be entered."""


class Sheet(Protocol):
    """A sheet as this module writes it; see `report.audit.record.AuditSheet`."""

    @property
    def title(self) -> str:
        """Its name."""

    @property
    def cells(self) -> Mapping[tuple[int, int], Cell]:
        """By row and column from 0."""

    @property
    def widths(self) -> Sequence[float]:
        """Widths of the columns in characters."""

    @property
    def head_row(self) -> int:
        """Row of the column heads."""

    @property
    def fixed_columns(self) -> int:
        """Columns at the left that stay in view."""

    @property
    def is_wide(self) -> bool:
        """True to print it across."""

    @property
    def size(self) -> tuple[int, int]:
        """Rows and columns that are written."""


_FIGURE: Mapping[str, object] = {"valign": "top", "align": "right"}
_LOOKS: Mapping[str, Mapping[str, object]] = {
    "title": {"bold": True, "font_size": 16},
    "section": {"bold": True, "font_size": 12, "bottom": 1, "bottom_color": _RULE},
    "head": {"bold": True, "text_wrap": True, "bottom": 1, "valign": "bottom"},
    "text": {"valign": "top"},
    "note": {"italic": True, "font_color": "#555555"},
    "changeable": {
        "bg_color": _SHADE,
        "font_color": _INPUT,
        "border": 1,
        "border_color": _RULE,
        **_FIGURE,
    },
    "record": {"font_color": _INPUT, **_FIGURE},
    "fixed": {"bg_color": _VALUE, "italic": True, **_FIGURE},
    "formula": {**_FIGURE},
    "sum": {"bold": True, "top": 1, "top_color": _RULE, **_FIGURE},
}


def write_audit_workbook(sheets: Iterable[Sheet], path: Path) -> None:
    """Write audit sheets as XLSX.

    Every formula carries the figure that this program has worked out for it. Text
    that a spreadsheet would run gets an apostrophe in front; there are no macros and
    no links. The same sheets give the same file.

    Parameters
    ----------
    sheets : iterable of Sheet
        In their order, for instance from ``report.audit.sheets.audit_sheets``.
    path : Path
        The workbook.

    Raises
    ------
    DataError
        When it does not fit into a workbook, or the disk refuses.
    """
    every, path = list(sheets), Path(path)
    _check_fits(every, path)
    with new_book(path) as book:
        book.set_properties({"title": "Audit workbook", "created": _MADE})
        book.set_calc_mode("auto")
        writer = _BookWriter(book)
        for sheet in every:
            writer.write(sheet)


def _check_fits(sheets: Sequence[Sheet], path: Path) -> None:
    rows = max((sheet.size[0] for sheet in sheets), default=0)
    if rows > MOST_ROWS:
        raise fault(
            path,
            f"A workbook holds at most {MOST_ROWS} rows; this needs {rows}.",
            "Name peers in the study, or write the gaps as CSV instead.",
        )


class _Trait(Enum):
    """What the place of a cell asks of its format."""

    WRAPS = auto()
    OVER_NUMBERS = auto()
    AFTER_NUMBERS = auto()


_TRAITS: Mapping[_Trait, Mapping[str, object]] = {
    _Trait.WRAPS: {"text_wrap": True},
    _Trait.OVER_NUMBERS: {"align": "right"},
    _Trait.AFTER_NUMBERS: {"indent": 1, "align": "left"},
}


class _BookWriter:
    """Writes sheets into one workbook."""

    def __init__(self, book: Any) -> None:
        self.book = book
        self.formats: dict[tuple[str, str, frozenset[_Trait]], Any] = {}

    def write(self, sheet: Sheet) -> None:
        page = self.book.add_worksheet(sheet.title)
        _lay_out(page, sheet)
        numeric = _number_columns(sheet)
        for (row, column), cell in sheet.cells.items():
            traits = frozenset(_traits(sheet, row, column, numeric=numeric))
            form = self._format(cell, traits)
            self._write_cell(page, row, column, cell=cell, form=form)
            if cell.name:
                self._define(page, row, column, name=cell.name)

    def _format(self, cell: Cell, traits: frozenset[_Trait]) -> Any:
        key = (str(cell.look), str(cell.number_format), traits)
        if key not in self.formats:
            found = dict(_LOOKS[str(cell.look)])
            if cell.number_format:
                found["num_format"] = str(cell.number_format)
            for trait in traits:
                found |= _TRAITS[trait]
            self.formats[key] = self.book.add_format(found)
        return self.formats[key]

    def _write_cell(
        self, page: Any, row: int, column: int, *, cell: Cell, form: Any
    ) -> None:
        content = cell.content
        if cell.formula:
            value = "" if content is None else content
            page.write_formula(row, column, cell.formula, form, value)
        elif content is None or content == "":
            page.write_blank(row, column, None, form)
        elif not isinstance(content, str):
            page.write_number(row, column, content, form)
        elif page.write_string(row, column, harmless(content), form) != 0:
            raise DataError(
                Problem(
                    f"A text of {len(content)} characters is too long for a workbook.",
                    "Shorten it.",
                    source=page.get_name(),
                    row=row + 1,
                    value=content[:60],
                )
            )
        _validate(page, row, column, cell=cell)

    def _define(self, page: Any, row: int, column: int, *, name: str) -> None:
        from xlsxwriter.utility import xl_rowcol_to_cell

        cell = xl_rowcol_to_cell(row, column, row_abs=True, col_abs=True)
        title = page.get_name().replace("'", "''")
        self.book.define_name(name, f"='{title}'!{cell}")


def _lay_out(page: Any, sheet: Sheet) -> None:
    """Set widths, what stays in view, and how it prints."""
    rows, columns = sheet.size
    for column, width in enumerate(sheet.widths):
        page.set_column(column, column, width)
    for row, lines in _heights(sheet).items():
        if lines > 1:
            page.set_row(row, lines * _LINE_POINTS)
    page.freeze_panes(sheet.head_row + 1, sheet.fixed_columns)
    page.hide_gridlines(2)
    page.set_paper(_A4)
    if sheet.is_wide:
        page.set_landscape()
    width = sum(sheet.widths[:columns])
    pages = math.ceil(width / (_PAGE_WIDE if sheet.is_wide else _PAGE_HIGH))
    page.fit_to_pages(pages, 0)
    page.set_margins(left=0.5, right=0.5, top=0.6, bottom=0.7)
    page.repeat_rows(0, sheet.head_row)
    if pages > 1:
        page.repeat_columns(0, sheet.fixed_columns - 1)
    page.print_area(0, 0, rows - 1, columns - 1)
    page.set_footer("&L&A&R&P / &N")


def _wraps(sheet: Sheet, row: int, column: int) -> bool:
    """Tell whether a text breaks into lines: below the heads, in wide columns."""
    below = row > sheet.head_row
    return below and column < len(sheet.widths) and sheet.widths[column] >= _WIDE


def _traits(
    sheet: Sheet, row: int, column: int, *, numeric: frozenset[int]
) -> Iterator[_Trait]:
    """Give what the place of a cell asks: numbers and words keep apart."""
    if row < sheet.head_row:
        return
    if _wraps(sheet, row, column):
        yield _Trait.WRAPS
    if row == sheet.head_row and column in numeric:
        yield _Trait.OVER_NUMBERS
    elif column - 1 in numeric and column not in numeric:
        yield _Trait.AFTER_NUMBERS


def _number_columns(sheet: Sheet) -> frozenset[int]:
    """Give the columns that hold numbers, whose heads stand to the right as well."""
    return frozenset(
        column
        for (row, column), cell in sheet.cells.items()
        if row > sheet.head_row and str(cell.look) != "text"
        if cell.formula or isinstance(cell.content, float)
    )


def _heights(sheet: Sheet) -> dict[int, int]:
    """Give the lines of each row that needs more than one.

    Spreadsheet programs do not work out heights when they open a file.
    """
    found: dict[int, int] = {}
    for (row, column), cell in sheet.cells.items():
        breaks = row == sheet.head_row or _wraps(sheet, row, column)
        if breaks and isinstance(cell.content, str) and not cell.formula:
            width = sheet.widths[column] if column < len(sheet.widths) else 8.0
            lines = _lines(cell.content, _CHARACTERS * width)
            found[row] = max(found.get(row, 1), min(lines, _MOST_LINES))
    return found


def _lines(said: str, width: float) -> int:
    """Give in how many lines a text breaks at its blanks."""
    lines, used = 1, 0.0
    for word in said.split(" "):
        if used and used + 1 + len(word) > width:
            lines, used = lines + 1, 0.0
        used += len(word) + (1 if used else 0)
    return lines


def _validate(page: Any, row: int, column: int, *, cell: Cell) -> None:
    """Hold what may be entered to what can be."""
    if cell.choices:
        page.data_validation(
            row, column, row, column, {"validate": "list", "source": [*cell.choices]}
        )
    elif cell.limits is not None:
        low, high = cell.limits
        page.data_validation(
            row,
            column,
            row,
            column,
            {
                "validate": "decimal",
                "criteria": "between",
                "minimum": low,
                "maximum": high,
                "error_title": "Out of range",
                "error_message": f"Enter a number from {low:g} to {high:g}.",
            },
        )
