"""The first rows of a table as they will be recorded, refused cells marked. No Qt."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from benchpack.errors import Problem, Severity
from benchpack.files.sheet import Cells, Sheet
from benchpack.model.entry import value_text
from benchpack.model.fields import Field
from benchpack.ui.dialogs.import_plan import Plan, read_plan
from benchpack.units.formatting import NumberStyle, format_number

SAMPLE_ROWS = 2_000
"""How many rows are read before the whole file is."""

SHOWN_ROWS = 50
"""How many of them are shown."""


class SampleBody:
    """The first records of a table, numbered from 0 instead of by file row."""

    def __init__(self, records: list[list[str]], width: int) -> None:
        self._records = records
        self._width = width

    def load(self, numeric: Collection[int]) -> Cells:
        """Give all records as text; see `benchpack.files.sheet.Body`."""
        del numeric
        columns = []
        for i in range(self._width):
            column = np.empty(len(self._records), dtype=object)
            column[:] = [row[i] if i < len(row) else "" for row in self._records]
            columns.append(column)
        overlong = {
            at: len(row)
            for at, row in enumerate(self._records)
            if any(cell.strip() for cell in row[self._width :])
        }
        return Cells(tuple(columns), np.arange(len(self._records)), overlong)

    def texts(self, rows: Collection[int]) -> Mapping[int, list[str]]:
        """Give some records as written."""
        return {row: self._records[row] for row in rows}

    def head(self, count: int) -> list[list[str]]:
        """Give the first records as text."""
        return self._records[:count]


@dataclass(frozen=True, eq=False, slots=True)
class Sample:
    """The first records of a table.

    Parameters
    ----------
    sheet : Sheet
        A sheet that holds only them, its rows numbered from 0.
    is_whole : bool
        True when the table has no others.
    """

    sheet: Sheet
    is_whole: bool


def sample_of(sheet: Sheet, count: int = SAMPLE_ROWS) -> Sample:
    """Take the first records of a table.

    Parameters
    ----------
    sheet : Sheet
        The table.
    count : int
        How many.
    """
    records = sheet.head(count + 1)
    body = SampleBody(records[:count], len(sheet.header))
    taken = Sheet(
        source=sheet.source,
        header=sheet.header,
        header_row=sheet.header_row,
        body=body,
        encoding=sheet.encoding,
        delimiter=sheet.delimiter,
        name=sheet.name,
        sheet_names=sheet.sheet_names,
    )
    return Sample(taken, is_whole=len(records) <= count)


@dataclass(frozen=True, slots=True)
class PreviewRow:
    """One row as it will be recorded, or as it stands where it is refused.

    Parameters
    ----------
    cells : tuple of str
        Texts under the preview's heads.
    marks : mapping of int to Problem
        What is wrong or unusual, by cell; -1 for the row as a whole.
    is_refused : bool
        True when it will not be recorded.
    replaces : bool
        True when it takes the place of a part or joint of its name.
    """

    cells: tuple[str, ...]
    marks: Mapping[int, Problem] = field(default_factory=dict)
    is_refused: bool = False
    replaces: bool = False


@dataclass(frozen=True, slots=True)
class Preview:
    """The first rows of a table and how many of the sample are refused.

    Parameters
    ----------
    fields : tuple of Field
        What stands in each column.
    rows : tuple of PreviewRow
        The rows shown.
    rows_read, refused : int
        Rows of the sample, and those of them that will be refused.
    is_whole : bool
        True when the sample is the whole table.
    replaced : int
        Rows of the sample that take the place of a record of the same name.
    """

    fields: tuple[Field, ...]
    rows: tuple[PreviewRow, ...]
    rows_read: int
    refused: int
    is_whole: bool
    replaced: int = 0


def preview_of(
    sample: Sample,
    plan: Plan,
    *,
    packs: Collection[str],
    held: Collection[tuple[str, str]] = (),
    currency: str | None,
    style: NumberStyle,
) -> Preview:
    """Read a sample as planned and lay out its first rows.

    Parameters
    ----------
    sample : Sample
        The first records.
    plan : Plan
        How they are read.
    packs, held, currency
        As for `read_plan`.
    style : NumberStyle
        How numbers are shown.

    Raises
    ------
    DataError
        When the table lacks a column that is needed.
    """
    taken = read_plan(sample.sheet, plan, packs=packs, held=held, currency=currency)
    fields = _shown_fields(plan)
    marks = _marks(sample.sheet, plan, taken.problems, fields)
    records = iter(taken.records)
    rows = []
    for at, written in enumerate(sample.sheet.head(SHOWN_ROWS)):
        found = marks.get(at, {})
        refused = any(p.severity is Severity.ERROR for p in found.values())
        if refused:
            cells = _as_written(written, plan, fields)
            rows.append(PreviewRow(cells, found, is_refused=True))
            continue
        record = next(records)
        cells = tuple(_shown(f, getattr(record, f.name), style) for f in fields)
        replaces = bool(held) and (record.pack, record.name) in held
        rows.append(PreviewRow(cells, found, replaces=replaces))
    return Preview(
        fields,
        tuple(rows),
        taken.rows_read,
        taken.refused,
        sample.is_whole,
        taken.replaced,
    )


def _shown_fields(plan: Plan) -> tuple[Field, ...]:
    """Give the attributes that columns mean, in file order, the note at the end."""
    by_name = {f.name: f for f in plan.fields}
    names = ["pack"] if plan.is_of_one_pack else []
    names += [name for name in plan.mapping.fields if name is not None]
    if None in plan.mapping.fields and "note" not in names:
        names.append("note")
    return tuple(by_name[name] for name in names if name in by_name)


def _marks(
    sheet: Sheet, plan: Plan, problems: tuple[Problem, ...], fields: tuple[Field, ...]
) -> dict[int, dict[int, Problem]]:
    """Give the problems of the rows shown, by row and column of the preview."""
    places = {f.name: i for i, f in enumerate(fields)}
    by_head = {
        head: places[name]
        for head, name in zip(sheet.header, plan.mapping.fields, strict=True)
        if name in places
    }
    marks: dict[int, dict[int, Problem]] = {}
    for problem in problems:
        if problem.row is None or problem.row >= SHOWN_ROWS:
            continue
        found = marks.setdefault(problem.row, {})
        place = by_head.get(problem.column, -1)
        known = found.get(place)
        if known is None or known.severity is Severity.WARNING:
            found[place] = problem
    return marks


def _as_written(
    written: list[str], plan: Plan, fields: tuple[Field, ...]
) -> tuple[str, ...]:
    cells = []
    for shown in fields:
        if shown.name == "pack" and plan.is_of_one_pack:
            cells.append(plan.pack)
            continue
        column = plan.mapping.column_of(shown.name)
        known = column is not None and column < len(written)
        cells.append(written[column].strip() if known and column is not None else "")
    return tuple(cells)


def _shown(shown: Field, value: Any, style: NumberStyle) -> str:
    if value is None or not shown.is_numeric:
        return value_text(shown, value)
    grouped = shown.name != "year"
    return format_number(value, shown.decimals, style=style, grouped=grouped)
