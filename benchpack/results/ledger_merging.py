"""Changes that make several parts one: integrate, mould in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.words import KnownBy
from benchpack.results import ledger_refusals as refusals
from benchpack.results.ledger_masses import new_masses
from benchpack.results.ledger_parts import check_name_is_free, keep_sealed
from benchpack.results.ledger_record import Item, ItemKind, Resized
from benchpack.results.ledger_stock import Draft
from benchpack.results.ledger_today import ends_of, folded


def draft_integrate(draft: Draft) -> None:
    """Make several parts one: the joints between them go, the others hold on.

    Parameters
    ----------
    draft : Draft
        The change.

    Raises
    ------
    RefusedError
        When anything of it has to stay or is gone, or no mass can be said.
    """
    change = draft.change
    items = draft.parts()
    whole = frozenset(folded(item.name) for item in items)
    check_name_is_free(draft, change.into, ItemKind.PART, going=whole)
    masses, resized = _masses(draft, items, change.material)
    draft.resized.extend(resized)
    _join(draft, whole, change.into)
    for item in items:
        draft.remove(item, f"becomes part of {change.into}", into=change.into)
    mass = change.mass_kg or sum(masses, Range.exactly(0.0))
    part = _merged(draft, items, resized, mass)
    draft.add(Item(part, mass, made_by=change.name), "one part of several")


def draft_mould_in(draft: Draft) -> None:
    """Make parts a piece of their neighbour: the joints between them go.

    The mass that the change gives is that of the pieces after it, what they add to
    the neighbour.

    Parameters
    ----------
    draft : Draft
        The change.

    Raises
    ------
    RefusedError
        When anything of it has to stay or is gone, or no mass can be said.
    """
    change = draft.change
    neighbour = draft.part_to_change(change.into)
    items = draft.parts()
    if neighbour in items:
        raise refusals.refused(
            change,
            f"{neighbour.name} cannot be moulded into itself.",
            "Choose the neighbour, or take the part out.",
            value=neighbour.name,
        )
    whole = frozenset(folded(item.name) for item in (neighbour, *items))
    host = neighbour.record
    material = change.material or (host.material if isinstance(host, Part) else "")
    masses, resized = _masses(draft, items, material)
    draft.resized.extend(resized)
    _join(draft, whole, neighbour.name)
    for item in items:
        draft.remove(item, f"moulded into {neighbour.name}", into=neighbour.name)
    taken_up = [change.mass_kg] if change.mass_kg else masses
    grown = sum(taken_up, neighbour.mass_kg)
    if not isinstance(host, Part):
        return
    record = replace(
        host,
        mass_each_kg=grown.likely / neighbour.pieces,
        mass_tolerance_kg=None,
        known_by=KnownBy.ESTIMATE,
    )
    new = replace(neighbour, record=record, mass_kg=grown, u_rel=0.0)
    draft.replace(neighbour, new, "takes up what is moulded in")


def _masses(
    draft: Draft, items: Sequence[Item], material: str
) -> tuple[list[Range], list[Resized]]:
    """Give what each part weighs within the whole; without a material as it is."""
    if material.strip() or draft.change.mass_kg is not None:
        return new_masses(draft, items, material)
    draft.note(
        "The material of the neighbour is not recorded: what is moulded in is counted "
        "with the mass that it has.",
        "Choose a material, or give the mass after the change.",
    )
    return [item.mass_kg for item in items], []


def _join(draft: Draft, whole: frozenset[str], name: str) -> None:
    """Let joints within the whole go, and all others at it hold on to it."""
    stock = draft.stock
    named = {folded(item.name): item for item in draft.joints()}
    at = {folded(item.name): item for part in whole for item in stock.joints_at(part)}
    within = {
        key: item for key, item in sorted(at.items()) if whole.issuperset(ends_of(item))
    }
    for item in named.values():
        keep_sealed(draft, item, whole)
        draft.remove(item, "taken out")
    for key, item in within.items():
        if key not in named:
            draft.release(
                item, f"goes: it was within {name}", along_with=name, into=name
            )
    held = [item for key, item in at.items() if key not in {*within, *named}]
    draft.attach(held, whole, name)


def _merged(
    draft: Draft, items: Sequence[Item], resized: Sequence[Resized], mass: Range
) -> Part:
    """Give the record of the one part; its place is that of the heaviest of them."""
    change = draft.change
    records = [item.record for item in items if isinstance(item.record, Part)]
    main = max(records, key=lambda part: part.mass_kg or 0.0)
    inner = {folded(part.name) for part in records}
    outer = next((p.inside for p in records if folded(p.inside) not in inner), "")
    areas = [p.area_m2 * p.count for p in records if p.area_m2 is not None]
    walls = [one.counted.wall_mm for one in resized if one.part == main.name]
    common = {part.material for part in records}
    return Part(
        main.pack,
        change.into.strip(),
        inside=outer,
        subsystem=main.subsystem,
        material=change.material or (common.pop() if len(common) == 1 else ""),
        process=change.process,
        mass_each_kg=max(mass.likely, 0.0),
        known_by=KnownBy.ESTIMATE,
        thickness_mm=walls[0] if walls and 0 < walls[0] <= 10_000 else None,
        area_m2=min(sum(areas), 1000.0) if areas else None,
        length_mm=max((p.length_mm for p in records if p.length_mm), default=None),
        governs=change.governs[0] if change.governs else main.governs,
    )
