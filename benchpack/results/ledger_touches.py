"""What each change touches, read from its parts, joints and materials."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.model.change import ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.touches import Touch
from benchpack.model.words import Subsystem
from benchpack.results.ledger_record import Applied, Item
from benchpack.results.ledger_resizing import is_metal, is_polymer
from benchpack.results.ledger_today import Today, folded
from benchpack.results.ledger_turned import Turned, is_floor, is_screw

_UNLIKE = 1.3
"""Metals whose densities differ by this factor are not of one kind."""

_OF_SUBSYSTEM = {
    Subsystem.TRAY: Touch.STRUCTURE,
    Subsystem.FRAME: Touch.STRUCTURE,
    Subsystem.LID: Touch.LID,
    Subsystem.SEALS: Touch.SEAL,
    Subsystem.COOLING: Touch.COOLING,
    Subsystem.CONDUCTORS: Touch.CONDUCTORS,
    Subsystem.ELECTRONICS: Touch.CONDUCTORS,
    Subsystem.CELLS: Touch.MODULES,
    Subsystem.MODULES: Touch.MODULES,
}


def touches_of(
    applied: Applied, today: Today, sealing: frozenset[str], turned: tuple[Turned, ...]
) -> frozenset[Touch]:
    """Give what a change touches.

    Parameters
    ----------
    applied : Applied
        The change.
    today : Today
        The subject before any change, with the materials.
    sealing : frozenset of str
        Folded names of joints that seal, today's and new ones.
    turned : tuple of Turned
        The parts that it turns from metal to polymer.
    """
    change = applied.change
    if change.kind is ChangeKind.ADJUST and change.mass_kg is None:
        return frozenset()
    found: set[Touch] = set()
    for item in (*applied.before, *applied.after):
        if isinstance(item.record, Part):
            found |= set(_of_part(item.record))
        else:
            found |= set(_of_joint(item, sealing))
    for one in turned:
        found |= one.touches
    found |= set(_of_materials(applied, today))
    return frozenset(found)


def _of_part(part: Part) -> Iterator[Touch]:
    if part.subsystem in _OF_SUBSYSTEM:
        yield _OF_SUBSYSTEM[part.subsystem]
    name = folded(part.name)
    if is_floor(part):
        yield Touch.FLOOR
    if "barrier" in name:
        yield Touch.BARRIER
    if "bonding" in name:
        yield Touch.BONDING


def _of_joint(item: Item, sealing: frozenset[str]) -> Iterator[Touch]:
    joint, facts = item.record, item.facts
    if not isinstance(joint, Joint):
        return
    role, name = folded(joint.role), folded(joint.name)
    if folded(joint.name) in sealing or "seal" in role:
        yield Touch.SEAL
    if is_screw(item):
        yield Touch.SCREWS
    if "carry" in role or "clamp" in role:
        yield Touch.JOINTS
    if "bonding" in name:
        yield Touch.BONDING
    elif "conduct" in role:
        yield Touch.CONDUCTORS
    if facts is not None and joint.subsystem is Subsystem.MODULES:
        yield Touch.MODULES


def _of_materials(applied: Applied, today: Today) -> Iterator[Touch]:
    old = {folded(item.name): item for item in applied.before}
    for item in applied.after:
        if not isinstance(item.record, Part):
            continue
        new = today.material(item.record.material)
        before = old.get(folded(item.name))
        was = before.record if before is not None else None
        same = isinstance(was, Part) and folded(was.material) == folded(
            item.record.material
        )
        if same or new is None:
            continue
        if is_polymer(new):
            yield Touch.NEW_POLYMER
        if _is_unlike(new, _metals_before(applied, today)):
            yield Touch.UNLIKE_METALS


def _metals_before(applied: Applied, today: Today) -> list[Material]:
    found = []
    for item in applied.before:
        if isinstance(item.record, Part):
            material = today.material(item.record.material)
            if material is not None and is_metal(material):
                found.append(material)
    return found


def _is_unlike(new: Material, before: list[Material]) -> bool:
    """Say whether a metal is of another kind than those before, or holds carbon."""
    if "carbon" in folded(new.name) or folded(new.name).startswith("cf"):
        return True
    if not is_metal(new) or not new.density_kg_m3:
        return False
    ratios = [
        new.density_kg_m3 / one.density_kg_m3 for one in before if one.density_kg_m3
    ]
    return not ratios or not all(1 / _UNLIKE < ratio < _UNLIKE for ratio in ratios)
