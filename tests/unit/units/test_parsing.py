"""Figures with units as people type them and files hold them."""

from __future__ import annotations

import contextlib
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.units.formatting import (
    NumberStyle,
    format_density,
    format_energy,
    format_mass,
    format_money,
)
from benchpack.units.labels import QUANTITIES, Quantity
from benchpack.units.parsing import parse_quantity, require_positive

NEAR_FIGURES = st.text("0123456789., -+ekglbtWhMJEUR€$/%\"'°·⁻⁶")


@pytest.mark.parametrize(
    ("text", "quantity", "value"),
    [
        ("431 kg", "mass", 431.0),
        ("431kg", "mass", 431.0),
        ("431\u00a0kg", "mass", 431.0),
        ("4.5e2 kg", "mass", 450.0),
        ("0,45 t", "mass", 450.0),
        ("12,3 kg", "mass", 12.3),
        ("1 234,5 kg", "mass", 1234.5),
        ("950 lb", "mass", 430.9127515),
        ("950 Lbs", "mass", 430.9127515),
        ("16 oz", "mass", 0.45359237),
        ("8.7 g", "mass", 0.0087),
        ("8.7", "joint mass", 8.7),
        ("0.0087 kg", "joint mass", 8.7),
        ("78 kWh", "energy", 78.0),
        ("78 KWH", "energy", 78.0),
        ("281 MJ", "energy", 281 / 3.6),
        ("78000 Wh", "energy", 78.0),
        ("309 dm³", "volume", 309.0),
        ("0.309 m3", "volume", 309.0),
        ("1 US gal", "volume", 3.785411784),
        ("1 imp gal", "volume", 4.54609),
        ('4"', "length", 101.6),
        ("4″", "length", 101.6),
        ("250 µm", "thickness", 0.25),
        ("2 ft²", "area", 0.18580608),
        ("2 min", "time", 120.0),
        ("2.7 g/cm³", "density", 2700.0),
        ("2.7 kg / dm³", "density", 2700.0),
        ("70000 N/mm²", "modulus", 70.0),
        ("200 W/m·K", "conductivity", 200.0),
        ("200 W m⁻¹ K⁻¹", "conductivity", 200.0),
        ("23.4 1e-6/K", "expansion", 23.4),
        ("23,4·10⁻⁶/K", "expansion", 23.4),
        ("2.34e-5 1/K", "expansion", 23.4),
        ("23.4 µm/(m·K)", "expansion", 23.4),
        ("13 ppm/°F", "expansion", 23.4),
        ("212 °F", "temperature", 100.0),
        ("\u221240 °F", "temperature", -40.0),
        ("300 K", "temperature", 26.85),
        ("25 ℃", "temperature", 25.0),
        ("97 %", "share", 97.0),
        ("33 %", "ratio", 0.33),
        ("12 pcs", "count", 12.0),
        ("98 N·m", "torque", 98.0),
        ("100 kgf·cm", "torque", 9.80665),
        ("162 Wh per kg", "specific energy", 162.0),
    ],
)
def test_reads_with_unit(text: str, quantity: str, value: float) -> None:
    assert parse_quantity(text, quantity) == value


def test_bare_number_takes_the_heads_unit_and_its_own_wins() -> None:
    assert parse_quantity("950", "mass", unit="lb") == 430.9127515
    assert parse_quantity("431 kg", "mass", unit="lb") == 431.0
    assert parse_quantity("431", "mass") == 431.0
    assert parse_quantity("0.97", "share", unit="-") == 97.0


def test_decimal_hint_reaches_the_number() -> None:
    assert parse_quantity("1,234 t", "mass", decimal=",") == 1234.0
    assert parse_quantity("1.234 kg", "mass", decimal=",") == 1234.0
    with pytest.raises(DataError, match="State the decimal mark"):
        parse_quantity("1,234 t", "mass")


@pytest.mark.parametrize(
    ("text", "quantity", "words"),
    [
        ("431 kWh", "mass", ("431 kWh", "an energy", "a mass", "kg, g, t, lb")),
        ("431 kg", "energy", ("431 kg", "a mass", "an energy", "kWh, Wh")),
        ("431 stone", "mass", ("“stone” is not known", "kg, g, t, lb, oz or mg")),
        ("1 gal", "volume", ("“gal” is not known", "US gal or imp gal")),
        ("1 ton", "mass", ("“ton” is not known",)),
        ("5 Mg", "mass", ("“Mg” is not known",)),
        ("5 mWh", "energy", ("“mWh” is not known",)),
        ("12 kg", "count", ("a count", "without a unit")),
        ("12 bananas", "count", ("a count has none",)),
        ("3 kg", "ratio", ("a ratio", "% or as plain digits")),
        ("3 stone", "share", ("not known for a share",)),
        ("431 kg kg", "mass", ("“kg kg” is not known",)),
        ("1e308 t", "mass", ("too large",)),
        ("kg", "mass", ("not a number",)),
        ("431 kg 5", "mass", ("kg 5",)),
        ("12 34x", "mass", ("12 34",)),
        ("", "mass", ("no number",)),
        ("9" * 500, "mass", ("not a number",)),
    ],
)
def test_refusals_say_what_was_read_and_what_to_do(
    text: str, quantity: str, words: tuple[str, ...]
) -> None:
    with pytest.raises(DataError) as caught:
        parse_quantity(text, quantity)
    (problem,) = caught.value.problems
    assert [word for word in words if word not in str(problem)] == []
    assert problem.remedy


