"""Densities and ratios of a pack: what it holds against what it weighs.

All functions broadcast. A denominator that is unknown, zero or negative gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

WH_PER_KWH = 1000.0


def gravimetric_density_wh_per_kg(
    energy_kwh: ArrayLike, mass_kg: ArrayLike
) -> FloatArray:
    """Give the energy held per mass, ``1000 E / m``.

    Parameters
    ----------
    energy_kwh, mass_kg : array_like
        Energy in kWh and mass in kg of the same thing (pack, module or cells).

    Returns
    -------
    ndarray
        Wh/kg, of the broadcast shape. "Mass energy density" of IEC 62660-1 at the
        level of the cell (from memory).

    Examples
    --------
    >>> gravimetric_density_wh_per_kg([70.0, 80.0], [460.0, 470.0]).round(1)
    array([152.2, 170.2])
    """
    return WH_PER_KWH * as_floats(energy_kwh) / positive_or_nan(mass_kg)


def volumetric_density_wh_per_l(
    energy_kwh: ArrayLike, volume_l: ArrayLike
) -> FloatArray:
    """Give the energy held per volume, ``1000 E / V``.

    Parameters
    ----------
    energy_kwh, volume_l : array_like
        Energy in kWh and volume in litres of the same thing.

    Returns
    -------
    ndarray
        Wh/L, of the broadcast shape.

    Examples
    --------
    >>> print(volumetric_density_wh_per_l(75.0, 300.0))
    250.0
    """
    return WH_PER_KWH * as_floats(energy_kwh) / positive_or_nan(volume_l)


def cell_to_pack_ratio(cells: ArrayLike, pack: ArrayLike) -> FloatArray:
    """Give the cells' share of the pack, ``m_cells / m`` or ``V_cells / V``.

    Parameters
    ----------
    cells, pack : array_like
        Cells and whole pack in one unit: both kg (gravimetric) or both litres
        (volumetric).

    Returns
    -------
    ndarray
        Share, 0 to 1 for sound data; a share above 1 is returned as it comes.

    Examples
    --------
    >>> print(cell_to_pack_ratio(72.0, 122.0).round(2))
    0.59
    """
    return as_floats(cells) / positive_or_nan(pack)


def structure_mass_kg(mass_kg: ArrayLike, cells_mass_kg: ArrayLike) -> FloatArray:
    """Give the mass of everything that is not cells, ``m - m_cells``.

    Parameters
    ----------
    mass_kg, cells_mass_kg : array_like
        Mass of the pack and of all its cells, kg.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> print(structure_mass_kg(122.0, 72.0))
    50.0
    """
    return as_floats(mass_kg) - as_floats(cells_mass_kg)


def structure_mass_per_energy(
    mass_kg: ArrayLike, cells_mass_kg: ArrayLike, *, energy_kwh: ArrayLike
) -> FloatArray:
    """Give the mass that is not cells per energy, ``(m - m_cells) / E``.

    Parameters
    ----------
    mass_kg, cells_mass_kg : array_like
        Mass of the pack and of all its cells, kg.
    energy_kwh : array_like
        Energy of the pack, kWh.

    Returns
    -------
    ndarray
        kg/kWh, of the broadcast shape.

    Examples
    --------
    >>> print(structure_mass_per_energy(470.0, 305.5, energy_kwh=80.0).round(5))
    2.05625
    """
    return per_energy(structure_mass_kg(mass_kg, cells_mass_kg), energy_kwh)


def per_energy(amount: ArrayLike, energy_kwh: ArrayLike) -> FloatArray:
    """Give an amount per energy, ``x / E``: joint mass, joints, structure mass.

    Parameters
    ----------
    amount : array_like
        What is counted, in any unit.
    energy_kwh : array_like
        Energy of the pack, kWh.

    Returns
    -------
    ndarray
        The amount's unit per kWh, of the broadcast shape.

    Examples
    --------
    >>> print(per_energy(236, 80.0))
    2.95
    """
    return as_floats(amount) / positive_or_nan(energy_kwh)


def identity_residual(
    pack_density: ArrayLike, ratio: ArrayLike, *, cell_density: ArrayLike
) -> FloatArray:
    """Give how far a record is from pack density = ratio * cell density.

    Parameters
    ----------
    pack_density, cell_density : array_like
        Energy density of pack and cells in one unit (Wh/kg or Wh/L), on one energy
        basis.
    ratio : array_like
        The matching cell-to-pack ratio.

    Returns
    -------
    ndarray
        ``ratio * cell density / pack density - 1``: 0 where the record agrees with
        itself, positive where its cells hold more than the pack is said to.

    Examples
    --------
    >>> print(identity_residual(160.0, 0.64, cell_density=255.0).round(3))
    0.02
    """
    from_cells = as_floats(ratio) * as_floats(cell_density)
    return from_cells / positive_or_nan(pack_density) - 1.0
