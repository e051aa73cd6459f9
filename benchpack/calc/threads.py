"""Metric threads: their diameters, the areas that carry and that weigh, proof load.

All functions broadcast. A size that is unknown, not positive, or so coarse that its
core vanishes gives NaN.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

HEIGHT_PER_PITCH = math.sqrt(3.0) / 2.0
"""Height of the sharp triangle per pitch, ``H = sqrt(3)/2 P`` (ISO 68-1)."""


def pitch_diameter_mm(diameter_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give the pitch diameter, ``d2 = d - 0.75 H = d - 0.649519 P`` (ISO 724).

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> print(pitch_diameter_mm(8.0, 1.25).round(3))
    7.188
    """
    diameter, height = positive_or_nan(diameter_mm), _height(pitch_mm)
    return positive_or_nan(diameter - 0.75 * height)


def minor_diameter_mm(diameter_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give the minor diameter of the screw, ``d3 = d1 - H/6 = d - 1.226869 P``.

    ``d1 = d - 1.25 H`` is the basic minor diameter (ISO 724), the sixth of ``H`` the
    rounded root (ISO 898-1, from memory).

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> print(minor_diameter_mm(8.0, 1.25).round(3))
    6.466
    """
    diameter, height = positive_or_nan(diameter_mm), _height(pitch_mm)
    return positive_or_nan(diameter - (1.25 + 1.0 / 6.0) * height)


def stress_diameter_mm(diameter_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give the diameter of the stress area, ``ds = (d2 + d3) / 2`` (ISO 898-1).

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> print(stress_diameter_mm(8.0, 1.25).round(3))
    6.827
    """
    outer = pitch_diameter_mm(diameter_mm, pitch_mm)
    return (outer + minor_diameter_mm(diameter_mm, pitch_mm)) / 2.0


def stress_area_mm2(diameter_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give the area that carries the load, ``pi/4 ((d2 + d3)/2)^2`` (ISO 898-1).

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.

    Returns
    -------
    ndarray
        mm2, of the broadcast shape.

    Examples
    --------
    >>> stress_area_mm2([5.0, 6.0, 8.0], [0.8, 1.0, 1.25]).round(1)
    array([14.2, 20.1, 36.6])
    """
    return math.pi / 4.0 * stress_diameter_mm(diameter_mm, pitch_mm) ** 2


def solid_area_mm2(diameter_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give the mean solid area of the thread, which is what weighs.

    The square of the radius is averaged over one pitch of the basic profile (ISO 68-1):
    an eighth at the crest, a quarter at the root, two flanks between. A tenth more than
    the stress area.

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.

    Returns
    -------
    ndarray
        mm2, of the broadcast shape.

    Examples
    --------
    >>> solid_area_mm2([5.0, 6.0, 8.0], [0.8, 1.0, 1.25]).round(2)
    array([16.08, 22.96, 41.36])
    """
    diameter = positive_or_nan(diameter_mm)
    outer = diameter / 2.0
    inner = positive_or_nan(diameter - 1.25 * _height(pitch_mm)) / 2.0
    flank = (outer**2 + outer * inner + inner**2) / 3.0
    return math.pi * (outer**2 / 8.0 + inner**2 / 4.0 + 5.0 / 8.0 * flank)


def proof_load_n(stress_area_mm2: ArrayLike, proof_stress_mpa: ArrayLike) -> FloatArray:
    """Give the load a screw holds without lasting stretch, ``S_p A_s`` (ISO 898-1).

    Parameters
    ----------
    stress_area_mm2 : array_like
        Stress area, mm2. The tables of the standard round it to three digits.
    proof_stress_mpa : array_like
        Proof stress of the property class, MPa.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> print(proof_load_n(36.6, 580.0))
    21228.0
    """
    return as_floats(stress_area_mm2) * as_floats(proof_stress_mpa)


def _height(pitch_mm: ArrayLike) -> FloatArray:
    return HEIGHT_PER_PITCH * positive_or_nan(pitch_mm)
