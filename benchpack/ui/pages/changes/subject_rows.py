"""What of the subject changes can act on: parts by subsystem with their joints."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.words import KnownBy, Subsystem
from benchpack.results.ledger_record import Item, ItemKind, Ledger
from benchpack.results.ledger_today import Today, folded
from benchpack.results.wording import listed

_NO_REASON = "no reason is recorded"
_ASSUMED = "its mass is only assumed to close the balance"


class RowKind(StrEnum):
    """What a row of the tree is."""

    GROUP = "subsystem"
    PART = "part"
    JOINT = "joint"


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the tree.

    Parameters
    ----------
    kind : RowKind
        What it is.
    name : str
        Name of the subsystem, part or joint.
    mass_kg : float
        Mass of all its pieces, NaN where it is not known; of a subsystem the sum.
    words : str
        What it is made of, or what it holds.
    locked : str
        Why it has to stay, empty where it need not.
    taken : tuple of str
        What changes have done to it, as short sentences.
    rows : tuple of Row
        The rows below it.
    """

    kind: RowKind
    name: str
    mass_kg: float = math.nan
    words: str = ""
    locked: str = ""
    taken: tuple[str, ...] = ()
    rows: tuple[Row, ...] = ()

    @property
    def fate(self) -> str:
        """Why it stays, or what became of it, in one line; empty for most."""
        if self.locked:
            return f"stays: {self.locked}"
        return ", ".join(self.taken)


def subject_rows(today: Today, ledger: Ledger) -> tuple[Row, ...]:
    """Give the subsystems of a pack with their parts, and the joints at each part.

    A joint stands below each of the parts that it joins; what joins no recorded part
    stands below its subsystem.

    Parameters
    ----------
    today : Today
        The subject before any change.
    ledger : Ledger
        What the changes take.
    """
    taken = _taken(ledger)
    at_part: set[str] = set()
    groups = []
    for subsystem in Subsystem:
        rows = []
        for key, item in today.parts.items():
            part = item.record
            if not isinstance(part, Part) or part.subsystem != subsystem:
                continue
            held = today.at.get(key, ())
            at_part.update(held)
            joints = (today.joints[one] for one in held)
            below = tuple(_joint_row(one, taken, at=key) for one in joints)
            rows.append(_part_row(item, part, taken, below))
        groups.append((subsystem, rows))
    found = []
    for subsystem, rows in groups:
        alone = [
            _joint_row(item, taken, at="")
            for key, item in today.joints.items()
            if key not in at_part
            and isinstance(item.record, Joint)
            and item.record.subsystem == subsystem
        ]
        if rows or alone:
            every = (*rows, *alone)
            found.append(
                Row(RowKind.GROUP, str(subsystem), _sum(every), rows=tuple(every))
            )
    return tuple(found)


_Taken = Mapping[tuple[ItemKind, str], tuple[str, ...]]


def _taken(ledger: Ledger) -> _Taken:
    found: dict[tuple[ItemKind, str], list[str]] = {}
    for entry in ledger.entries:
        key = (entry.item_kind, folded(entry.item))
        gone = entry.pieces_after == 0 and entry.pieces_before > 0
        verb = "taken" if gone else "changed"
        found.setdefault(key, []).append(f"{verb} by {entry.change}")
    return {key: tuple(dict.fromkeys(said)) for key, said in found.items()}


def _part_row(item: Item, part: Part, taken: _Taken, below: tuple[Row, ...]) -> Row:
    pieces = f"{part.count} pieces" if part.count > 1 else ""
    locked = ""
    if part.carry_over:
        locked = part.reason or _NO_REASON
    elif part.known_by is KnownBy.ASSUMED:
        locked = _ASSUMED
    return Row(
        RowKind.PART,
        part.name,
        item.mass_kg.likely if item.is_known else math.nan,
        ", ".join(filter(None, (pieces, part.material, part.process))),
        locked,
        taken.get((ItemKind.PART, folded(part.name)), ()),
        below,
    )


def _joint_row(item: Item, taken: _Taken, *, at: str) -> Row:
    joint = item.record
    if not isinstance(joint, Joint):
        return Row(RowKind.JOINT, item.name)
    ends = [end for end in (joint.joins, joint.to) if end and folded(end) != at]
    what = " ".join(filter(None, (joint.family, joint.designation)))
    pieces = f"{joint.count} × {what}" if joint.count > 1 else what
    other = f"to {listed(tuple(ends))}" if ends else ""
    return Row(
        RowKind.JOINT,
        joint.name,
        item.mass_kg.likely if item.is_known else math.nan,
        ", ".join(filter(None, (pieces, other))),
        (joint.reason or _NO_REASON) if joint.carry_over else "",
        taken.get((ItemKind.JOINT, folded(joint.name)), ()),
    )


def _sum(rows: Iterable[Row]) -> float:
    """Give the known mass of parts and of joints that stand alone."""
    return math.fsum(row.mass_kg for row in rows if not math.isnan(row.mass_kg))


def shape_of(rows: tuple[Row, ...]) -> tuple[object, ...]:
    """Give what tells two trees apart: kinds and names, level by level."""
    return tuple((row.kind, row.name, shape_of(row.rows)) for row in rows)
