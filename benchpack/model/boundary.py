"""What was on the scale when a pack was weighed.

The items follow the boundary record that dismantling practice uses (common
practice, no source: no standard fixes what pack mass contains).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from benchpack.errors import DataError, Problem


class Weighed(StrEnum):
    """Whether an item was on the scale."""

    IN = "in"
    OUT = "out"
    UNKNOWN = "unknown"


ITEMS = (
    "cells",
    "module hardware",
    "tray",
    "lid",
    "side crash structure",
    "cooling plates",
    "coolant",
    "thermal interface",
    "conductors",
    "junction box",
    "electronics",
    "fasteners",
    "seals and adhesives",
    "bottom shield",
    "vehicle mounts",
    "onboard charger",
    "fire barriers",
    "venting devices",
    "body floor",
)
"""Items of the boundary record, in the order in which they are asked."""


@dataclass(frozen=True, slots=True)
class Boundary:
    """The state of each boundary item, and its mass where it is known.

    Parameters
    ----------
    states : mapping of str to Weighed
        Only the items that were recorded as in or out.
    masses_kg : mapping of str to float
        Mass of an item in kg, where it was weighed on its own.
    """

    states: Mapping[str, Weighed] = field(default_factory=dict)
    masses_kg: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        object.__setattr__(self, "states", MappingProxyType(dict(self.states)))
        object.__setattr__(self, "masses_kg", MappingProxyType(dict(self.masses_kg)))

    def __hash__(self) -> int:
        return hash((frozenset(self.states.items()), frozenset(self.masses_kg.items())))

    def __getstate__(self) -> tuple[dict[str, Weighed], dict[str, float]]:
        return dict(self.states), dict(self.masses_kg)

    def __setstate__(self, state: tuple[dict[str, Weighed], dict[str, float]]) -> None:
        object.__setattr__(self, "states", MappingProxyType(state[0]))
        object.__setattr__(self, "masses_kg", MappingProxyType(state[1]))

    def state(self, item: str) -> Weighed:
        """Give whether an item was on the scale."""
        return self.states.get(item, Weighed.UNKNOWN)

    @property
    def is_known(self) -> bool:
        """True when at least one item was recorded."""
        return bool(self.states)

    def to_text(self) -> str:
        """Give the text form, ``coolant=out; bottom shield=in 14.2``."""
        words = []
        for item in ITEMS:
            mass = self.masses_kg.get(item)
            if item not in self.states and mass is None:
                continue
            state = self.state(item)
            words.append(f"{item}={state}" + ("" if mass is None else f" {mass!r}"))
        return "; ".join(words)


UNKNOWN_BOUNDARY = Boundary()
"""The boundary of a pack of which nothing was recorded."""


def parse_boundary(text: str) -> Boundary:
    """Read the text form of a boundary.

    Parameters
    ----------
    text : str
        Items separated by semicolons: ``item=in|out|unknown`` and, optionally, the
        item's mass in kg. Empty text gives the unknown boundary.

    Raises
    ------
    DataError
        For an item, a state or a mass that is not understood.

    Examples
    --------
    >>> parse_boundary("coolant=out; bottom shield=in 14.2").masses_kg["bottom shield"]
    14.2
    """
    states: dict[str, Weighed] = {}
    masses: dict[str, float] = {}
    for word in filter(None, (piece.strip() for piece in text.split(";"))):
        item, _, rest = (piece.strip() for piece in word.partition("="))
        state, _, mass_text = rest.partition(" ")
        item = item.lower()
        if item not in ITEMS:
            raise _refused(word, f"{item!r} is no boundary item.", ", ".join(ITEMS))
        if item in states:
            raise _refused(word, f"{item!r} is named twice.", "Name it once.")
        if state not in tuple(Weighed):
            raise _refused(word, f"{state!r} is no state.", "in, out, unknown")
        if state != Weighed.UNKNOWN:
            states[item] = Weighed(state)
        if mass_text:
            masses[item] = _mass(word, mass_text)
    if not states and not masses:
        return UNKNOWN_BOUNDARY
    return Boundary(states, masses)


def _mass(word: str, text: str) -> float:
    try:
        mass_kg = float(text.removesuffix("kg"))
    except ValueError:
        mass_kg = math.nan
    if not 0 <= mass_kg < math.inf:
        raise _refused(word, f"{text!r} is no mass in kg.", "a figure such as 14.2")
    return mass_kg


def _refused(word: str, what: str, allowed: str) -> DataError:
    return DataError(
        Problem(
            what=f"Boundary {word!r}: {what}",
            remedy=f"Use: {allowed}." if not allowed.endswith(".") else allowed,
            column="boundary",
            value=word,
        )
    )
