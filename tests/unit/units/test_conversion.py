"""Conversion against pint with its own float registry and exact definitions."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError, RequestError
from benchpack.units.labels import QUANTITIES, Quantity, Unit, quantity, screen_label
from benchpack.units.parsing import conversion_factor, convert, parse_quantity
from benchpack.units.registry import registry

EVERY_UNIT = [
    pytest.param(one, unit, id=f"{one.name}-{unit.label or 'plain'}")
    for one in QUANTITIES.values()
    for unit in one.units
]
VALUES = st.floats(1e-6, 1e9)


@pytest.fixture(scope="module")
def floats() -> pint.UnitRegistry[float]:
    """A registry of its own, in floats as pint makes it, one currency added."""
    made: pint.UnitRegistry[float] = pint.UnitRegistry()
    made.define("CUR = [currency]")
    return made


@pytest.mark.parametrize(("asked", "unit"), EVERY_UNIT)
def test_every_unit_agrees_with_pint(
    floats: pint.UnitRegistry[float], asked: Quantity, unit: Unit
) -> None:
    for value in (0.0, 1.0, 431.7):
        measured = floats.Quantity(value, unit.pint_text)
        expected = measured.to(asked.units[0].pint_text).magnitude
        found = convert(value, unit.label or "-", asked)
        assert found == pytest.approx(expected, rel=1e-12, abs=1e-9)


@given(data=st.data(), value=VALUES)
def test_every_unit_goes_there_and_back(data: st.DataObject, value: float) -> None:
    asked = data.draw(st.sampled_from(list(QUANTITIES.values())))
    unit = data.draw(st.sampled_from(asked.units))
    there = Fraction(convert(value, unit.label or "-", asked))
    back = registry().Quantity(there, asked.units[0].pint_text).to(unit.pint_text)
    assert float(back.magnitude) == pytest.approx(value, rel=1e-12, abs=1e-9)


@pytest.mark.parametrize(("asked", "unit"), EVERY_UNIT)
def test_every_spelling_means_its_unit(asked: Quantity, unit: Unit) -> None:
    for text in (unit.label, unit.screen, *unit.spellings):
        if text or not unit.label:
            found = asked.find(text)
            assert found is unit, text


# Definitions recalled, all exact: international pound and inch (1959 agreement, NIST
# SP 811), standard gravity (3rd CGPM 1901), US gallon 231 cubic inches (NIST SP 811),
# imperial gallon (UK Weights and Measures Act 1985); from memory.
@pytest.mark.parametrize(
    ("label", "asked", "factor"),
    [
        ("lb", "mass", 0.45359237),
        ("oz", "mass", 0.45359237 / 16),
        ("in", "length", 25.4),
        ("ft", "length", 304.8),
        ("kgf", "force", 9.80665),
        ("kgf cm", "torque", 0.0980665),
        ("US gal", "volume", 231 * 2.54**3 / 1000),
        ("imp gal", "volume", 4.54609),
        ("t", "mass", 1000.0),
        ("GJ", "energy", 1000 / 3.6),
        ("EUR/lb", "money per mass", 1 / 0.45359237),
        ("kg", "mass", 1.0),
    ],
)
def test_factors_are_the_defined_ones(label: str, asked: str, factor: float) -> None:
    assert conversion_factor(label, asked) == pytest.approx(factor, rel=3e-16)


@given(st.integers(0, 10**6))
def test_whole_numbers_convert_without_drift(count: int) -> None:
    assert convert(float(count), "lb", "mass") == count * 45359237 / 10**8
    assert convert(float(count), "MJ", "energy") == count * 5 / 18
    assert convert(float(count), "g", "mass") == count / 1000


@given(st.lists(VALUES, max_size=20))
def test_columns_convert_as_single_values_do(values: list[float]) -> None:
    column = np.array(values, dtype=np.float64)
    for unit, asked in (("lb", "mass"), ("MJ", "energy"), ("°F", "temperature")):
        expected = [convert(value, unit, asked) for value in values]
        assert convert(column, unit, asked).tolist() == expected


def test_unknown_stays_unknown_and_own_unit_is_untouched() -> None:
    column = np.array([1.0, math.nan])
    assert math.isnan(convert(column, "lb", "mass")[1])
    assert convert(column, "kg", "mass") is column


@given(VALUES, st.sampled_from(["lb", "oz", "t", "g", "mg"]))
def test_typed_figure_equals_converted_column(value: float, unit: str) -> None:
    assert parse_quantity(f"{value!r} {unit}", "mass") == convert(value, unit, "mass")


def test_temperature_has_no_factor() -> None:
    with pytest.raises(RequestError, match="offset"):
        conversion_factor("°F", "temperature")


def test_wrong_unit_is_refused() -> None:
    with pytest.raises(DataError, match="“kWh” is an energy"):
        conversion_factor("kWh", "mass")
    with pytest.raises(DataError, match="not known"):
        convert(1.0, "stone", "mass")
    with pytest.raises(DataError, match="in USD, not in EUR"):
        convert(1.0, "USD/kg", "money per mass", currency="EUR")


def test_registry_is_one_and_refuses_exchange() -> None:
    assert registry() is registry()
    with pytest.raises(pint.DimensionalityError):
        registry().Quantity(1, "EUR").to("USD")


def test_unknown_quantity_is_a_wrong_request() -> None:
    with pytest.raises(RequestError, match="colour"):
        quantity("colour")


def test_screen_labels() -> None:
    assert screen_label("m2") == "m²"
    assert screen_label("degC") == "°C"
    assert screen_label("CUR/kg", currency="EUR") == "EUR/kg"
    assert screen_label("Wh/kg") == "Wh/kg"
    assert screen_label("unheard of") == "unheard of"
