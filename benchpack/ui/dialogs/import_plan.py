"""What is made of a loose table: the plan, its preview and its reading. No Qt."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass
from typing import Any

from benchpack.errors import Problem
from benchpack.files.pace import Cancelled, Progress
from benchpack.files.table_kinds import JOINTS, PACKS, PARTS, table_kind
from benchpack.files.tables import (
    Mapping,
    RecordsReading,
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

__all__ = [
    "FIELDS",
    "JOINTS",
    "PACKS",
    "PARTS",
    "Plan",
    "TakenIn",
    "read_plan",
    "record_names",
    "suggest_plan",
]

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
    pack : str
        The pack of all parts or joints, where no column names it.
    """

    kind: str
    mapping: Mapping
    decimal: str | None = None
    as_new: bool = False
    replace: bool = False
    pack: str = ""

    @property
    def is_of_one_pack(self) -> bool:
        """True where no column names the pack of parts or joints, and one is given."""
        names_it = self.kind == PACKS or self.mapping.column_of("pack") is not None
        return bool(self.pack) and not names_it

    @property
    def fields(self) -> tuple[Field, ...]:
        """The attributes of what the table holds."""
        return FIELDS[self.kind]

    def missing(self) -> tuple[str, ...]:
        """Give the titles of needed attributes that no column is read as."""
        return tuple(
            field.title
            for field in self.fields
            if field.required
            and self.mapping.column_of(field.name) is None
            and not (field.name == "pack" and self.is_of_one_pack)
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


def suggest_plan(sheet: Sheet, *, pack: str = "") -> Plan:
    """Guess what a table holds and what its columns mean.

    Parameters
    ----------
    sheet : Sheet
        The table.
    pack : str
        The pack that parts or joints belong to where no column names it.

    Returns
    -------
    Plan
        For the kind that the heads tell. Where they do not, for parts or joints whose
        needed columns are all there, else for packs.
    """
    plans = {
        kind: Plan(kind, suggest_mapping(sheet, fields), pack=pack)
        for kind, fields in FIELDS.items()
    }
    told = plans[table_kind(sheet)]
    if told.kind != PACKS or not told.missing():
        return told
    whole = [p for p in plans.values() if not (p.missing() or p.is_of_one_pack)]
    return max(whole, key=_columns_known, default=told)


def record_names(library: Library, kind: str) -> frozenset[tuple[str, str]]:
    """Give pack and name of all parts or joints of a library, none for packs.

    Parameters
    ----------
    library : Library
        The records.
    kind : str
        What is asked for: packs, parts or joints.
    """
    if kind == PARTS:
        return frozenset((p.pack, p.name) for g in library.parts.values() for p in g)
    if kind == JOINTS:
        return frozenset((j.pack, j.name) for g in library.joints.values() for j in g)
    return frozenset()


def _columns_known(plan: Plan) -> int:
    return sum(name is not None for name in plan.mapping.fields)


def read_plan(
    sheet: Sheet,
    plan: Plan,
    *,
    packs: Collection[str],
    held: Collection[tuple[str, str]] = (),
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
    held : collection of (str, str)
        Pack and name of each part, or joint, that it has, see `record_names`.
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
    is_parts = plan.kind == PARTS
    read: Callable[..., RecordsReading[Any]] = read_parts if is_parts else read_joints
    found = read(
        sheet,
        plan.mapping,
        packs=packs,
        pack=plan.pack,
        decimal=plan.decimal,
        currency=currency,
        progress=progress,
        cancelled=cancelled,
    )
    groups = by_pack(found.records)
    library = Library(parts=groups) if is_parts else Library(joints=groups)
    replaced = sum((one.pack, one.name) in held for one in found.records)
    return TakenIn(library, found.problems, found.records, found.rows_read, replaced)
