"""The steps from a vehicle to the worth of a kilogram, as a table."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.model.ranges import Range
from benchpack.model.worth_words import Sizing
from benchpack.report.display import Display
from benchpack.report.worth_vehicle import range_gain_text, worth_range_text
from benchpack.results.explained_assumed import (
    mass_energy_source,
    secondary_source,
    source_of,
)
from benchpack.results.starting_money import holds_elsewhere
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_density import density_source
from benchpack.units.formatting import (
    KG_PER_LB,
    UNKNOWN,
    format_number,
    format_range,
    format_share,
)
from benchpack.units.number_style import labelled


@dataclass(frozen=True, slots=True)
class Step:
    """One step from the vehicle to the worth of a kilogram.

    Parameters
    ----------
    words : str
        What it is.
    text : str
        Its value with range and unit.
    source : str
        Where it comes from.
    key : str
        Key of what explains it, empty for an input.
    """

    words: str
    text: str
    source: str
    key: str = ""


def vehicle_steps(case: WorthCase) -> tuple[Step, ...]:
    """Give the steps from the vehicle to the worth, the driver's saving and the range.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    study, found = case.study, case.derived
    display = Display(study)
    write = _Writer(display)
    whose = density_source(case.gap.library, study)
    kept = study.sizing is Sizing.BATTERY_KEPT
    unit, per_unit = study.mass_unit, KG_PER_LB if study.mass_unit == "lb" else 1.0
    steps = [
        Step(
            "energy that mass costs",
            write.ranged(found.mass_energy, "kWh/(100 km 100 kg)", 2),
            mass_energy_source(study),
        ),
        Step(
            "range",
            write.plain(study.vehicle_range_km, "km"),
            source_of(study, "vehicle_range_km"),
        ),
        Step(
            "share of the energy used",
            format_share(study.usable_share, style=display.style),
            source_of(study, "usable_share"),
        ),
        Step(
            f"battery energy saved per {unit}",
            write.ranged(found.battery_kwh.scaled(1000 * per_unit), "Wh", 1),
            "energy x range / share used",
        ),
        Step(
            "density of the battery saved",
            display.density_text(found.density_wh_per_kg),
            whose,
        ),
    ]
    if found.battery_kg is not None:
        steps.append(
            Step(
                f"battery saved per {unit}",
                write.ranged(found.battery_kg, unit, 2),
                "energy saved / density",
                "battery saved",
            )
        )
    steps += [
        Step(
            f"other mass that goes per {unit}",
            write.ranged(found.secondary, unit, 1),
            secondary_source(study),
        ),
        Step(
            "cost of one more kWh",
            UNKNOWN
            if holds_elsewhere(study, "battery_cost")
            else write.ranged(study.battery_cost, f"{study.currency}/kWh", 0),
            source_of(study, "battery_cost"),
        ),
        Step(
            "worth by the vehicle",
            worth_range_text(found.worth_per_kg, display),
            "zero: the battery is kept" if kept else "energy saved x cost, with loops",
            "derived worth",
        ),
        Step(
            "gain of range",
            range_gain_text(found, display),
            "the battery is kept" if kept else "none: the range is kept",
            "range gain",
        ),
        Step(
            f"the driver saves per {unit}",
            worth_range_text(found.driver_per_kg, display),
            f"{write.plain(study.driver_years, 'years')} at "
            f"{write.plain(study.driver_km_per_year, 'km')} a year",
            "driver saving",
        ),
    ]
    return tuple(steps)


class _Writer:
    """Writes numbers with their unit as the study shows them."""

    def __init__(self, display: Display) -> None:
        self._style = display.style

    def plain(self, value: float, unit: str) -> str:
        return labelled(format_number(value, style=self._style), unit)

    def ranged(self, value: Range, unit: str, decimals: int) -> str:
        def write(one: float | None) -> str:
            number = format_number(one, decimals, style=self._style)
            return labelled(number, unit)

        if value.width == 0:
            return write(value.likely)
        return format_range(value.likely, value.low, value.high, write)
