"""Sections of beams: area, second moment of area, section modulus.

The height stands in the direction of the load. All functions broadcast; what is
unknown, or a size that is not above zero, gives NaN.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_KG_PER_M_MM2 = 1e-6


@dataclass(frozen=True, slots=True, eq=False)
class Section:
    """What a section brings to a beam that bends over its height.

    Parameters
    ----------
    area_mm2 : ndarray
        Area, mm2.
    second_moment_mm4 : ndarray
        Second moment of area about the axis across the load, mm4.
    modulus_mm3 : ndarray
        Section modulus, second moment over half the height, mm3.
    """

    area_mm2: FloatArray
    second_moment_mm4: FloatArray
    modulus_mm3: FloatArray

    def mass_kg_m(self, density_kg_m3: ArrayLike) -> FloatArray:
        """Give the mass per length, ``rho A``.

        Parameters
        ----------
        density_kg_m3 : array_like
            Density, kg/m3.

        Returns
        -------
        ndarray
            kg/m, of the broadcast shape.

        Examples
        --------
        >>> print(rectangle(40.0, 5.0).mass_kg_m(2700.0).round(2))
        0.54
        """
        return positive_or_nan(density_kg_m3) * self.area_mm2 * _KG_PER_M_MM2


def rectangle(width_mm: ArrayLike, height_mm: ArrayLike) -> Section:
    """Give a solid rectangle: ``b h``, ``b h^3 / 12``, ``b h^2 / 6``.

    Parameters
    ----------
    width_mm, height_mm : array_like
        Across and along the load, mm.

    Returns
    -------
    Section
        Arrays of the broadcast shape.

    Examples
    --------
    >>> section = rectangle(10.0, 20.0)
    >>> print(section.area_mm2, section.second_moment_mm4.round(1))
    200.0 6666.7
    """
    width, height = positive_or_nan(width_mm), positive_or_nan(height_mm)
    return _section(width * height, width * height**3 / 12.0, height)


def hollow_rectangle(
    width_mm: ArrayLike, height_mm: ArrayLike, *, wall_mm: ArrayLike
) -> Section:
    """Give a hollow rectangle of one wall, the outer rectangle less the inner.

    Corners are sharp inside and outside; rounded ones hold up to a tenth less.

    Parameters
    ----------
    width_mm, height_mm : array_like
        Outer sizes across and along the load, mm.
    wall_mm : array_like
        Wall, mm; half of the smaller side closes the section, more gives NaN.

    Returns
    -------
    Section
        Arrays of the broadcast shape.

    Examples
    --------
    A side profile of a tray:

    >>> section = hollow_rectangle(40.0, 80.0, wall_mm=3.0)
    >>> print(section.area_mm2, section.second_moment_mm4, section.modulus_mm3)
    684.0 558532.0 13963.3
    """
    width, height = positive_or_nan(width_mm), positive_or_nan(height_mm)
    wall = positive_or_nan(wall_mm)
    wall = np.where(2.0 * wall <= np.minimum(width, height), wall, np.nan)
    inner_width, inner_height = width - 2.0 * wall, height - 2.0 * wall
    area = width * height - inner_width * inner_height
    second = (width * height**3 - inner_width * inner_height**3) / 12.0
    return _section(area, second, height)


def _section(area: FloatArray, second: FloatArray, height: FloatArray) -> Section:
    return Section(
        area_mm2=area, second_moment_mm4=second, modulus_mm3=second / (height / 2.0)
    )
