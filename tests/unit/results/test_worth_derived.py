"""The worth of a kilogram by the vehicle, beside the one that is entered."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.calc.drive_cycle import wheel_energy
from benchpack.calc.speed_trace import urban_trace
from benchpack.errors import Severity
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import DriveCycle
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, Sizing
from benchpack.results.explained_assumed import mass_energy_source
from benchpack.results.worth_derived import (
    APART,
    SECONDARY,
    DerivedWorth,
    derived_worth,
    secondary_of,
)
from benchpack.results.worth_driving import driven_by, mass_energy_of
from tests.unit.results.worth_samples import studies

SAVED = Range(5.0, 10.0, 20.0)
VECTOR: dict[str, Any] = {
    "mass_energy": Range.exactly(0.6),
    "vehicle_range_km": 500.0,
    "usable_share": 0.95,
    "battery_cost": Range.exactly(100.0),
    "worth_likely_per_kg": 3.0,
}


def derived(saved: Range | None = SAVED, **values: Any) -> DerivedWorth:
    study = Study(**{**VECTOR, **values})
    return derived_worth(study, subject_density=160.0, saved_kg=saved)


def test_the_worked_vectors() -> None:
    """0.60 over 500 km gives 3.93, 0.47 over 400 km 2.26 (worked by hand)."""
    one = derived()
    assert one.worth_per_kg is not None
    assert one.battery_kg is not None
    assert_allclose(one.battery_kwh.likely, 0.0316, atol=5e-5)
    assert_allclose(one.battery_kg.likely, 0.197, atol=5e-4)
    assert_allclose(one.worth_per_kg.likely, 3.93, atol=0.005)
    two = derived(mass_energy=Range.exactly(0.47), vehicle_range_km=400.0)
    assert two.worth_per_kg is not None
    assert_allclose(two.worth_per_kg.likely, 2.26, atol=0.005)
    assert one.missing is None
    assert one.disagreement is None
    assert one.range_gain is None


def test_what_the_driver_saves_is_a_line_of_its_own() -> None:
    """2.4 per kg over 13 years of 15,000 km at 5 % (worked by hand)."""
    one, far = derived(), derived(driver_km_per_year=30_000.0)
    assert one.driver_per_kg is not None
    assert far.driver_per_kg is not None
    assert_allclose(one.driver_per_kg.likely, 2.40, atol=0.005)
    assert_allclose(far.driver_per_kg.likely, 2 * one.driver_per_kg.likely)
    assert one.worth_per_kg == far.worth_per_kg


@given(share=st.floats(0, 2))
def test_a_running_change_has_no_secondary_mass(share: float) -> None:
    study = Study(programme=ProgrammeKind.RUNNING, secondary_share=share)
    assert secondary_of(study) == Range.exactly(0.0)
    new = replace(study, programme=ProgrammeKind.NEW)
    assert secondary_of(new) == Range.exactly(share)
    own = replace(new, secondary_share=None)
    assert secondary_of(own) == SECONDARY[ProgrammeKind.NEW]


def test_the_battery_kept_is_worth_nothing_and_gains_range() -> None:
    kept = derived(sizing=Sizing.BATTERY_KEPT, consumption_kwh=15.0)
    assert kept.worth_per_kg == Range.exactly(0.0)
    assert kept.range_gain is not None
    assert_allclose(kept.range_gain.ends, (0.002, 0.004, 0.008), rtol=1e-12)
    assert kept.missing is not None
    assert kept.disagreement is None
    assert derived(None, sizing=Sizing.BATTERY_KEPT).range_gain is None


def test_a_heavier_pack_loses_range_at_its_worst_end() -> None:
    kept = derived(
        Range(-20.0, -10.0, 5.0),
        sizing=Sizing.BATTERY_KEPT,
        consumption_kwh=10.0,
        mass_energy=Range(0.5, 0.6, 0.9),
    )
    assert kept.range_gain is not None
    assert_allclose(kept.range_gain.ends, (-0.018, -0.006, 0.0045), rtol=1e-12)


@settings(max_examples=60)
@given(density=st.floats(1, 300))
def test_half_a_kilogram_of_battery_is_refused_with_a_sentence(density: float) -> None:
    found = derived(pack_density_wh_per_kg=density)
    assert found.battery_kg is not None
    if found.battery_kg.likely >= 0.5:
        assert found.worth_per_kg is None
        assert found.missing is not None
        assert "not believed" in found.missing.what
        assert found.missing.severity is Severity.ERROR
    else:
        assert found.worth_per_kg is not None
        assert found.worth_per_kg.likely > 0


def test_a_high_end_that_is_not_believed_is_left_out_and_said() -> None:
    found = derived(mass_energy=Range(0.4, 0.6, 2.0))
    assert found.worth_per_kg is not None
    assert found.worth_per_kg.high == found.worth_per_kg.likely
    assert found.missing is not None
    assert found.missing.severity is Severity.WARNING


def test_without_a_density_there_is_a_sentence() -> None:
    found = derived_worth(Study(), subject_density=math.nan, saved_kg=SAVED)
    assert found.worth_per_kg is found.battery_kg is None
    assert found.missing is not None
    assert "density" in found.missing.remedy
    empty = derived_worth(Study(), subject_density=1e-310, saved_kg=SAVED)
    assert empty.worth_per_kg is empty.battery_kg is None


def test_starting_values_are_not_money_of_another_currency() -> None:
    """Euros from memory are no yen: nothing is made of them."""
    start = Study()
    yen = derived(currency="JPY", battery_cost=start.battery_cost)
    assert yen.worth_per_kg is None
    assert yen.driver_per_kg is None
    assert yen.disagreement is None
    assert yen.missing is not None
    assert yen.missing.what == "Cost of battery is a starting value in EUR."
    assert yen.missing.remedy == "Enter it in JPY."
    assert yen.driver_missing is not None
    assert "Price of energy" in yen.driver_missing.what
    assert yen.battery_kg == derived().battery_kg
    entered = derived(currency="JPY", energy_price=31.0)
    assert entered.worth_per_kg == derived().worth_per_kg
    assert entered.driver_per_kg is not None
    assert derived(battery_cost=start.battery_cost).worth_per_kg is not None


@pytest.mark.parametrize(
    ("factor", "word"),
    [
        (1.0, ""),
        (1.9, ""),
        (0.51, ""),
        (2.1, "above"),
        (0.49, "below"),
        (0.0, "far below"),
    ],
)
def test_more_than_a_factor_of_two_is_said_both_ways(factor: float, word: str) -> None:
    assert APART == 2.0
    worth = derived().worth_per_kg
    assert worth is not None
    entered = factor * worth.likely
    ends: dict[str, Any] = {
        f"worth_{end}_per_kg": entered for end in ("low", "likely", "high")
    }
    found = derived(**ends).disagreement
    assert (found is None) == (not word)
    if found is not None:
        assert word in found.what
        assert found.remedy == "Write down why, or bring the two closer."
    # A vehicle to which mass costs nothing supports no worth at all.
    nothing = derived(mass_energy=Range.exactly(0.0), **ends).disagreement
    assert (nothing is None) == (entered == 0)
    if nothing is not None:
        assert "far above" in nothing.what


def test_the_disagreement_is_written_as_the_study_shows_numbers() -> None:
    found = derived(
        worth_likely_per_kg=20.0,
        worth_high_per_kg=20.0,
        mass_unit="lb",
        decimal_mark=",",
        currency="USD",
    ).disagreement
    assert found is not None
    said = found.what.replace("\u00a0", " ")
    assert "9,07 USD/lb lies 5,1 times above" in said
    assert "1,78 USD/lb" in said


def test_patterns_of_driving() -> None:
    values: dict[str, Any] = {"drive_efficiency": 0.9, "recuperated_share": 0.6}
    urban = Study(energy_from=EnergyFrom.URBAN, **values)
    found, name = mass_energy_of(urban), mass_energy_source(urban)
    trace = urban_trace()
    wheel = wheel_energy(trace.time_s, trace.speed_kmh)
    by_hand = wheel.traction_per_100_kg / 0.9 + 0.54 * wheel.braking_per_100_kg
    assert_allclose(found.ends, [by_hand] * 3, rtol=1e-12)
    assert "our own" in name
    cycle = DriveCycle("hill road", 5.0, (0.0, 50.0, 50.0, 20.0, 0.0))
    read = Study(energy_from=EnergyFrom.CYCLE, drive_cycle=cycle.to_text(), **values)
    driven = driven_by(read)
    assert driven is not None
    assert_allclose(driven.distance_km, 5 * (25 + 50 + 35 + 10) / 3600)
    assert "hill road" in mass_energy_source(read)
    steady = Study(energy_from=EnergyFrom.STEADY, steady_speed_kmh=90.0)
    assert "90 km/h" in mass_energy_source(steady)
    unread = Study(energy_from=EnergyFrom.CYCLE)
    assert driven_by(unread) is driven_by(Study()) is None
    assert mass_energy_of(unread) == Study().mass_energy
    assert mass_energy_source(unread).endswith("no drive cycle has been read yet")


def test_what_comes_back_entirely_never_turns_mass_into_energy() -> None:
    free = Study(
        energy_from=EnergyFrom.URBAN,
        rolling_resistance=0.001,
        drive_efficiency=1.0,
        recuperated_share=1.0,
    )
    assert mass_energy_of(free).likely >= 0


@settings(max_examples=100, deadline=None)
@given(study=studies(), density=st.floats(0, 400) | st.just(math.nan))
def test_any_assumptions_give_a_worth_or_a_sentence(
    study: Study, density: float
) -> None:
    found = derived_worth(study, subject_density=density, saved_kg=SAVED)
    assert (found.worth_per_kg is None) <= (found.missing is not None)
    assert (found.driver_per_kg is None) == (found.driver_missing is not None)
    if found.driver_per_kg is not None:
        assert found.driver_per_kg.low >= 0
    if study.sizing is Sizing.BATTERY_KEPT:
        assert found.range_gain is not None
        assert found.disagreement is None
    if found.worth_per_kg is not None and study.sizing is Sizing.RANGE_KEPT:
        less, more = sorted((study.worth_likely_per_kg, found.worth_per_kg.likely))
        assert (found.disagreement is not None) == (more > APART * less)
