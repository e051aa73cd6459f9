"""Bringing two packs to one boundary before they are compared."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from benchpack.model.boundary import ITEMS, Boundary, Weighed
from benchpack.model.part import Part
from benchpack.model.words import UNACCOUNTED

CELLS = "cells"
"""The item that is never taken out: without its cells there is no pack to compare."""
LARGE_ITEMS = ("coolant", "bottom shield", "onboard charger")
"""Items so heavy, and so often on one scale only, that silence about them counts as
not known (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class TakenOut:
    """An item that one pack has on the scale and the other has not.

    Parameters
    ----------
    item : str
        The boundary item.
    pack : str
        The pack that has it.
    mass_kg : float
        Its mass, kg.
    subsystem : str
        Where the pack's parts hold it; unaccounted where no part is named like it.
    """

    item: str
    pack: str
    mass_kg: float
    subsystem: str = UNACCOUNTED


@dataclass(frozen=True, slots=True)
class BoundaryMatch:
    """How the boundaries of two packs compare.

    Parameters
    ----------
    taken_out : tuple of TakenOut
        Differences whose mass is known, taken out of the pack that has them.
    unlike : tuple of str
        Items in one and out of the other that could not be taken out.
    unsure : tuple of str
        Items recorded for one pack only, and large ones recorded for neither.
    """

    taken_out: tuple[TakenOut, ...] = ()
    unlike: tuple[str, ...] = ()
    unsure: tuple[str, ...] = ()

    def mass_kg(self, pack: str) -> float:
        """Give what is taken out of one pack, kg."""
        return sum(item.mass_kg for item in self.taken_out if item.pack == pack)


SAME_BOUNDARY = BoundaryMatch()
"""Two boundaries that agree, or of which nothing at all is recorded."""

Side = tuple[str, Boundary, Sequence[Part]]
"""Name, boundary and parts of a pack."""


def weighed_without_cells(boundary: Boundary) -> bool:
    """Tell whether a pack is recorded as weighed without its cells.

    Parameters
    ----------
    boundary : Boundary
        The pack's boundary.
    """
    return boundary.state(CELLS) is Weighed.OUT


def match_boundaries(subject: Side, reference: Side) -> BoundaryMatch:
    """Compare what was on the scale for two packs.

    Parameters
    ----------
    subject, reference : tuple
        Name, boundary and parts of each pack. The mass of an item is the one in the
        boundary record or, failing that, that of the parts named like the item.

    Returns
    -------
    BoundaryMatch
        What was taken out, and what could not be.
    """
    taken: list[TakenOut] = []
    unlike: list[str] = []
    unsure: list[str] = []
    one, other = subject[1], reference[1]
    if not (one.is_known or other.is_known):
        return SAME_BOUNDARY
    for item in ITEMS:
        states = (one.state(item), other.state(item))
        if Weighed.UNKNOWN in states:
            if states[0] != states[1] or item in LARGE_ITEMS:
                unsure.append(item)
            continue
        if states[0] == states[1]:
            continue
        holder = subject if states[0] is Weighed.IN else reference
        found = None if item == CELLS else _taken(item, holder)
        if found is None:
            unlike.append(item)
        else:
            taken.append(found)
    return BoundaryMatch(tuple(taken), tuple(unlike), tuple(unsure))


def _taken(item: str, holder: Side) -> TakenOut | None:
    name, boundary, parts = holder
    alike = [
        part
        for part in parts
        if part.name.casefold() == item and part.mass_kg is not None
    ]
    if item in boundary.masses_kg:
        mass_kg = boundary.masses_kg[item]
    elif alike:
        mass_kg = sum(part.mass_kg or 0.0 for part in alike)
    else:
        return None
    subsystem = str(alike[0].subsystem) if alike else UNACCOUNTED
    return TakenOut(item, name, mass_kg, subsystem)
