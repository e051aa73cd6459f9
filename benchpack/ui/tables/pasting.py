"""What a pasted block means for a table: changed cells, new rows, problems."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.ui.tables.clipboard import Block
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.units.parsing import detect_decimal, split_header

SOURCE = "pasted block"
"""What problems name as their source."""


@dataclass(slots=True)
class Paste:
    """The outcome of reading a block.

    Parameters
    ----------
    changes : list of (row, values)
        New values of records by their row among all records.
    added : list of dict
        Values of new records, in order.
    block_rows : dict of int to int
        Row of the block by record row.
    added_rows : list of int
        Row of the block for each new record.
    problems : list of Problem
        What cannot be read, by row and column of the block.
    passed_over : list of str
        Titles of columns that are derived and were not taken.
    """

    changes: list[tuple[int, dict[str, Any]]] = field(default_factory=list)
    added: list[dict[str, Any]] = field(default_factory=list)
    block_rows: dict[int, int] = field(default_factory=dict)
    added_rows: list[int] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    passed_over: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _Target:
    column: TableColumn
    unit: str | None
    decimal: str


def plan_paste(
    model: RecordTableModel,
    block: Block,
    *,
    top: int,
    columns: Sequence[int],
) -> Paste:
    """Read a block against the table it is pasted into.

    Parameters
    ----------
    model : RecordTableModel
        The table.
    block : Block
        The pasted cells. A first row that consists of heads of the table says which
        column is which, and in which unit.
    top : int
        First row of the table that is overwritten; from the number of rows on, new
        records are made.
    columns : sequence of int
        Visible columns from the one that is pasted into, left to right.
    """
    paste = Paste()
    headed = _headed_columns(model, block.cells[0])
    rows = block.cells[1:] if headed else block.cells
    targets = headed or [(model.columns[place], None) for place in columns]
    width = len(block.cells[0])
    if width > len(targets):
        what = f"The block has {width} columns, but only {len(targets)} are free."
        remedy = "Paste further to the left, or show more columns."
        paste.problems.append(Problem(what, remedy, source=SOURCE))
        return paste
    into = []
    for place, (column, unit) in enumerate(targets[:width]):
        texts = [row[place] for row in rows]
        mark = block.decimal or detect_decimal(texts) or model.style.decimal_mark
        into.append(_Target(column, unit, mark))
        if column.field is None:
            paste.passed_over.append(column.title)
    offset = 2 if headed else 1
    for place, cells in enumerate(rows):
        values = _values(model, cells, into, paste, block_row=place + offset)
        _assign(model, paste, values, row=top + place, block_row=place + offset)
    return paste


def _assign(
    model: RecordTableModel,
    paste: Paste,
    values: dict[str, Any],
    *,
    row: int,
    block_row: int,
) -> None:
    if row < model.rowCount():
        record = int(model.order[row])
        paste.changes.append((record, values))
        paste.block_rows[record] = block_row
    else:
        paste.added.append(values)
        paste.added_rows.append(block_row)


def _values(
    model: RecordTableModel,
    cells: Sequence[str],
    into: Sequence[_Target],
    paste: Paste,
    *,
    block_row: int,
) -> dict[str, Any]:
    values: dict[str, Any] = {}
    for text, target in zip(cells, into, strict=True):
        column = target.column
        if column.field is None:
            continue
        try:
            value = model.entries.parsed(
                column, text, decimal=target.decimal, unit=target.unit
            )
        except DataError as error:
            paste.problems.extend(
                problem.at(source=SOURCE, row=block_row) for problem in error.problems
            )
            continue
        values[column.key] = value
    return values


def _headed_columns(
    model: RecordTableModel, cells: Sequence[str]
) -> list[tuple[TableColumn, str | None]]:
    """Give the columns that a row of heads names, none when it is no such row."""
    if len(cells) < 2:
        return []
    known: dict[str, TableColumn] = {}
    for column in model.columns:
        names = [column.title, column.head]
        if column.field is not None:
            names += [column.field.title, *column.field.synonyms]
        for name in names:
            known.setdefault(name.casefold(), column)
    found = []
    for cell in cells:
        title, unit = split_header(cell.replace("m²", "m2").replace("m³", "m3"))
        place = known.get(title.strip().casefold()) or known.get(cell.casefold())
        if place is None:
            return []
        found.append((place, unit))
    return found
