"""Rectangular plates under uniform load: how far they bend, and how hard.

Small deflections of a thin plate (Kirchhoff), all four edges alike: simply supported
and held down at the corners, or clamped. ``a`` is the short side, ``b`` the long one.
All functions broadcast; what is unknown, or a size that is not above zero,
gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import poisson_or_nan
from benchpack.calc.plate_factors import Edges, deflection_factor, moment_factor

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

THIN_PLATE_SHARE = 0.5
"""Deflection over thickness up to which thin-plate theory is used."""

_MPA_PER_GPA = 1000.0
_MPA_PER_KPA = 1e-3


def rigidity_n_mm(
    modulus_gpa: ArrayLike, thickness_mm: ArrayLike, *, poisson_ratio: ArrayLike
) -> FloatArray:
    """Give the bending rigidity of a plate, ``D = E t^3 / (12 (1 - nu^2))``.

    Parameters
    ----------
    modulus_gpa : array_like
        Young's modulus, GPa; of a polymer hot and in the long term.
    thickness_mm : array_like
        Thickness, mm.
    poisson_ratio : array_like
        Poisson's ratio, -1 to 0.5.

    Returns
    -------
    ndarray
        N mm, of the broadcast shape.

    Examples
    --------
    >>> print(rigidity_n_mm(69.5, 2.0, poisson_ratio=0.33).round())
    51996.0
    """
    modulus = positive_or_nan(modulus_gpa) * _MPA_PER_GPA
    cube = as_floats(positive_or_nan(thickness_mm) ** 3)
    return modulus * cube / (12.0 * (1.0 - poisson_or_nan(poisson_ratio) ** 2))


def deflection_mm(
    pressure_kpa: ArrayLike,
    *,
    length_mm: ArrayLike,
    width_mm: ArrayLike,
    rigidity_n_mm: ArrayLike,
    edges: Edges,
) -> FloatArray:
    """Give the deflection at the centre, ``w = alpha q a^4 / D``.

    Parameters
    ----------
    pressure_kpa : array_like
        Uniform load ``q``, kPa; its sign is that of the deflection.
    length_mm, width_mm : array_like
        Sides between the edges that hold the plate, mm, in any order.
    rigidity_n_mm : array_like
        Bending rigidity ``D``, N mm.
    edges : {"supported", "clamped"}
        How the four edges are held.

    Returns
    -------
    ndarray
        mm, of the broadcast shape; `is_thin_plate` says whether the theory holds.

    Raises
    ------
    RequestError
        For any other word for the edges.

    Examples
    --------
    A tray floor between cross members, 2 mm aluminium under 2 kPa:

    >>> span = {"length_mm": 600.0, "width_mm": 300.0, "edges": "clamped"}
    >>> print(deflection_mm(2.0, **span, rigidity_n_mm=52000.0).round(2))
    0.79
    """
    short, ratio = _sides(length_mm, width_mm)
    load = as_floats(pressure_kpa) * _MPA_PER_KPA * as_floats(short**4)
    return deflection_factor(ratio, edges) * load / positive_or_nan(rigidity_n_mm)


def greatest_moment_n(
    pressure_kpa: ArrayLike,
    *,
    length_mm: ArrayLike,
    width_mm: ArrayLike,
    edges: Edges,
    poisson_ratio: ArrayLike = 0.3,
) -> FloatArray:
    """Give the greatest bending moment per length, ``M = beta q a^2``.

    Parameters
    ----------
    pressure_kpa : array_like
        Uniform load ``q``, kPa.
    length_mm, width_mm : array_like
        Sides between the edges that hold the plate, mm, in any order.
    edges, poisson_ratio
        As in `moment_factor`.

    Returns
    -------
    ndarray
        N mm per mm, that is N, of the broadcast shape, with the sign of the load. At
        clamped edges it is what the frame has to hold.

    Raises
    ------
    RequestError
        For any other word for the edges.

    Examples
    --------
    >>> span = {"length_mm": 600.0, "width_mm": 300.0, "edges": "clamped"}
    >>> print(greatest_moment_n(2.0, **span).round(2))
    14.92
    """
    short, ratio = _sides(length_mm, width_mm)
    load = as_floats(pressure_kpa) * _MPA_PER_KPA * as_floats(short**2)
    return moment_factor(ratio, edges, poisson_ratio=poisson_ratio) * load


def plate_stress_mpa(moment_n: ArrayLike, thickness_mm: ArrayLike) -> FloatArray:
    """Give the stress at the faces of a bent plate, ``6 M / t^2``.

    Parameters
    ----------
    moment_n : array_like
        Bending moment per length, N mm per mm.
    thickness_mm : array_like
        Thickness, mm.

    Returns
    -------
    ndarray
        MPa, of the broadcast shape.

    Examples
    --------
    >>> print(plate_stress_mpa(14.92, 2.0).round(2))
    22.38
    """
    square = as_floats(positive_or_nan(thickness_mm) ** 2)
    return 6.0 * as_floats(moment_n) / square


def is_thin_plate(
    deflection_mm: ArrayLike, thickness_mm: ArrayLike
) -> NDArray[np.bool_]:
    """Say whether thin-plate theory still holds, ``|w| <= t / 2``.

    Beyond it the middle of the plate stretches and carries load as a membrane: the
    plate then bends less than computed, and pulls at its edges (Timoshenko, Theory of
    Plates and Shells, chapter 13; from memory).

    Parameters
    ----------
    deflection_mm, thickness_mm : array_like
        Deflection and thickness, mm.

    Returns
    -------
    ndarray of bool
        Of the broadcast shape; False too where either is unknown.

    Examples
    --------
    >>> is_thin_plate([0.79, 1.2], 2.0)
    array([ True, False])
    """
    limit = THIN_PLATE_SHARE * positive_or_nan(thickness_mm)
    return np.asarray(np.abs(as_floats(deflection_mm)) <= limit)


def _sides(length_mm: ArrayLike, width_mm: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Give the short side and the ratio of the long one to it."""
    length, width = positive_or_nan(length_mm), positive_or_nan(width_mm)
    short = np.minimum(length, width)
    return short, as_floats(np.maximum(length, width) / short)
