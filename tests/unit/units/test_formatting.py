"""Figures as the screen shows them and as files hold them."""

from __future__ import annotations

import math
from functools import partial

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.units.formatting import (
    NumberStyle,
    format_chance,
    format_density,
    format_energy,
    format_mass,
    format_mass_range,
    format_money,
    format_number,
    format_range,
    format_share,
    format_worth,
    plain,
)

POUNDS = NumberStyle(mass_unit="lb")
COMMA = NumberStyle(decimal_mark=",")


def spelled(text: str) -> str:
    """Show the special characters of a text as plain ones of their own."""
    return text.replace("\u00a0", "~").replace("\u2009", "_").replace("\u2212", "m")


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (0, 1, "0.0"),
        (-0.0, 1, "0.0"),
        (-0.04, 1, "0.0"),
        (-0.06, 1, "m0.1"),
        (431, 1, "431.0"),
        (1234.56, 1, "1_234.6"),
        (-1234567, 0, "m1_234_567"),
        (999.96, 1, "1_000.0"),
        (None, 1, "–"),
        (math.nan, 1, "–"),
        (math.inf, 1, "–"),
        (np.float64(431.04), 1, "431.0"),
    ],
)
def test_numbers(value: float | None, decimals: int, text: str) -> None:
    assert spelled(format_number(value, decimals)) == text


def test_number_styles() -> None:
    assert spelled(format_number(-1234.5, 1, style=COMMA)) == "m1_234,5"
    assert format_number(11.3, 1, signed=True) == "+11.3"
    assert format_number(0.01, 1, signed=True) == "0.0"
    assert format_number(2026, grouped=False) == "2026"


@pytest.mark.parametrize(
    ("mass_kg", "text"),
    [
        (431.04, "431.0~kg"),
        (-11.3, "m11.3~kg"),
        (0.1, "0.1~kg"),
        (0.0087, "8.7~g"),
        (-0.0087, "m8.7~g"),
        (0, "0.0~kg"),
        (None, "–"),
    ],
)
def test_masses(mass_kg: float | None, text: str) -> None:
    assert spelled(format_mass(mass_kg)) == text


def test_masses_in_pounds() -> None:
    assert spelled(format_mass(430.9127515, style=POUNDS)) == "950.0~lb"
    assert spelled(format_mass(0.45359237 / 16, style=POUNDS)) == "1.00~oz"
    assert format_mass(430.9127515, style=POUNDS, with_unit=False) == "950.0"
    assert POUNDS.in_mass_unit(0.45359237) == 1.0
    assert COMMA.in_mass_unit(0.45359237) == 0.45359237


def test_column_cells_keep_the_heads_unit() -> None:
    assert format_mass(0.0087, with_unit=False) == "0.0"
    assert format_mass(0.0087, with_unit=False, decimals=3) == "0.009"
    assert format_energy(81, with_unit=False) == "81.0"
    assert format_density(162.6, with_unit=False) == "163"
    assert format_money(34.4, "EUR", with_unit=False) == "34"
    assert format_share(0.07, with_unit=False) == "7"
    assert format_chance(0.07, with_unit=False) == "7"
    assert format_worth(3, "EUR", with_unit=False) == "3.00"


def test_other_figures() -> None:
    assert spelled(format_energy(81)) == "81.0~kWh"
    assert spelled(format_density(162.6, style=POUNDS)) == "163~Wh/kg"
    assert spelled(format_money(-1234.4, "EUR")) == "m1_234~EUR"
    assert spelled(format_money(3, "EUR", "kg")) == "3.00~EUR/kg"
    assert spelled(format_money(0.07, "EUR", decimals=2)) == "0.07~EUR"
    assert spelled(format_worth(3, "EUR")) == "3.00~EUR/kg"
    assert spelled(format_worth(3, "EUR", style=POUNDS)) == "1.36~EUR/lb"
    assert spelled(format_share(-0.127, signed=True)) == "m13~%"
    assert format_worth(None, "EUR", style=POUNDS) == "–"
    assert format_share(None) == "–"


@pytest.mark.parametrize(
    ("chance", "text"),
    [
        (0.0, "under 1~%"),
        (0.0099, "under 1~%"),
        (0.01, "1~%"),
        (0.412, "41~%"),
        (0.99, "99~%"),
        (0.9901, "over 99~%"),
        (1.0, "over 99~%"),
        (None, "–"),
        (math.nan, "–"),
    ],
)
def test_chances(chance: float | None, text: str) -> None:
    assert spelled(format_chance(chance)) == text


@given(st.floats(0, 1))
def test_chance_is_never_none_and_never_certain(chance: float) -> None:
    assert format_chance(chance, with_unit=False) not in ("0", "100")


def test_ranges() -> None:
    assert spelled(format_range(11.3, 8.9, 13.6, format_mass)) == (
        "11.3~kg (8.9 to 13.6)"
    )
    euros = partial(format_money, currency="EUR")
    assert spelled(format_range(34, 20, 48, euros)) == "34~EUR (20 to 48)"
    assert format_range(3, 1, 5, format_number) == "3 (1 to 5)"
    assert spelled(format_range(0.3, 0.001, 0.5, format_chance)) == (
        "30~% (under 1 to 50)"
    )


def test_range_with_mixed_units_names_each() -> None:
    assert spelled(format_range(0.2, 0.05, 0.3, format_mass)) == (
        "0.2~kg (50.0~g to 0.3~kg)"
    )


def test_mass_ranges_share_the_unit_of_the_largest() -> None:
    assert spelled(format_mass_range(11.3, -0.05, 13.6)) == "11.3~kg (m0.1 to 13.6)"
    assert spelled(format_mass_range(0.05, 0, 0.09)) == "50.0~g (0.0 to 90.0)"
    assert spelled(format_mass_range(0.45359237, 0, 0.90718474, style=POUNDS)) == (
        "1.0~lb (0.0 to 2.0)"
    )


def test_range_without_ends_is_the_figure() -> None:
    assert spelled(format_mass_range(11.3, None, 13.6)) == "11.3~kg"
    assert format_mass_range(math.nan, 1, 2) == "–"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (431.0, "431"),
        (-0.5, "-0.5"),
        (-0.0, "0"),
        (0.1 + 0.2, "0.30000000000000004"),
        (1e-7, "1e-07"),
        (None, ""),
        (math.nan, ""),
        (math.inf, ""),
        (np.float64(0.1), "0.1"),
    ],
)
def test_plain(value: float | None, text: str) -> None:
    assert plain(value) == text
