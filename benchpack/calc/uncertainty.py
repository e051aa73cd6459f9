"""Standard uncertainties of single figures (JCGM 100:2008, the GUM).

All functions broadcast; an unknown uncertainty is NaN and makes the result unknown.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc.densities import WH_PER_KWH

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def standard_uncertainty_from_tolerance(tolerance: ArrayLike) -> FloatArray:
    """Give the standard uncertainty of a stated tolerance +-a, ``a / sqrt(3)``.

    The tolerance counts as rectangular: any value within it is as likely as another
    (JCGM 100:2008, 4.3.7).

    Parameters
    ----------
    tolerance : array_like
        Half width ``a``, in any unit.

    Returns
    -------
    ndarray
        In the unit of the tolerance.

    Examples
    --------
    >>> print(standard_uncertainty_from_tolerance(3.0).round(4))
    1.7321
    """
    return as_floats(tolerance) / math.sqrt(3.0)


def triangular_standard_uncertainty(
    low: ArrayLike, high: ArrayLike, *, likely: ArrayLike
) -> FloatArray:
    """Give the standard deviation of a triangular three-point estimate.

    ``sqrt((p^2 + p q + q^2) / 18)`` with ``p = likely - low``, ``q = high - likely``;
    ``a / sqrt(6)`` where the estimate is symmetric (JCGM 100:2008, 4.3.9).

    Parameters
    ----------
    low, high : array_like
        The ends, in any unit.
    likely : array_like
        The most likely value; outside of `low` and `high` the result is NaN.

    Returns
    -------
    ndarray
        In the unit of the estimate.

    Examples
    --------
    >>> print(triangular_standard_uncertainty(0.0, 2.0, likely=1.0).round(6))
    0.408248
    """
    below = as_floats(likely) - as_floats(low)
    above = as_floats(high) - as_floats(likely)
    variance = (below**2 + below * above + above**2) / 18.0
    return np.sqrt(np.where((below >= 0) & (above >= 0), variance, np.nan))[()]


def combine_kg(uncertainties_kg: ArrayLike, *, axis: int = -1) -> FloatArray:
    """Give the uncertainty of a sum of independent masses, ``sqrt(sum u_i^2)``.

    Only for inputs that err independently (JCGM 100:2008, 5.1.2). What one scale does
    to all of its readings is common to them and adds up in full instead.

    Parameters
    ----------
    uncertainties_kg : array_like, shape (..., masses)
        Standard uncertainties, kg.
    axis : int
        The axis to sum over.

    Returns
    -------
    ndarray
        kg, without that axis; 0 for no masses at all.

    Examples
    --------
    >>> print(combine_kg([3.0, 4.0]))
    5.0
    """
    return as_floats(np.sqrt((as_floats(uncertainties_kg) ** 2).sum(axis=axis)))[()]


def density_uncertainty_wh_per_kg(
    energy_kwh: ArrayLike,
    mass_kg: ArrayLike,
    *,
    energy_u_kwh: ArrayLike,
    mass_u_kg: ArrayLike,
) -> FloatArray:
    """Give the standard uncertainty of a gravimetric energy density.

    ``1000 sqrt((u_E / m)^2 + (E u_m / m^2)^2)``, first order, energy and mass
    independent (JCGM 100:2008, 5.1.2).

    Parameters
    ----------
    energy_kwh, mass_kg : array_like
        Energy in kWh and mass in kg.
    energy_u_kwh, mass_u_kg : array_like
        Their standard uncertainties, kWh and kg.

    Returns
    -------
    ndarray
        Wh/kg, of the broadcast shape.

    Examples
    --------
    >>> u = density_uncertainty_wh_per_kg(75.0, 480.0, energy_u_kwh=0.5, mass_u_kg=3.0)
    >>> print(u.round(5))
    1.42785
    """
    mass = positive_or_nan(mass_kg)
    from_energy = as_floats(energy_u_kwh) / mass
    from_mass = as_floats(energy_kwh) * as_floats(mass_u_kg) / mass**2
    return WH_PER_KWH * np.hypot(from_energy, from_mass)
