"""Standard uncertainties of the mass gaps, first order (JCGM 100:2008, 5.1.2).

Every input counts as independent of the others, with its exact partial derivative as
sensitivity. Arguments named ``..._u_kg`` and ``..._u_kwh`` are standard uncertainties.
All functions broadcast and give kg; an unknown uncertainty (NaN) makes the result NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._propagation import energy_ratio, quadrature

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def gap_as_weighed_uncertainty_kg(
    subject_mass_u_kg: ArrayLike, reference_mass_u_kg: ArrayLike
) -> FloatArray:
    """Give u of the gap as weighed, ``sqrt(u(m_s)^2 + u(m_r)^2)``.

    Parameters
    ----------
    subject_mass_u_kg, reference_mass_u_kg : array_like
        Standard uncertainties of the pack masses, kg.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> print(gap_as_weighed_uncertainty_kg(1.5, 2.0))
    2.5
    """
    return np.hypot(as_floats(subject_mass_u_kg), as_floats(reference_mass_u_kg))


def energy_share_uncertainty_kg(
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    reference_mass_u_kg: ArrayLike,
    subject_energy_u_kwh: ArrayLike,
    reference_energy_u_kwh: ArrayLike,
) -> FloatArray:
    """Give u of the energy share ``m_r (x - 1)``, ``x = E_s / E_r``.

    Sensitivities: ``x - 1`` to m_r, ``m_r / E_r`` to E_s, ``-m_r x / E_r`` to E_r. The
    two shares have inputs in common, so their uncertainties do not add in quadrature.

    Parameters
    ----------
    reference_mass_kg, reference_mass_u_kg : array_like
        Mass of the reference and its standard uncertainty, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies, kWh.
    subject_energy_u_kwh, reference_energy_u_kwh : array_like
        Their standard uncertainties, kWh.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> u = energy_share_uncertainty_kg(
    ...     470.0,
    ...     subject_energy_kwh=70.0,
    ...     reference_energy_kwh=80.0,
    ...     reference_mass_u_kg=2.0,
    ...     subject_energy_u_kwh=0.5,
    ...     reference_energy_u_kwh=0.5,
    ... )
    >>> print(u.round(3))
    3.911
    """
    ratio, ratio_u = energy_ratio(
        subject_energy_kwh,
        reference_energy_kwh,
        subject_energy_u_kwh=subject_energy_u_kwh,
        reference_energy_u_kwh=reference_energy_u_kwh,
    )
    return np.hypot(
        (ratio - 1.0) * as_floats(reference_mass_u_kg),
        as_floats(reference_mass_kg) * ratio_u,
    )


def gap_equal_energy_uncertainty_kg(
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    subject_mass_u_kg: ArrayLike,
    reference_mass_u_kg: ArrayLike,
    subject_energy_u_kwh: ArrayLike,
    reference_energy_u_kwh: ArrayLike,
) -> FloatArray:
    """Give u of the gap at equal energy ``m_s - m_r x``, ``x = E_s / E_r``.

    ``u^2 = u(m_s)^2 + x^2 u(m_r)^2 + (m_r/E_r)^2 u(E_s)^2 + (m_r x/E_r)^2 u(E_r)^2``.

    Parameters
    ----------
    reference_mass_kg : array_like
        Mass of the reference, kg (the subject's mass does not enter).
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies, kWh.
    subject_mass_u_kg, reference_mass_u_kg : array_like
        Standard uncertainties of the pack masses, kg.
    subject_energy_u_kwh, reference_energy_u_kwh : array_like
        Standard uncertainties of the energies, kWh.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> u = gap_equal_energy_uncertainty_kg(
    ...     470.0,
    ...     subject_energy_kwh=70.0,
    ...     reference_energy_kwh=80.0,
    ...     subject_mass_u_kg=2.0,
    ...     reference_mass_u_kg=2.0,
    ...     subject_energy_u_kwh=0.5,
    ...     reference_energy_u_kwh=0.5,
    ... )
    >>> print(u.round(3))
    4.722
    """
    ratio, ratio_u = energy_ratio(
        subject_energy_kwh,
        reference_energy_kwh,
        subject_energy_u_kwh=subject_energy_u_kwh,
        reference_energy_u_kwh=reference_energy_u_kwh,
    )
    return quadrature(
        as_floats(subject_mass_u_kg),
        ratio * as_floats(reference_mass_u_kg),
        as_floats(reference_mass_kg) * ratio_u,
    )


def gap_to_trend_uncertainty_kg(
    subject_mass_u_kg: ArrayLike, prediction_u_kg: ArrayLike
) -> FloatArray:
    """Give u of the gap to the trend, ``sqrt(u(m_s)^2 + u_pred^2)``.

    What is not known of the energies shows as scatter of the peers about the trend and
    so is within ``u_pred`` already.

    Parameters
    ----------
    subject_mass_u_kg : array_like
        Standard uncertainty of the subject's mass, kg.
    prediction_u_kg : array_like
        Standard error of prediction at the subject's energy, kg
        (`line.LinearTrend.prediction_uncertainty_kg`).

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> print(gap_to_trend_uncertainty_kg(5.0, 12.0))
    13.0
    """
    return np.hypot(as_floats(subject_mass_u_kg), as_floats(prediction_u_kg))
