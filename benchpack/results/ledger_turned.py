"""Parts that a change turns from metal to polymer, and what that touches."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchpack.model.families import FamilySort
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.touches import Touch
from benchpack.model.words import Subsystem
from benchpack.results.ledger_record import Applied, Item, Ledger
from benchpack.results.ledger_resizing import is_metal, is_polymer
from benchpack.results.ledger_today import Today, ends_of, folded

_SHELL_AREA_M2, _SHELL_LENGTH_MM = 0.05, 1000.0
"""From this size on a part of tray or lid is taken to enclose."""
_PLATE_KG = 0.5
"""From this mass on a cooling part of no recorded size is taken to be a plate (working
range, no source)."""
_METAL_ONLY = (FamilySort.WELD, FamilySort.FORMED)


@dataclass(frozen=True, slots=True, eq=False)
class Turned:
    """A part that was metal and is polymer at the end.

    Parameters
    ----------
    part : Part
        The part as it was.
    touches : frozenset of Touch
        What that touches.
    screws : tuple of Item
        Screws that are left through it.
    welds : tuple of Item
        Welds and formed points that are left at it, which polymer does not take.
    """

    part: Part
    touches: frozenset[Touch]
    screws: tuple[Item, ...]
    welds: tuple[Item, ...] = ()


def is_floor(part: Part) -> bool:
    """Say whether a part is the floor of the pack, by its name and place."""
    name = folded(part.name)
    shields = "shield" in name or "skid" in name
    return part.subsystem is Subsystem.TRAY and ("floor" in name or shields)


def is_screw(item: Item) -> bool:
    """Say whether a joint is a screw or stud."""
    return _sort(item) is FamilySort.SCREW


def _sort(item: Item) -> FamilySort | None:
    family = None if item.facts is None else item.facts.family
    return None if family is None else family.sort


class Turning:
    """Finds the parts that changes turn from metal to polymer.

    Parameters
    ----------
    ledger : Ledger
        What remains after all changes.
    today : Today
        The subject before any change, with the materials.
    sealing : frozenset of str
        Folded names of joints that seal, today's and new ones.
    """

    def __init__(self, ledger: Ledger, today: Today, sealing: frozenset[str]) -> None:
        self._ledger, self._today, self._sealing = ledger, today, sealing
        self._new = [item for item in ledger.joints.values() if item.made_by]

    def turned_by(self, applied: Applied) -> tuple[Turned, ...]:
        """Give the parts that one change turns, and that stay so.

        Parameters
        ----------
        applied : Applied
            The change.
        """
        becomes = {folded(item.name): item for item in applied.after}
        into = becomes.get(folded(applied.change.into))
        found = []
        for item in applied.before:
            part = item.record
            if not isinstance(part, Part) or not self._is_metal(part):
                continue
            final = self._ledger.final_part(part.name)
            next_one = becomes.get(folded(part.name), into)
            if self._is_polymer(next_one) and self._is_polymer(final):
                at = self._joints_at(part, final)
                screws = tuple(joint for joint in at if is_screw(joint))
                welds = tuple(joint for joint in at if _sort(joint) in _METAL_ONLY)
                touches = frozenset(self._touches(part, at, screws))
                found.append(Turned(part, touches, screws, welds))
        return tuple(found)

    def _is_metal(self, part: Part) -> bool:
        return is_metal(self._today.material(part.material))

    def _is_polymer(self, item: Item | None) -> bool:
        if item is None or not isinstance(item.record, Part):
            return False
        return is_polymer(self._today.material(item.record.material))

    def _joints_at(self, part: Part, final: Item | None) -> list[Item]:
        """Give the joints that are left at a part, also where it is part of another."""
        held = self._ledger.joints
        keys = self._today.at.get(folded(part.name), ())
        old = [held[key] for key in keys if key in held and not held[key].made_by]
        names = {folded(part.name), folded(final.name if final else part.name)}
        return old + [item for item in self._new if names & set(ends_of(item))]

    def _touches(
        self, part: Part, at: list[Item], screws: tuple[Item, ...]
    ) -> Iterator[Touch]:
        floor, encloses = is_floor(part), _encloses(part)
        if encloses:
            yield Touch.POLYMER_SHELL
        if encloses and part.subsystem is Subsystem.LID:
            yield Touch.POLYMER_LID
        if floor:
            yield Touch.POLYMER_FLOOR
        cools = part.subsystem is Subsystem.COOLING and _is_plate(part)
        if cools or (floor and not self._has_metal_cooling()):
            yield Touch.POLYMER_HEAT_PATH
        if any(folded(joint.name) in self._sealing for joint in at):
            yield Touch.POLYMER_FLANGE
        if screws:
            yield Touch.SCREWED_POLYMER
        if self._bears_mounts(part, at):
            yield Touch.POLYMER_MOUNTS

    def _has_metal_cooling(self) -> bool:
        return any(
            isinstance(item.record, Part)
            and item.record.subsystem is Subsystem.COOLING
            and (item.made_by or _is_plate(item.record))
            and self._is_metal(item.record)
            for item in self._ledger.parts.values()
        )

    def _bears_mounts(self, part: Part, at: list[Item]) -> bool:
        """Say whether a carry-over frame part sits in it, or such a joint carries."""
        if part.subsystem not in (Subsystem.TRAY, Subsystem.FRAME):
            return False
        inner = self._today.inside.get(folded(part.name), ())
        held = [self._ledger.parts.get(folded(name)) for name in inner]
        parts = [item.record for item in held if item is not None]
        return any(
            isinstance(one, Part)
            and one.carry_over
            and one.subsystem is Subsystem.FRAME
            for one in parts
        ) or any(
            isinstance(joint.record, Joint)
            and joint.record.carry_over
            and "carry" in folded(joint.record.role)
            for joint in at
        )


def _is_plate(part: Part) -> bool:
    """Say whether a cooling part spreads heat; ports, pipes and hoses do not."""
    if part.area_m2 is not None:
        return part.count * part.area_m2 >= _SHELL_AREA_M2
    return part.length_mm is None and (part.mass_each_kg or 0.0) >= _PLATE_KG


def _encloses(part: Part) -> bool:
    if part.subsystem not in (Subsystem.TRAY, Subsystem.LID):
        return False
    return (
        part.governs.startswith("panel")
        or (part.area_m2 or 0.0) >= _SHELL_AREA_M2
        or (part.length_mm or 0.0) >= _SHELL_LENGTH_MM
    )
