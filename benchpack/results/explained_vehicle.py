"""Where the worth by the vehicle comes from, and what its driver saves."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from benchpack.model.ranges import Range
from benchpack.model.worth_words import Sizing
from benchpack.results.explained_assumed import (
    assumed,
    driving_note,
    mass_energy_inputs,
    ranged_inputs,
    saving_inputs,
    secondary_inputs,
)
from benchpack.results.explained_programme import with_range
from benchpack.results.figure import Figure, Input
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_density import density_source
from benchpack.results.worth_derived import DerivedWorth

_ENDS = "all inputs at their low ends, and at their high ends, at once"
_LOOP = (
    "battery saved at equal range, a geometric series; the idea as in Nicoletti et "
    "al., Energies 14 (2021) 4655"
)
_ABOVE = "from the inputs above"
_BEYOND = "The density of the battery is next to nothing."


def _derived(case: WorthCase, derived: DerivedWorth) -> Figure:
    study = case.study
    figure = Figure(
        key="derived worth",
        label="Worth of a kilogram to the maker, by the vehicle",
        value=math.nan,
        unit=f"{study.currency}/kg",
        formula="V = dE C (1 + s) / (1 - g), dE = e R / (10,000 u), g = 1,000 dE / eps",
        inputs=(
            *_battery_inputs(case, derived),
            *assumed(
                study,
                "battery_cost",
                "C, one more kWh of pack",
                unit=f"{study.currency}/kWh",
            ),
            *secondary_inputs(case),
        ),
        source=_LOOP + driving_note(case),
        range_meaning=_ENDS,
    )
    if derived.worth_per_kg is None:
        what = "" if derived.missing is None else derived.missing.what
        return replace(figure, range_meaning="", missing=what)
    if study.sizing is Sizing.BATTERY_KEPT:
        figure = replace(figure, formula="V = 0: the battery stays as it is")
    elif derived.missing is not None:
        figure = replace(figure, range_meaning=f"{_ENDS}. {derived.missing.what}")
    return with_range(figure, derived.worth_per_kg)


def _battery(case: WorthCase, derived: DerivedWorth) -> Figure:
    figure = Figure(
        key="battery saved",
        label="Battery saved per kilogram at equal range",
        value=math.nan,
        unit="kg/kg",
        formula="g = 1,000 dE / eps, dE = e R / (10,000 u)",
        inputs=_battery_inputs(case, derived),
        source=_LOOP + driving_note(case),
        range_meaning=_ENDS,
    )
    if derived.battery_kg is not None:
        return with_range(figure, derived.battery_kg)
    what = "The density of the battery is not known."
    if derived.density_wh_per_kg > 0:
        what = _BEYOND
    return replace(figure, range_meaning="", missing=what)


def _range_gain(case: WorthCase, derived: DerivedWorth) -> Figure:
    study = case.study
    figure = Figure(
        key="range gain",
        label="Range gained with the battery kept",
        value=math.nan,
        unit="%",
        formula="e dm / c",
        inputs=(
            *mass_energy_inputs(case),
            *saving_inputs(case),
            *assumed(study, "consumption_kwh", "c, consumption", unit="kWh/100 km"),
        ),
        source="first order in the mass: at 2 % the exact gain is 2.04 %"
        + driving_note(case),
        range_meaning="energy by mass and saving at the ends that make it least, and "
        "greatest",
    )
    if derived.range_gain is not None:
        return with_range(figure, derived.range_gain.scaled(100.0))
    what = "There is no saving to value."
    if study.sizing is not Sizing.BATTERY_KEPT:
        what = "The range is kept, so that a smaller battery is the gain."
    return replace(figure, range_meaning="", missing=what)


def _driver(case: WorthCase, derived: DerivedWorth) -> Figure:
    study = case.study
    figure = Figure(
        key="driver saving",
        label="What a kilogram saves the driver",
        value=math.nan,
        unit=f"{study.currency}/kg",
        formula="e D p / (10,000 eta_c) (1 - (1 + i)^-n) / i",
        inputs=(
            *mass_energy_inputs(case),
            *assumed(study, "driver_km_per_year", "D, distance a year", unit="km"),
            *assumed(
                study,
                "energy_price",
                "p, price of energy",
                unit=f"{study.currency}/kWh",
            ),
            *assumed(study, "charging_efficiency", "eta_c, socket to battery"),
            *assumed(study, "driver_years", "n, years of use", unit="years"),
            *assumed(study, "driver_rate", "i, the driver's interest a year"),
        ),
        source="present value of an annuity, textbooks of engineering economy (from "
        "memory); another pocket than the maker's, never added to it"
        + driving_note(case),
        range_meaning="energy by mass at its low and at its high end",
    )
    if derived.driver_per_kg is None:
        what = "" if derived.driver_missing is None else derived.driver_missing.what
        return replace(figure, range_meaning="", missing=what)
    return with_range(figure, derived.driver_per_kg)


def _battery_inputs(case: WorthCase, derived: DerivedWorth) -> tuple[Input, ...]:
    study = case.study
    density = derived.density_wh_per_kg
    found = [
        *mass_energy_inputs(case),
        *assumed(study, "vehicle_range_km", "R, range that is kept", unit="km"),
        *assumed(study, "usable_share", "u, usable share"),
        Input(
            "eps, density of the battery saved",
            density if density > 0 else math.nan,
            "Wh/kg",
            density_source(case.gap.library, study),
        ),
    ]
    named: tuple[tuple[str, Range | None, str], ...] = (
        ("dE, energy of battery saved", derived.battery_kwh, "kWh/kg"),
        ("g, battery saved", derived.battery_kg, "kg/kg"),
    )
    for label, value, unit in named:
        if value is None:
            found.append(Input(label, math.nan, unit, _ABOVE))
        else:
            found += ranged_inputs(label, value, unit=unit, source=_ABOVE)
    return tuple(found)


_BUILDERS: Mapping[str, Callable[[WorthCase, DerivedWorth], Figure]] = {
    "derived worth": _derived,
    "battery saved": _battery,
    "range gain": _range_gain,
    "driver saving": _driver,
}

VEHICLE_KEYS = tuple(_BUILDERS)
"""Keys that `vehicle_figure` answers."""


def vehicle_figure(case: WorthCase, key: str) -> Figure:
    """Say where a figure of the vehicle comes from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `VEHICLE_KEYS`.
    """
    return _BUILDERS[key](case, case.derived)
