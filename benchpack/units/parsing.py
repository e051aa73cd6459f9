"""Text from people and files into values in canonical units."""

from __future__ import annotations

import math
import re

from benchpack.errors import DataError, Problem
from benchpack.units.conversion import (
    conversion_factor,
    convert,
    known_unit,
    to_canonical,
)
from benchpack.units.currencies import PLACEHOLDER, split_currency
from benchpack.units.headers import split_header
from benchpack.units.labels import Quantity
from benchpack.units.labels import quantity as quantity_named
from benchpack.units.number_text import (
    DecimalMark,
    detect_decimal,
    parse_number,
    peculiar,
    refusal,
    shortened,
)
from benchpack.units.spelling import plain_characters

__all__ = [
    "DecimalMark",
    "conversion_factor",
    "convert",
    "detect_decimal",
    "parse_number",
    "parse_quantity",
    "require_positive",
    "split_header",
]

_GROUPED = r"[0-9.,]+(?:[ \u00a0\u2007\u2009\u202f'\u2019][0-9.,]+)*"
_NUMBER_FIRST = re.compile(
    rf"([+\-\u2212]*\s*{_GROUPED}(?:[eE][+\-\u2212]?[0-9]+)?)\s*(.*)", re.DOTALL
)
_SMALL_UNIT = re.compile(
    r"(.+?)(?:\s*[\u00d7\u00b7*]\s*|\s+)"
    r"((?:1e-6|10\^?-6|1)\s*/\s*(?:K|\u00b0C|\u00b0F))"
)
_MONEY_FIRST = re.compile(r"(US\$|[A-Z]{3}|[€$£¥₩₹])\s*([+\-\u2212]?\s*[0-9.,].*)")
_LONGEST = 400


def _split(text: str, asked: Quantity) -> tuple[str, str]:
    """Split a cell into number and unit label, both as written."""
    if asked.is_money and (match := _MONEY_FIRST.fullmatch(text)):
        number, rest = _split_behind(match[2])
        return number, match[1] + rest
    if asked.name == "expansion":
        match = _SMALL_UNIT.fullmatch(plain_characters(text))
        if match:
            return match[1], match[2]
    return _split_behind(text)


def _split_behind(text: str) -> tuple[str, str]:
    match = _NUMBER_FIRST.fullmatch(text)
    return (match[1], match[2]) if match else (text, "")


def parse_quantity(
    text: str,
    quantity: Quantity | str,
    *,
    unit: str | None = None,
    decimal: str | None = None,
    currency: str | None = None,
) -> float:
    """Read a figure with or without a unit.

    Parameters
    ----------
    text : str
        ``431 kg``, ``0,45 t``, ``281 MJ``, ``EUR 3.20/kg``, or a bare number.
    quantity : Quantity or str
        What the figure measures, or the name of it.
    unit : str or None
        Unit of bare numbers, from the column head; None for the canonical unit. A unit
        in the text wins over it.
    decimal : {".", ","} or None
        The decimal mark, as in `parse_number`.
    currency : str or None
        The currency in use. A figure in another one is refused; without it the head's
        currency counts, and without that too no figure may name a currency.

    Returns
    -------
    float
        A finite value in the canonical unit.

    Raises
    ------
    DataError
        Where the text is no number, its unit unknown or of another quantity.

    Examples
    --------
    >>> parse_quantity("0,45 t", "mass"), parse_quantity("950", "mass", unit="lb")
    (450.0, 430.9127515)
    """
    asked = quantity_named(quantity) if isinstance(quantity, str) else quantity
    trimmed = text.strip()
    if len(trimmed) > _LONGEST:
        raise refusal(
            f"“{shortened(text)}” is not a number.", "Give a figure with a unit.", text
        )
    number, label = _split(trimmed, asked)
    if label and asked.find(label, currency=currency or "") is None:
        odd = peculiar(trimmed)
        if odd is not None:
            raise refusal(*odd, text)
    value = parse_number(number, decimal=decimal)
    head = unit or asked.unit
    if asked.is_money:
        label, currency = _money_label(label, head, currency or "", text)
    said = shortened(text if label else f"{text} {head}")
    measured = known_unit(label or head, asked, currency=currency or "", text=said)
    found = to_canonical(value, measured, asked)
    if not math.isfinite(found):
        raise refusal(
            f"“{shortened(text)}” is too large for a number.", "Check the unit.", text
        )
    return found


def _money_label(label: str, head: str, currency: str, text: str) -> tuple[str, str]:
    """Settle the unit and the currency of a sum of money.

    A cell that names the currency alone takes the rest of its unit from the head.
    """
    of_head = split_currency(head, also=currency)[0]
    of_cell, rest = split_currency(label, also=currency)
    stated = currency or ("" if of_head == PLACEHOLDER else of_head)
    if of_cell not in ("", PLACEHOLDER) and not stated:
        raise refusal(
            f"“{shortened(text)}” is in {of_cell}, but no currency is stated.",
            "State the currency in the column head or in the study.",
            text,
        )
    if label and rest == PLACEHOLDER:
        label += split_currency(head, also=currency)[1].removeprefix(PLACEHOLDER)
    return label, stated


def require_positive(
    value: float, name: str, *, unit: str = "", allow_zero: bool = False
) -> float:
    """Give a value back if it is above zero, refuse it if not.

    Parameters
    ----------
    value : float
        The figure.
    name : str
        What it is, for the message.
    unit : str
        Its unit label, for the message.
    allow_zero : bool
        True where zero will do.

    Raises
    ------
    DataError
        Where the value is negative, zero (unless allowed) or no finite number.

    Examples
    --------
    >>> require_positive(431.0, "mass", unit="kg")
    431.0
    """
    if math.isfinite(value) and (value > 0 or (allow_zero and value == 0)):
        return value
    shown = f"{value:g} {unit}".strip() if math.isfinite(value) else "not a number"
    word = "zero or more" if allow_zero else "above zero"
    raise DataError(
        Problem(
            what=f"{name[:1].upper()}{name[1:]} is {shown}.",
            remedy=f"It has to be {word}.",
            value=f"{value:g}",
        )
    )
