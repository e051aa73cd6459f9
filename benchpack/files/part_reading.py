"""Rows as records of every kind but packs, judged by the records themselves."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any, TypeVar

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.head_words import TOTALS
from benchpack.files.record_reading import Pace, Rows
from benchpack.model.fields import Kind
from benchpack.model.part import record_problems
from benchpack.model.range_columns import with_ranges

RecordT = TypeVar("RecordT")


def check_owners(rows: Rows, names: Collection[str], *, kind: str = "pack") -> None:
    """Refuse records of packs, or of another kind of owner, that are not there."""
    known = frozenset(names)
    for at, name in enumerate(rows.values[kind].tolist()):
        if name.strip() and name not in known:
            what = f"There is no {kind} called {name!r}."
            remedy = f"Add the {kind} first, or correct this."
            rows.add(at, kind, Problem(what, remedy))


def check_totals(rows: Rows) -> None:
    """Refuse lines of totals, which a hand-made table may have at its end."""
    for at, name in enumerate(rows.values["name"].tolist()):
        if name.casefold().rstrip(":") in TOTALS:
            what = f"{name!r} looks like a line of totals."
            rows.add(at, "name", Problem(what, "Delete the row, or rename it."))


def made_records(
    rows: Rows,
    kind: type[RecordT],
    pace: Pace,
    *,
    unique: Sequence[str] = ("pack", "name"),
) -> tuple[RecordT, ...]:
    """Make the records that nothing speaks against, noting what does.

    Parameters
    ----------
    rows : Rows
        The rows, with what is already known against them.
    kind : type
        The record.
    pace : Pace
        Progress and stopping.
    unique : sequence of str
        The attributes that no two records share.
    """
    made: dict[int, RecordT] = {}
    first: dict[tuple[str, ...], int] = {}
    for at in range(len(rows)):
        if at % 4096 == 0:
            pace.step(at, len(rows), "Checking rows")
        record = _made(rows, at, kind)
        if record is None:
            continue
        key = tuple(getattr(record, name) for name in unique)
        if key in first:
            what = f"{key[-1]!r} is already in row {rows.row(first[key])}."
            rows.add(at, "name", Problem(what, "Give one of the two another name."))
            continue
        first[key] = at
        made[at] = record
    return tuple(made.values())


def _made(rows: Rows, at: int, kind: type[RecordT]) -> RecordT | None:
    held = list(rows.attributes(at))
    values = {field.name: value for field, value in held}
    if rows.refused[at]:
        rows.add_all(at, _field_problems(rows, at))
        return None
    for field, value in held:
        if field.kind is Kind.COUNT and value == int(value):
            values[field.name] = int(value)
        elif field.is_numeric:
            values[field.name] = float(value)
    try:
        record = kind(**with_ranges(rows.fields, values))
    except DataError as error:
        rows.add_all(at, error.problems)
        return None
    found = record_problems(record, tuple(rows.fields))
    rows.add_all(at, [p for p in found if p.severity is Severity.WARNING])
    return record


def _field_problems(rows: Rows, at: int) -> list[Problem]:
    found: list[Any] = [
        field.refusal(value) or field.doubt(value)
        for field, value in rows.attributes(at)
        if field.is_numeric
    ]
    return [problem for problem in found if problem]
