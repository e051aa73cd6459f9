"""A library as a workbook for spreadsheet programs."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.files.descriptor import RESOURCES
from benchpack.files.faults import fault
from benchpack.files.package import table_texts
from benchpack.files.xlsx_book import new_book
from benchpack.model.fields import Field, Kind
from benchpack.model.library import Library

MOST_ROWS = 1_048_575
"""Records that a sheet of a workbook can hold below its heads."""


class ExactNumber(float):
    """A number of which a workbook gets every digit; XlsxWriter stops at 16."""

    def __format__(self, spec: str) -> str:
        shown = super().__format__(spec)
        return shown if float(shown) == self else repr(float(self))


def write_workbook(library: Library, path: Path, *, currency: str) -> None:
    """Write a library as XLSX: one sheet per kind of record.

    Numbers are numbers and text is text, also where it looks like a formula or a
    link: nothing in the workbook runs.

    Parameters
    ----------
    library : Library
        What to write.
    path : Path
        The workbook.
    currency : str
        Code of the currency of all money.

    Raises
    ------
    DataError
        When it does not fit into a workbook, or the disk refuses.
    """
    path = Path(path)
    _check_fits(library, path)
    with new_book(path) as book:
        bold = book.add_format({"bold": True, "bottom": 1, "text_wrap": True})
        for resource in RESOURCES:
            rows = table_texts(library, resource.name)
            sheet = book.add_worksheet(resource.name)
            _write_sheet(sheet, resource.fields, rows, bold, currency)


def _check_fits(library: Library, path: Path) -> None:
    counts = (len(library.packs), library.part_count, library.joint_count)
    if max(counts) > MOST_ROWS:
        raise fault(
            path,
            f"A workbook holds at most {MOST_ROWS} rows; this needs {max(counts)}.",
            "Write a Data Package or CSV instead.",
        )


def _write_sheet(
    sheet: Any,
    fields: Sequence[Field],
    rows: Iterable[Sequence[str]],
    bold: Any,
    currency: str,
) -> None:
    heads = [field.header(currency=currency) for field in fields]
    widths = [len(head) for head in heads]
    for column, head in enumerate(heads):
        sheet.write_string(0, column, head, bold)
    last = 0
    for last, row in enumerate(rows, start=1):
        for column, (field, text) in enumerate(zip(fields, row, strict=True)):
            _write_cell(sheet, last, column, field, text)
            widths[column] = max(widths[column], min(len(text), 40))
    for column, width in enumerate(widths):
        sheet.set_column(column, column, width + 2)
    sheet.freeze_panes(1, 1)
    sheet.autofilter(0, 0, last, len(heads) - 1)


def _write_cell(sheet: Any, row: int, column: int, field: Field, text: str) -> None:
    if not text:
        return
    if field.is_numeric:
        sheet.write_number(row, column, ExactNumber(text))
    elif field.kind is Kind.FLAG:
        sheet.write_boolean(row, column, text == "true")
    elif sheet.write_string(row, column, text) != 0:
        raise DataError(
            Problem(
                f"A text of {len(text)} characters is too long for a workbook.",
                "Shorten it, or write a Data Package instead.",
                source=sheet.get_name(),
                row=row + 1,
                column=field.title,
                value=text[:60],
            )
        )
