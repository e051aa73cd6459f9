"""The gap to one reference, subsystem by subsystem."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.groups import GroupSplit, split_by_group
from benchpack.model.library import Library
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
        Masses by subsystem of the two packs.
    gaps : GroupSplit
        Gaps by subsystem; they sum to the packs' own.
    boundary_kg : float
        What was taken out for unlike boundaries, subject less reference, kg. It sits
        in the row of what is unaccounted.
    """

    names: tuple[str, ...]
    subject: Closure
    reference: Closure
    gaps: GroupSplit
    boundary_kg: float = 0.0

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
    subject_kg = float(comparison.subject_mass_kg[place])
    reference_kg = float(comparison.reference_mass_kg[place])
    energy_kwh = comparison.subject.energy_kwh
    gaps = split_by_group(
        list(subject.masses_kg.values()),
        list(reference.masses_kg.values()),
        subject_mass_kg=subject_kg,
        reference_mass_kg=reference_kg,
        subject_energy_kwh=energy_kwh if comparison.comparable[place] else np.nan,
        reference_energy_kwh=float(comparison.reference_energy_kwh[place]),
    )
    taken_kg = (comparison.subject.mass_kg - subject_kg) - (
        reference.pack_mass_kg - reference_kg
    )
    return SubsystemSplit(tuple(subject.rows_kg()), subject, reference, gaps, taken_kg)
