"""The records of a unit and of a quantity that is measured in units."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from benchpack.units.currencies import PLACEHOLDER, split_currency
from benchpack.units.spelling import folded_key, label_key


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit of a quantity.

    Parameters
    ----------
    label : str
        Label in files and column heads; empty for a plain number.
    pint_text : str
        The unit as pint reads it.
    screen : str
        Label on screen where it differs from `label`, else empty.
    spellings : tuple of str
        Further labels that mean this unit.
    """

    label: str
    pint_text: str
    screen: str = ""
    spellings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Quantity:
    """A kind of figure with its canonical unit and the units it may be given in.

    Parameters
    ----------
    name : str
        Name by which the quantity is asked for.
    units : tuple of Unit
        Accepted units, the canonical one first.
    decimals : int
        Digits after the point on screen in the canonical unit.
    words : tuple of str
        Words of a column head, lower case, that speak of this quantity.
    symbols : tuple of str
        Letters that stand for the quantity in heads such as ``m / kg``.
    noun : str
        What a message calls it where that is not the name.
    """

    name: str
    units: tuple[Unit, ...]
    decimals: int = 1
    words: tuple[str, ...] = ()
    symbols: tuple[str, ...] = ()
    noun: str = ""

    @property
    def unit(self) -> str:
        """Label of the canonical unit, empty for plain numbers."""
        return self.units[0].label

    @property
    def is_money(self) -> bool:
        """True where the unit holds a currency."""
        return self.unit.startswith(PLACEHOLDER)

    def labels(self) -> tuple[str, ...]:
        """Give the labels of the accepted units, the canonical one first."""
        return tuple(unit.label for unit in self.units if unit.label)

    def folded_keys(self) -> tuple[str, ...]:
        """Give the keys without case under which its units are found."""
        return tuple(_tables(self)[1])

    def find(self, text: str, *, currency: str = "") -> Unit | None:
        """Find the unit that a text means, or None where it is no unit of this.

        Case is forgiven except where it tells milli from mega.

        Parameters
        ----------
        text : str
            A unit label in any accepted spelling, ``lbs`` or ``EUR/kg``.
        currency : str
            A currency code that counts as known whether listed or not.

        Examples
        --------
        >>> energy = Quantity("energy", (Unit("MWh", "megawatt_hour"),))
        >>> energy.find("MWH") is energy.units[0], energy.find("mWh") is None
        (True, True)
        """
        if self.is_money:
            text = split_currency(text, also=currency)[1]
        exact, folded = _tables(self)
        key = label_key(text)
        return exact.get(key) or folded.get(folded_key(key))


@cache
def _tables(asked: Quantity) -> tuple[dict[str, Unit], dict[str, Unit]]:
    """Give the units by exact key and by key without case."""
    exact: dict[str, Unit] = {}
    folded: dict[str, Unit] = {}
    for unit in asked.units:
        for text in (unit.label, unit.screen, *unit.spellings):
            key = label_key(text)
            if key or not unit.label:
                exact.setdefault(key, unit)
                folded.setdefault(folded_key(key), unit)
    return exact, folded
