"""What a brief says of the worth of a kilogram, entered and by the vehicle."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from operator import itemgetter

from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import Sizing
from benchpack.report.brief.blocks import Audience, Block, Column, Paragraph, Table
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.worth_figures import years_text
from benchpack.report.worth_vehicle import range_gain_text, worth_range_text
from benchpack.results.explained_assumed import (
    mass_energy_source,
    secondary_source,
    source_of,
    worth_source_of,
)
from benchpack.results.starting_money import holds_elsewhere
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_density import density_source
from benchpack.units.formatting import format_number, format_range
from benchpack.units.number_style import labelled


def vehicle_blocks(case: WorthCase, audience: Audience) -> tuple[Block, ...]:
    """Give the worth that is entered, that by the vehicle, and the driver's saving.

    Parameters
    ----------
    case : WorthCase
        The case.
    audience : Audience
        What is to be done where the two disagree is an internal remark.
    """
    found = case.derived
    columns = (
        Column("worth of a kilogram saved"),
        Column("likely (low to high)", "", "right"),
        Column("where it comes from"),
    )
    blocks: list[Block] = [Table("", columns, tuple(_worth_rows(case)))]
    is_internal = audience is Audience.INTERNAL
    for problem in (found.disagreement, found.missing, found.driver_missing):
        if problem is not None:
            said = reason_text(problem) if is_internal else problem.what
            blocks.append(Paragraph(said, "note"))
    return tuple(blocks)


def _worth_rows(case: WorthCase) -> Iterator[tuple[str, str, str]]:
    study, found, display = case.study, case.derived, Display(case.study)
    entered = worth_range_text(Range(*study.worth_per_kg), display)
    yield ("entered", entered, worth_source_of(study))
    derived = worth_range_text(found.worth_per_kg, display)
    yield ("by the vehicle, for the maker", derived, _steps(case, display))
    if study.sizing is Sizing.BATTERY_KEPT:
        consumption = _number(study.consumption_kwh, "kWh/100 km", display, 1)
        whose = source_of(study, "consumption_kwh")
        yield (
            "gain of range, the battery kept",
            range_gain_text(found, display),
            f"energy that mass costs over a consumption of {consumption} ({whose})",
        )
    saved = _driver_steps(study, display)
    worth = worth_range_text(found.driver_per_kg, display)
    yield ("for the driver: another pocket, never added", worth, saved)


def _steps(case: WorthCase, display: Display) -> str:
    """Say what the worth by the vehicle is made of."""
    study, found = case.study, case.derived
    energy = _ranged(found.mass_energy, "kWh/(100 km 100 kg)", display, 2)
    others = _ranged(found.secondary, "kg", display, 1)
    parts = [(f"mass costs {energy}", mass_energy_source(study))]
    if study.sizing is Sizing.RANGE_KEPT:
        km = _number(study.vehicle_range_km, "km", display)
        used = display.share_text(study.usable_share)
        density = display.density_text(found.density_wh_per_kg)
        parts += [
            (f"range kept at {km}", source_of(study, "vehicle_range_km")),
            (f"share of the energy used {used}", source_of(study, "usable_share")),
            (f"battery {density}", density_source(case.gap.library, study)),
            (f"other mass that goes per kilogram {others}", secondary_source(study)),
        ]
        if not holds_elsewhere(study, "battery_cost"):
            cost = _ranged(study.battery_cost, f"{study.currency}/kWh", display, 0)
            parts.append((f"one more kWh {cost}", source_of(study, "battery_cost")))
    return _marked(parts)


def _driver_steps(study: Study, display: Display) -> str:
    """Say what the driver's saving is made of."""
    parts = [
        (
            f"{_number(study.driver_km_per_year, 'km', display)} a year",
            source_of(study, "driver_km_per_year"),
        ),
        (years_text(study.driver_years, display), source_of(study, "driver_years")),
        (
            f"charging {display.share_text(study.charging_efficiency)}",
            source_of(study, "charging_efficiency"),
        ),
        (
            f"present value at {display.share_text(study.driver_rate)} a year",
            source_of(study, "driver_rate"),
        ),
    ]
    if not holds_elsewhere(study, "energy_price"):
        price = _number(study.energy_price, f"{study.currency}/kWh", display, 2)
        parts.insert(2, (f"energy at {price}", source_of(study, "energy_price")))
    return _marked(parts)


def _marked(parts: list[tuple[str, str]]) -> str:
    """Write figures with their marks, one mark for neighbours that share it."""
    said = []
    for mark, group in groupby(parts, key=itemgetter(1)):
        figures = ", ".join(figure for figure, _ in group)
        said.append(f"{figures} ({mark})")
    return "; ".join(said)


def _number(value: float, unit: str, display: Display, decimals: int = 0) -> str:
    return labelled(format_number(value, decimals, style=display.style), unit)


def _ranged(value: Range, unit: str, display: Display, decimals: int) -> str:
    def write(one: float | None) -> str:
        return labelled(format_number(one, decimals, style=display.style), unit)

    if value.width == 0:
        return write(value.likely)
    return format_range(value.likely, value.low, value.high, write)
