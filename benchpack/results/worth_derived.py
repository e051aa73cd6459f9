"""The worth per kilogram that follows from the vehicle, beside the one entered."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from benchpack.calc.derived_worth import (
    MOST_BATTERY_SHARE,
    battery_saved_kg_per_kg,
    charged_kwh_per_kg,
    driver_saving_per_kg,
    energy_saved_kwh_per_kg,
    range_gain_share,
    worth_at_equal_range,
)
from benchpack.calc.drive_cycle import mass_energy_per_100_kg, wheel_energy
from benchpack.calc.speed_trace import constant_speed_trace, urban_trace
from benchpack.errors import Problem, Severity
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import parse_cycle
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, Sizing

SECONDARY: dict[ProgrammeKind, Range] = {
    ProgrammeKind.UNSTATED: Range.exactly(0.0),
    ProgrammeKind.RUNNING: Range.exactly(0.0),
    ProgrammeKind.FACELIFT: Range(0.1, 0.2, 0.3),
    ProgrammeKind.NEW: Range(0.3, 0.4, 0.5),
}
"""Kilograms that go elsewhere per kilogram saved (from memory; common practice for 0 in
a running change). Published means for whole vehicles go up to 0.95."""

APART = 2.0
"""From this factor between the two worths on the tool speaks up."""


@dataclass(frozen=True, slots=True, eq=False)
class DerivedWorth:
    """What a kilogram is worth by the vehicle.

    Parameters
    ----------
    mass_energy : Range
        kWh per 100 km and 100 kg.
    energy_source : str
        Where that comes from, in words.
    density_wh_per_kg : float
        Of the battery that becomes smaller.
    secondary : Range
        Kilograms that go elsewhere per kilogram saved.
    battery_kwh, battery_kg : Range or None
        Energy and mass of battery saved per kilogram at equal range; None where the
        density is not known.
    worth_per_kg : Range or None
        The maker's worth; zero with the battery kept, None where it cannot be said.
    range_gain : Range or None
        Share of the range gained by the saving valued, with the battery kept.
    driver_per_kg : Range
        What a kilogram saves the driver, present value: another pocket.
    missing : Problem or None
        Why there is no worth.
    disagreement : Problem or None
        That the entered worth and this one are more than `APART` apart.
    """

    mass_energy: Range
    energy_source: str
    density_wh_per_kg: float
    secondary: Range
    battery_kwh: Range | None
    battery_kg: Range | None
    worth_per_kg: Range | None
    range_gain: Range | None
    driver_per_kg: Range
    missing: Problem | None = None
    disagreement: Problem | None = None


def derived_worth(
    study: Study, *, subject_density: float, saved_kg: Range | None
) -> DerivedWorth:
    """Derive the worth of a kilogram from the vehicle.

    Parameters
    ----------
    study : Study
        Vehicle, battery and driver.
    subject_density : float
        Gravimetric energy density of the subject, Wh/kg, NaN where not known.
    saved_kg : Range or None
        The saving that is valued, for the gain of range.
    """
    energy, source = mass_energy_of(study)
    density = study.pack_density_wh_per_kg or subject_density
    secondary = secondary_of(study)
    kwh = _range(
        energy_saved_kwh_per_kg(
            np.array(energy.ends) / 100.0,
            study.vehicle_range_km,
            usable_share=study.usable_share,
        )
    )
    battery = None
    if density > 0:
        battery = _range(battery_saved_kg_per_kg(np.array(kwh.ends), density / 1000.0))
    worth, missing = _worth(study, kwh, battery, density, secondary)
    gain = None
    if study.sizing is Sizing.BATTERY_KEPT and saved_kg is not None:
        ends = range_gain_share(
            np.array(energy.ends) / 100.0,
            np.array(saved_kg.ends),
            consumption_kwh=study.consumption_kwh,
        )
        gain = _range(np.sort(ends))
    return DerivedWorth(
        mass_energy=energy,
        energy_source=source,
        density_wh_per_kg=density,
        secondary=secondary,
        battery_kwh=kwh,
        battery_kg=battery,
        worth_per_kg=worth,
        range_gain=gain,
        driver_per_kg=_driver(study, energy),
        missing=missing,
        disagreement=_disagreement(study, worth),
    )


def mass_energy_of(study: Study) -> tuple[Range, str]:
    """Give what mass costs on the road, kWh per 100 km and 100 kg, and whence.

    Parameters
    ----------
    study : Study
        The figure that is given, or what a pattern of driving needs.
    """
    if study.energy_from is EnergyFrom.GIVEN:
        return study.mass_energy, "given"
    if study.energy_from is EnergyFrom.CYCLE and not study.drive_cycle:
        return study.mass_energy, "given; no drive cycle has been read yet"
    found, name = _driven(
        study.energy_from,
        study.drive_cycle,
        study.steady_speed_kmh,
        study.rolling_resistance,
        study.drive_efficiency,
        study.recuperated_share,
    )
    return Range.exactly(found), name


@lru_cache(maxsize=256)
def _driven(
    pattern: EnergyFrom,
    cycle_text: str,
    speed_kmh: float,
    rolling: float,
    efficiency: float,
    recuperated: float,
) -> tuple[float, str]:
    if pattern is EnergyFrom.CYCLE:
        cycle = parse_cycle(cycle_text)
        assert cycle is not None
        speeds = np.array(cycle.speed_kmh)
        times, name = cycle.step_s * np.arange(speeds.size), cycle.name
    elif pattern is EnergyFrom.URBAN:
        trace = urban_trace()
        times, speeds, name = trace.time_s, trace.speed_kmh, "our own urban pattern"
    else:
        trace = constant_speed_trace(speed_kmh)
        times, speeds = trace.time_s, trace.speed_kmh
        name = f"our own pattern, a constant {speed_kmh:g} km/h"
    wheel = wheel_energy(times, speeds, rolling_resistance=rolling)
    found = mass_energy_per_100_kg(
        wheel.traction_per_100_kg,
        wheel.braking_per_100_kg,
        drive_efficiency=efficiency,
        recuperated_share=recuperated,
    )
    # A vehicle that recuperates all but rolls freely would gain by mass.
    return max(float(found), 0.0), name


def secondary_of(study: Study) -> Range:
    """Give the kilograms that go elsewhere per kilogram saved.

    Parameters
    ----------
    study : Study
        Kind of programme, and a figure of its own; in a running change it is 0.
    """
    if study.programme is ProgrammeKind.RUNNING or study.secondary_share is None:
        return SECONDARY[study.programme]
    return Range.exactly(study.secondary_share)


def _worth(
    study: Study, kwh: Range, battery: Range | None, density: float, secondary: Range
) -> tuple[Range | None, Problem | None]:
    if study.sizing is Sizing.BATTERY_KEPT:
        return Range.exactly(0.0), Problem(
            "With the battery kept a kilogram saves the maker no battery.",
            "Read the gain of range, or keep the range instead.",
        )
    if battery is None:
        return None, Problem(
            "The density of the battery is not known.",
            "Enter the density of the battery that becomes smaller.",
            column="density of the battery saved",
        )
    if battery.likely >= MOST_BATTERY_SHARE:
        return None, Problem(
            f"Each kilogram would save {battery.likely:.2f} kg of battery, which is "
            "not believed.",
            "Check energy by mass, range and density.",
        )
    ends = worth_at_equal_range(
        np.array(kwh.ends),
        np.array(study.battery_cost.ends),
        pack_density_kwh_per_kg=density / 1000.0,
        secondary_share=np.array(secondary.ends),
    )
    if np.isnan(ends[2]):
        return Range(float(ends[0]), float(ends[1]), float(ends[1])), Problem(
            "The high end would save more than half a kilogram of battery per "
            "kilogram, which is not believed; it is left out.",
            "Check the high ends of energy by mass and battery cost.",
            severity=Severity.WARNING,
        )
    return _range(ends), None


def _driver(study: Study, energy: Range) -> Range:
    a_year = charged_kwh_per_kg(
        np.array(energy.ends) / 100.0,
        study.driver_km_per_year,
        charging_efficiency=study.charging_efficiency,
    )
    return _range(
        driver_saving_per_kg(
            a_year,
            study.energy_price,
            years=study.driver_years,
            rate=study.driver_rate,
        )
    )


def _disagreement(study: Study, worth: Range | None) -> Problem | None:
    entered = study.worth_likely_per_kg
    if worth is None or study.sizing is Sizing.BATTERY_KEPT or not worth.likely > 0:
        return None
    factor = entered / worth.likely
    if 1.0 / APART <= factor <= APART:
        return None
    word = "above" if factor > APART else "below"
    times = factor if factor > APART else 1.0 / factor if factor > 0 else math.inf
    how = f"{times:.1f} times" if math.isfinite(times) else "far"
    return Problem(
        f"The worth of {entered:.2f} {study.currency}/kg lies {how} {word} what the "
        f"vehicle supports, {worth.likely:.2f} {study.currency}/kg.",
        "Write down why, or bring the two closer.",
        column="worth reason",
        severity=Severity.WARNING,
    )


def _range(ends: object) -> Range:
    low, likely, high = np.asarray(ends, dtype=np.float64).tolist()
    return Range(low, likely, high)