@pytest.mark.parametrize(
    ("text", "value"),
    [
        *(("3.20", 3.2), ("3,20 EUR/kg", 3.2), ("EUR 3.20/kg", 3.2)),
        *(("€3.20/kg", 3.2), ("3.20 €/kg", 3.2), ("3.20 EUR per kg", 3.2)),
        *(("3200 EUR/t", 3.2), ("3.2 CUR/kg", 3.2), ("3.20 EUR", 3.2)),
        ("0.45359237 EUR/lb", 1.0),
    ],
)
def test_reads_money_in_the_currency_in_use(text: str, value: float) -> None:
    assert parse_quantity(text, "money per mass", currency="EUR") == value
    assert parse_quantity(text, "money per mass", unit="EUR/kg") == value


@pytest.mark.parametrize("text", ["3 USD", "$3", "3 GBP", "£ 3"])
def test_another_currency_is_refused(text: str) -> None:
    with pytest.raises(DataError, match="no exchange rates"):
        parse_quantity(text, "money", currency="EUR")
    with pytest.raises(DataError, match="no exchange rates"):
        parse_quantity(text, "money", unit="EUR")


def test_head_in_another_currency_is_refused() -> None:
    with pytest.raises(DataError, match="3 EUR/kg” is in EUR, not in USD"):
        parse_quantity("3", "money per mass", unit="EUR/kg", currency="USD")


def test_sign_means_whichever_of_its_currencies_is_in_use() -> None:
    assert parse_quantity("$3", "money", currency="CAD") == 3.0
    assert parse_quantity("$3", "money per mass", unit="$/kg") == 3.0
    assert parse_quantity("3", "money", unit="$", currency="USD") == 3.0


def test_named_currency_needs_one_in_use() -> None:
    assert parse_quantity("3", "money") == 3.0
    with pytest.raises(DataError, match="no currency is stated"):
        parse_quantity("3 EUR", "money")


def test_unlisted_currency_counts_where_it_is_stated() -> None:
    assert parse_quantity("3 XQZ/kg", "money per mass", currency="XQZ") == 3.0
    with pytest.raises(DataError, match="not known"):
        parse_quantity("3 XQZ", "money", currency="EUR")


@given(st.text() | NEAR_FIGURES, st.sampled_from(list(QUANTITIES.values())))
def test_any_text_is_finite_or_refused(text: str, quantity: Quantity) -> None:
    value = None
    with contextlib.suppress(DataError):
        value = parse_quantity(text, quantity, currency="EUR")
    assert value is None or math.isfinite(value)


@given(st.text(), st.sampled_from(list(QUANTITIES.values())))
def test_any_head_unit_is_known_or_refused(unit: str, quantity: Quantity) -> None:
    value = None
    with contextlib.suppress(DataError):
        value = parse_quantity("431", quantity, unit=unit)
    assert value is None or math.isfinite(value)


@given(
    st.floats(-1e6, 1e6),
    st.sampled_from(["kg", "lb"]),
    st.sampled_from([".", ","]),
)
def test_shown_mass_reads_back_within_its_rounding(
    mass_kg: float, unit: str, mark: str
) -> None:
    style = NumberStyle(decimal_mark=mark, mass_unit=unit)
    read = parse_quantity(format_mass(mass_kg, style=style), "mass", decimal=mark)
    assert read == pytest.approx(mass_kg, abs=0.0501, rel=1e-12)


def test_other_shown_figures_read_back() -> None:
    assert parse_quantity(format_energy(81.04), "energy") == 81.0
    assert parse_quantity(format_density(162.6), "specific energy") == 163.0
    shown = format_money(3.2, "EUR", "kg")
    assert parse_quantity(shown, "money per mass", currency="EUR") == 3.2


def test_positive_values_pass() -> None:
    assert require_positive(431.0, "mass", unit="kg") == 431.0
    assert require_positive(0.0, "mass", allow_zero=True) == 0.0


@pytest.mark.parametrize("value", [0.0, -1.0, math.nan, math.inf, -math.inf])
def test_what_is_not_positive_is_refused(value: float) -> None:
    with pytest.raises(DataError, match=r"Mass is .*above zero"):
        require_positive(value, "mass", unit="kg")


def test_negative_is_refused_where_zero_passes() -> None:
    with pytest.raises(DataError, match=r"Mass is -1 kg\. It has to be zero or more"):
        require_positive(-1.0, "mass", unit="kg", allow_zero=True)
