"""Values from one unit into another: exact factors, whole columns at once."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, overload

from benchpack.errors import DataError, Problem, RequestError
from benchpack.units.currencies import PLACEHOLDER, same_currency, split_currency
from benchpack.units.labels import Quantity, Unit, quantities_of, quantity

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

_ARTICLE_AN = ("a", "e", "i", "o", "u")


def with_article(noun: str) -> str:
    """Give a noun with its article, ``an energy``.

    Parameters
    ----------
    noun : str
        What to name.
    """
    return f"{'an' if noun.startswith(_ARTICLE_AN) else 'a'} {noun}"


def accepted(asked: Quantity, *, currency: str = "") -> str:
    """Say how a quantity may be given, ``Give it in kg, g or t.`` for instance.

    Parameters
    ----------
    asked : Quantity
        The quantity.
    currency : str
        Code that stands in for ``CUR``.
    """
    labels = [label.replace(PLACEHOLDER, currency or "CUR") for label in asked.labels()]
    if not labels:
        return "Give it as plain digits, without a unit."
    if len(labels) < len(asked.units):
        return f"Give it in {labels[0]} or as plain digits."
    listed = ", ".join(labels[:-1])
    return (
        f"Give it in {listed} or {labels[-1]}."
        if listed
        else f"Give it in {labels[0]}."
    )


def known_unit(
    label: str, asked: Quantity, *, currency: str = "", text: str = ""
) -> Unit:
    """Find a unit of a quantity, or say why it is none.

    Parameters
    ----------
    label : str
        A unit label in any accepted spelling.
    asked : Quantity
        The quantity it has to measure.
    currency : str
        The currency in use, empty where any one will do.
    text : str
        The whole text the label stood in, for the message.

    Raises
    ------
    DataError
        Where the unit is unknown, measures something else, or is in another currency.
    """
    found = asked.find(label, currency=currency)
    said = text or label
    remedy = accepted(asked, currency=currency)
    noun = asked.noun or asked.name
    if found is None:
        others = quantities_of(label)
        if others:
            is_a = with_article(others[0].noun or others[0].name)
            what = f"“{said}” is {is_a}; {with_article(noun)} is expected here."
        elif len(asked.units) == 1 and not asked.unit:
            what = f"“{said}” has a unit; {with_article(noun)} has none."
        else:
            what = (
                f"“{said}”: the unit “{label}” is not known for {with_article(noun)}."
            )
        raise DataError(Problem(what=what, remedy=remedy, value=said))
    stated = split_currency(label, also=currency)[0] if asked.is_money else ""
    if currency and stated and not same_currency(stated, currency):
        raise DataError(
            Problem(
                what=f"“{said}” is in {stated}, not in {currency}.",
                remedy=f"There are no exchange rates here: give it in {currency}.",
                value=said,
            )
        )
    return found


@cache
def _exact(pint_text: str, canonical: str) -> tuple[Fraction, Fraction]:
    """Give slope and intercept that lead from a unit to the canonical one."""
    from benchpack.units.registry import registry

    make = registry().Quantity
    at_zero = Fraction(make(Fraction(0), pint_text).to(canonical).magnitude)
    at_one = Fraction(make(Fraction(1), pint_text).to(canonical).magnitude)
    return at_one - at_zero, at_zero


@cache
def _steps(pint_text: str, canonical: str) -> tuple[float, float, float]:
    """Give multiplier, addend and divisor, all exact where a float can hold them."""
    slope, intercept = _exact(pint_text, canonical)
    divisor = math.lcm(slope.denominator, intercept.denominator)
    steps = (slope * divisor, intercept * divisor, Fraction(divisor))
    if all(Fraction(float(step)) == step for step in steps):
        return float(steps[0]), float(steps[1]), float(steps[2])
    return float(slope), float(intercept), 1.0


def _named(asked: Quantity | str) -> Quantity:
    return quantity(asked) if isinstance(asked, str) else asked


def conversion_factor(unit_label: str, quantity: Quantity | str) -> float:
    """Give the number of canonical units in one of a unit.

    For whole columns prefer `convert`, which rounds once where it can.

    Parameters
    ----------
    unit_label : str
        The unit, in any accepted spelling.
    quantity : Quantity or str
        What it measures.

    Returns
    -------
    float
        The factor, exact to float rounding.

    Raises
    ------
    DataError
        Where the unit does not measure this.
    RequestError
        Where the unit has an offset (temperatures) and no factor can serve.

    Examples
    --------
    >>> conversion_factor("lb", "mass")
    0.45359237
    """
    asked = _named(quantity)
    unit = known_unit(unit_label, asked)
    if unit.pint_text == asked.units[0].pint_text:
        return 1.0
    slope, intercept = _exact(unit.pint_text, asked.units[0].pint_text)
    if intercept:
        raise RequestError(f"{unit.label} has an offset: convert the values instead.")
    return float(slope)


@overload
def to_canonical(values: float, unit: Unit, asked: Quantity) -> float: ...
@overload
def to_canonical(
    values: NDArray[np.float64], unit: Unit, asked: Quantity
) -> NDArray[np.float64]: ...
def to_canonical(
    values: float | NDArray[np.float64], unit: Unit, asked: Quantity
) -> float | NDArray[np.float64]:
    """Convert values from a unit already found.

    Parameters
    ----------
    values : float or ndarray
        Values in `unit`.
    unit : Unit
        One of the quantity's units.
    asked : Quantity
        What the values measure.
    """
    canonical = asked.units[0].pint_text
    if unit.pint_text == canonical:
        return values
    multiplier, addend, divisor = _steps(unit.pint_text, canonical)
    return (values * multiplier + addend) / divisor


@overload
def convert(
    values: float, unit: str, quantity: Quantity | str, *, currency: str | None = ...
) -> float: ...
@overload
def convert(
    values: NDArray[np.float64],
    unit: str,
    quantity: Quantity | str,
    *,
    currency: str | None = ...,
) -> NDArray[np.float64]: ...
def convert(
    values: float | NDArray[np.float64],
    unit: str,
    quantity: Quantity | str,
    *,
    currency: str | None = None,
) -> float | NDArray[np.float64]:
    """Convert values into the canonical unit of a quantity.

    Parameters
    ----------
    values : float or ndarray
        Values in `unit`; NaN stays NaN.
    unit : str
        The unit, in any accepted spelling.
    quantity : Quantity or str
        What the values measure.
    currency : str or None
        The currency in use; a unit in another one is refused.

    Returns
    -------
    float or ndarray
        Same shape, canonical unit. Values that are in it already are given back as
        they came.

    Raises
    ------
    DataError
        Where the unit does not measure this.

    Examples
    --------
    >>> convert(950.0, "lb", "mass"), convert(212.0, "°F", "temperature")
    (430.9127515, 100.0)
    """
    asked = _named(quantity)
    found = known_unit(unit, asked, currency=currency or "")
    return to_canonical(values, found, asked)
