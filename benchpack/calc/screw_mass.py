"""Mass of a screw from the dimensions of its product standard.

Threads weigh by their mean solid area, not by their stress area. All functions
broadcast; a dimension that is unknown or not positive gives NaN.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._fastener_volumes import (
    flanged_mm3,
    hexagon_mm3,
    mass_g,
    shank_mm3,
    socket_mm3,
)
from benchpack.calc.line_mass import round_section_mm2

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

STEEL_KG_M3 = 7850.0
"""Density of steel in the weight tables of fasteners."""

# Diameter and height of a round head at the middle of their tolerances (ISO 4762).
_ROUND_FILL = 0.96
# Diameter of the flat on top of a button head over its diameter (ISO 7380-1).
_BUTTON_TOP = 0.55


def usual_thread_length_mm(
    diameter_mm: ArrayLike, *, allowance_mm: ArrayLike = 12.0
) -> FloatArray:
    """Give how long the thread of a screw with a plain shank is, ``b = 2 d + a``.

    Parameters
    ----------
    diameter_mm : array_like
        Nominal diameter, mm.
    allowance_mm : array_like
        12 for socket screws (ISO 4762), 6 for hex bolts to 125 mm (ISO 4014).

    Returns
    -------
    ndarray
        mm; a shorter screw is threaded to its head.

    Examples
    --------
    >>> print(usual_thread_length_mm(8.0))
    28.0
    """
    return 2.0 * positive_or_nan(diameter_mm) + as_floats(allowance_mm)


def hex_screw_mass_g(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    across_flats_mm: ArrayLike,
    head_height_mm: ArrayLike,
    thread_length_mm: ArrayLike = math.inf,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a hex head screw, ``rho (0.866 s^2 k 0.975 + A L)``.

    Parameters
    ----------
    diameter_mm, pitch_mm : array_like
        Nominal diameter and pitch, mm.
    length_mm : array_like
        Length below the head, mm.
    across_flats_mm, head_height_mm : array_like
        Nominal width across flats ``s`` and height of the head ``k``, mm.
    thread_length_mm : array_like
        Length of the thread, mm; the rest is plain shank. Left out: to the head.
    density_kg_m3 : array_like
        Density, kg/m3.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> mass = hex_screw_mass_g(
    ...     8.0, 1.25, length_mm=25.0, across_flats_mm=13.0, head_height_mm=5.3
    ... )
    >>> print(mass.round(2))
    14.05
    """
    shank = shank_mm3(diameter_mm, pitch_mm, length_mm, thread_length_mm)
    return mass_g(hexagon_mm3(across_flats_mm, head_height_mm) + shank, density_kg_m3)


def socket_screw_mass_g(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    head_diameter_mm: ArrayLike,
    head_height_mm: ArrayLike,
    drive_size_mm: ArrayLike,
    drive_depth_mm: ArrayLike,
    thread_length_mm: ArrayLike = math.inf,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a socket head screw: cylinder less hexagon socket, and thread.

    Parameters
    ----------
    diameter_mm, pitch_mm, length_mm, thread_length_mm, density_kg_m3
        As in `hex_screw_mass_g`; see `usual_thread_length_mm`.
    head_diameter_mm, head_height_mm : array_like
        Nominal diameter and height of the head, mm; they are taken as upper limits.
    drive_size_mm, drive_depth_mm : array_like
        Width across flats and depth of the socket, mm.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> mass = socket_screw_mass_g(
    ...     8.0,
    ...     1.25,
    ...     length_mm=25.0,
    ...     head_diameter_mm=13.0,
    ...     head_height_mm=8.0,
    ...     drive_size_mm=6.0,
    ...     drive_depth_mm=4.0,
    ... )
    >>> print(mass.round(1))
    15.1
    """
    round_mm2 = round_section_mm2(head_diameter_mm)
    head = _ROUND_FILL * round_mm2 * positive_or_nan(head_height_mm)
    head -= socket_mm3(drive_size_mm, drive_depth_mm)
    shank = shank_mm3(diameter_mm, pitch_mm, length_mm, thread_length_mm)
    return mass_g(head + shank, density_kg_m3)


def button_screw_mass_g(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    head_diameter_mm: ArrayLike,
    head_height_mm: ArrayLike,
    drive_size_mm: ArrayLike,
    drive_depth_mm: ArrayLike,
    thread_length_mm: ArrayLike = math.inf,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a button head screw: a slice of a sphere less its socket.

    The slice ends in a flat of 0.55 of the head's diameter (ISO 7380-1); its volume is
    ``pi h / 6 (3 r1^2 + 3 r2^2 + h^2)``.

    Parameters
    ----------
    diameter_mm, pitch_mm, length_mm, thread_length_mm, density_kg_m3
        As in `hex_screw_mass_g`.
    head_diameter_mm, head_height_mm, drive_size_mm, drive_depth_mm
        As in `socket_screw_mass_g`.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> mass = button_screw_mass_g(
    ...     6.0,
    ...     1.0,
    ...     length_mm=16.0,
    ...     head_diameter_mm=10.5,
    ...     head_height_mm=3.3,
    ...     drive_size_mm=4.0,
    ...     drive_depth_mm=2.08,
    ... )
    >>> print(mass.round(1))
    4.2
    """
    height = positive_or_nan(head_height_mm)
    radius = positive_or_nan(head_diameter_mm) / 2.0
    squares = 3.0 * radius**2 * (1.0 + _BUTTON_TOP**2) + height**2
    head = _ROUND_FILL * math.pi * height / 6.0 * squares
    head -= socket_mm3(drive_size_mm, drive_depth_mm)
    shank = shank_mm3(diameter_mm, pitch_mm, length_mm, thread_length_mm)
    return mass_g(head + shank, density_kg_m3)


def flange_screw_mass_g(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    *,
    length_mm: ArrayLike,
    across_flats_mm: ArrayLike,
    head_height_mm: ArrayLike,
    flange_diameter_mm: ArrayLike,
    flange_thickness_mm: ArrayLike,
    thread_length_mm: ArrayLike = math.inf,
    density_kg_m3: ArrayLike = STEEL_KG_M3,
) -> FloatArray:
    """Give the mass of a hex flange screw: disc, cone above it, hexagon, and thread.

    Parameters
    ----------
    diameter_mm, pitch_mm, length_mm, thread_length_mm, density_kg_m3
        As in `hex_screw_mass_g`.
    across_flats_mm : array_like
        Width across flats, mm.
    head_height_mm : array_like
        Height of the whole head with its flange, mm.
    flange_diameter_mm, flange_thickness_mm : array_like
        Diameter of the flange, and its thickness at the edge, mm.

    Returns
    -------
    ndarray
        g, of the broadcast shape.

    Examples
    --------
    >>> mass = flange_screw_mass_g(
    ...     6.0,
    ...     1.0,
    ...     length_mm=20.0,
    ...     across_flats_mm=10.0,
    ...     head_height_mm=6.6,
    ...     flange_diameter_mm=14.2,
    ...     flange_thickness_mm=1.1,
    ... )
    >>> print(mass.round(1))
    8.8
    """
    head = flanged_mm3(
        across_flats_mm, head_height_mm, flange_diameter_mm, flange_thickness_mm
    )
    shank = shank_mm3(diameter_mm, pitch_mm, length_mm, thread_length_mm)
    return mass_g(head + shank, density_kg_m3)
