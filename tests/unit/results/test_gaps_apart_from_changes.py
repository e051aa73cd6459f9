"""Neither a change nor an assumption about money can alter a gap."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from benchpack.files.demo import demo_library
from benchpack.model.assumptions import ASSUMPTION_NAMES
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import DriveCycle
from benchpack.model.ranges import Range
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from benchpack.results.results import compute

VALUES: dict[str, Any] = {
    "worth_low_per_kg": 0.5,
    "worth_likely_per_kg": 4.0,
    "worth_high_per_kg": 7.0,
    "worth_reason": "agreed",
    "worth_source": "their letter",
    "share_captured": 0.4,
    "valued_mass": ValuedMass.TARGET,
    "programme": ProgrammeKind.NEW,
    "yearly_volume": 12_345,
    "programme_years": 3.0,
    "volumes": (1_000, 2_000),
    "volume_spread": 0.1,
    "start_year": 2031,
    "discount_rate": 0.15,
    "customer_share": 0.7,
    "required_saving": 5.0,
    "part_price": 80.0,
    "old_part_price": 70.0,
    "mass_energy": Range(0.3, 0.5, 0.7),
    "energy_from": EnergyFrom.URBAN,
    "rolling_resistance": 0.008,
    "drive_efficiency": 0.8,
    "recuperated_share": 0.5,
    "steady_speed_kmh": 80.0,
    "drive_cycle": DriveCycle("own", 1.0, (0.0, 50.0, 0.0)).to_text(),
    "vehicle_range_km": 300.0,
    "usable_share": 0.9,
    "battery_cost": Range(60.0, 70.0, 80.0),
    "pack_density_wh_per_kg": 150.0,
    "sizing": Sizing.BATTERY_KEPT,
    "consumption_kwh": 22.0,
    "secondary_share": 0.2,
    "driver_km_per_year": 40_000.0,
    "driver_years": 8.0,
    "energy_price": 0.4,
    "charging_efficiency": 0.9,
    "driver_rate": 0.03,
    "tooling_budget": 1.0,
    "target_kg": 7.5,
}


def test_every_assumption_is_tried() -> None:
    assert set(VALUES) == {*ASSUMPTION_NAMES, "tooling_budget", "target_kg"}


@pytest.mark.parametrize("name", VALUES)
def test_gaps_are_taken_over_and_would_come_out_the_same(name: str) -> None:
    library = demo_library()
    study = library.studies[0]
    before = compute(library, study)
    other = replace(study, **{name: VALUES[name]})
    assert other != study
    kept = compute(library, other, previous=before)
    assert kept.comparison is before.comparison
    assert kept.study == other
    assert compute(library, other).gap_kg == before.gap_kg


def test_no_change_alters_a_gap() -> None:
    library = demo_library()
    study = library.studies[0]
    before = compute(library, study)
    bare = replace(library, changes={})
    assert compute(bare, study, previous=before).comparison is before.comparison
    assert compute(bare, study).gap_kg == before.gap_kg
