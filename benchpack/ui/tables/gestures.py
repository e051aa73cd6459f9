"""What a paste, a fill or a clearing does to the selected cells of a table."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Protocol

from benchpack.errors import DataError, Problem
from benchpack.model.fields import Kind
from benchpack.ui.tables.clipboard import Block, CellRange
from benchpack.ui.tables.pasting import SOURCE, Paste, plan_paste
from benchpack.ui.tables.record_table import RecordTableModel


class Selected(Protocol):
    """What the gestures need of a view."""

    table: RecordTableModel

    def selected_ranges(self) -> list[CellRange]:
        """Give the selected rectangles."""

    def visible_columns(self) -> list[int]:
        """Give the columns shown, from left to right."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a gesture: problems under a heading, or a remark.

    Records that were added are counted.
    """

    heading: str = ""
    problems: tuple[Problem, ...] = ()
    remark: str = ""
    added: int = 0


_NOTHING = Outcome()


def paste(view: Selected, block: Block, *, row: int, column: int) -> Outcome:
    """Write a block of cells into a table, all of it or nothing.

    Parameters
    ----------
    view : Selected
        The view.
    block : Block
        What was on the clipboard.
    row : int
        First row; from the number of rows on, new records are made.
    column : int
        First column, -1 for the leftmost.
    """
    model = view.table
    if not block.cells:
        return Outcome(remark="There are no cells on the clipboard.")
    cells = block.cells
    if len(cells) == 1 and len(cells[0]) == 1 and row < model.rowCount():
        return _fill(view, cells[0][0], block.decimal)
    columns = view.visible_columns()
    if column in columns:
        columns = columns[columns.index(column) :]
    plan = plan_paste(model, block, top=row, columns=columns)
    size = f"{len(cells)} × {len(cells[0])} cells"
    heading = f"Nothing was pasted of {size}"
    if plan.problems:
        return Outcome(heading, tuple(plan.problems))
    problems = model.entries.edits.change(
        f"paste of {size}", plan.changes, added=plan.added
    )
    if problems:
        return Outcome(heading, tuple(_in_block(plan, problems)))
    over = f" {' and '.join(plan.passed_over)} not taken: it follows from the others."
    rows = f", {len(plan.added)} of the rows new" if plan.added else ""
    said = f"Pasted {size}{rows}.{over if plan.passed_over else ''}"
    return Outcome(remark=said, added=len(plan.added))


def _in_block(plan: Paste, problems: tuple[Problem, ...]) -> Iterator[Problem]:
    """Give problems of records their row in the pasted block."""
    for problem in problems:
        if problem.source == "added" and problem.row is not None:
            yield problem.at(source=SOURCE, row=plan.added_rows[problem.row])
        elif problem.row is not None and problem.row - 1 in plan.block_rows:
            yield problem.at(source=SOURCE, row=plan.block_rows[problem.row - 1])
        else:
            yield problem


def _fill(view: Selected, text: str, decimal: str) -> Outcome:
    """Write one text into every selected cell."""
    model = view.table
    values: dict[int, dict[str, Any]] = {}
    parsed: dict[int, Any] = {}
    try:
        for row, place in _cells(view):
            column = model.columns[place]
            if place not in parsed:
                parsed[place] = model.entries.parsed(column, text, decimal=decimal)
            values.setdefault(int(model.order[row]), {})[column.key] = parsed[place]
    except DataError as error:
        return Outcome(f"Not pasted: {text}", error.problems)
    return _changed(view, values, "paste into")


def _cells(view: Selected) -> Iterator[tuple[int, int]]:
    visible = view.visible_columns()
    for one in view.selected_ranges():
        for row in range(one.top, one.bottom + 1):
            for place in visible:
                if one.left <= place <= one.right:
                    yield row, place


def fill_down(view: Selected) -> Outcome:
    """Copy the top cell of every selected column to the selected cells below it."""
    model = view.table
    values: dict[int, dict[str, Any]] = {}
    tops: dict[int, Any] = {}
    for row, place in sorted(_cells(view)):
        column = model.columns[place]
        if column.field is None:
            continue
        record = int(model.order[row])
        if place not in tops:
            tops[place] = _stored(model, record, place)
        else:
            values.setdefault(record, {})[column.key] = tops[place]
    return _changed(view, values, "fill down")


def _stored(model: RecordTableModel, record: int, place: int) -> Any:
    """Give the value of a cell as an attribute, None for an unknown number."""
    column = model.columns[place]
    value = model.records.stored(column.key, record)
    if column.kind is Kind.CHOICE and column.field is not None:
        return next(choice for choice in column.field.choices if choice == value)
    if not column.is_numeric:
        return value
    if math.isnan(value):
        return None
    return int(value) if column.kind is Kind.COUNT else value


def clear(view: Selected) -> Outcome:
    """Empty the selected cells; refused where one has to be filled."""
    model = view.table
    values: dict[int, dict[str, Any]] = {}
    empty: dict[int, Any] = {}
    try:
        for row, place in _cells(view):
            column = model.columns[place]
            if column.field is None:
                continue
            if place not in empty:
                empty[place] = model.entries.parsed(column, "")
            values.setdefault(int(model.order[row]), {})[column.key] = empty[place]
    except DataError as error:
        return Outcome("Not cleared", error.problems)
    return _changed(view, values, "clear")


def _changed(view: Selected, values: dict[int, dict[str, Any]], verb: str) -> Outcome:
    model = view.table
    if not values:
        return _NOTHING
    keys = dict.fromkeys(key for cells in values.values() for key in cells)
    titles = [column.title for column in model.columns if column.key in keys]
    what = " and ".join(titles) if len(titles) <= 2 else f"{len(titles)} columns"
    rows = list(values)
    where = model.name(rows[0]) if len(rows) == 1 else f"{len(rows)} rows"
    label = f"{verb} {what} of {where}"
    problems = model.entries.edits.change(label, list(values.items()))
    return Outcome(f"Not changed: {label}", problems)
