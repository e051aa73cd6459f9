"""Mass of a weld, seam or bead from its section, length and density.

All functions broadcast; a dimension that is unknown or not positive gives NaN.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

G_PER_MM3 = 1e-6
"""Grams in a cubic millimetre at 1 kg/m3."""


def line_mass_g(
    section_mm2: ArrayLike, length_mm: ArrayLike, *, density_kg_m3: ArrayLike
) -> FloatArray:
    """Give the mass of a weld or bead from its section, ``rho A L``.

    Parameters
    ----------
    section_mm2 : array_like
        Section, mm2; 0 for a weld without filler.
    length_mm : array_like
        Length, mm.
    density_kg_m3 : array_like
        Density, kg/m3.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> print(line_mass_g(9.0, 1000.0, density_kg_m3=2700.0).round(1))
    24.3
    """
    volume_mm3 = as_floats(section_mm2) * as_floats(length_mm)
    return G_PER_MM3 * volume_mm3 * positive_or_nan(density_kg_m3)


def fillet_section_mm2(throat_mm: ArrayLike) -> FloatArray:
    """Give the section of a flat fillet weld of equal legs, ``a^2``.

    Parameters
    ----------
    throat_mm : array_like
        Throat ``a``, mm (ISO 2553).

    Returns
    -------
    ndarray
        mm2.

    Examples
    --------
    >>> print(fillet_section_mm2(3.0))
    9.0
    """
    return positive_or_nan(throat_mm) ** 2


def round_section_mm2(diameter_mm: ArrayLike) -> FloatArray:
    """Give the section of a round bead or bar, ``pi/4 d^2``.

    Parameters
    ----------
    diameter_mm : array_like
        Diameter, mm.

    Returns
    -------
    ndarray
        mm2.

    Examples
    --------
    >>> print(round_section_mm2(5.0).round(2))
    19.63
    """
    return math.pi / 4.0 * positive_or_nan(diameter_mm) ** 2


def rectangle_section_mm2(width_mm: ArrayLike, height_mm: ArrayLike) -> FloatArray:
    """Give the section of a flat bead, ``w h``.

    Parameters
    ----------
    width_mm, height_mm : array_like
        Width and height, mm.

    Returns
    -------
    ndarray
        mm2, of the broadcast shape.

    Examples
    --------
    >>> print(rectangle_section_mm2(12.0, 6.0))
    72.0
    """
    return positive_or_nan(width_mm) * positive_or_nan(height_mm)
