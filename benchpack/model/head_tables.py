"""Head and nut sizes by thread, as HeadSize rows take them."""

from __future__ import annotations

HEX_BEARING_MM: dict[str, float] = {
    "M3": 4.57,
    "M4": 5.88,
    "M5": 6.88,
    "M6": 8.88,
    "M8": 11.63,
    "M10": 14.63,
    "M12": 16.63,
    "M14": 19.64,
    "M16": 22.49,
    "M18": 25.34,
    "M20": 28.19,
}
"""Bearing face under a hexagon head or nut, mm (ISO 4014, from memory)."""

HEX_MM: dict[str, tuple[float, ...]] = {
    "M3": (2.0, 5.5),
    "M4": (2.8, 7.0),
    "M5": (3.5, 8.0),
    "M6": (4.0, 10.0),
    "M8": (5.3, 13.0),
    "M10": (6.4, 16.0),
    "M12": (7.5, 18.0),
    "M14": (8.8, 21.0),
    "M16": (10.0, 24.0),
    "M18": (11.5, 27.0),
    "M20": (12.5, 30.0),
}
"""Head height and width across flats, mm (ISO 4014 and 4017, nominal)."""

OLD_FLATS_MM: dict[str, float] = {"M10": 17.0, "M12": 19.0, "M14": 22.0}
"""Width across flats where DIN 931 and its kin differ, mm."""

SOCKET_MM: dict[str, tuple[float, ...]] = {
    "M3": (5.5, 2.5, 1.3, 5.07),
    "M4": (7.0, 3.0, 2.0, 6.53),
    "M5": (8.5, 4.0, 2.5, 8.03),
    "M6": (10.0, 5.0, 3.0, 9.38),
    "M8": (13.0, 6.0, 4.0, 12.33),
    "M10": (16.0, 8.0, 5.0, 15.33),
    "M12": (18.0, 10.0, 6.0, 17.23),
    "M14": (21.0, 12.0, 7.0, 20.17),
    "M16": (24.0, 14.0, 8.0, 23.17),
    "M20": (30.0, 17.0, 10.0, 28.87),
}
"""Plain head diameter, socket width, socket depth, bearing face, mm (ISO 4762)."""

BUTTON_MM: dict[str, tuple[float, ...]] = {
    "M3": (5.7, 1.65, 2.0, 1.04),
    "M4": (7.6, 2.2, 2.5, 1.3),
    "M5": (9.5, 2.75, 3.0, 1.56),
    "M6": (10.5, 3.3, 4.0, 2.08),
    "M8": (14.0, 4.4, 5.0, 2.6),
    "M10": (17.5, 5.5, 6.0, 3.12),
    "M12": (21.0, 6.6, 8.0, 4.16),
    "M16": (28.0, 8.8, 10.0, 5.2),
}
"""Head diameter, head height, socket width, socket depth, mm (ISO 7380-1)."""

HEAVY_FLANGE_MM: dict[str, tuple[float, ...]] = {
    "M5": (5.8, 8.0, 11.8, 1.0, 9.8),
    "M6": (6.6, 10.0, 14.2, 1.1, 12.2),
    "M8": (8.1, 13.0, 18.0, 1.2, 15.8),
    "M10": (10.4, 16.0, 22.3, 1.5, 19.6),
    "M12": (11.8, 18.0, 26.6, 1.8, 23.8),
    "M14": (13.7, 21.0, 30.5, 2.1, 27.6),
    "M16": (15.4, 24.0, 35.0, 2.4, 31.9),
    "M20": (18.9, 30.0, 43.0, 3.0, 39.9),
}
"""Height, flats, flange diameter and thickness, bearing face, mm (EN 1665)."""

SMALL_FLANGE_MM: dict[str, tuple[float, ...]] = {
    "M5": (5.6, 7.0, 11.4, 1.0, 9.4),
    "M6": (6.9, 8.0, 13.6, 1.1, 11.6),
    "M8": (8.5, 10.0, 17.0, 1.2, 14.9),
    "M10": (9.7, 13.0, 20.8, 1.5, 18.7),
    "M12": (12.1, 16.0, 24.7, 1.8, 22.5),
    "M14": (12.9, 18.0, 28.6, 2.1, 26.4),
    "M16": (15.2, 21.0, 32.8, 2.4, 30.6),
}
"""Height, flats, flange diameter and thickness, bearing face, mm (EN 1662)."""

FLANGE_NUT_MM: dict[str, tuple[float, ...]] = {
    "M5": (5.0, 8.0, 11.8, 1.0, 9.8),
    "M6": (6.0, 10.0, 14.2, 1.1, 12.2),
    "M8": (8.0, 13.0, 17.9, 1.2, 15.8),
    "M10": (10.0, 15.0, 21.8, 1.5, 19.6),
    "M12": (12.0, 18.0, 26.0, 1.8, 23.8),
    "M14": (14.0, 21.0, 29.9, 2.1, 27.6),
    "M16": (16.0, 24.0, 34.5, 2.4, 31.9),
    "M20": (20.0, 30.0, 42.8, 3.0, 39.9),
}
"""Height, flats, flange diameter and thickness, bearing face, mm (EN 1661)."""

NUT_HEIGHT_MM: dict[str, float] = {
    "M3": 2.4,
    "M4": 3.2,
    "M5": 4.7,
    "M6": 5.2,
    "M8": 6.8,
    "M10": 8.4,
    "M12": 10.8,
    "M14": 12.8,
    "M16": 14.8,
    "M18": 15.8,
    "M20": 18.0,
}
"""Height of a hexagon nut, mm (ISO 4032)."""

OLD_NUT_HEIGHT_MM: dict[str, float] = {
    "M3": 2.4,
    "M4": 3.2,
    "M5": 4.0,
    "M6": 5.0,
    "M8": 6.5,
    "M10": 8.0,
    "M12": 10.0,
    "M14": 11.0,
    "M16": 13.0,
    "M18": 15.0,
    "M20": 16.0,
}
"""Height of a hexagon nut, mm (DIN 934, from memory)."""
