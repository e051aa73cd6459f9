"""A new change from a kind and what it is to act on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from benchpack.errors import DataError, Problem
from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.results.ledger_record import Item
from benchpack.results.ledger_today import Today, folded
from benchpack.session.change_edits import free_change_name
from benchpack.ui.pages.changes.subject_model import Selection

_BOTH = (ChangeKind.REMOVE, ChangeKind.ADJUST)


def new_change(
    kind: ChangeKind,
    selection: Selection,
    *,
    study: str,
    today: Today,
    changes: Sequence[Change],
) -> Change:
    """Give a change of a kind that acts on a selection, with a name of its own.

    Parameters
    ----------
    kind : ChangeKind
        What it does.
    selection : Selection
        Parts and joints.
    study : str
        Name of the study.
    today : Today
        The subject before any change.
    changes : sequence of Change
        Those that the study has.

    Returns
    -------
    Change
        It may still lack what only a person can say, a material for instance.

    Raises
    ------
    DataError
        When the selection does not suit the kind.
    """
    parts = [today.parts[folded(name)] for name in selection.parts]
    joints = [today.joints[folded(name)] for name in selection.joints]
    draft = Change(study, "change", kind)
    if kind in _BOTH:
        draft = _acting(draft, selection)
        names = (*selection.parts, *selection.joints)
    elif kind is ChangeKind.ADD:
        draft, names = _added(draft, parts), ("a part",)
    elif kind is ChangeKind.SWAP_JOINTS:
        names = selection.joints or _joints_at(today, selection.parts)
        draft = _swapped(draft, names, joints)
    else:
        draft = _of_parts(draft, selection, parts, today)
        names = selection.parts
    wanted = f"{kind} {_what(names)}"
    return replace(draft, name=free_change_name(changes, wanted))


def _what(names: Sequence[str]) -> str:
    if len(names) < 2:
        return "".join(names)
    return f"{names[0]} and {len(names) - 1} more"


def _acting(draft: Change, selection: Selection) -> Change:
    if not selection.parts and not selection.joints:
        raise _lacks("parts or joints")
    return replace(draft, parts=selection.parts, joints=selection.joints)


def _added(draft: Change, parts: Sequence[Item]) -> Change:
    first = parts[0].record if parts else None
    subsystem = first.subsystem if isinstance(first, Part) else Subsystem.OTHER
    return replace(draft, into="new part", subsystem=subsystem)


def _swapped(draft: Change, names: tuple[str, ...], joints: Sequence[Item]) -> Change:
    if not names:
        raise _lacks("joints")
    family = ""
    if joints and isinstance(joints[0].record, Joint):
        family = joints[0].record.family
    return replace(draft, joints=names, into=f"{names[0]} new", family=family)


def _joints_at(today: Today, parts: Sequence[str]) -> tuple[str, ...]:
    """Give the joints at some parts that need not stay."""
    found: dict[str, None] = {}
    for part in parts:
        for key in today.at.get(folded(part), ()):
            joint = today.joints[key].record
            if isinstance(joint, Joint) and not joint.carry_over:
                found[joint.name] = None
    return tuple(found)


def _of_parts(
    draft: Change, selection: Selection, parts: Sequence[Item], today: Today
) -> Change:
    least = 2 if draft.kind is ChangeKind.INTEGRATE else 1
    if len(parts) < least:
        raise _lacks("two parts or more" if least == 2 else "a part")
    if draft.kind is ChangeKind.SUBSTITUTE:
        return replace(draft, parts=selection.parts)
    heaviest = max(parts, key=_mass)
    record = heaviest.record
    if draft.kind is ChangeKind.INTEGRATE:
        material = record.material if isinstance(record, Part) else ""
        into = f"{heaviest.name} in one piece"
        return replace(draft, parts=selection.parts, into=into, material=material)
    return replace(draft, parts=selection.parts, into=_neighbour(selection, today))


def _mass(item: Item) -> float:
    return item.mass_kg.likely


def _neighbour(selection: Selection, today: Today) -> str:
    """Give a part that what is chosen is joined to, or sits in; empty for none."""
    chosen = {folded(name) for name in selection.parts}
    for key in chosen:
        record = today.parts[key].record
        inside = folded(record.inside) if isinstance(record, Part) else ""
        if inside in today.parts and inside not in chosen:
            return today.parts[inside].name
    for key in chosen:
        for one in today.at.get(key, ()):
            joint = today.joints[one].record
            ends = (joint.joins, joint.to) if isinstance(joint, Joint) else ()
            for end in map(folded, ends):
                if end in today.parts and end not in chosen:
                    return today.parts[end].name
    return ""


def _lacks(what: str) -> DataError:
    return DataError(Problem(f"Choose {what} first.", "They are at the left."))
