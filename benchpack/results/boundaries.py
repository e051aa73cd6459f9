"""Bringing two packs to one boundary before they are compared."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from benchpack.model.boundary import ITEMS, Boundary, Weighed
from benchpack.model.part import Part


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
    """

    item: str
    pack: str
    mass_kg: float


@dataclass(frozen=True, slots=True)
class BoundaryMatch:
    """How the boundaries of two packs compare.

    Parameters
    ----------
    taken_out : tuple of TakenOut
        Differences whose mass is known, taken out of the heavier side.
    unlike : tuple of str
        Items in one and out of the other whose mass is not known.
    unsure : tuple of str
        Items recorded for one pack only.
    """

    taken_out: tuple[TakenOut, ...] = ()
    unlike: tuple[str, ...] = ()
    unsure: tuple[str, ...] = ()

    def mass_kg(self, pack: str) -> float:
        """Give what is taken out of one pack, kg."""
        return sum(item.mass_kg for item in self.taken_out if item.pack == pack)


SAME_BOUNDARY = BoundaryMatch()


def match_boundaries(
    subject: tuple[str, Boundary, Sequence[Part]],
    reference: tuple[str, Boundary, Sequence[Part]],
) -> BoundaryMatch:
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
    if one is other or not (one.is_known or other.is_known):
        return SAME_BOUNDARY
    for item in ITEMS:
        states = (one.state(item), other.state(item))
        if states[0] == states[1]:
            continue
        if Weighed.UNKNOWN in states:
            unsure.append(item)
            continue
        holder = subject if states[0] is Weighed.IN else reference
        mass_kg = _item_mass_kg(item, holder[1], holder[2])
        if mass_kg is None:
            unlike.append(item)
        else:
            taken.append(TakenOut(item, holder[0], mass_kg))
    return BoundaryMatch(tuple(taken), tuple(unlike), tuple(unsure))


def _item_mass_kg(item: str, boundary: Boundary, parts: Sequence[Part]) -> float | None:
    if item in boundary.masses_kg:
        return boundary.masses_kg[item]
    masses = [
        part.mass_kg
        for part in parts
        if part.name.casefold() == item and part.mass_kg is not None
    ]
    return sum(masses) if masses else None
