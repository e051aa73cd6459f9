"""Sentences about parts in a new material: by design values, the data sheet beside."""

from __future__ import annotations

from benchpack.report.display import Display
from benchpack.results.ledger import Resized
from benchpack.units.formatting import format_number
from benchpack.units.number_style import labelled

_WAYS_OUT = (
    "The saving has to come from ribs, from integration and from joints that go, or "
    "from another material."
)


def resized_text(resized: Resized, display: Display) -> str:
    """Say what a part weighs in its new material, by both sets of values.

    Parameters
    ----------
    resized : Resized
        The part.
    display : Display
        How numbers are shown.

    Returns
    -------
    str
        Where it comes out heavier, that is said first and plainly.
    """
    before, after = resized.before_kg, resized.after_kg
    name, new = resized.part, resized.new_material
    basis = "data-sheet values" if resized.uses_data_sheet else "design values"
    governs = resized.counted.governing
    said = f"At equal function ({governs}) "
    if resized.is_heavier:
        more = display.mass_text(after - before)
        said += f"{name} comes out {more} heavier in {new}: "
    elif after < before * (1 - 1e-9):
        less = display.mass_text(before - after)
        said += f"{name} comes out {less} lighter in {new}: "
    else:
        said += f"{name} weighs the same in {new}: "
    said += (
        f"{display.mass_text(after)} in place of {display.mass_text(before)} by {basis}"
        f"{_wall_text(resized, display)}. {_beside(resized, display)}"
    )
    if resized.is_overridden:
        said += " The mass that the change gives is counted in its place."
    elif resized.is_heavier:
        said += f" {_WAYS_OUT}"
    return said


def _wall_text(resized: Resized, display: Display) -> str:
    wall = resized.counted.wall_mm
    if wall != wall:
        return ""
    text = labelled(format_number(wall, 1, style=display.style), "mm")
    if resized.counted.wall_is_minimum:
        return f", wall {text}, the least that can be made"
    return f", wall {text}"


def _beside(resized: Resized, display: Display) -> str:
    if resized.uses_data_sheet:
        other = display.mass_text(resized.design_kg)
        return f"Design values give {other}: knock-downs are off."
    other = display.mass_text(resized.data_sheet_kg)
    return f"Data-sheet values give {other}."
