"""What is made of a loose table: the plan, its preview and its reading. No Qt."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Any

from benchpack.errors import Problem
from benchpack.files.record_reading import Cancelled, Progress
from benchpack.files.tables import (
    Mapping,
    Sheet,
    read_joints,
    read_packs,
    read_parts,
    suggest_mapping,
)
from benchpack.model.fields import Field
from benchpack.model.joint import JOINT_FIELDS
from benchpack.model.library import Library, by_pack
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.part import PART_FIELDS

PACKS, PARTS, JOINTS = "packs", "parts", "joints"

FIELDS: dict[str, tuple[Field, ...]] = {
    PACKS: PACK_FIELDS,
    PARTS: PART_FIELDS,
    JOINTS: JOINT_FIELDS,
}
"""What a table can hold, and the attributes of each."""


@dataclass(frozen=True, slots=True)
class Plan:
    """How a table is to be read.

    Parameters
    ----------
    kind : str
        What it holds: packs, parts or joints.
    mapping : Mapping
        What its columns mean.
    decimal : str or None
        The decimal mark; None to find it column by column.
    as_new : bool
        True to open it as a new library.
    replace : bool
        True to let packs take the place of those of the same name.
    """

    kind: str
    mapping: Mapping
    decimal: str | None = None
    as_new: bool = False
    replace: bool = False

    @property
    def fields(self) -> tuple[Field, ...]:
        """The attributes of what the table holds."""
        return FIELDS[self.kind]

    def missing(self) -> tuple[str, ...]:
        """Give the titles of needed attributes that no column is read as."""
        return tuple(
            field.title
            for field in self.fields
            if field.required and self.mapping.column_of(field.name) is None
        )

    def doubled(self) -> tuple[str, ...]:
        """Give the titles of attributes that several columns are read as."""
        names = self.mapping.fields
        return tuple(f.title for f in self.fields if names.count(f.name) > 1)

    def fault(self) -> str:
        """Say why the columns cannot be read so, empty when they can."""
        if self.missing():
            words = " and as ".join(self.missing())
            return f"No column is read as {words} yet. Choose it under “Reads as”."
        if self.doubled():
            words = " and as ".join(self.doubled())
            return f"Several columns are read as {words}. Keep one of them."
        return ""


@dataclass(frozen=True, slots=True)
class TakenIn:
    """What was read.

    Parameters
    ----------
    library : Library
        The accepted records.
    problems : tuple of Problem
        Errors refused their row, warnings let it pass.
    records : sequence
        The accepted records in the order of the file.
    rows_read, replaced : int
        Rows with anything in them, and records that take the place of another.
    """

    library: Library
    problems: tuple[Problem, ...]
    records: Sequence[Any]
    rows_read: int
    replaced: int = 0

    @property
    def accepted(self) -> int:
        """Number of rows that became records."""
        return len(self.records)

    @property
    def refused(self) -> int:
        """Number of rows that did not become records."""
        return self.rows_read - self.accepted


def suggest_plan(sheet: Sheet) -> Plan:
    """Guess what a table holds and what its columns mean.

    Parameters
    ----------
    sheet : Sheet
        The table.

    Returns
    -------
    Plan
        For the kind whose needed columns are all there and of which most are; packs
        where that is true of none.
    """
    plans = [
        Plan(kind, suggest_mapping(sheet, fields)) for kind, fields in FIELDS.items()
    ]
    whole = [plan for plan in plans if not plan.missing()]
    return max(whole, key=_columns_known, default=plans[0])


def _columns_known(plan: Plan) -> int:
    return sum(name is not None for name in plan.mapping.fields)


def read_plan(
    sheet: Sheet,
    plan: Plan,
    *,
    packs: Collection[str],
    currency: str | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> TakenIn:
    """Read a table as planned.

    Parameters
    ----------
    sheet : Sheet
        The table.
    plan : Plan
        How it is read.
    packs : collection of str
        Names of the packs of the open library.
    currency : str, optional
        The currency that money has to be in.
    progress, cancelled : callable, optional
        Told how far it is, and asked whether to stop.

    Raises
    ------
    DataError
        When the table lacks a column that is needed.
    CancelledError
        When it was stopped.
    """
    if plan.kind == PACKS:
        reading = read_packs(
            sheet,
            plan.mapping,
            existing=() if plan.as_new else packs,
            replace_existing=plan.replace,
            decimal=plan.decimal,
            currency=currency,
            progress=progress,
            cancelled=cancelled,
        )
        library = Library(packs=reading.packs)
        return TakenIn(
            library,
            reading.problems,
            reading.packs,
            reading.rows_read,
            reading.replaced,
        )
    if plan.kind == PARTS:
        parts = read_parts(
            sheet,
            plan.mapping,
            packs=packs,
            decimal=plan.decimal,
            currency=currency,
            progress=progress,
            cancelled=cancelled,
        )
        library = Library(parts=by_pack(parts.records))
        return TakenIn(library, parts.problems, parts.records, parts.rows_read)
    joints = read_joints(
        sheet,
        plan.mapping,
        packs=packs,
        decimal=plan.decimal,
        currency=currency,
        progress=progress,
        cancelled=cancelled,
    )
    library = Library(joints=by_pack(joints.records))
    return TakenIn(library, joints.problems, joints.records, joints.rows_read)
