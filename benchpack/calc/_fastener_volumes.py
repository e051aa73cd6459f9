"""Volumes that fasteners are put together from."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc.line_mass import G_PER_MM3, round_section_mm2
from benchpack.calc.threads import solid_area_mm2

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

HEXAGON_AREA = math.sqrt(3.0) / 2.0
"""Area of a hexagon over the square of its width across flats."""
# Chamfers, and widths that are made below their nominal, which is their upper limit.
_HEXAGON_FILL = 0.975
# Slope of the upper side of a flange, 15 to 30 degrees (EN 1665, from memory).
_FLANGE_SLOPE = math.tan(math.radians(20.0))


def mass_g(volume_mm3: FloatArray, density_kg_m3: ArrayLike) -> FloatArray:
    """Give the mass of a volume, g."""
    return G_PER_MM3 * volume_mm3 * positive_or_nan(density_kg_m3)


def shank_mm3(
    diameter_mm: ArrayLike,
    pitch_mm: ArrayLike,
    length_mm: ArrayLike,
    thread_length_mm: ArrayLike,
) -> FloatArray:
    """Give the volume of a threaded length and the plain shank that is left, mm3."""
    length = positive_or_nan(length_mm)
    threaded = np.minimum(length, positive_or_nan(thread_length_mm))
    thread = solid_area_mm2(diameter_mm, pitch_mm) * threaded
    return as_floats(thread + round_section_mm2(diameter_mm) * (length - threaded))


def hexagon_mm3(across_flats_mm: ArrayLike, height_mm: ArrayLike) -> FloatArray:
    """Give the volume of a hexagon, chamfered and in the middle of its tolerance."""
    area = HEXAGON_AREA * positive_or_nan(across_flats_mm) ** 2
    return _HEXAGON_FILL * area * positive_or_nan(height_mm)


def socket_mm3(drive_size_mm: ArrayLike, drive_depth_mm: ArrayLike) -> FloatArray:
    """Give the volume that a hexagon socket takes out, mm3."""
    area = HEXAGON_AREA * positive_or_nan(drive_size_mm) ** 2
    return area * positive_or_nan(drive_depth_mm)


def flanged_mm3(
    across_flats_mm: ArrayLike,
    height_mm: ArrayLike,
    flange_diameter_mm: ArrayLike,
    flange_thickness_mm: ArrayLike,
) -> FloatArray:
    """Give the volume of a hexagon on a disc with a cone around its foot."""
    flats = positive_or_nan(across_flats_mm)
    thickness = positive_or_nan(flange_thickness_mm)
    disc = round_section_mm2(flange_diameter_mm) * thickness
    above = positive_or_nan(positive_or_nan(height_mm) - thickness)
    outer = positive_or_nan(flange_diameter_mm) / 2.0
    # The hexagon counts as the round of the same area where the cone meets it.
    inner = flats * math.sqrt(HEXAGON_AREA / math.pi)
    inner = np.minimum(inner, outer)
    ring = outer * (outer**2 - inner**2) / 2.0 - (outer**3 - inner**3) / 3.0
    cone = 2.0 * math.pi * _FLANGE_SLOPE * ring
    return as_floats(disc + cone + hexagon_mm3(flats, above))
