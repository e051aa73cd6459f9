"""The joining inventory of a pack as text for a terminal."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchpack.model.study import Study
from benchpack.report.display import Display
from benchpack.report.joint_amounts import counted_text, mass_range_text, seconds_text
from benchpack.report.joint_text import unknown_texts, worth_text
from benchpack.report.plain_table import aligned, plain_spaces
from benchpack.results.inventory import (
    Group,
    Grouping,
    Inventory,
    Measure,
    Totals,
    grouped,
)
from benchpack.results.joint_comparison import fastener_worth
from benchpack.results.wording import listed
from benchpack.units.formatting import format_number
from benchpack.units.number_style import labelled


def inventory_text(inventory: Inventory, study: Study) -> str:
    """Give the totals of a pack's joints by kind, and what they need and are worth.

    Parameters
    ----------
    inventory : Inventory
        The joints of the pack.
    study : Study
        Worth per kilogram, and how numbers are shown.
    """
    display = Display(study)
    mass, money = display.mass_unit, study.currency
    heads = ("kind", "rows", "pieces", "m", mass, f"u {mass}", "s", money)
    groups = sorted(grouped(inventory, Grouping.KIND), key=_heaviest_first)
    table = [
        heads,
        *(_row(group.name, group.totals, display) for group in groups),
        _row("all", inventory.totals, display),
        _row("have to stay", inventory.carry_over, display),
    ]
    count = len(inventory.facts)
    lead = (
        f"Joints of {inventory.pack}: {count} row{'' if count == 1 else 's'}, "
        f"{counted_text(inventory.facts, display)}."
    )
    lines = [
        lead,
        worth_text(fastener_worth(inventory, study), study),
        "",
        *aligned(table),
        "",
        *_needs(inventory, display),
        *_masses(inventory, display),
        *unknown_texts(inventory),
        *_unrecorded(inventory),
    ]
    return plain_spaces("\n".join(lines))


def _heaviest_first(group: Group) -> tuple[float, str]:
    value = group.totals.of(Measure.MASS)
    return (0.0 if value != value else -value, group.name)


def _row(name: str, totals: Totals, display: Display) -> tuple[str, ...]:
    def number(value: float, decimals: int) -> str:
        return format_number(value, decimals, style=display.style)

    return (
        name,
        number(totals.rows, 0),
        number(totals.pieces, 0),
        number(totals.line_m, 1),
        number(display.mass(totals.of(Measure.MASS)), 3),
        number(_uncertainty(totals, display), 3),
        number(totals.of(Measure.TIME), 0),
        number(totals.of(Measure.MONEY), 2),
    )


def _uncertainty(totals: Totals, display: Display) -> float:
    known = not math.isnan(totals.of(Measure.MASS))
    return display.mass(totals.mass_u_kg) if known else math.nan


def _needs(inventory: Inventory, display: Display) -> list[str]:
    """Say what the line needs for them: sizes, drives, tools, stations, seal."""
    found = [
        _counted("sizes of fasteners", inventory.sizes),
        _counted("drives", inventory.drives),
        _counted("tools, drives among them", inventory.tools),
    ]
    if inventory.stations:
        takt = seconds_text(inventory.takt_time_s, display)
        stations = format_number(inventory.stations, style=display.style)
        plural = "" if inventory.stations == 1 else "s"
        found.append(
            f"Their time fills {stations} station{plural} at a takt time of {takt}."
        )
    if inventory.seal_m > 0:
        length = format_number(inventory.seal_m, 1, style=display.style)
        found.append(f"Length of seal: {labelled(length, 'm')}.")
    return [text for text in found if text]


def _counted(what: str, names: Sequence[str]) -> str:
    if not names:
        return ""
    return f"Distinct {what} ({len(names)}): {listed(tuple(names))}."


def _unrecorded(inventory: Inventory) -> list[str]:
    """Say what cannot be told of joints whose pack is not recorded itself."""
    if not math.isnan(inventory.pack_mass_kg):
        return []
    said = "Per kWh, and as a share of the structure's mass: unknown, for the file"
    return [f"{said} holds no record of {inventory.pack}."]


def _masses(inventory: Inventory, display: Display) -> list[str]:
    """Say what the masses rest on."""
    computed = [facts for facts in inventory.facts if facts.is_mass_computed]
    said = f"Mass of the joints: {mass_range_text(inventory.totals, display)}"
    if computed:
        words = dict.fromkeys(str(facts.known_by) for facts in computed)
        said += (
            f"; that of {len(computed)} row{'' if len(computed) == 1 else 's'} was "
            f"worked out, known by {listed(tuple(words))}"
        )
    return [f"{said}."]
