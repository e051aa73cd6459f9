"""Sizes of threaded fasteners: pitches, heads, holes, by product standard."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from benchpack.model.head_tables import (
    BUTTON_MM,
    FLANGE_NUT_MM,
    HEAVY_FLANGE_MM,
    HEX_BEARING_MM,
    HEX_MM,
    NUT_HEIGHT_MM,
    OLD_FLATS_MM,
    OLD_NUT_HEIGHT_MM,
    SMALL_FLANGE_MM,
    SOCKET_MM,
)
from benchpack.model.property_classes import (
    PROPERTY_CLASSES,
    PropertyClass,
    property_class,
)

__all__ = [
    "CLEARANCE_HOLES_MM",
    "COARSE_PITCHES_MM",
    "HEADS",
    "PROPERTY_CLASSES",
    "HeadSize",
    "PropertyClass",
    "head_size",
    "property_class",
]

COARSE_PITCHES_MM: Mapping[float, float] = MappingProxyType(
    {
        2.0: 0.4,
        2.5: 0.45,
        3.0: 0.5,
        3.5: 0.6,
        4.0: 0.7,
        5.0: 0.8,
        6.0: 1.0,
        7.0: 1.0,
        8.0: 1.25,
        10.0: 1.5,
        12.0: 1.75,
        14.0: 2.0,
        16.0: 2.0,
        18.0: 2.5,
        20.0: 2.5,
        22.0: 2.5,
        24.0: 3.0,
        27.0: 3.0,
        30.0: 3.5,
    }
)
"""Coarse pitch by nominal diameter, mm (ISO 261)."""

CLEARANCE_HOLES_MM: Mapping[str, float] = MappingProxyType(
    {
        "M3": 3.4,
        "M4": 4.5,
        "M5": 5.5,
        "M6": 6.6,
        "M8": 9.0,
        "M10": 11.0,
        "M12": 13.5,
        "M14": 15.5,
        "M16": 17.5,
        "M18": 20.0,
        "M20": 22.0,
    }
)
"""Clearance holes of the medium series by thread, mm (ISO 273, from memory)."""


@dataclass(frozen=True, slots=True)
class HeadSize:
    """The head of a screw, or a nut; lengths in mm, None where there is none.

    Parameters
    ----------
    head_height_mm : float
        Height of the whole head with its flange, or of the nut.
    across_flats_mm : float or None
        Width across the flats of an outer hexagon.
    head_diameter_mm : float or None
        Greatest diameter of a round head or of a flange.
    flange_thickness_mm : float or None
        Thickness of the flange at its edge.
    drive_size_mm, drive_depth_mm : float or None
        Width across the flats and depth of a hexagon socket.
    bearing_diameter_mm : float or None
        Outer diameter of the bearing face.
    mark, source : str
        Whether the figures were confirmed or recalled, and where they come from.
    """

    head_height_mm: float
    across_flats_mm: float | None = None
    head_diameter_mm: float | None = None
    flange_thickness_mm: float | None = None
    drive_size_mm: float | None = None
    drive_depth_mm: float | None = None
    bearing_diameter_mm: float | None = None
    mark: str = "confirmed"
    source: str = ""


_TABLE = "parameter table of the package bd-warehouse; bearing face recalled"
_ROUND = _TABLE + "; diameter of the plain head recalled"
_RECALLED = "recalled"


def _hex_heads() -> dict[str, HeadSize]:
    return {
        thread: HeadSize(
            height, flats, bearing_diameter_mm=HEX_BEARING_MM[thread], source=_TABLE
        )
        for thread, (height, flats) in HEX_MM.items()
    }


def _old_hex_heads() -> dict[str, HeadSize]:
    """Hexagons of the older DIN standards: wider at three sizes."""
    return {
        thread: replace(
            size,
            across_flats_mm=OLD_FLATS_MM[thread],
            bearing_diameter_mm=0.95 * OLD_FLATS_MM[thread],
        )
        if thread in OLD_FLATS_MM
        else size
        for thread, size in _hex_heads().items()
    }


def _socket_heads() -> dict[str, HeadSize]:
    return {
        thread: HeadSize(
            float(thread[1:]),
            head_diameter_mm=diameter,
            drive_size_mm=flats,
            drive_depth_mm=depth,
            bearing_diameter_mm=bearing,
            source=_ROUND,
        )
        for thread, (diameter, flats, depth, bearing) in SOCKET_MM.items()
    }


def _button_heads() -> dict[str, HeadSize]:
    return {
        thread: HeadSize(
            height,
            head_diameter_mm=diameter,
            drive_size_mm=flats,
            drive_depth_mm=depth,
            source="parameter table of the package bd-warehouse",
        )
        for thread, (diameter, height, flats, depth) in BUTTON_MM.items()
    }


def _flanged(rows: Mapping[str, tuple[float, ...]]) -> dict[str, HeadSize]:
    return {
        thread: HeadSize(
            height, flats, diameter, thickness, None, None, bearing, source=_TABLE
        )
        for thread, (height, flats, diameter, thickness, bearing) in rows.items()
    }


def _nuts(heights_mm: Mapping[str, float]) -> dict[str, HeadSize]:
    heads = _hex_heads()
    return {
        thread: replace(heads[thread], head_height_mm=height)
        for thread, height in heights_mm.items()
    }


def _old_nuts(heights_mm: Mapping[str, float]) -> dict[str, HeadSize]:
    heads = _old_hex_heads()
    return {
        thread: replace(
            heads[thread], head_height_mm=height, mark="from memory", source=_RECALLED
        )
        for thread, height in heights_mm.items()
    }


def _heads() -> Mapping[tuple[str, str], HeadSize]:
    by_standard: dict[str, dict[str, HeadSize]] = {
        "ISO 4014": _hex_heads(),
        "ISO 4017": _hex_heads(),
        "DIN 931": _old_hex_heads(),
        "DIN 933": _old_hex_heads(),
        "ISO 4762": _socket_heads(),
        "DIN 912": _socket_heads(),
        "ISO 7380-1": _button_heads(),
        "EN 1665": _flanged(HEAVY_FLANGE_MM),
        "DIN 6921": _flanged(HEAVY_FLANGE_MM),
        "EN 1662": _flanged(SMALL_FLANGE_MM),
        "ISO 4162": _flanged(SMALL_FLANGE_MM),
        "ISO 4032": _nuts(NUT_HEIGHT_MM),
        "DIN 934": _old_nuts(OLD_NUT_HEIGHT_MM),
        "DIN 985": _old_nuts(dict.fromkeys(OLD_NUT_HEIGHT_MM, math.nan)),
        "EN 1661": _flanged(FLANGE_NUT_MM),
        "ISO 4161": _flanged(FLANGE_NUT_MM),
        "DIN 6923": _flanged(FLANGE_NUT_MM),
    }
    return MappingProxyType(
        {
            (standard, thread): size
            for standard, sizes in by_standard.items()
            for thread, size in sizes.items()
        }
    )


HEADS: Mapping[tuple[str, str], HeadSize] = _heads()
"""Heads and nuts by product standard and thread.

The height of a DIN 985 nut is NaN, since part of it is a plastic ring: its mass is in
``fastener_masses``, and cannot be had from its outline.
"""


def head_size(standard: str, thread: str) -> HeadSize | None:
    """Give the head that a product standard gives a thread, None where not known.

    Examples
    --------
    >>> found = head_size("DIN 912", "M6")
    >>> found.drive_size_mm if found else None
    5.0
    """
    return HEADS.get((standard, thread))
