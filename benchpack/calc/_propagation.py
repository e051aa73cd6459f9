"""First-order propagation that the gaps have in common (JCGM 100:2008, 5.1.2)."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def energy_ratio(
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    *,
    subject_energy_u_kwh: ArrayLike,
    reference_energy_u_kwh: ArrayLike,
) -> tuple[FloatArray, FloatArray]:
    """Give ``x = E_s / E_r`` and its standard uncertainty."""
    reference = positive_or_nan(reference_energy_kwh)
    ratio = positive_or_nan(subject_energy_kwh) / reference
    from_subject = as_floats(subject_energy_u_kwh) / reference
    from_reference = ratio * as_floats(reference_energy_u_kwh) / reference
    return ratio, np.hypot(from_subject, from_reference)


def quadrature(*contributions: FloatArray) -> FloatArray:
    """Give the root of the sum of squares."""
    squares = sum(part**2 for part in contributions)
    return as_floats(np.sqrt(squares))[()]
