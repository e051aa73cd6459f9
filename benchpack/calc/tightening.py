"""Tightening a screw: torque, preload, and how far the preload scatters.

After VDI 2230-1. The figures are for comparing joints; a joint is designed with the
whole guideline. All functions broadcast; unknown stays NaN.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc.threads import pitch_diameter_mm, stress_diameter_mm

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

FLANK_FACTOR = 2.0 / math.sqrt(3.0)
"""Friction on the flanks counts ``1 / cos 30`` times, 1.155."""


def friction_diameter_mm(
    face_diameter_mm: ArrayLike, hole_diameter_mm: ArrayLike
) -> FloatArray:
    """Give the mean diameter at which the head rubs, ``D_Km = (d_w + d_h) / 2``.

    Parameters
    ----------
    face_diameter_mm, hole_diameter_mm : array_like
        Outer diameter of the bearing face and diameter of the hole below it, mm.

    Returns
    -------
    ndarray
        mm, of the broadcast shape. Source: DIN 946, VDI 2230-1.

    Examples
    --------
    >>> print(friction_diameter_mm(11.6, 9.0))
    10.3
    """
    return (positive_or_nan(face_diameter_mm) + positive_or_nan(hole_diameter_mm)) / 2.0


def yield_preload_n(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    yield_stress_mpa: ArrayLike,
    thread_friction: ArrayLike,
    degree: ArrayLike = 0.9,
) -> FloatArray:
    """Give the preload at which pull and twist together reach a share of yield.

    ``F = nu A_s R_p / sqrt(1 + 3 [1.5 d2/d_s (P/(pi d2) + 1.155 mu_G)]^2)`` with
    ``d_s = (d2 + d3)/2`` (VDI 2230-1).

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.
    yield_stress_mpa : array_like
        Least yield stress of the property class, MPa.
    thread_friction : array_like
        Friction in the thread ``mu_G``; below 0 gives NaN.
    degree : array_like
        Share of yield that is used, ``nu``.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> preload = yield_preload_n(
    ...     8.0, 1.25, yield_stress_mpa=640.0, thread_friction=[0.1, 0.12, 0.14]
    ... )
    >>> (preload / 1000).round(1)
    array([19.1, 18.6, 18.1])
    """
    flank = pitch_diameter_mm(diameter_mm, pitch_mm)
    stressed = stress_diameter_mm(diameter_mm, pitch_mm)
    slope = positive_or_nan(pitch_mm) / (math.pi * flank)
    friction = FLANK_FACTOR * _friction(thread_friction)
    twist = 1.5 * flank / stressed * (slope + friction)
    pull = math.pi / 4.0 * stressed**2 * as_floats(yield_stress_mpa)
    return as_floats(degree) * pull / np.sqrt(1.0 + 3.0 * twist**2)


def tightening_torque_nm(
    preload_n: ArrayLike,
    *,
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    bearing_diameter_mm: ArrayLike,
    thread_friction: ArrayLike,
    head_friction: ArrayLike,
) -> FloatArray:
    """Give the torque for a preload, ``F (0.159 P + 0.577 d2 mu_G + D_Km/2 mu_K)``.

    Parameters
    ----------
    preload_n : array_like
        Preload, N.
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.
    bearing_diameter_mm : array_like
        Mean diameter ``D_Km`` at which the head or the nut rubs, mm.
    thread_friction, head_friction : array_like
        Friction in the thread and under the head, ``mu_G`` and ``mu_K``.

    Returns
    -------
    ndarray
        Nm, of the broadcast shape. Source: VDI 2230-1.

    Examples
    --------
    >>> torque = tightening_torque_nm(
    ...     18_600.0,
    ...     diameter_mm=8.0,
    ...     pitch_mm=1.25,
    ...     bearing_diameter_mm=10.4,
    ...     thread_friction=0.12,
    ...     head_friction=0.12,
    ... )
    >>> print(torque.round(1))
    24.6
    """
    arm_mm = _arm_mm(
        diameter_mm, pitch_mm, bearing_diameter_mm, thread_friction, head_friction
    )
    return as_floats(preload_n) * arm_mm / 1000.0


def preload_at_torque_n(
    torque_nm: ArrayLike,
    *,
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    bearing_diameter_mm: ArrayLike,
    thread_friction: ArrayLike,
    head_friction: ArrayLike,
) -> FloatArray:
    """Give the preload that a torque makes, the inverse of `tightening_torque_nm`.

    Parameters
    ----------
    torque_nm : array_like
        Torque, Nm.
    diameter_mm, pitch_mm, bearing_diameter_mm, thread_friction, head_friction
        As in `tightening_torque_nm`.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> preload = preload_at_torque_n(
    ...     24.6,
    ...     diameter_mm=8.0,
    ...     pitch_mm=1.25,
    ...     bearing_diameter_mm=10.4,
    ...     thread_friction=0.12,
    ...     head_friction=0.12,
    ... )
    >>> print((preload / 1000).round(1))
    18.6
    """
    arm_mm = _arm_mm(
        diameter_mm, pitch_mm, bearing_diameter_mm, thread_friction, head_friction
    )
    return 1000.0 * as_floats(torque_nm) / arm_mm


def scatter_factor(spread: ArrayLike) -> FloatArray:
    """Give the tightening factor of a symmetric spread, ``(1 + s) / (1 - s)``.

    Parameters
    ----------
    spread : array_like
        Spread of the preload either way as a fraction of its mean, 0 to below 1;
        anything else gives NaN.

    Returns
    -------
    ndarray
        ``alpha_A = F_max / F_min``, 1 or more (VDI 2230-1).

    Examples
    --------
    >>> scatter_factor([0.09, 0.23, 0.6]).round(1)
    array([1.2, 1.6, 4. ])
    """
    spreads = as_floats(spread)
    known = np.where((spreads >= 0.0) & (spreads < 1.0), spreads, np.nan)
    return (1.0 + known) / (1.0 - known)


def least_preload_n(
    greatest_preload_n: ArrayLike, scatter_factor: ArrayLike
) -> FloatArray:
    """Give the preload that is left when all goes badly, ``F_min = F_max / alpha_A``.

    Parameters
    ----------
    greatest_preload_n : array_like
        Preload when all goes well, N.
    scatter_factor : array_like
        ``alpha_A`` of the method; below 1 gives NaN.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> (least_preload_n(18_600.0, [1.2, 1.6, 2.0]) / 1000).round(1)
    array([15.5, 11.6,  9.3])
    """
    factors = as_floats(scatter_factor)
    return as_floats(greatest_preload_n) / np.where(factors >= 1.0, factors, np.nan)


def _friction(values: ArrayLike) -> FloatArray:
    friction = as_floats(values)
    return np.where(friction >= 0.0, friction, np.nan)


def _arm_mm(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    bearing_diameter_mm: ArrayLike,
    thread_friction: ArrayLike,
    head_friction: ArrayLike,
) -> FloatArray:
    """Give torque per preload, mm."""
    slope = positive_or_nan(pitch_mm) / (2.0 * math.pi)
    flank = pitch_diameter_mm(diameter_mm, pitch_mm) / 2.0
    head = positive_or_nan(bearing_diameter_mm) / 2.0
    in_thread = FLANK_FACTOR * flank * _friction(thread_friction)
    return slope + in_thread + head * _friction(head_friction)
