"""What a flat busbar carries, what two of them do to each other, what a short leaves.

All functions broadcast; what is unknown, or a size or distance that is not above zero,
gives NaN. Direct current: skin and proximity effects are left out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan, power

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

COPPER_MS_M = 58.0
"""Conductivity of annealed copper at 20 degC, MS/m (IEC 60028, from memory)."""
AMPACITY_EXPONENT = 0.39
"""Power of the perimeter in the ampacity formula."""
_AMPACITY_FACTOR = 7.73
_FORCE_CONSTANT = 2e-7  # N/A2, mu_0 / (2 pi)
_MM_PER_M = 1000.0


def ampacity_a(
    width_mm: ArrayLike,
    thickness_mm: ArrayLike,
    *,
    conductivity_ms_m: ArrayLike = COPPER_MS_M,
) -> FloatArray:
    """Give the steady current of one bar in still air, ``7.73 A^0.5 p^0.39``.

    One bare flat copper bar on edge, direct current, still but unconfined air, 50 K
    above 40 degC (Copper Development Association, Publication 22, section 10). Against
    published tables it holds for 12 to 200 mm by 3 to 10 mm. Another metal is scaled
    with ``sqrt(conductivity / 58 MS/m)``: equal heat ``I^2 R``, derived.

    Parameters
    ----------
    width_mm, thickness_mm : array_like
        Sides of the section, mm.
    conductivity_ms_m : array_like
        Electrical conductivity at 20 degC, MS/m.

    Returns
    -------
    ndarray
        A, of the broadcast shape.

    Examples
    --------
    >>> ampacity_a([20.0, 40.0, 100.0], [2.0, 3.0, 6.3]).round()
    array([ 214.,  481., 1569.])
    """
    width, thickness = positive_or_nan(width_mm), positive_or_nan(thickness_mm)
    perimeter = power(2.0 * (width + thickness), AMPACITY_EXPONENT)
    share = positive_or_nan(conductivity_ms_m) / COPPER_MS_M
    root: FloatArray = np.sqrt(width * thickness * share)
    return _AMPACITY_FACTOR * root * perimeter


def current_density_a_mm2(current_a: ArrayLike, section_mm2: ArrayLike) -> FloatArray:
    """Give the current per section, ``I / A``.

    Parameters
    ----------
    current_a : array_like
        Current, A.
    section_mm2 : array_like
        Section of the conductor, mm2.

    Returns
    -------
    ndarray
        A/mm2, of the broadcast shape.

    Examples
    --------
    >>> print(current_density_a_mm2(214.0, 40.0))
    5.35
    """
    return as_floats(current_a) / positive_or_nan(section_mm2)


def bar_force_n_m(
    first_a: ArrayLike, second_a: ArrayLike, *, distance_mm: ArrayLike
) -> FloatArray:
    """Give the force between long parallel conductors, ``2e-7 I1 I2 / d`` per metre.

    The force of thin wires (SI definition of the ampere before 2019; IEC 60865-1 names
    it and corrects it with a shape factor where the bars are near for their size).

    Parameters
    ----------
    first_a, second_a : array_like
        Currents, A. Of one sign they run the same way and the bars attract.
    distance_mm : array_like
        Distance of the axes, mm.

    Returns
    -------
    ndarray
        N/m, of the broadcast shape; positive where the bars attract.

    Examples
    --------
    >>> bar_force_n_m(5000.0, 5000.0, distance_mm=[20.0, 40.0])
    array([250., 125.])
    """
    product = as_floats(first_a) * as_floats(second_a)
    return _FORCE_CONSTANT * product * _MM_PER_M / positive_or_nan(distance_mm)


def bar_force_n(
    first_a: ArrayLike,
    second_a: ArrayLike,
    *,
    distance_mm: ArrayLike,
    length_mm: ArrayLike,
) -> FloatArray:
    """Give the force over a length of parallel bars, ``2e-7 I1 I2 L / d``.

    Parameters
    ----------
    first_a, second_a, distance_mm
        As in `bar_force_n_m`.
    length_mm : array_like
        Length over which they run side by side, mm; long against the distance.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> print(bar_force_n(5000.0, 5000.0, distance_mm=20.0, length_mm=1200.0))
    300.0
    """
    per_metre = bar_force_n_m(first_a, second_a, distance_mm=distance_mm)
    return per_metre * as_floats(length_mm) / _MM_PER_M


def adiabatic_constant(
    initial_degc: ArrayLike,
    final_degc: ArrayLike,
    *,
    metal_constant: ArrayLike,
    zero_resistance_k: ArrayLike,
) -> FloatArray:
    """Give what a metal bears in a short, ``k = K sqrt(ln((b + Tf) / (b + Ti)))``.

    No heat is lost in the time (IEC 60949, IEC 60364-5-54; from memory). Copper:
    K = 226, b = 234.5; aluminium: K = 148, b = 228.

    Parameters
    ----------
    initial_degc, final_degc : array_like
        Temperature before and after, degC; NaN where it falls.
    metal_constant : array_like
        ``K``, A s^0.5/mm2.
    zero_resistance_k : array_like
        ``b``, the temperature below 0 degC at which the resistance would vanish, K.

    Returns
    -------
    ndarray
        A s^0.5/mm2, of the broadcast shape.

    Examples
    --------
    >>> metals = {"metal_constant": [226.0, 148.0], "zero_resistance_k": [234.5, 228.0]}
    >>> adiabatic_constant(70.0, 200.0, **metals).round(1)
    array([134.8,  89. ])
    """
    shift = as_floats(zero_resistance_k)
    before = positive_or_nan(shift + as_floats(initial_degc))
    after = positive_or_nan(shift + as_floats(final_degc))
    ratio = after / before
    root: FloatArray = np.sqrt(np.log(np.where(ratio >= 1.0, ratio, np.nan)))
    return as_floats(metal_constant) * root


def short_time_current_a(
    section_mm2: ArrayLike, duration_s: ArrayLike, *, constant: ArrayLike
) -> FloatArray:
    """Give the current a section bears for a short time, ``I = k S / sqrt(t)``.

    Without loss of heat, so for some seconds at most (IEC 60949, from memory).

    Parameters
    ----------
    section_mm2 : array_like
        Section of the conductor, mm2.
    duration_s : array_like
        Duration, s.
    constant : array_like
        ``k`` of `adiabatic_constant`, A s^0.5/mm2.

    Returns
    -------
    ndarray
        A, of the broadcast shape.

    Examples
    --------
    >>> short_time_current_a(60.0, [1.0, 4.0], constant=135.0)
    array([8100., 4050.])
    """
    root: FloatArray = np.sqrt(positive_or_nan(duration_s))
    return as_floats(constant) * positive_or_nan(section_mm2) / root
