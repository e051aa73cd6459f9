"""Numbers as the screen shows them, and as files and the clipboard take them.

The fast path of the screen: no pint, no arrays.
"""

from __future__ import annotations

from benchpack.units.figures import (
    format_chance,
    format_density,
    format_energy,
    format_mass,
    format_money,
    format_share,
    format_worth,
)
from benchpack.units.number_style import (
    DEFAULT_STYLE,
    KG_PER_LB,
    UNKNOWN,
    NumberStyle,
    format_number,
    plain,
)
from benchpack.units.ranges import format_mass_range, format_range

__all__ = [
    "DEFAULT_STYLE",
    "KG_PER_LB",
    "UNKNOWN",
    "NumberStyle",
    "format_chance",
    "format_density",
    "format_energy",
    "format_mass",
    "format_mass_range",
    "format_money",
    "format_number",
    "format_range",
    "format_share",
    "format_worth",
    "plain",
]
