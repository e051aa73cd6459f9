"""Blocks of cells as the text that spreadsheets exchange."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QMimeData

from benchpack.ui.tables.cell_text import plain_texts
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.ordering import Rows
from benchpack.ui.tables.records import RecordColumns

CELLS_FORMAT = "application/x-benchpack-cells"
"""Clipboard format that says: these cells have a decimal point, whatever the study."""


@dataclass(frozen=True, slots=True)
class Block:
    """Cells from the clipboard.

    Parameters
    ----------
    cells : list of list of str
        Rows of texts, all of one length.
    decimal : str
        Decimal mark where it is known, else empty.
    """

    cells: list[list[str]]
    decimal: str = ""


@dataclass(frozen=True, slots=True)
class CellRange:
    """A rectangle of cells, ends included, columns by their number in the model."""

    top: int
    bottom: int
    left: int
    right: int

    @property
    def size(self) -> int:
        """Number of cells."""
        return (self.bottom - self.top + 1) * (self.right - self.left + 1)

    def holds(self, row: int, column: int) -> bool:
        """Tell whether a cell lies in it."""
        return self.top <= row <= self.bottom and self.left <= column <= self.right


@dataclass(frozen=True, slots=True)
class Shown:
    """What a table showed at one moment; later sorting and filtering leave it alone.

    Parameters
    ----------
    records : RecordColumns
        The records.
    columns : tuple of TableColumn
        All columns of the table.
    order : ndarray of int, shape (n,)
        The records shown, top to bottom, as rows among all records.
    places : tuple of int
        The visible columns from left to right, by their number.
    """

    records: RecordColumns
    columns: tuple[TableColumn, ...]
    order: Rows
    places: tuple[int, ...]


def copied_cells(shown: Shown, ranges: Sequence[CellRange]) -> list[list[str]]:
    """Give the selected cells at full precision.

    Parameters
    ----------
    shown : Shown
        What the table shows.
    ranges : sequence of CellRange
        What is selected.

    Returns
    -------
    list of list of str
        The smallest rectangle that holds them, empty text where nothing is selected;
        the heads come first when whole rows or whole columns are selected.
    """
    rows = sorted({row for one in ranges for row in range(one.top, one.bottom + 1)})
    taken = [
        c for c in shown.places if any(one.left <= c <= one.right for one in ranges)
    ]
    whole_rows = len(taken) == len(shown.places)
    whole_columns = len(rows) == len(shown.order)
    texts = []
    for place in taken:
        column = shown.columns[place]
        values = shown.records.column(column.key)[shown.order[rows]]
        cells_of = plain_texts(column, values.tolist())
        if len(ranges) > 1:
            cells_of = [
                text if any(one.holds(row, place) for one in ranges) else ""
                for row, text in zip(rows, cells_of, strict=True)
            ]
        texts.append(cells_of)
    cells = [list(row) for row in zip(*texts, strict=True)]
    if whole_rows or whole_columns:
        cells.insert(0, [shown.columns[place].head for place in taken])
    return cells


def to_text(cells: Sequence[Sequence[str]]) -> str:
    """Give cells as tab-separated text, quoted where a cell needs it."""
    text = io.StringIO()
    csv.writer(text, dialect="excel-tab", lineterminator="\n").writerows(cells)
    return text.getvalue()


def to_mime(text: str) -> QMimeData:
    """Give the text of cells as clipboard content."""
    mime = QMimeData()
    mime.setText(text)
    mime.setData(CELLS_FORMAT, text.encode())
    return mime


def from_mime(mime: QMimeData | None) -> Block:
    """Give the cells of clipboard content; an empty block when there are none."""
    if mime is None:
        return Block([])
    if mime.hasFormat(CELLS_FORMAT):
        return Block(_cells(mime.data(CELLS_FORMAT).toStdString()), ".")
    return Block(_cells(mime.text()))


def _cells(text: str) -> list[list[str]]:
    if not text.strip("\r\n"):
        return []
    source = io.StringIO(text.replace("\r\n", "\n").removesuffix("\n"), newline="")
    rows = list(csv.reader(source, dialect="excel-tab"))
    width = max(map(len, rows))
    return [row + [""] * (width - len(row)) for row in rows]
