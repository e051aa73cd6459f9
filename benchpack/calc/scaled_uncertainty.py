"""Standard uncertainties of the scaled gap and of the structure gap.

First order (JCGM 100:2008, 5.1.2), on the terms of `gap_uncertainty`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, power
from benchpack.calc._propagation import energy_ratio, quadrature

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def gap_scaled_uncertainty_kg(
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    reference_cells_mass_kg: ArrayLike,
    subject_mass_u_kg: ArrayLike,
    reference_mass_u_kg: ArrayLike,
    subject_energy_u_kwh: ArrayLike,
    reference_energy_u_kwh: ArrayLike,
    reference_cells_mass_u_kg: ArrayLike,
    exponent: ArrayLike = 0.5,
) -> FloatArray:
    """Give u of the scaled gap ``m_s - c_r x - (m_r - c_r) x^b``, ``x = E_s / E_r``.

    Sensitivities: 1 to m_s, ``-x^b`` to m_r, ``x^b - x`` to c_r, and
    ``-(c_r + b (m_r - c_r) x^(b-1))`` to x. The exponent is a choice and has no
    uncertainty: its effect is shown as a band.

    Parameters
    ----------
    reference_mass_kg, reference_cells_mass_kg : array_like
        Mass of the reference and of its cells, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies, kWh.
    subject_mass_u_kg, reference_mass_u_kg, reference_cells_mass_u_kg : array_like
        Standard uncertainties of the masses, kg.
    subject_energy_u_kwh, reference_energy_u_kwh : array_like
        Standard uncertainties of the energies, kWh.
    exponent : array_like
        ``b``, as in `gap.gap_scaled_kg`.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> u = gap_scaled_uncertainty_kg(
    ...     470.0,
    ...     subject_energy_kwh=70.0,
    ...     reference_energy_kwh=80.0,
    ...     reference_cells_mass_kg=305.5,
    ...     subject_mass_u_kg=2.0,
    ...     reference_mass_u_kg=2.0,
    ...     subject_energy_u_kwh=0.5,
    ...     reference_energy_u_kwh=0.5,
    ...     reference_cells_mass_u_kg=3.0,
    ... )
    >>> print(u.round(3))
    4.267
    """
    ratio, ratio_u = energy_ratio(
        subject_energy_kwh,
        reference_energy_kwh,
        subject_energy_u_kwh=subject_energy_u_kwh,
        reference_energy_u_kwh=reference_energy_u_kwh,
    )
    cells = as_floats(reference_cells_mass_kg)
    growth = power(ratio, exponent)
    structure = as_floats(reference_mass_kg) - cells
    to_ratio = cells + as_floats(exponent) * structure * growth / ratio
    return quadrature(
        as_floats(subject_mass_u_kg),
        growth * as_floats(reference_mass_u_kg),
        (growth - ratio) * as_floats(reference_cells_mass_u_kg),
        to_ratio * ratio_u,
    )


def gap_structure_uncertainty_kg(
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    reference_cells_mass_kg: ArrayLike,
    subject_mass_u_kg: ArrayLike,
    reference_mass_u_kg: ArrayLike,
    subject_energy_u_kwh: ArrayLike,
    reference_energy_u_kwh: ArrayLike,
    subject_cells_mass_u_kg: ArrayLike,
    reference_cells_mass_u_kg: ArrayLike,
    exponent: ArrayLike = 0.5,
) -> FloatArray:
    """Give u of the structure gap ``(m_s - c_s) - (m_r - c_r) x^b``.

    Sensitivities: 1 to m_s, -1 to c_s, ``-x^b`` to m_r, ``x^b`` to c_r, and
    ``-b (m_r - c_r) x^(b-1)`` to ``x = E_s / E_r``.

    Parameters
    ----------
    reference_mass_kg, reference_cells_mass_kg : array_like
        Mass of the reference and of its cells, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies, kWh.
    subject_mass_u_kg, reference_mass_u_kg : array_like
        Standard uncertainties of the pack masses, kg.
    subject_cells_mass_u_kg, reference_cells_mass_u_kg : array_like
        Standard uncertainties of the cells' masses, kg.
    subject_energy_u_kwh, reference_energy_u_kwh : array_like
        Standard uncertainties of the energies, kWh.
    exponent : array_like
        ``b``, as in `gap.gap_structure_kg`.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> u = gap_structure_uncertainty_kg(
    ...     470.0,
    ...     subject_energy_kwh=80.0,
    ...     reference_energy_kwh=80.0,
    ...     reference_cells_mass_kg=305.5,
    ...     subject_mass_u_kg=2.0,
    ...     reference_mass_u_kg=2.0,
    ...     subject_energy_u_kwh=0.0,
    ...     reference_energy_u_kwh=0.0,
    ...     subject_cells_mass_u_kg=2.0,
    ...     reference_cells_mass_u_kg=2.0,
    ... )
    >>> print(u)
    4.0
    """
    ratio, ratio_u = energy_ratio(
        subject_energy_kwh,
        reference_energy_kwh,
        subject_energy_u_kwh=subject_energy_u_kwh,
        reference_energy_u_kwh=reference_energy_u_kwh,
    )
    growth = power(ratio, exponent)
    structure = as_floats(reference_mass_kg) - as_floats(reference_cells_mass_kg)
    to_ratio = as_floats(exponent) * structure * growth / ratio
    return quadrature(
        as_floats(subject_mass_u_kg),
        as_floats(subject_cells_mass_u_kg),
        growth * as_floats(reference_mass_u_kg),
        growth * as_floats(reference_cells_mass_u_kg),
        to_ratio * ratio_u,
    )
