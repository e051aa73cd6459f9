"""The heat path from the base of a cell to the coolant, in one dimension.

Layers in series, a plate that spreads heat sideways between coolant lines, and the rise
without any cooling. All functions broadcast; what is unknown, or a size that is not
above zero, gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import not_negative_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_M_PER_MM = 1e-3


def layer_resistance_m2k_w(
    thickness_mm: ArrayLike, conductivity_w_mk: ArrayLike
) -> FloatArray:
    """Give the resistance of a layer per area, ``t / k``.

    Parameters
    ----------
    thickness_mm : array_like
        Thickness, mm; 0 for no layer.
    conductivity_w_mk : array_like
        Conductivity across the layer, W/(m K).

    Returns
    -------
    ndarray
        m2 K/W, of the broadcast shape.

    Examples
    --------
    A polymer floor and a gap filler:

    >>> print(layer_resistance_m2k_w([3.0, 1.5], [0.3, 3.0]))
    [0.01   0.0005]
    """
    thickness = not_negative_or_nan(thickness_mm) * _M_PER_MM
    return thickness / positive_or_nan(conductivity_w_mk)


def film_resistance_m2k_w(transfer_w_m2k: ArrayLike) -> FloatArray:
    """Give the resistance from a wall to the coolant per area, ``1 / h``.

    Parameters
    ----------
    transfer_w_m2k : array_like
        Heat transfer coefficient, W/(m2 K).

    Returns
    -------
    ndarray
        m2 K/W, of the same shape.

    Examples
    --------
    >>> print(film_resistance_m2k_w(1000.0))
    0.001
    """
    return 1.0 / positive_or_nan(transfer_w_m2k)


def series_resistance_m2k_w(
    thickness_mm: ArrayLike,
    conductivity_w_mk: ArrayLike,
    *,
    contact_m2k_w: ArrayLike = 0.0,
) -> FloatArray:
    """Give the resistance of a path per area, ``sum(t / k) + sum(R_contact)``.

    Parameters
    ----------
    thickness_mm, conductivity_w_mk : array_like, shape (..., layers)
        Thickness in mm and conductivity in W/(m K) of each layer.
    contact_m2k_w : array_like, shape (..., contacts)
        Resistances between layers and to the coolant, m2 K/W, 0 or more.

    Returns
    -------
    ndarray, shape (...)
        m2 K/W; one unknown layer or contact makes it unknown.

    Examples
    --------
    Aluminium, gap filler and a polymer floor:

    >>> path = series_resistance_m2k_w([3.0, 1.0, 3.0], [160.0, 3.0, 0.35])
    >>> print(path.round(8))
    0.00892351
    """
    layers = np.atleast_1d(layer_resistance_m2k_w(thickness_mm, conductivity_w_mk))
    contacts = np.atleast_1d(not_negative_or_nan(contact_m2k_w))
    return as_floats(layers.sum(axis=-1) + contacts.sum(axis=-1))


def resistance_k_w(resistance_m2k_w: ArrayLike, area_m2: ArrayLike) -> FloatArray:
    """Give the resistance of a path through one area, ``R'' / A``.

    Parameters
    ----------
    resistance_m2k_w : array_like
        Resistance per area, m2 K/W.
    area_m2 : array_like
        Area that the heat passes, m2.

    Returns
    -------
    ndarray
        K/W, of the broadcast shape.

    Examples
    --------
    >>> print(resistance_k_w(0.00892351, 0.04).round(6))
    0.223088
    """
    return as_floats(resistance_m2k_w) / positive_or_nan(area_m2)


def temperature_rise_k(flux_w_m2: ArrayLike, resistance_m2k_w: ArrayLike) -> FloatArray:
    """Give the rise of the warm side over the coolant, ``dT = q R``.

    Parameters
    ----------
    flux_w_m2 : array_like
        Heat flux, W/m2.
    resistance_m2k_w : array_like
        Resistance per area, m2 K/W.

    Returns
    -------
    ndarray
        K, of the broadcast shape.

    Examples
    --------
    >>> print(temperature_rise_k(2000.0, [0.01, 0.0005]))
    [20.  1.]
    """
    return as_floats(flux_w_m2) * as_floats(resistance_m2k_w)


def spreading_rise_k(
    flux_w_m2: ArrayLike,
    *,
    half_pitch_mm: ArrayLike,
    thickness_mm: ArrayLike,
    conductivity_w_mk: ArrayLike,
) -> FloatArray:
    """Give the rise midway between two coolant lines, ``q L^2 / (2 k t)``.

    A plate heated evenly from one side gives its heat to coolant lines a pitch apart;
    none leaves it on the way.

    Parameters
    ----------
    flux_w_m2 : array_like
        Heat flux into the plate, W/m2.
    half_pitch_mm : array_like
        ``L``, from a coolant line to midway to the next, mm.
    thickness_mm : array_like
        Thickness ``t`` of the plate, mm.
    conductivity_w_mk : array_like
        Conductivity in the plane of the plate, W/(m K).

    Returns
    -------
    ndarray
        K over the plate at the coolant line, of the broadcast shape.

    Examples
    --------
    >>> plate = {"thickness_mm": 2.0, "conductivity_w_mk": 190.0}
    >>> spreading_rise_k(2000.0, half_pitch_mm=[30.0, 60.0], **plate).round(1)
    array([2.4, 9.5])
    """
    conductance = positive_or_nan(conductivity_w_mk) * positive_or_nan(thickness_mm)
    return _spread_w_m(flux_w_m2, half_pitch_mm) / conductance


def least_plate_mm(
    flux_w_m2: ArrayLike,
    *,
    half_pitch_mm: ArrayLike,
    allowed_rise_k: ArrayLike,
    conductivity_w_mk: ArrayLike,
) -> FloatArray:
    """Give the least thickness of a spreading plate, ``q L^2 / (2 k dT)``.

    Parameters
    ----------
    flux_w_m2, half_pitch_mm, conductivity_w_mk
        As in `spreading_rise_k`.
    allowed_rise_k : array_like
        Rise midway that is allowed, K, above 0.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> plate = {"half_pitch_mm": 60.0, "conductivity_w_mk": 190.0}
    >>> print(least_plate_mm(2000.0, **plate, allowed_rise_k=5.0).round(2))
    3.79
    """
    conductance = positive_or_nan(conductivity_w_mk) * positive_or_nan(allowed_rise_k)
    return _spread_w_m(flux_w_m2, half_pitch_mm) / conductance


def plate_mass_kg(
    thickness_mm: ArrayLike, *, area_m2: ArrayLike, density_kg_m3: ArrayLike
) -> FloatArray:
    """Give the mass of a plate, ``rho A t``.

    Parameters
    ----------
    thickness_mm, area_m2, density_kg_m3 : array_like
        Thickness in mm, area in m2 and density in kg/m3.

    Returns
    -------
    ndarray
        kg, of the broadcast shape.

    Examples
    --------
    >>> print(plate_mass_kg(2.0, area_m2=1.6, density_kg_m3=2700.0).round(2))
    8.64
    """
    volume = positive_or_nan(thickness_mm) * _M_PER_MM * positive_or_nan(area_m2)
    return positive_or_nan(density_kg_m3) * volume


def adiabatic_rise_k(
    heat_w: ArrayLike,
    seconds: ArrayLike,
    *,
    mass_kg: ArrayLike,
    heat_capacity_j_kgk: ArrayLike,
) -> FloatArray:
    """Give the rise when no heat leaves, ``Q t / sum(m c)``.

    Parameters
    ----------
    heat_w : array_like, shape (...)
        Heat that is set free, W.
    seconds : array_like, shape (...)
        How long, s; 1 gives the rate in K/s.
    mass_kg, heat_capacity_j_kgk : array_like, shape (..., parts)
        Mass in kg and specific heat capacity in J/(kg K) of all that warms up evenly.

    Returns
    -------
    ndarray, shape (...)
        K.

    Examples
    --------
    6 kW for a minute in 300 kg of cells and 20 kg of aluminium:

    >>> things = {"mass_kg": [300.0, 20.0], "heat_capacity_j_kgk": [1000.0, 880.0]}
    >>> print(adiabatic_rise_k(6000.0, 60.0, **things).round(2))
    1.13
    """
    held = positive_or_nan(mass_kg) * positive_or_nan(heat_capacity_j_kgk)
    whole = as_floats(np.atleast_1d(held).sum(axis=-1))
    return as_floats(heat_w) * as_floats(seconds) / whole


def _spread_w_m(flux_w_m2: ArrayLike, half_pitch_mm: ArrayLike) -> FloatArray:
    """Give ``q L^2 / 2`` in W m/m2 mm, so that a plate in mm gives K."""
    square = as_floats(positive_or_nan(half_pitch_mm) ** 2)
    return as_floats(flux_w_m2) * square * _M_PER_MM / 2.0
