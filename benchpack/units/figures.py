"""Figures with their units as the screen shows them."""

from __future__ import annotations

import math

from benchpack.units.number_style import (
    DEFAULT_STYLE,
    KG_PER_LB,
    UNKNOWN,
    NumberStyle,
    format_number,
    labelled,
)

_OUNCES_PER_LB = 16
_SMALL_KG = 0.1


def format_mass(
    mass_kg: float | None,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    with_unit: bool = True,
    decimals: int = 1,
    signed: bool = False,
    like_kg: float | None = None,
) -> str:
    r"""Write a mass: kg with one decimal, below 100 g in g; lb and oz if so styled.

    Without its unit a mass always stands in the style's mass unit, as its column does.

    Parameters
    ----------
    mass_kg : float or None
        Mass in kg.
    style : NumberStyle
        Sets the mass unit and the decimal mark.
    with_unit : bool
        False where the unit stands in the column head.
    decimals : int
        Digits after the decimal mark in kg or lb.
    signed : bool
        True to write a plus.
    like_kg : float or None
        A mass that chooses between kg and g in place of this one.

    Examples
    --------
    >>> format_mass(431.04), format_mass(0.0087), format_mass(0.0087, with_unit=False)
    ('431.0\xa0kg', '8.7\xa0g', '0.0')
    """
    if mass_kg is None or not math.isfinite(mass_kg):
        return UNKNOWN
    size_kg = abs(mass_kg if like_kg is None else like_kg)
    value, label = style.in_mass_unit(mass_kg), style.mass_unit
    if with_unit and 0 < size_kg < _SMALL_KG:
        in_lb = label == "lb"
        value = value * _OUNCES_PER_LB if in_lb else mass_kg * 1000
        label, decimals = ("oz", 2) if in_lb else ("g", 1)
    number = format_number(value, decimals, style=style, signed=signed)
    return labelled(number, label if with_unit else "")


def format_energy(
    energy_kwh: float | None,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    with_unit: bool = True,
    decimals: int = 1,
    signed: bool = False,
) -> str:
    r"""Write an energy in kWh with one decimal.

    Parameters
    ----------
    energy_kwh : float or None
        Energy in kWh.
    style, with_unit, decimals, signed
        As in `format_mass`.

    Examples
    --------
    >>> format_energy(81)
    '81.0\xa0kWh'
    """
    number = format_number(energy_kwh, decimals, style=style, signed=signed)
    return labelled(number, "kWh" if with_unit else "")


def format_density(
    density_wh_per_kg: float | None,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    with_unit: bool = True,
    decimals: int = 0,
    signed: bool = False,
) -> str:
    r"""Write an energy density in whole Wh/kg, whatever the mass unit.

    Parameters
    ----------
    density_wh_per_kg : float or None
        Energy density in Wh/kg.
    style, with_unit, decimals, signed
        As in `format_mass`.

    Examples
    --------
    >>> format_density(162.6)
    '163\xa0Wh/kg'
    """
    number = format_number(density_wh_per_kg, decimals, style=style, signed=signed)
    return labelled(number, "Wh/kg" if with_unit else "")


def format_money(
    value: float | None,
    currency: str,
    per: str | None = None,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    with_unit: bool = True,
    decimals: int | None = None,
    signed: bool = False,
) -> str:
    r"""Write a sum of money: whole per pack, two decimals per kilogram.

    Parameters
    ----------
    value : float or None
        The sum, in `currency` or in `currency` per `per`.
    currency : str
        Currency code.
    per : str or None
        What the sum is for one of, ``kg``; the value is not converted.
    style, with_unit, signed
        As in `format_mass`.
    decimals : int or None
        Digits after the decimal mark; None for none per pack and two per unit.

    Examples
    --------
    >>> format_money(33.9, "EUR"), format_money(3, "EUR", "kg")
    ('34\xa0EUR', '3.00\xa0EUR/kg')
    """
    if decimals is None:
        decimals = 2 if per else 0
    number = format_number(value, decimals, style=style, signed=signed)
    label = f"{currency}/{per}" if per else currency
    return labelled(number, label if with_unit else "")


def format_worth(
    worth_per_kg: float | None,
    currency: str,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    with_unit: bool = True,
) -> str:
    r"""Write the worth of a unit of mass saved, per lb where the style says so.

    Parameters
    ----------
    worth_per_kg : float or None
        Worth in `currency` per kg.
    currency : str
        Currency code.
    style, with_unit
        As in `format_mass`.

    Examples
    --------
    >>> format_worth(3, "EUR", style=NumberStyle(mass_unit="lb"))
    '1.36\xa0EUR/lb'
    """
    value = worth_per_kg
    if value is not None and style.mass_unit == "lb":
        value *= KG_PER_LB
    return format_money(
        value, currency, style.mass_unit, style=style, with_unit=with_unit
    )


def format_share(
    share: float | None,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    with_unit: bool = True,
    decimals: int = 0,
    signed: bool = False,
) -> str:
    r"""Write a share in whole per cent.

    Parameters
    ----------
    share : float or None
        Share as a fraction, 1 being the whole.
    style, with_unit, decimals, signed
        As in `format_mass`.

    Examples
    --------
    >>> format_share(0.663)
    '66\xa0%'
    """
    percent = None if share is None else share * 100
    number = format_number(percent, decimals, style=style, signed=signed)
    return labelled(number, "%" if with_unit else "")


def format_chance(chance: float | None, *, with_unit: bool = True) -> str:
    r"""Write a chance in whole per cent, never 0 and never 100.

    Parameters
    ----------
    chance : float or None
        Chance as a fraction from 0 to 1.
    with_unit : bool
        False where the per cent sign stands in the column head.

    Examples
    --------
    >>> format_chance(0.0), format_chance(0.412), format_chance(0.999)
    ('under 1\xa0%', '41\xa0%', 'over 99\xa0%')
    """
    label = "%" if with_unit else ""
    if chance is None or not math.isfinite(chance):
        return UNKNOWN
    if chance < 0.01:
        return labelled("under 1", label)
    if chance > 0.99:
        return labelled("over 99", label)
    return labelled(format_number(chance * 100), label)
