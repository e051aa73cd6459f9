"""Money of a programme, which is long: in millions from a million on."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from benchpack.model.ranges import Range
from benchpack.report.display import Display
from benchpack.units.formatting import UNKNOWN, format_number
from benchpack.units.number_style import NumberStyle, labelled

MILLION = 1e6
_FROM = 999_500.0


@dataclass(frozen=True, slots=True)
class MoneyScale:
    """A unit in which money is written.

    Parameters
    ----------
    size : float
        Money of one such unit.
    unit : str
        Its label, ``million EUR`` or ``EUR``.
    style : NumberStyle
        Sets the decimal mark.
    """

    size: float
    unit: str
    style: NumberStyle

    def number(self, money: float, *, signed: bool = False) -> str:
        """Write money without its unit: three digits of millions, else whole."""
        shown = money / self.size
        decimals = 0
        if self.size > 1 and math.isfinite(shown):
            decimals = 2 if abs(shown) < 9.995 else 1 if abs(shown) < 99.95 else 0
        return format_number(shown, decimals, style=self.style, signed=signed)

    def text(self, money: float, *, signed: bool = False) -> str:
        """Write money with its unit."""
        return labelled(self.number(money, signed=signed), self.unit)

    def shown_number(self, shown: float) -> str:
        """Write what is in this unit already."""
        return self.number(shown * self.size)

    def signed_number(self, shown: float) -> str:
        """Write a change that is in this unit already, with its sign."""
        return self.number(shown * self.size, signed=True)

    def shown_text(self, shown: float) -> str:
        """Write what is in this unit already, with the unit."""
        return self.text(shown * self.size)

    def signed_text(self, shown: float) -> str:
        """Write a change that is in this unit already, with sign and unit."""
        return self.text(shown * self.size, signed=True)


def money_scale(values: Iterable[float], display: Display) -> MoneyScale:
    """Give the unit that suits some sums of money together.

    Parameters
    ----------
    values : iterable of float
        The sums.
    display : Display
        How numbers are shown.
    """
    greatest = max((abs(one) for one in values if math.isfinite(one)), default=0.0)
    if greatest >= _FROM:
        return MoneyScale(MILLION, f"million\u00a0{display.currency}", display.style)
    return MoneyScale(1.0, display.currency, display.style)


def programme_money_text(value: float, display: Display) -> str:
    """Write money of a programme: ``5.85 million EUR``, ``810 000 EUR``.

    Parameters
    ----------
    value : float
        The sum.
    display : Display
        How numbers are shown.
    """
    return money_scale((value,), display).text(value)


def programme_span_text(value: Range, display: Display) -> str:
    """Write the range of money of a programme alone, empty where there is none.

    Parameters
    ----------
    value : Range
        The sum with its range, in the unit of its likely figure.
    display : Display
        How numbers are shown.
    """
    scale = money_scale((value.likely,), display)
    return span_text(*(scale.number(end) for end in (value.low, value.high)))


def span_text(low: str, high: str) -> str:
    """Write a range in brackets, empty where its ends read alike.

    Parameters
    ----------
    low, high : str
        The ends.
    """
    return "" if low == high or UNKNOWN in (low, high) else f"({low} to {high})"


def worth_span_text(low: float, high: float, display: Display) -> str:
    """Write the range of money per mass in brackets, without its unit.

    Parameters
    ----------
    low, high : float
        The ends, per kilogram.
    display : Display
        How numbers are shown.
    """
    unit = f"\u00a0{display.currency}/{display.mass_unit}"
    ends = (display.worth_text(end).removesuffix(unit) for end in (low, high))
    return span_text(*ends)
