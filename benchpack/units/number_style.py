"""Plain numbers as text: how a study shows them and how files take them.

Rounding happens here and nowhere else. Unknown (None, NaN) is an en dash on screen and
an empty cell in files.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

THIN_SPACE = "\u2009"
NO_BREAK_SPACE = "\u00a0"
MINUS = "\u2212"
UNKNOWN = "\u2013"

KG_PER_LB = 0.45359237
"""The pound is exact: 1959 agreement, NIST SP 811."""


@dataclass(frozen=True, slots=True)
class NumberStyle:
    """How a study shows its numbers.

    Parameters
    ----------
    decimal_mark : str
        Point or comma.
    mass_unit : str
        ``kg`` or ``lb``; densities stay in Wh/kg.
    """

    decimal_mark: str = "."
    mass_unit: str = "kg"

    def in_mass_unit(self, mass_kg: float) -> float:
        """Give a mass in the unit shown, unrounded, for axes and fields.

        Parameters
        ----------
        mass_kg : float
            Mass in kg.
        """
        return mass_kg / KG_PER_LB if self.mass_unit == "lb" else mass_kg


DEFAULT_STYLE = NumberStyle()
"""Decimal point, kilograms."""


def format_number(
    value: float | None,
    decimals: int = 0,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    signed: bool = False,
    grouped: bool = True,
) -> str:
    """Write a number with fixed decimals, thin-space groups and a true minus.

    Parameters
    ----------
    value : float or None
        The number; None, NaN and infinity give an en dash.
    decimals : int
        Digits after the decimal mark.
    style : NumberStyle
        Sets the decimal mark.
    signed : bool
        True to write a plus before what rounds to more than zero.
    grouped : bool
        False for years, which are not grouped.

    Examples
    --------
    >>> format_number(-0.04, 1), format_number(11.26, 1, signed=True)
    ('0.0', '+11.3')
    """
    if value is None or not math.isfinite(value):
        return UNKNOWN
    digits = f"{abs(value):,.{decimals}f}"
    is_zero = not digits.strip("0.,")
    whole, _, fraction = digits.partition(".")
    text = whole.replace(",", THIN_SPACE if grouped else "")
    if fraction:
        text += style.decimal_mark + fraction
    if is_zero:
        return text
    if value < 0:
        return MINUS + text
    return "+" + text if signed else text


def labelled(number: str, label: str) -> str:
    """Put a unit behind a number, unless that is unknown or the label is empty.

    Parameters
    ----------
    number : str
        What `format_number` gave.
    label : str
        Unit label as on screen.
    """
    if number == UNKNOWN or not label:
        return number
    return f"{number}{NO_BREAK_SPACE}{label}"


def plain(value: float | None) -> str:
    """Write a number for files and the clipboard: full precision, point, hyphen.

    Parameters
    ----------
    value : float or None
        The number.

    Returns
    -------
    str
        The shortest text that reads back as the same number; empty for None, NaN and
        infinity.

    Examples
    --------
    >>> plain(431.0), plain(-0.1), plain(None)
    ('431', '-0.1', '')
    """
    if value is None or not math.isfinite(value):
        return ""
    return repr(float(value) + 0.0).removesuffix(".0")
