"""Plates that bend far: the middle of the plate stretches and carries as a membrane.

Edges are held in the plane of the plate all around, ``a`` is half of the short side.
``w = c a (q a (1 - nu^2) / (E t))^(1/3)`` at the centre (Foeppl's membrane). The
factors were computed by nonlinear finite elements for a Poisson's ratio of 0.3; from
0.2 to 0.45 they are right within 2 %. All functions broadcast; what is unknown, or a
size that is not above zero, gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import poisson_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_MPA_PER_GPA = 1000.0
_MPA_PER_KPA = 1e-3
_NO_STRETCH = 1e30

# Short over long side; deflection c; pull n midway at a long edge, in
# n (q^2 a^2 E t / (1 - nu^2))^(1/3) per length. A strip is exact: w^3 goes with 3/4.
_SIDES = np.array([0.0, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0])
_DEFLECTION = np.array(
    [
        0.75 ** (1 / 3),
        0.90824,
        0.90689,
        0.90459,
        0.89973,
        0.88834,
        0.86691,
        0.83453,
        0.79288,
        0.74508,
    ]
)
_PULL = np.array(
    [
        2 / 3 * 0.75 ** (2 / 3),
        0.55221,
        0.55964,
        0.57100,
        0.58025,
        0.58127,
        0.57076,
        0.54994,
        0.52230,
        0.49155,
    ]
)


def membrane_deflection_mm(
    pressure_kpa: ArrayLike,
    *,
    length_mm: ArrayLike,
    width_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    thickness_mm: ArrayLike,
    poisson_ratio: ArrayLike = 0.3,
) -> FloatArray:
    """Give the deflection of a sheet that only stretches (formula of this module).

    Parameters
    ----------
    pressure_kpa : array_like
        Uniform load, kPa; its sign is that of the deflection.
    length_mm, width_mm : array_like
        Sides between the edges that hold the sheet, mm, in any order.
    modulus_gpa : array_like
        Young's modulus, GPa; of a polymer hot and in the long term.
    thickness_mm : array_like
        Thickness, mm.
    poisson_ratio : array_like
        Poisson's ratio, -1 to 0.5.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    A steel lid under 1 m of water:

    >>> lid = {"length_mm": 1850.0, "width_mm": 1250.0, "modulus_gpa": 210.0}
    >>> print(membrane_deflection_mm(9.8, **lid, thickness_mm=0.7).round(1))
    18.3
    """
    half, ratio = _half(length_mm, width_mm)
    load = as_floats(pressure_kpa) * _MPA_PER_KPA * half
    share = load * (1.0 - poisson_or_nan(poisson_ratio) ** 2)
    pull = positive_or_nan(modulus_gpa) * _MPA_PER_GPA * positive_or_nan(thickness_mm)
    factor = np.interp(ratio, _SIDES, _DEFLECTION)
    return as_floats(factor * half * np.cbrt(share / pull))


def stretched_deflection_mm(plate_mm: ArrayLike, membrane_mm: ArrayLike) -> FloatArray:
    """Give the deflection of a plate that bends and stretches.

    Bending and stretching each carry their part of the load,
    ``w / w_plate + (w / w_membrane)^3 = 1`` (Timoshenko, Theory of Plates and Shells,
    chapter 13, approximate method; from memory).

    Parameters
    ----------
    plate_mm : array_like
        Deflection that bending alone would give, mm.
    membrane_mm : array_like
        Deflection that stretching alone would give, mm.

    Returns
    -------
    ndarray
        mm, of the broadcast shape, less than either.

    Examples
    --------
    Far beyond a thin plate, and well within:

    >>> stretched_deflection_mm([25_000.0, 0.1], [18.3, 1.0]).round(3)
    array([18.296,  0.1  ])
    """
    bent, stretched = np.abs(as_floats(plate_mm)), np.abs(as_floats(membrane_mm))
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = stretched / bent
    # Without a load both are zero; an unknown one stays unknown.
    ratio = np.where((bent == 0.0) & (stretched == 0.0), np.inf, ratio)
    # Cardano for x^3 + r x = 1, written so that two cube roots do not cancel: their
    # product is r / 3.
    third = np.minimum(ratio, _NO_STRETCH) / 3.0
    upper = np.cbrt(np.sqrt(0.25 + third**3) + 0.5)
    lower = third / upper
    shared = stretched / (upper**2 + third + lower**2)
    size = np.where(ratio >= _NO_STRETCH, bent, shared)
    return as_floats(np.sign(as_floats(plate_mm)) * size)


def stretch_stress_mpa(
    deflection_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    width_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    poisson_ratio: ArrayLike = 0.3,
) -> FloatArray:
    """Give the pull that a deflection puts into the middle plane, at a long edge.

    ``k E / (1 - nu^2) (w / a)^2`` with ``k = n / c^2`` of the factors of this module;
    2/3 for a strip. It is the greatest, and within a fifth of that at the centre.

    Parameters
    ----------
    deflection_mm : array_like
        Deflection at the centre, mm.
    length_mm, width_mm, modulus_gpa, poisson_ratio
        As in `membrane_deflection_mm`.

    Returns
    -------
    ndarray
        MPa, of the broadcast shape, zero or more.

    Examples
    --------
    >>> lid = {"length_mm": 1850.0, "width_mm": 1250.0, "modulus_gpa": 210.0}
    >>> print(stretch_stress_mpa(18.3, **lid).round())
    149.0
    """
    half, ratio = _half(length_mm, width_mm)
    deflection = np.interp(ratio, _SIDES, _DEFLECTION)
    factor = np.interp(ratio, _SIDES, _PULL) / deflection**2
    modulus = positive_or_nan(modulus_gpa) * _MPA_PER_GPA
    stiffness = factor * modulus / (1.0 - poisson_or_nan(poisson_ratio) ** 2)
    return as_floats(stiffness * (as_floats(deflection_mm) / half) ** 2)


def _half(length_mm: ArrayLike, width_mm: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Give half of the short side, and the ratio of the short side to the long one."""
    length, width = positive_or_nan(length_mm), positive_or_nan(width_mm)
    short = np.minimum(length, width)
    return short / 2.0, as_floats(short / np.maximum(length, width))
