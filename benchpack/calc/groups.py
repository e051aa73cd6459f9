"""The mass gap taken apart by group of parts (subsystem)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc.gap import density_share_kg, energy_share_kg, gap_as_weighed_kg
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


@dataclass(frozen=True, slots=True, eq=False)
class GroupSplit:
    """The gaps of each group, and of what no group accounts for, in the last place.

    Parameters
    ----------
    as_weighed_kg, energy_share_kg, equal_energy_kg : ndarray, shape (..., groups + 1)
        Gap as weighed, its energy share, and the gap at equal energy (the density
        share), kg. Over the last axis each sums to the pack's own.
    """

    as_weighed_kg: FloatArray
    energy_share_kg: FloatArray
    equal_energy_kg: FloatArray


def split_by_group(
    subject_masses_kg: ArrayLike,
    reference_masses_kg: ArrayLike,
    *,
    subject_mass_kg: ArrayLike,
    reference_mass_kg: ArrayLike,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
) -> GroupSplit:
    """Split the gap as weighed and at equal energy by group of parts.

    A group's energy share is ``m_r,i (E_s - E_r) / E_r`` and its gap at equal energy
    ``m_s,i - m_r,i E_s / E_r``. A last row, unaccounted, holds each pack's mass less
    the sum of its groups, so that the rows sum to the pack's gaps.

    Parameters
    ----------
    subject_masses_kg, reference_masses_kg : array_like, shape (..., groups)
        Masses by group, kg. A group that was not recorded is 0: its mass then is
        unaccounted. NaN (unknown) also makes the unaccounted row NaN.
    subject_mass_kg, reference_mass_kg : array_like, shape (...)
        Pack masses, kg.
    subject_energy_kwh, reference_energy_kwh : array_like, shape (...)
        Pack energies on one energy basis, kWh.

    Returns
    -------
    GroupSplit
        Arrays of shape (..., groups + 1), kg.

    Raises
    ------
    RequestError
        Where the two packs are not split into the same number of groups.

    Examples
    --------
    >>> split = split_by_group(
    ...     [290.0, 150.0],
    ...     [305.5, 160.0],
    ...     subject_mass_kg=460.0,
    ...     reference_mass_kg=470.0,
    ...     subject_energy_kwh=70.0,
    ...     reference_energy_kwh=80.0,
    ... )
    >>> split.equal_energy_kg.round(2)
    array([22.69, 10.  , 16.06])
    >>> print(split.equal_energy_kg.sum().round(2))
    48.75
    """
    subject_groups = np.atleast_1d(as_floats(subject_masses_kg))
    reference_groups = np.atleast_1d(as_floats(reference_masses_kg))
    if subject_groups.shape[-1] != reference_groups.shape[-1]:
        said = (
            f"The subject has {subject_groups.shape[-1]} groups and the reference "
            f"{reference_groups.shape[-1]}; both need the same groups."
        )
        raise RequestError(said)
    subject = _with_unaccounted(subject_groups, subject_mass_kg)
    reference = _with_unaccounted(reference_groups, reference_mass_kg)
    subject_energy = as_floats(subject_energy_kwh)[..., np.newaxis]
    reference_energy = as_floats(reference_energy_kwh)[..., np.newaxis]
    return GroupSplit(
        as_weighed_kg=gap_as_weighed_kg(subject, reference),
        energy_share_kg=energy_share_kg(
            reference,
            subject_energy_kwh=subject_energy,
            reference_energy_kwh=reference_energy,
        ),
        equal_energy_kg=density_share_kg(
            subject,
            reference,
            subject_energy_kwh=subject_energy,
            reference_energy_kwh=reference_energy,
        ),
    )


def _with_unaccounted(groups: FloatArray, pack_mass_kg: ArrayLike) -> FloatArray:
    """Append what is left of the pack's mass to its groups."""
    rest = np.asarray(as_floats(pack_mass_kg) - groups.sum(axis=-1))
    recorded = np.broadcast_to(groups, (*rest.shape, groups.shape[-1]))
    return np.concatenate([recorded, rest[..., np.newaxis]], axis=-1)
