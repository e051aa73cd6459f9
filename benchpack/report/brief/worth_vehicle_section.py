"""What a brief says of the worth of a kilogram, entered and by the vehicle."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.model.ranges import Range
from benchpack.model.worth_words import Sizing
from benchpack.report.brief.blocks import Audience, Block, Column, Paragraph, Table
from benchpack.report.display import Display
from benchpack.report.worth_figures import reason_text, years_text
from benchpack.report.worth_vehicle import range_gain_text, worth_range_text
from benchpack.results.worth_case import WorthCase
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
    for problem in (found.disagreement, found.missing):
        if problem is not None:
            said = reason_text(problem) if is_internal else problem.what
            blocks.append(Paragraph(said, "note"))
    return tuple(blocks)


def _worth_rows(case: WorthCase) -> Iterator[tuple[str, str, str]]:
    study, found, display = case.study, case.derived, Display(case.study)
    reason = study.worth_reason or "a starting figure, no reason is written down"
    said = "; ".join(filter(None, (reason, study.worth_source)))
    entered = worth_range_text(Range(*study.worth_per_kg), display)
    yield ("entered", entered, said)
    derived = worth_range_text(found.worth_per_kg, display)
    yield ("by the vehicle, for the maker", derived, _steps(case, display))
    if study.sizing is Sizing.BATTERY_KEPT:
        consumption = _number(study.consumption_kwh, "kWh/100 km", display, 1)
        yield (
            "gain of range, the battery kept",
            range_gain_text(found, display),
            f"energy that mass costs over a consumption of {consumption}",
        )
    price = _number(study.energy_price, f"{study.currency}/kWh", display, 2)
    saved = (
        f"{_number(study.driver_km_per_year, 'km', display)} a year over "
        f"{years_text(study.driver_years, display)} at {price}, present value at "
        f"{display.share_text(study.driver_rate)} a year"
    )
    worth = worth_range_text(found.driver_per_kg, display)
    yield ("for the driver: another pocket, never added", worth, saved)


def _steps(case: WorthCase, display: Display) -> str:
    """Say what the worth by the vehicle is made of."""
    study, found = case.study, case.derived
    energy = _ranged(found.mass_energy, "kWh/(100 km 100 kg)", display, 2)
    cost = _ranged(study.battery_cost, f"{study.currency}/kWh", display, 0)
    others = _ranged(found.secondary, "kg", display, 1)
    parts = [f"mass costs {energy} ({found.energy_source})"]
    if study.sizing is Sizing.RANGE_KEPT:
        parts += [
            f"range kept at {_number(study.vehicle_range_km, 'km', display)}",
            f"battery {cost}, {display.density_text(found.density_wh_per_kg)}",
            f"other mass that goes per kilogram {others}",
        ]
    return "; ".join(parts)


def _number(value: float, unit: str, display: Display, decimals: int = 0) -> str:
    return labelled(format_number(value, decimals, style=display.style), unit)


def _ranged(value: Range, unit: str, display: Display, decimals: int) -> str:
    def write(one: float | None) -> str:
        return labelled(format_number(one, decimals, style=display.style), unit)

    if value.width == 0:
        return write(value.likely)
    return format_range(value.likely, value.low, value.high, write)
