"""Entries in fields: what is taken, what is refused, and the way back to text."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.model.boundary import ITEMS, Boundary, Weighed
from benchpack.model.entry import parse_value, value_text
from benchpack.model.fields import Field, Kind
from benchpack.model.joint import JOINT_FIELDS
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS
from benchpack.model.part import PART_FIELDS
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem

PART_FIELD = {field.name: field for field in PART_FIELDS}
JOINT_FIELD = {field.name: field for field in JOINT_FIELDS}


@pytest.mark.parametrize(
    ("field", "text", "value"),
    [
        (PACK_FIELD["mass_kg"], "498.1", 498.1),
        (PACK_FIELD["mass_kg"], "0,45 t", 450.0),
        (PACK_FIELD["mass_kg"], "100 lb", 45.359237),
        (PACK_FIELD["energy_kwh"], "281 MJ", 281 / 3.6),
        (PACK_FIELD["cells_mass_kg"], " ", None),
        (PACK_FIELD["year"], "2024", 2024),
        (PACK_FIELD["energy_basis"], "Gross", EnergyBasis.GROSS),
        (PACK_FIELD["energy_basis"], "", EnergyBasis.UNKNOWN),
        (PACK_FIELD["mass_known_by"], "weighed batch", KnownBy.WEIGHED_BATCH),
        (PART_FIELD["subsystem"], "tray", Subsystem.TRAY),
        (PART_FIELD["carry_over"], "x", True),
        (PART_FIELD["carry_over"], "Yes", True),
        (PART_FIELD["carry_over"], "", False),
        (PART_FIELD["carry_over"], "0", False),
        (JOINT_FIELD["mass_each_g"], "8,7 g", 8.7),
        (PACK_FIELD["note"], " kept as it is ", " kept as it is "),
    ],
)
def test_text_becomes_the_value_it_means(field: Field, text: str, value: Any) -> None:
    found = parse_value(field, text)
    assert found == value
    assert type(found) is type(value)


def test_bare_number_takes_the_unit_of_its_column() -> None:
    mass_kg = parse_value(PACK_FIELD["mass_kg"], "1000", unit="lb")
    assert mass_kg == pytest.approx(453.59237, rel=1e-15)


def test_unit_in_the_cell_wins_over_the_unit_of_the_column() -> None:
    assert parse_value(PACK_FIELD["mass_kg"], "431 kg", unit="lb") == 431.0


def test_decimal_mark_settles_what_is_ambiguous() -> None:
    mass = PACK_FIELD["mass_kg"]
    assert parse_value(mass, "1,234", decimal=".") == 1234.0
    assert parse_value(mass, "1,234", decimal=",") == 1.234


def test_boundary_is_read_from_its_text_form() -> None:
    boundary = parse_value(PACK_FIELD["boundary"], "coolant=out; lid=in 9.5")
    assert boundary.state("coolant") is Weighed.OUT
    assert boundary.masses_kg["lid"] == 9.5


@pytest.mark.parametrize(
    ("field", "text"),
    [
        (PACK_FIELD["mass_kg"], ""),
        (PACK_FIELD["name"], "  "),
        (PACK_FIELD["mass_kg"], "431 kWh"),
        (PACK_FIELD["mass_kg"], "-3"),
        (PACK_FIELD["mass_kg"], "0"),
        (PACK_FIELD["mass_kg"], "nan"),
        (PACK_FIELD["voltage_v"], "12 34x"),
        (PACK_FIELD["year"], "2024.5"),
        (PACK_FIELD["energy_basis"], "net"),
        (PART_FIELD["carry_over"], "perhaps"),
        (PACK_FIELD["boundary"], "wheels=in"),
    ],
)
def test_refusal_names_column_and_value(field: Field, text: str) -> None:
    with pytest.raises(DataError) as caught:
        parse_value(field, text)
    problem = caught.value.problems[0]
    assert problem.column == field.header()
    assert problem.value == text
    assert problem.what


def values_of(field: Field) -> st.SearchStrategy[Any]:
    if field.kind is Kind.NUMBER:
        low = math.ulp(0.0) if field.positive else 0.0
        high = min(field.ceiling, 1e12)
        number = st.floats(low, high, allow_subnormal=False)
        return number if field.required else st.none() | number
    if field.kind is Kind.COUNT:
        most = int(min(field.ceiling, 1e9))
        return st.none() | st.integers(int(field.positive), most)
    if field.kind is Kind.CHOICE:
        return st.sampled_from(field.choices)
    if field.kind is Kind.FLAG:
        return st.booleans()
    if field.kind is Kind.BOUNDARY:
        states = st.dictionaries(
            st.sampled_from(ITEMS), st.sampled_from((Weighed.IN, Weighed.OUT))
        )
        return states.map(Boundary)
    text = st.text(max_size=20)
    return text.filter(str.strip) if field.required else text


@settings(max_examples=20, deadline=None)
@given(st.data())
@pytest.mark.parametrize(
    "field", [*PACK_FIELDS, *PART_FIELDS, *JOINT_FIELDS], ids=lambda f: f.name
)
def test_value_survives_the_way_through_its_text(
    field: Field, data: st.DataObject
) -> None:
    value = data.draw(values_of(field))
    found = parse_value(field, value_text(field, value), decimal=".")
    assert found == value


def test_unknown_of_a_column_is_empty_text() -> None:
    assert value_text(PACK_FIELD["voltage_v"], math.nan) == ""
    assert value_text(PACK_FIELD["year"], 2024.0) == "2024"
