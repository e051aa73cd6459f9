"""Rows as parts, joints, materials, sources and studies, judged by the records."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any, TypeVar

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.record_reading import Pace, Rows
from benchpack.model.fields import Kind
from benchpack.model.part import record_problems

RecordT = TypeVar("RecordT")


def check_owners(rows: Rows, packs: Collection[str]) -> None:
    """Refuse records of packs that are not there."""
    known = frozenset(packs)
    for at, pack in enumerate(rows.values["pack"].tolist()):
        if pack.strip() and pack not in known:
            what = f"There is no pack called {pack!r}."
            rows.add(at, "pack", Problem(what, "Add the pack first, or correct this."))


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
    values = {field.name: value for field, value in rows.attributes(at)}
    if rows.refused[at]:
        rows.add_all(at, _field_problems(rows, at))
        return None
    for field, value in rows.attributes(at):
        if field.kind is Kind.COUNT and value == int(value):
            values[field.name] = int(value)
        elif field.is_numeric:
            values[field.name] = float(value)
    try:
        record = kind(**values)
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
