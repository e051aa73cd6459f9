"""What parts weigh after a change: as it says, or by their function in a material."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from benchpack.errors import RequestError
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.results import ledger_refusals as refusals
from benchpack.results.ledger_record import Item
from benchpack.results.ledger_resizing import (
    COMPUTED_RANGE,
    Resized,
    Sizing,
    lacking_values,
    lacks_knock_down,
    resizing,
)
from benchpack.results.ledger_stock import Draft
from benchpack.results.wording import listed

_LARGEST_KG = 100_000.0
"""What a piece may weigh at most, as its record says."""


def computed(mass_kg: float) -> Range:
    """Give a computed mass with the range that computed masses have.

    Parameters
    ----------
    mass_kg : float
        The mass, kg.
    """
    return Range(*(mass_kg * end for end in COMPUTED_RANGE))


def shared_out(items: Sequence[Item], after_kg: Range) -> list[Range]:
    """Give each of several items its share of a mass, by what it weighs before.

    Parameters
    ----------
    items : sequence of Item
        Parts and joints; where they weigh nothing the first gets all.
    after_kg : Range
        Their mass together.
    """
    before = [item.mass_kg.likely for item in items]
    whole = math.fsum(before)
    if whole <= 0:
        return [
            after_kg.scaled(1.0 if place == 0 else 0.0) for place in range(len(items))
        ]
    return [after_kg.scaled(mass / whole) for mass in before]


def new_masses(
    draft: Draft, items: Sequence[Item], material: str
) -> tuple[list[Range], list[Resized]]:
    """Give the mass of each part in a material, and how it comes about.

    Parameters
    ----------
    draft : Draft
        The change; the mass that it gives, if any, goes before what is computed.
    items : sequence of Item
        Parts.
    material : str
        Name of the new material.

    Raises
    ------
    RefusedError
        When no mass is given and one cannot be computed.
    """
    change = draft.change
    overridden = change.mass_kg
    resized: list[Resized] = []
    masses: list[Range] = []
    for item in items:
        try:
            found = _resized(draft, item, material)
            scaled = _scaled(draft, item, found)
        except refusals.RefusedError:
            if overridden is None:
                raise
            continue
        is_same = _same(found.old_material, found.new_material)
        if is_same and found.after_kg == found.before_kg:
            masses.append(item.mass_kg)
            continue
        resized.append(replace(found, is_overridden=overridden is not None))
        masses.append(scaled)
    if overridden is not None:
        return shared_out(items, overridden), resized
    return masses, resized


def _scaled(draft: Draft, item: Item, found: Resized) -> Range:
    """Give the computed mass; what was uncertain before stays so."""
    ratio = found.counted.mass_ratio
    _check_mass(draft, item, found, item.mass_kg.high * ratio / item.pieces)
    wide = computed(found.after_kg)
    low, _, high = item.mass_kg.scaled(ratio).ends
    return Range(min(wide.low, low), wide.likely, max(wide.high, high))


def _check_mass(draft: Draft, item: Item, found: Resized, each_kg: float) -> None:
    """Refuse what no piece can weigh, and what nobody can compute."""
    weighs = found.after_kg > 0 or found.before_kg == 0
    if weighs and each_kg <= _LARGEST_KG:
        return
    said = f"What {found.part} weighs in {found.new_material} cannot be computed."
    if _LARGEST_KG < each_kg < math.inf:
        said = (
            f"{found.part} would weigh {each_kg:.3g} kg a piece in "
            f"{found.new_material}, and more than {_LARGEST_KG:.0f} kg cannot be."
        )
    raise refusals.refused(
        draft.change,
        said,
        "Check the values of both materials, or give its mass after the change.",
        value=item.name,
    )


def _resized(draft: Draft, item: Item, material: str) -> Resized:
    part, change = item.record, draft.change
    if not isinstance(part, Part):
        raise TypeError(part)
    old, new = _materials(draft, part, material)
    governs = _governs(draft, part, old, new)
    for one in (old, new):
        lacking = lacking_values(one, governs)
        if lacking:
            raise refusals.refused(
                change,
                f"{one.name} has no {listed(lacking)} on record.",
                f"Enter it, or give the mass of {part.name} after the change.",
                value=one.name,
            )
    wall = part.thickness_mm or change.wall_mm or math.nan
    sizing = Sizing(
        governs,
        wall,
        change.stiffness_shape,
        change.strength_shape,
        change.rib_allowance,
    )
    try:
        design, sheet = resizing(old, new, sizing)
    except RequestError as error:
        raise refusals.refused(change, str(error), "Correct it.") from error
    return Resized(
        part=part.name,
        old_material=old.name,
        new_material=new.name,
        before_kg=item.mass_kg.likely,
        old_wall_mm=wall,
        design=design,
        data_sheet=sheet,
        uses_data_sheet=change.uses_data_sheet,
        without_knock_down=tuple(
            one.name for one in (old, new) if lacks_knock_down(one, governs)
        ),
    )


def _materials(draft: Draft, part: Part, name: str) -> tuple[Material, Material]:
    found = []
    for wanted, whose in ((part.material, f" of {part.name}"), (name, "")):
        material = draft.stock.material(wanted)
        if material is None:
            said = f"The material{whose} is not recorded"
            if wanted.strip():
                said = f"The material {wanted!r}{whose} is not in the library"
            raise refusals.refused(
                draft.change,
                f"{said}.",
                f"Enter it, or give the mass of {part.name} after the change.",
                value=wanted or part.name,
            )
        found.append(material)
    old, new = found
    return old, new


def _governs(draft: Draft, part: Part, old: Material, new: Material) -> tuple[str, ...]:
    words = draft.change.governs or tuple(filter(None, (part.governs,)))
    if words:
        return words
    if _same(old.name, new.name):
        return ("geometry only",)
    raise refusals.refused(
        draft.change,
        f"Nobody has said what sizes {part.name}.",
        "Choose what governs, or give its mass after the change.",
        value=part.name,
    )


def _same(one: str, other: str) -> bool:
    return one.strip().casefold() == other.strip().casefold()
