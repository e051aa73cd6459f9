"""Rows of a sheet as checked attribute values, each row accepted or refused."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.cells import Reader, cell_text
from benchpack.files.mapping import Mapping
from benchpack.files.pace import Cancelled, Pace, Progress
from benchpack.files.sheet import Cells, Column, Sheet
from benchpack.model.fields import Field
from benchpack.units.number_text import decimal_marks

__all__ = ["Cancelled", "Pace", "Progress", "Rows", "read_rows"]


@dataclass(eq=False)
class Rows:
    """The records of a sheet while they are checked.

    Parameters
    ----------
    sheet, mapping : Sheet, Mapping
        Where they come from and what the columns mean.
    fields : sequence of Field
        The attributes.
    cells : Cells
        As read.
    values : dict of str to array, shape (n,)
        Columns by attribute; those that the sheet lacks are missing.
    """

    sheet: Sheet
    mapping: Mapping
    fields: Sequence[Field]
    cells: Cells
    values: dict[str, Column] = field(default_factory=dict)
    _found: list[tuple[int, str, Problem]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.refused: NDArray[np.bool_] = np.zeros(len(self), dtype=bool)

    def __len__(self) -> int:
        return len(self.cells.rows)

    def add(self, at: int, name: str, problem: Problem) -> None:
        """Note what is wrong with an attribute of one record.

        Parameters
        ----------
        at : int
            The record, from 0.
        name : str
            Attribute name; empty where it is the row as a whole.
        problem : Problem
            What is wrong; an error refuses the record.
        """
        self._found.append((at, name, problem))
        if problem.severity is Severity.ERROR:
            self.refused[at] = True

    def add_all(self, at: int, problems: Sequence[Problem]) -> None:
        """Note what a record itself finds wrong, by the heads it names."""
        for problem in problems:
            self.add(at, self._attribute(problem.column), problem)

    def noted(self, name: str) -> frozenset[int]:
        """Give the records in which something is wrong with an attribute."""
        return frozenset(at for at, column, _ in self._found if column == name)

    def row(self, at: int) -> int:
        """Give the row of the file a record stands in."""
        return int(self.cells.rows[at])

    def attributes(self, at: int) -> Iterator[tuple[Field, Any]]:
        """Give the attributes of a record that are filled in."""
        for column in self.fields:
            if column.name in self.values:
                value = self.values[column.name][at]
                if not (value is None or value != value):
                    yield column, value

    def problems(self) -> tuple[Problem, ...]:
        """Give everything noted, in the order of the file, with row and column."""
        rows = {self.row(at) for at, _, _ in self._found}
        texts = self.sheet.body.texts(rows) if rows else {}
        placed = [
            self._placed(at, name, problem, texts.get(self.row(at), []))
            for at, name, problem in sorted(self._found, key=lambda found: found[0])
        ]
        return tuple(placed)

    def _placed(
        self, at: int, name: str, problem: Problem, texts: Sequence[str]
    ) -> Problem:
        column = self.mapping.column_of(name)
        value, head = problem.value, problem.column
        if column is not None:
            head = self.sheet.header[column]
            value = texts[column] if column < len(texts) else ""
        named = self.mapping.column_of("name")
        record = problem.record
        if named is not None:
            record = cell_text(self.cells.columns[named][at])
        return Problem(
            problem.what,
            problem.remedy,
            source=self.sheet.source,
            row=self.row(at),
            column=head,
            value=value,
            record=record,
            severity=problem.severity,
        )

    def _attribute(self, head: str) -> str:
        for column in self.fields:
            if head in (column.title, column.header(), column.name):
                return column.name
        return ""


def read_rows(
    sheet: Sheet,
    mapping: Mapping,
    fields: Sequence[Field],
    *,
    reader: Reader,
    pace: Pace,
    pack: str = "",
) -> Rows:
    """Read every mapped column; unreadable cells refuse their rows.

    Parameters
    ----------
    sheet, mapping : Sheet, Mapping
        The table and what its columns mean.
    fields : sequence of Field
        The attributes of the record.
    reader : Reader
        How cells are understood.
    pace : Pace
        Progress and stopping.
    pack : str
        The pack of all records, where no column names it.

    Raises
    ------
    DataError
        When the table lacks a column that every record needs.
    CancelledError
        When the person stopped the work.
    """
    is_given = bool(pack) and mapping.column_of("pack") is None
    needed = [f for f in fields if not (is_given and f.name == "pack")]
    _check_heads(sheet, mapping, needed)
    pace.step(0, 0, f"Loading {sheet.source}")
    by_name = {column.name: column for column in fields}
    numeric = [
        i
        for i, name in enumerate(mapping.fields)
        if name is not None and by_name[name].is_numeric
    ]
    # With a comma as decimal mark a point may mark thousands: keep such text.
    cells = sheet.body.load(() if reader.decimal == "," else numeric)
    cells, reader = _settled(sheet, cells, numeric, reader)
    rows = Rows(sheet, mapping, fields, cells)
    total = len(mapping.fields)
    for i, name in enumerate(mapping.fields):
        pace.step(len(rows) * i // total, len(rows), f"Reading {sheet.header[i]}")
        if name is None:
            continue
        read = reader.values(by_name[name], cells.columns[i], unit=mapping.units[i])
        rows.values[name] = read.column
        for at, problem in read.bad.items():
            rows.add(at, name, problem)
    if is_given:
        rows.values["pack"] = np.full(len(rows), pack, dtype=object)
    _check_lengths(rows, reader)
    _check_required(rows)
    _keep_in_note(rows)
    return rows


def _settled(
    sheet: Sheet, cells: Cells, numeric: Sequence[int], reader: Reader
) -> tuple[Cells, Reader]:
    """Give the reader the decimal mark that all columns with one agree on.

    ``1.089`` is a thousand in a file that writes ``82,5``: where some cell holds a
    comma, all columns are taken as text and asked.
    """
    texts = [c for c in (cells.columns[i] for i in numeric) if c.dtype == object]
    has_comma = any(isinstance(c, str) and "," in c for t in texts for c in t.tolist())
    if reader.decimal is not None or not has_comma:
        return cells, reader
    cells = sheet.body.load(())
    marks: set[str] = set()
    for i in numeric:
        column = cells.columns[i]
        if column.dtype == object:
            marks |= decimal_marks(c for c in column.tolist() if isinstance(c, str))
    hint = marks.pop() if len(marks) == 1 else None
    return cells, replace(reader, hint=hint)


def _check_heads(sheet: Sheet, mapping: Mapping, fields: Sequence[Field]) -> None:
    missing = [
        column.header()
        for column in fields
        if column.required and mapping.column_of(column.name) is None
    ]
    if missing:
        heads = ", ".join(head or "(empty)" for head in sheet.header[:12])
        raise DataError(
            Problem(
                f"The table has no column for {', '.join(missing)}.",
                f"Its heads are: {heads}. Name the columns so, or assign them.",
                source=sheet.source,
                row=sheet.header_row,
            )
        )


def _check_lengths(rows: Rows, reader: Reader) -> None:
    width = len(rows.sheet.header)
    remedy = "Put text that contains the delimiter in quotation marks."
    if not rows.sheet.delimiter:
        remedy = "Give each column a head, or clear the cells beside the table."
    for at, length in rows.cells.overlong.items():
        rows.add(
            at,
            "",
            Problem(
                f"The row has {length} cells, the heads are {width}.",
                remedy,
            ),
        )
    # What a program wrote is whole, whatever its texts hold.
    for at, lines in () if reader.verbatim else rows.cells.swallowed.items():
        what = f"The row runs over {lines} lines that look like rows of their own."
        remedy = "Close the quotation mark that is left open here, or double it."
        rows.add(at, "", Problem(what, remedy))


def _check_required(rows: Rows) -> None:
    for column in rows.fields:
        if not column.required:
            continue
        values = rows.values[column.name]
        if column.is_numeric:
            empty = np.isnan(values)
        else:
            texts = values.tolist()
            if all(map(str.strip, texts)):
                continue
            empty = np.array([not text.strip() for text in texts], dtype=bool)
        noted = rows.noted(column.name)
        for at in np.flatnonzero(empty).tolist():
            if at not in noted:
                rows.add(
                    at, column.name, Problem(f"{column.title} is empty.", "Fill it in.")
                )


def _keep_in_note(rows: Rows) -> None:
    """Append what has no column of its own to the note, head by head."""
    if not any(column.name == "note" for column in rows.fields):
        return
    kept: list[list[str]] = []
    for i, name in enumerate(rows.mapping.fields):
        if name is not None:
            continue
        head = rows.sheet.header[i].strip() or f"column {i + 1}"
        texts = [cell_text(cell).strip() for cell in rows.cells.columns[i].tolist()]
        if any(texts):
            kept.append([f"{head}: {text}" if text else "" for text in texts])
    if not kept:
        return
    note = rows.values.get("note")
    before = [""] * len(rows) if note is None else note.tolist()
    column = np.empty(len(rows), dtype=object)
    column[:] = [
        "; ".join(filter(None, texts)) for texts in zip(before, *kept, strict=True)
    ]
    rows.values["note"] = column
