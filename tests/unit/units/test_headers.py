"""Column heads: where a unit is meant and where it only looks like one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.units.labels import QUANTITIES, quantities_of
from benchpack.units.parsing import split_header

LABELS = sorted({label for one in QUANTITIES.values() for label in one.labels()})


@pytest.mark.parametrize(
    ("text", "title", "unit"),
    [
        ("mass [lb]", "mass", "lb"),
        ("mass[lbs]", "mass", "lb"),
        ("Mass (kg)", "Mass", "kg"),
        ("  Mass   (kg) ", "Mass", "kg"),
        ("Masse [kg]", "Masse", "kg"),
        ("ENERGY [KWH]", "ENERGY", "kWh"),
        ("energy_kWh", "energy", "kWh"),
        ("energy kWh", "energy", "kWh"),
        ("pack_mass_lbs", "pack_mass", "lb"),
        ("density_wh_per_kg", "density", "Wh/kg"),
        ("Mass in kg", "Mass", "kg"),
        ("mass_in_kg", "mass", "kg"),
        ("Mass, kg", "Mass", "kg"),
        ("mass / kg", "mass", "kg"),
        ("m/kg", "m", "kg"),
        ("E / kWh", "E", "kWh"),
        ("density / (Wh/kg)", "density", "Wh/kg"),
        ("expansion / 10⁻⁶/K", "expansion", "1e-6/K"),
        ("price [EUR/kg]", "price", "EUR/kg"),
        ("price [€/kg]", "price", "€/kg"),
        ("cost each [CUR]", "cost each", "CUR"),
        ("mass +- [kg]", "mass +-", "kg"),
        ("mass ± (lb)", "mass ±", "lb"),
        ("energy (usable) [kWh]", "energy (usable)", "kWh"),
        ("mass [kg] (weighed)", "mass (weighed)", "kg"),
        ("area [m²]", "area", "m2"),
        ('thickness ["]', "thickness", "in"),
        ("length in", "length", "in"),
        ("length in in", "length", "in"),
        ("time min", "time", "min"),
        ("volume L", "volume", "L"),
        ("conductivity [W/(m K)]", "conductivity", "W/(m K)"),
        ("conductivity (W/(m·K))", "conductivity", "W/(m K)"),
        ("temperature [°C]", "temperature", "degC"),
        ("state of health [%]", "state of health", "%"),
        ("SOH %", "SOH", "%"),
        ("Poisson ratio [-]", "Poisson ratio", "-"),
    ],
)
def test_splits(text: str, title: str, unit: str) -> None:
    assert split_header(text) == (title, unit)


@pytest.mark.parametrize(
    "text",
    [
        *("pack", "year (SOP)", "mass known by", "cost each [each]", "type [A-B]"),
        *("mass (1)", "kg", "[kg]", "(kg)", "Wh/kg", "variant m", "grade g", "cell t"),
        *("built in", "mass min", "mass max", "cost per kg", "energy per kg"),
        *("cost / kg", "mass cost / kg", "mass / cost", "row_t", "", "value (TRYING)"),
    ],
)
def test_keeps_whole(text: str) -> None:
    assert split_header(text) == (text, None)


@given(st.sampled_from(LABELS))
def test_every_label_is_found_in_brackets(label: str) -> None:
    assert split_header(f"figure [{label}]") == ("figure", label)
    assert split_header(f"figure ({label})") == ("figure", label)


@given(st.text() | st.text("mas kg[]()_/,%- in"))
def test_any_head_gives_a_known_unit_or_none(text: str) -> None:
    title, unit = split_header(text)
    if unit is None:
        assert title == " ".join(text.split())
    else:
        assert title
        assert quantities_of(unit)
