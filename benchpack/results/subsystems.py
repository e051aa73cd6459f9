"""The gap to one reference, subsystem by subsystem."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.groups import GroupSplit, split_by_group
from benchpack.model.library import Library
from benchpack.results.boundaries import TakenOut
from benchpack.results.closure import Closure, closure_of
from benchpack.results.comparison import Comparison

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class SubsystemSplit:
    """Where the gap to one reference sits.

    Parameters
    ----------
    names : tuple of str
        Subsystems, the last being what is unaccounted.
    subject, reference : Closure
        Masses by subsystem of the two packs, everything recorded.
    gaps : GroupSplit
        Gaps by subsystem as compared; they sum to the packs' own.
    taken_out : tuple of TakenOut
        What was left out of the rows for unlike boundaries: each item out of its
        subsystem, or out of what is unaccounted where no part is named like it.
    """

    names: tuple[str, ...]
    subject: Closure
    reference: Closure
    gaps: GroupSplit
    taken_out: tuple[TakenOut, ...] = ()

    @property
    def is_recorded(self) -> bool:
        """True when both packs have parts, so that the rows mean something."""
        return self.subject.is_recorded and self.reference.is_recorded


def split_by_subsystem(
    library: Library, comparison: Comparison, place: int | None
) -> SubsystemSplit | None:
    """Split the gap to one reference by subsystem.

    Parameters
    ----------
    library : Library
        The records.
    comparison : Comparison
        The gaps.
    place : int or None
        Place of the reference in the comparison.

    Returns
    -------
    SubsystemSplit or None
        None without a reference. The rows sum to the packs' gaps as compared.
    """
    if place is None:
        return None
    subject = closure_of(library, comparison.subject.name)
    reference = closure_of(library, str(comparison.names[place]))
    taken_out = comparison.boundary(place).taken_out
    energy_kwh = comparison.subject.energy_kwh
    gaps = split_by_group(
        _compared(subject, taken_out),
        _compared(reference, taken_out),
        subject_mass_kg=float(comparison.subject_mass_kg[place]),
        reference_mass_kg=float(comparison.reference_mass_kg[place]),
        subject_energy_kwh=energy_kwh if comparison.comparable[place] else np.nan,
        reference_energy_kwh=float(comparison.reference_energy_kwh[place]),
    )
    names = tuple(subject.rows_kg())
    return SubsystemSplit(names, subject, reference, gaps, taken_out)


def _compared(closure: Closure, taken_out: tuple[TakenOut, ...]) -> list[float]:
    """Give the masses by subsystem of one pack less what was taken out of it."""
    masses = dict(closure.masses_kg)
    for item in taken_out:
        if item.pack == closure.pack and item.subsystem in masses:
            masses[item.subsystem] -= item.mass_kg
    return list(masses.values())
