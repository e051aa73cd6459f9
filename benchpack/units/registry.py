"""The one pint registry, made when first needed."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from benchpack.units.currencies import CODES, PLACEHOLDER

if TYPE_CHECKING:
    import pint


@cache
def registry() -> pint.UnitRegistry[Fraction]:
    """Give the registry of all units, exact: its factors are fractions.

    Every currency is a dimension of its own, as there are no exchange rates.

    Returns
    -------
    pint.UnitRegistry
        The same object on every call.

    Examples
    --------
    >>> from fractions import Fraction
    >>> registry().Quantity(Fraction(1), "pound").to("kilogram").magnitude
    Fraction(45359237, 100000000)
    """
    import pint

    made: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    made.define(f"{PLACEHOLDER} = [currency]")
    for code in CODES:
        made.define(f"{code} = [currency_{code}]")
    return made
