"""Quantities of the busbar calculator alone.

They stand apart from the table of `benchpack.units.labels`, so that no column head of
a file is taken for a current: `A` in brackets is an area elsewhere.
"""

from __future__ import annotations

from benchpack.units.labels import QUANTITIES, Quantity, Unit

CURRENT = Quantity(
    "current",
    (
        Unit("A", "ampere", spellings=("amp", "amps", "ampere", "amperes")),
        Unit("kA", "kiloampere"),
        Unit("mA", "milliampere"),
    ),
    0,
)
"""Electric current."""

RISE = Quantity(
    "rise of temperature",
    (
        Unit("K", "kelvin", spellings=("degC", "°C", "C", "Kelvin")),
        Unit("degF", "delta_degF", "°F", ("F",)),
    ),
    0,
)
"""A difference of temperatures: 60 °C of rise are 60 K."""

_OWN = {one.name: one for one in (CURRENT, RISE)}


def busbar_quantity(name: str) -> Quantity:
    """Give a quantity of the calculator by name.

    Parameters
    ----------
    name : str
        ``current``, ``rise of temperature``, or a name the other tables know.

    Examples
    --------
    >>> busbar_quantity("current").unit, busbar_quantity("length").unit
    ('A', 'mm')
    """
    return _OWN.get(name) or QUANTITIES[name]
