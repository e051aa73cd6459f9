"""Mass of fasteners from their dimensions: nuts, studs, rivets, and what is imported.

Against published tables the estimates err by about 6 %, small screws by more: which
dimension is at its limit decides. All functions broadcast; unknown gives NaN.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._fastener_volumes import (
    flanged_mm3,
    hexagon_mm3,
    mass_g,
    shank_mm3,
)
from benchpack.calc.line_mass import (
    fillet_section_mm2,
    line_mass_g,
    rectangle_section_mm2,
    round_section_mm2,
)
from benchpack.calc.screw_mass import (
    STEEL_KG_M3,
    button_screw_mass_g,
    flange_screw_mass_g,
    hex_screw_mass_g,
    socket_screw_mass_g,
    usual_thread_length_mm,
)
from benchpack.calc.threads import solid_area_mm2

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

__all__ = [
    "ROUND_HEAD_DIAMETER",
    "ROUND_HEAD_HEIGHT",
    "STEEL_KG_M3",
    "button_screw_mass_g",
    "fillet_section_mm2",
    "flange_screw_mass_g",
    "hex_screw_mass_g",
    "line_mass_g",
    "nut_mass_g",
    "rectangle_section_mm2",
    "rivet_mass_g",
    "round_section_mm2",
    "socket_screw_mass_g",
    "stud_mass_g",
    "usual_thread_length_mm",
]

ROUND_HEAD_DIAMETER = 1.75
"""Head over shank diameter of a round head rivet (DIN 660)."""
ROUND_HEAD_HEIGHT = 0.6
"""Head height over shank diameter of a round head rivet (DIN 660)."""


def nut_mass_g(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    across_flats_mm: ArrayLike,
    height_mm: ArrayLike,
    flange_diameter_mm: ArrayLike = 0.0,
    flange_thickness_mm: ArrayLike = 0.0,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a hex nut, with a flange or without one.

    Parameters
    ----------
    diameter_mm, pitch_mm, density_kg_m3
        As in `hex_screw_mass_g`.
    across_flats_mm, height_mm : array_like
        Width across flats and whole height, mm.
    flange_diameter_mm, flange_thickness_mm : array_like
        Diameter of the flange, and its thickness at the edge, mm; 0 for none.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> print(nut_mass_g(8.0, 1.25, across_flats_mm=13.0, height_mm=6.8).round(1))
    5.4
    """
    outside = np.where(
        as_floats(flange_diameter_mm) == 0.0,
        hexagon_mm3(across_flats_mm, height_mm),
        flanged_mm3(
            across_flats_mm, height_mm, flange_diameter_mm, flange_thickness_mm
        ),
    )
    hole = solid_area_mm2(diameter_mm, pitch_mm) * positive_or_nan(height_mm)
    return mass_g(outside - hole, density_kg_m3)


def stud_mass_g(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    thread_length_mm: ArrayLike = math.inf,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a stud or threaded rod, ``rho A L``.

    Parameters
    ----------
    diameter_mm, pitch_mm, density_kg_m3
        As in `hex_screw_mass_g`.
    length_mm : array_like
        Whole length, mm.
    thread_length_mm : array_like
        Length of all threads together, mm. Left out: threaded throughout.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> print(stud_mass_g(8.0, 1.25, length_mm=25.0).round(1))
    8.1
    """
    shank = shank_mm3(diameter_mm, pitch_mm, length_mm, thread_length_mm)
    return mass_g(shank, density_kg_m3)


def rivet_mass_g(
    diameter_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    head_diameter_mm: ArrayLike | None = None,
    head_height_mm: ArrayLike | None = None,
    bore_diameter_mm: ArrayLike = 0.0,
    bore_depth_mm: ArrayLike = 0.0,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a round head rivet before it is set, solid or bored.

    The head is a cap of ``pi k / 6 (3 r^2 + k^2)`` above the length.

    Parameters
    ----------
    diameter_mm, length_mm : array_like
        Diameter of the shank, and its length below the head, mm.
    head_diameter_mm, head_height_mm : array_like, optional
        Diameter and height of the head, mm. Left out: 1.75 and 0.6 of the shank's
        diameter (DIN 660).
    bore_diameter_mm, bore_depth_mm : array_like
        Bore of a tubular rivet, mm; 0 for a solid one.
    density_kg_m3 : array_like
        Density, kg/m3.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> print(rivet_mass_g(4.0, length_mm=10.0).round(2))
    1.41
    """
    diameter = positive_or_nan(diameter_mm)
    across = ROUND_HEAD_DIAMETER * diameter
    if head_diameter_mm is not None:
        across = positive_or_nan(head_diameter_mm)
    height = ROUND_HEAD_HEIGHT * diameter
    if head_height_mm is not None:
        height = positive_or_nan(head_height_mm)
    head = math.pi * height / 6.0 * (0.75 * across**2 + height**2)
    shank = round_section_mm2(diameter) * positive_or_nan(length_mm)
    bore = math.pi / 4.0 * as_floats(bore_diameter_mm) ** 2 * as_floats(bore_depth_mm)
    return mass_g(head + shank - bore, density_kg_m3)
