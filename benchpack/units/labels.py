"""The quantities the program knows and every label a unit may carry.

One table serves reading, files and the screen: a unit has one label in files
(``m2``), one on screen (``m²``), further spellings that are understood, and the text
by which pint knows it.
"""

from __future__ import annotations

from benchpack.errors import RequestError
from benchpack.units.currencies import split_currency
from benchpack.units.material_units import MATERIAL_QUANTITIES
from benchpack.units.pack_units import PACK_QUANTITIES
from benchpack.units.quantity import Quantity, Unit
from benchpack.units.spelling import folded_key, label_key
from benchpack.units.vehicle_units import VEHICLE_QUANTITIES

__all__ = [
    "QUANTITIES",
    "Quantity",
    "Unit",
    "quantities_of",
    "quantity",
    "screen_label",
]


_QUANTITIES = (*PACK_QUANTITIES, *MATERIAL_QUANTITIES, *VEHICLE_QUANTITIES)

QUANTITIES: dict[str, Quantity] = {one.name: one for one in _QUANTITIES}
"""Every quantity by its name."""

_SCREEN: dict[str, str] = {
    unit.label: unit.screen or unit.label for one in _QUANTITIES for unit in one.units
}

_BY_KEY: dict[str, list[Quantity]] = {}
for _one in _QUANTITIES:
    for _key in _one.folded_keys():
        _BY_KEY.setdefault(_key, []).append(_one)


def quantity(name: str) -> Quantity:
    """Give a quantity by name.

    Parameters
    ----------
    name : str
        ``mass``, ``energy``, ``money per mass`` and so on.

    Raises
    ------
    RequestError
        Where there is no such quantity.
    """
    found = QUANTITIES.get(name)
    if found is None:
        raise RequestError(f"There is no quantity named {name!r}.")
    return found


def quantities_of(text: str) -> tuple[Quantity, ...]:
    """Give every quantity that has a unit of this label.

    Parameters
    ----------
    text : str
        A unit label in any accepted spelling.

    Examples
    --------
    >>> [one.name for one in quantities_of("kWh")]
    ['energy']
    """
    key = folded_key(label_key(split_currency(text)[1]))
    candidates = _BY_KEY.get(key, ()) if key else ()
    return tuple(one for one in candidates if one.find(text) is not None)


def screen_label(label: str, *, currency: str = "") -> str:
    """Give a unit label as the screen shows it.

    Parameters
    ----------
    label : str
        Label as in files, ``m2`` or ``CUR/kg``.
    currency : str
        Code that stands in for ``CUR``.

    Examples
    --------
    >>> screen_label("kg/m3"), screen_label("CUR/kg", currency="EUR")
    ('kg/m³', 'EUR/kg')
    """
    shown = _SCREEN.get(label, label)
    return shown.replace("CUR", currency) if currency else shown
