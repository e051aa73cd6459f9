"""Which record a name means, and on which page it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import Enum, auto
from typing import Protocol

from benchpack.model.fields import Field
from benchpack.model.joint import JOINT_FIELDS
from benchpack.model.library import Library
from benchpack.model.part import PART_FIELDS


class RecordKind(Enum):
    """What sort of record a name is that of."""

    NONE = auto()
    PACK = auto()
    PART = auto()
    JOINT = auto()
    CHANGE = auto()


JOINTS_COLUMN = "joints"
"""What a problem of a pack names as its column when it is about the joints."""
_PAGES = {
    RecordKind.PACK: "Packs",
    RecordKind.PART: "Packs",
    RecordKind.JOINT: "Joints",
    RecordKind.CHANGE: "Changes",
}


class _Named(Protocol):
    @property
    def name(self) -> str: ...


def column_key(said: str, fields: Sequence[Field]) -> str:
    """Give the attribute of a column that a problem names by head, title or key.

    Parameters
    ----------
    said : str
        ``mass each [g]``, ``mass each`` or ``mass_each_g``.
    fields : sequence of Field
        The fields of the record.

    Returns
    -------
    str
        Empty when no field is meant.
    """
    wanted = said.partition(" [")[0].casefold()
    return next(
        (field.name for field in fields if wanted in (field.title, field.name)), ""
    )


def found_record(
    library: Library, record: str, *, column: str, first: str
) -> tuple[RecordKind, str]:
    """Find the record of a name.

    Parameters
    ----------
    library : Library
        The records.
    record : str
        The name. Where a part and a joint have it both, the part is meant, unless
        only a joint has the column.
    column : str
        Column of the record, empty for none.
    first : str
        The pack that is looked into first.

    Returns
    -------
    tuple
        What it is, and the pack that holds it, of a change its study; `NONE` and empty
        where there is none.
    """
    if library.packs.has(record):
        return RecordKind.PACK, record
    part = _holder(library.parts, record, first)
    joint = _holder(library.joints, record, first)
    of_joint = bool(column_key(column, JOINT_FIELDS))
    of_part = bool(column_key(column, PART_FIELDS))
    if joint and (not part or (of_joint and not of_part)):
        return RecordKind.JOINT, joint
    if part:
        return RecordKind.PART, part
    study = _holder(library.changes, record, "")
    return (RecordKind.CHANGE, study) if study else (RecordKind.NONE, "")


def _holder(groups: Mapping[str, tuple[_Named, ...]], record: str, first: str) -> str:
    """Give the pack or study that holds a record of a name; empty when none does."""
    for pack in dict.fromkeys((first, *groups)):
        if any(one.name == record for one in groups.get(pack, ())):
            return pack
    return ""


def page_of(library: Library, record: str, *, column: str, first: str) -> str:
    """Give the title of the page that holds a record, see `found_record`."""
    kind, _ = found_record(library, record, column=column, first=first)
    if kind is RecordKind.PACK and column == JOINTS_COLUMN:
        kind = RecordKind.JOINT
    return _PAGES.get(kind, "")
