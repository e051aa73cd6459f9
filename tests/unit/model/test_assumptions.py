"""What assumptions, sets of them and drive cycles refuse, and how they say so."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError, Severity
from benchpack.model.assumption_fields import ASSUMPTION_FIELDS, NEW_FIELDS
from benchpack.model.assumptions import (
    ASSUMPTION_NAMES,
    AssumptionSet,
    assumption_values,
)
from benchpack.model.drive_cycle import MOST_SAMPLES, DriveCycle, parse_cycle
from benchpack.model.fields import Field, Kind
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from tests.strategies.assumptions import assumptions, drive_cycles

NUMBERS = [
    field for field in NEW_FIELDS if field.kind is Kind.NUMBER and not field.attribute
]


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"worth_low_per_kg": 4.0}, "Worth runs 4, 3, 6"),
        ({"worth_high_per_kg": 2.0}, "Worth runs 1, 3, 2"),
        ({"worth_low_per_kg": -1.0}, "Worth per kilogram is -1, 3, 6"),
        ({"worth_likely_per_kg": math.nan}, "Worth per kilogram"),
        ({"worth_high_per_kg": math.inf}, "Worth per kilogram"),
        ({"share_captured": 1.5}, "share captured is 1.5"),
        ({"yearly_volume": 0}, "yearly volume is 0"),
        ({"programme_years": 0.0}, "runs 0 years"),
        ({"programme_years": 0.01}, "runs 0.01 years"),
        ({"programme_years": 101.0}, "runs 101 years"),
        ({"discount_rate": -0.1}, "interest a year is -0.1"),
        ({"volumes": (5, -1)}, "volumes by year"),
        ({"volumes": (1,) * 101}, "volumes by year"),
        ({"volume_spread": 1.2}, "volume spread is 1.2"),
        ({"start_year": 1200}, "start year is 1200"),
        ({"customer_share": 2.0}, "customer share is 2"),
        ({"required_saving": -5.0}, "required saving is -5"),
        ({"part_price": -1.0}, "part price is -1"),
        ({"mass_energy": Range(-0.1, 0.2, 0.3)}, "mass energy low is -0.1"),
        ({"mass_energy": Range(0.1, 0.2, 30.0)}, "mass energy high is 30"),
        ({"battery_cost": Range(-1.0, 0.0, 1.0)}, "battery cost low is -1"),
        ({"usable_share": 0.0}, "usable share is 0"),
        ({"drive_efficiency": 1.1}, "drive efficiency is 1.1"),
        ({"rolling_resistance": 0.0}, "rolling resistance is 0"),
        ({"vehicle_range_km": 0.0}, "vehicle range is 0"),
        ({"consumption_kwh": 0.0}, "consumption is 0"),
        ({"driver_years": 0.0}, "years of use is 0"),
        ({"pack_density_wh_per_kg": 0.0}, "density of the battery saved is 0"),
        ({"drive_cycle": "{"}, "no drive cycle"),
    ],
)
def test_a_study_refuses_what_cannot_be_meant(
    values: dict[str, Any], said: str
) -> None:
    for make in (
        lambda: Study(**values),
        lambda: AssumptionSet("Study", "one", **values),
    ):
        with pytest.raises(DataError) as caught:
            make()
        problem = caught.value.problems[0]
        assert said in problem.what
        assert problem.remedy
        assert problem.record in ("Study", "one")


def made(field: Field, value: float) -> Study:
    values: dict[str, Any] = {field.name: value}
    return Study(**values)


@pytest.mark.parametrize("field", NUMBERS, ids=lambda field: str(field.name))
def test_each_number_is_held_to_its_ends(field: Field) -> None:
    for value in (field.floor, field.ceiling):
        assert getattr(made(field, value), field.name) == value
    for value in (field.floor - 0.01, field.ceiling * 1.01, math.nan, math.inf):
        with pytest.raises(DataError) as caught:
            made(field, value)
        assert caught.value.problems[0].severity is Severity.ERROR


def test_all_faults_are_told_at_once() -> None:
    with pytest.raises(DataError) as caught:
        Study(usable_share=2.0, volume_spread=-1.0, worth_low_per_kg=99.0)
    columns = {problem.column for problem in caught.value.problems}
    assert columns == {"usable share", "volume spread", "worth"}


def test_a_set_has_a_name() -> None:
    with pytest.raises(DataError, match="no name"):
        AssumptionSet("Study", " ")


@given(values=assumptions(st.text))
def test_a_set_gives_a_study_back_what_it_was_kept_from(values: dict[str, Any]) -> None:
    kept = AssumptionSet("Study", "one", **values)
    study = Study(**assumption_values(kept))
    assert assumption_values(study) == assumption_values(kept) == values


def test_every_assumption_has_a_column() -> None:
    columns = {field.attribute or field.name for field in ASSUMPTION_FIELDS}
    assert columns == set(ASSUMPTION_NAMES)
    assert all(field.help.endswith(".") for field in ASSUMPTION_FIELDS)
    for words in (ValuedMass, EnergyFrom, Sizing):
        assert any(field.choices == tuple(words) for field in ASSUMPTION_FIELDS)


@given(cycle=drive_cycles(st.text))
def test_a_cycle_comes_back_from_its_text(cycle: DriveCycle) -> None:
    assert parse_cycle(cycle.to_text()) == cycle


@pytest.mark.parametrize(
    ("step_s", "speeds", "said"),
    [
        (1.0, (), "0 samples"),
        (1.0, (5.0,), "1 samples"),
        (1.0, (5.0,) * (MOST_SAMPLES + 1), f"{MOST_SAMPLES + 1} samples"),
        (0.0, (5.0, 5.0), "step of a drive cycle is 0 s"),
        (math.nan, (5.0, 5.0), "step of a drive cycle is nan s"),
        (61.0, (5.0, 5.0), "step of a drive cycle is 61 s"),
        (1.0, (5.0, -1.0), "no vehicle drives"),
        (1.0, (5.0, math.inf), "no vehicle drives"),
        (1.0, (5.0, 501.0), "no vehicle drives"),
        (1.0, (0.0, 0.0), "stands still"),
        (1.0, (1.2345678901234,) * 5000, "too long to be kept"),
    ],
)
def test_a_cycle_that_cannot_be_driven_is_refused(
    step_s: float, speeds: tuple[float, ...], said: str
) -> None:
    with pytest.raises(DataError) as caught:
        DriveCycle("one", step_s, speeds)
    assert said in caught.value.problems[0].what
    assert "time [s]" in caught.value.problems[0].remedy


@pytest.mark.parametrize(
    "text",
    [
        "{",
        "[]",
        "null",
        "3",
        '{"name": "a"}',
        '{"name":"a","step_s":"x","speed_kmh":[]}',
    ],
)
def test_a_text_that_is_no_cycle_is_refused(text: str) -> None:
    with pytest.raises(DataError):
        parse_cycle(text)
    assert parse_cycle(" ") is None
