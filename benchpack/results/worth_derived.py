"""The worth per kilogram that follows from the vehicle, beside the one entered."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.derived_worth import (
    MOST_BATTERY_SHARE,
    battery_saved_kg_per_kg,
    charged_kwh_per_kg,
    driver_saving_per_kg,
    energy_saved_kwh_per_kg,
    range_gain_share,
    worth_at_equal_range,
)
from benchpack.errors import Problem, Severity
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import Sizing
from benchpack.results.starting_money import holds_elsewhere, unconverted
from benchpack.results.worth_driving import mass_energy_of
from benchpack.results.worth_programme import product
from benchpack.units.formatting import NumberStyle, format_worth

SECONDARY: dict[ProgrammeKind, Range] = {
    ProgrammeKind.UNSTATED: Range.exactly(0.0),
    ProgrammeKind.RUNNING: Range.exactly(0.0),
    ProgrammeKind.FACELIFT: Range(0.1, 0.2, 0.3),
    ProgrammeKind.NEW: Range(0.3, 0.4, 0.5),
}
"""Kilograms that go elsewhere per kilogram saved (from memory; common practice for 0 in
a running change). Published means for whole vehicles go up to 0.95."""

APART = 2.0
"""Beyond this factor between the two worths the tool speaks up."""

FloatArray = NDArray[np.float64]

_FAR = 1000.0


@dataclass(frozen=True, slots=True, eq=False)
class DerivedWorth:
    """What a kilogram is worth by the vehicle.

    Parameters
    ----------
    mass_energy : Range
        kWh per 100 km and 100 kg.
    density_wh_per_kg : float
        Of the battery that becomes smaller.
    secondary : Range
        Kilograms that go elsewhere per kilogram saved.
    battery_kwh : Range
        Energy of battery saved per kilogram at equal range.
    battery_kg : Range or None
        Its mass; None where the density is not known, or next to nothing.
    worth_per_kg : Range or None
        The maker's worth; zero with the battery kept, None where it cannot be said.
    range_gain : Range or None
        Share of the range gained by the saving valued, with the battery kept.
    driver_per_kg : Range or None
        What a kilogram saves the driver, present value: another pocket.
    missing : Problem or None
        Why there is no worth.
    driver_missing : Problem or None
        Why it cannot be said what the driver saves.
    disagreement : Problem or None
        That the entered worth and this one are more than `APART` apart.
    """

    mass_energy: Range
    density_wh_per_kg: float
    secondary: Range
    battery_kwh: Range
    battery_kg: Range | None
    worth_per_kg: Range | None
    range_gain: Range | None
    driver_per_kg: Range | None
    missing: Problem | None = None
    driver_missing: Problem | None = None
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
    energy = mass_energy_of(study)
    density = study.pack_density_wh_per_kg or subject_density
    secondary = secondary_of(study)
    kwh = energy_saved_kwh_per_kg(
        np.array(energy.ends) / 100.0,
        study.vehicle_range_km,
        usable_share=study.usable_share,
    )
    # A pack of next to no energy gives what is beyond all numbers.
    with np.errstate(over="ignore"):
        battery = battery_saved_kg_per_kg(kwh, density / 1000.0)
    worth, missing = _worth(study, kwh, battery, density, secondary)
    gain = None
    if study.sizing is Sizing.BATTERY_KEPT and saved_kg is not None:
        per_kg = range_gain_share(
            np.array(energy.ends) / 100.0, 1.0, consumption_kwh=study.consumption_kwh
        )
        gain = product(Range(*per_kg.tolist()), saved_kg)
    return DerivedWorth(
        mass_energy=energy,
        density_wh_per_kg=density,
        secondary=secondary,
        battery_kwh=Range(*kwh.tolist()),
        battery_kg=_range(battery),
        worth_per_kg=worth,
        range_gain=gain,
        driver_per_kg=_driver(study, energy),
        missing=missing,
        driver_missing=unconverted(study, ("energy_price",)),
        disagreement=_disagreement(study, worth),
    )


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
    study: Study,
    kwh: FloatArray,
    battery: FloatArray,
    density: float,
    secondary: Range,
) -> tuple[Range | None, Problem | None]:
    if study.sizing is Sizing.BATTERY_KEPT:
        return Range.exactly(0.0), Problem(
            "With the battery kept a kilogram saves the maker no battery.",
            "Read the gain of range, or keep the range instead.",
        )
    elsewhere = unconverted(study, ("battery_cost",))
    if elsewhere is not None:
        return None, elsewhere
    if not density > 0:
        return None, Problem(
            "The density of the battery is not known.",
            "Enter the density of the battery that becomes smaller.",
            column="density of the battery saved",
        )
    if not battery[1] < MOST_BATTERY_SHARE:
        return None, Problem(
            "Each kilogram would save half a kilogram of battery or more, which is not "
            "believed.",
            "Check energy by mass, range, usable share and density.",
        )
    ends = worth_at_equal_range(
        kwh,
        np.array(study.battery_cost.ends),
        pack_density_kwh_per_kg=density / 1000.0,
        secondary_share=np.array(secondary.ends),
    )
    if np.isnan(ends[2]):
        return Range(float(ends[0]), float(ends[1]), float(ends[1])), Problem(
            "The high end would save more than half a kilogram of battery per "
            "kilogram, which is not believed; it is left out.",
            "Check the high end of energy by mass.",
            severity=Severity.WARNING,
        )
    return Range(*ends.tolist()), None


def _driver(study: Study, energy: Range) -> Range | None:
    if holds_elsewhere(study, "energy_price"):
        return None
    a_year = charged_kwh_per_kg(
        np.array(energy.ends) / 100.0,
        study.driver_km_per_year,
        charging_efficiency=study.charging_efficiency,
    )
    ends = driver_saving_per_kg(
        a_year,
        study.energy_price,
        years=study.driver_years,
        rate=study.driver_rate,
    )
    return Range(*ends.tolist())


def _disagreement(study: Study, worth: Range | None) -> Problem | None:
    if worth is None or study.sizing is Sizing.BATTERY_KEPT:
        return None
    less, more = sorted((study.worth_likely_per_kg, worth.likely))
    if more <= APART * less:
        return None
    entered, derived = study.worth_likely_per_kg, worth.likely
    word = "above" if entered > derived else "below"
    # What is many times nothing has no number.
    times = more / less if less > 0 else math.inf
    how = f"{_times(times, study)} times" if times < _FAR else "far"
    style = NumberStyle(decimal_mark=study.decimal_mark, mass_unit=study.mass_unit)
    said, supported = (
        format_worth(one, study.currency, style=style) for one in (entered, derived)
    )
    return Problem(
        f"The worth of {said} lies {how} {word} what the vehicle supports, "
        f"{supported}.",
        "Write down why, or bring the two closer.",
        column="worth reason",
        severity=Severity.WARNING,
    )


def _times(times: float, study: Study) -> str:
    return f"{times:.1f}".replace(".", study.decimal_mark)


def _range(ends: FloatArray) -> Range | None:
    """Give three ends as a range, None where one of them is no number."""
    if not np.isfinite(ends).all():
        return None
    return Range(*ends.tolist())
