"""The mass gap of a subject to its reference, on every basis.

A positive gap means that the subject is heavier. All functions broadcast, so one
subject stands against any number of references. Unknown values are NaN and stay NaN;
an energy that has to be divided by and is not above zero counts as unknown.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan, power

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def gap_as_weighed_kg(
    subject_mass_kg: ArrayLike, reference_mass_kg: ArrayLike
) -> FloatArray:
    """Give the gap as weighed, ``m_s - m_r``.

    Parameters
    ----------
    subject_mass_kg, reference_mass_kg : array_like
        Pack masses, kg.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> print(gap_as_weighed_kg(460.0, 470.0))
    -10.0
    """
    return as_floats(subject_mass_kg) - as_floats(reference_mass_kg)


def energy_share_kg(
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
) -> FloatArray:
    """Give the part of the as-weighed gap that energy explains.

    ``m_r (E_s - E_r) / E_r``: what the reference would gain if it were scaled to the
    subject's energy at its own density. With `density_share_kg` it sums to the gap as
    weighed.

    Parameters
    ----------
    reference_mass_kg : array_like
        Mass of the reference, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies on one energy basis, kWh.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> share = energy_share_kg(
    ...     470.0, subject_energy_kwh=70.0, reference_energy_kwh=80.0
    ... )
    >>> print(share)
    -58.75
    """
    reference_energy = positive_or_nan(reference_energy_kwh)
    more_energy = as_floats(subject_energy_kwh) - reference_energy
    return as_floats(reference_mass_kg) * (more_energy / reference_energy)


def density_share_kg(
    subject_mass_kg: ArrayLike,
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
) -> FloatArray:
    """Give the gap at equal energy, ``m_s - m_r E_s / E_r``.

    This is the part of the as-weighed gap that design explains.

    Parameters
    ----------
    subject_mass_kg, reference_mass_kg : array_like
        Pack masses, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies on one energy basis, kWh.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> share = density_share_kg(
    ...     460.0, 470.0, subject_energy_kwh=70.0, reference_energy_kwh=80.0
    ... )
    >>> print(share)
    48.75
    """
    ratio = as_floats(subject_energy_kwh) / positive_or_nan(reference_energy_kwh)
    return as_floats(subject_mass_kg) - as_floats(reference_mass_kg) * ratio


def gap_scaled_kg(
    subject_mass_kg: ArrayLike,
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    reference_cells_mass_kg: ArrayLike,
    exponent: ArrayLike = 0.5,
) -> FloatArray:
    """Give the gap with cells scaled by energy and the rest by a power of it.

    ``m_s - [c_r x + (m_r - c_r) x^b]`` with ``x = E_s / E_r``. Exponent 1 is the gap
    at equal energy, exponent 0 leaves the reference's structure as it is; the default
    between them is a convention of this project.

    Parameters
    ----------
    subject_mass_kg, reference_mass_kg, reference_cells_mass_kg : array_like
        Pack masses and the mass of the reference's cells, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies on one energy basis, kWh.
    exponent : array_like
        ``b``, without unit; an array of exponents broadcasts like the rest.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> gap_scaled_kg(
    ...     460.0,
    ...     470.0,
    ...     subject_energy_kwh=70.0,
    ...     reference_energy_kwh=80.0,
    ...     reference_cells_mass_kg=305.5,
    ...     exponent=[0.0, 0.5, 1.0],
    ... ).round(2)
    array([28.19, 38.81, 48.75])
    """
    ratio = positive_or_nan(subject_energy_kwh) / positive_or_nan(reference_energy_kwh)
    cells = as_floats(reference_cells_mass_kg)
    structure = as_floats(reference_mass_kg) - cells
    scaled_reference = cells * ratio + structure * power(ratio, exponent)
    return as_floats(subject_mass_kg) - scaled_reference


def gap_structure_kg(
    subject_mass_kg: ArrayLike,
    reference_mass_kg: ArrayLike,
    *,
    subject_energy_kwh: ArrayLike,
    reference_energy_kwh: ArrayLike,
    subject_cells_mass_kg: ArrayLike,
    reference_cells_mass_kg: ArrayLike,
    exponent: ArrayLike = 0.5,
) -> FloatArray:
    """Give the gap of everything that is not cells, the reference's scaled.

    ``(m_s - c_s) - (m_r - c_r) x^b`` with ``x = E_s / E_r``: it takes the cells'
    chemistry out of the argument. At exponent 0 the energies do not enter.

    Parameters
    ----------
    subject_mass_kg, reference_mass_kg : array_like
        Pack masses, kg.
    subject_cells_mass_kg, reference_cells_mass_kg : array_like
        Mass of all cells of either pack, kg.
    subject_energy_kwh, reference_energy_kwh : array_like
        Pack energies on one energy basis, kWh.
    exponent : array_like
        ``b``, as in `gap_scaled_kg`.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> gap = gap_structure_kg(
    ...     460.0,
    ...     470.0,
    ...     subject_energy_kwh=80.0,
    ...     reference_energy_kwh=80.0,
    ...     subject_cells_mass_kg=280.0,
    ...     reference_cells_mass_kg=305.5,
    ... )
    >>> print(gap)
    15.5
    """
    ratio = positive_or_nan(subject_energy_kwh) / positive_or_nan(reference_energy_kwh)
    subject = as_floats(subject_mass_kg) - as_floats(subject_cells_mass_kg)
    reference = as_floats(reference_mass_kg) - as_floats(reference_cells_mass_kg)
    return subject - reference * power(ratio, exponent)


def gap_to_trend_kg(
    subject_mass_kg: ArrayLike, predicted_mass_kg: ArrayLike
) -> FloatArray:
    """Give the gap to the trend of the peers, ``m_s - m_hat(E_s)``.

    Parameters
    ----------
    subject_mass_kg : array_like
        Mass of the subject, kg.
    predicted_mass_kg : array_like
        What a trend that leaves the subject out predicts at the subject's energy, kg.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> print(gap_to_trend_kg(489.0, 455.5))
    33.5
    """
    return as_floats(subject_mass_kg) - as_floats(predicted_mass_kg)
