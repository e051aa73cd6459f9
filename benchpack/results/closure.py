"""Closure: the recorded parts and joints of a pack against its weighed mass."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.part import Part
from benchpack.model.words import UNACCOUNTED, KnownBy, Subsystem
from benchpack.results.joint_mass import joint_mass_each_g

GOOD_CLOSURE = 0.01
"""Closure within this is good (common practice, no source)."""
FAIR_CLOSURE = 0.02
"""Closure within this will do (common practice, no source)."""


class Grade(StrEnum):
    """How well something stands."""

    NONE = "none"
    GOOD = "good"
    LOOK = "look"
    FAIL = "fail"


@dataclass(frozen=True, slots=True)
class Closure:
    """Where the mass of one pack sits.

    Parameters
    ----------
    pack : str
        Its name.
    pack_mass_kg : float
        Its weighed mass, kg.
    masses_kg : mapping of str to float
        Mass by subsystem, kg; a joint without a mass counts with the one worked out
        from its designation, what has none counts as nothing.
    unknown : int
        Number of parts and joints without a mass.
    assumed_kg : float
        Mass that is only assumed to close the balance, kg.
    """

    pack: str
    pack_mass_kg: float
    masses_kg: Mapping[str, float]
    unknown: int = 0
    assumed_kg: float = 0.0

    @property
    def recorded_kg(self) -> float:
        """Sum of all parts and joints, kg."""
        return math.fsum(self.masses_kg.values())

    @property
    def unaccounted_kg(self) -> float:
        """What the parts and joints do not explain, kg."""
        return self.pack_mass_kg - self.recorded_kg

    @property
    def is_recorded(self) -> bool:
        """True when any part or joint was recorded."""
        return any(self.masses_kg.values()) or self.unknown > 0

    @property
    def ratio(self) -> float:
        """Recorded over weighed mass, NaN when nothing was recorded."""
        return self.recorded_kg / self.pack_mass_kg if self.is_recorded else math.nan

    @property
    def grade(self) -> Grade:
        """How well the balance closes; none when no parts were recorded."""
        if not self.is_recorded:
            return Grade.NONE
        miss = abs(self.ratio - 1)
        if miss <= GOOD_CLOSURE:
            return Grade.GOOD
        return Grade.LOOK if miss <= FAIR_CLOSURE else Grade.FAIL

    def rows_kg(self) -> dict[str, float]:
        """Give the mass by subsystem with what is unaccounted last, kg."""
        return {**self.masses_kg, UNACCOUNTED: self.unaccounted_kg}


def closure_of(library: Library, pack: str) -> Closure:
    """Sum up the parts and joints of one pack.

    Parameters
    ----------
    library : Library
        The records.
    pack : str
        Name of a pack.

    Raises
    ------
    KeyError
        When the library has no such pack.
    """
    row = library.packs.position(pack)
    masses = {str(subsystem): 0.0 for subsystem in Subsystem}
    unknown = 0
    assumed = 0.0
    for record, mass_kg, known_by in _weighed(library, pack):
        if math.isnan(mass_kg):
            unknown += 1
            continue
        masses[str(record.subsystem)] += mass_kg
        if known_by is KnownBy.ASSUMED:
            assumed += mass_kg
    weighed = float(library.packs.columns["mass_kg"][row])
    return Closure(pack, weighed, masses, unknown, assumed)


def _weighed(
    library: Library, pack: str
) -> Iterator[tuple[Part | Joint, float, KnownBy]]:
    """Give parts and joints with their masses, a joint's worked out where it can be."""
    for part in library.parts_of(pack):
        mass_kg = math.nan if part.mass_kg is None else part.mass_kg
        yield part, mass_kg, part.known_by
    for joint in library.joints_of(pack):
        mass_g, known_by, _ = joint_mass_each_g(joint)
        yield joint, joint.count * mass_g / 1000, known_by
