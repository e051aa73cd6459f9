"""Changes that act on single parts: remove, substitute, add, adjust."""

from __future__ import annotations

from dataclasses import replace

from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.words import KnownBy
from benchpack.results import ledger_refusals as refusals
from benchpack.results.ledger_masses import new_masses, shared_out
from benchpack.results.ledger_record import Item, ItemKind
from benchpack.results.ledger_resizing import Resized, is_metal
from benchpack.results.ledger_stock import Draft
from benchpack.results.ledger_today import ends_of, folded
from benchpack.results.wording import listed


def draft_remove(draft: Draft) -> None:
    """Take parts and joints away, and the joints at the parts with them.

    Parameters
    ----------
    draft : Draft
        The change.

    Raises
    ------
    RefusedError
        When anything of it has to stay, is gone, or seals.
    """
    parts = draft.parts()
    going = frozenset(folded(item.name) for item in parts)
    joints = {folded(item.name): item for item in draft.joints()}
    for item in parts:
        draft.remove(item, "taken out")
    for item in joints.values():
        keep_sealed(draft, item, going)
        draft.remove(item, "taken out")
    for part in parts:
        for item in draft.stock.joints_at(folded(part.name)):
            key = folded(item.name)
            if key in joints:
                continue
            joints[key] = item
            keep_sealed(draft, item, going)
            draft.release(item, f"goes along with {part.name}", along_with=part.name)
    _note_what_sits_in(draft, parts, going)


def keep_sealed(draft: Draft, item: Item, going: frozenset[str]) -> None:
    """Refuse to take a joint that seals, unless both parts that it joins go.

    Parameters
    ----------
    draft : Draft
        The change.
    item : Item
        A joint.
    going : frozenset of str
        Folded names of the parts that go, or become one.

    Raises
    ------
    RefusedError
        When a part that stays would be left without its seal.
    """
    key = folded(item.name)
    line = draft.stock.sealing.get(key)
    if line is None or going.issuperset(ends_of(item)):
        return
    raise refusals.seals(draft.change, item, line)


def _note_what_sits_in(draft: Draft, parts: list[Item], going: frozenset[str]) -> None:
    for part in parts:
        inside = draft.stock.today.inside.get(folded(part.name), ())
        left = tuple(
            name
            for name in inside
            if folded(name) in draft.stock.parts and folded(name) not in going
        )
        if left:
            draft.note(
                f"{listed(left, most=4)} sat in {part.name} and stays.",
                "Say where it is held now, or take it out as well.",
                value=part.name,
            )


def draft_substitute(draft: Draft) -> None:
    """Make parts of another material.

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
    masses, resized = new_masses(draft, items, change.material)
    draft.resized.extend(resized)
    walls = {found.part: found for found in resized}
    for item, mass in zip(items, masses, strict=True):
        if not isinstance(item.record, Part):
            continue
        new = replace(
            item.record,
            material=change.material,
            process=change.process or _kept_process(draft, item.record),
            mass_each_kg=mass.likely / item.pieces,
            mass_tolerance_kg=None,
            known_by=KnownBy.ESTIMATE,
            thickness_mm=_wall(walls.get(item.name), item.record),
        )
        draft.replace(
            item,
            Item(new, mass, made_by=item.made_by),
            f"{item.record.material or 'its material'} becomes {change.material}",
            scales=change.mass_kg is None,
        )


def _kept_process(draft: Draft, part: Part) -> str:
    """Give the process that stays: none where a metal becomes something else."""
    material = draft.stock.material
    was, now = material(part.material), material(draft.change.material)
    return part.process if is_metal(was) == is_metal(now) else ""


def _wall(found: Resized | None, part: Part) -> float | None:
    wall = part.thickness_mm if found is None else found.counted.wall_mm
    # NaN compares as False: an unknown wall stays unknown.
    return wall if wall is not None and 0 < wall <= 10_000 else None


def draft_add(draft: Draft) -> None:
    """Put in a part that was not there.

    Parameters
    ----------
    draft : Draft
        The change.

    Raises
    ------
    RefusedError
        When its name is in use.
    """
    change = draft.change
    mass = change.mass_kg or Range.exactly(0.0)
    check_name_is_free(draft, change.into, ItemKind.PART, going=frozenset())
    count = change.count or 1
    part = Part(
        draft.stock.today.pack,
        change.into.strip(),
        subsystem=change.subsystem,
        material=change.material,
        process=change.process,
        count=count,
        mass_each_kg=max(mass.likely, 0.0) / count,
        known_by=KnownBy.ESTIMATE,
        thickness_mm=change.wall_mm,
    )
    draft.add(Item(part, mass, made_by=change.name), "added")


def check_name_is_free(
    draft: Draft, name: str, kind: ItemKind, *, going: frozenset[str]
) -> None:
    """Refuse a name for what comes that something bears which stays.

    Parameters
    ----------
    draft : Draft
        The change.
    name : str
        The name.
    kind : ItemKind
        Part or joint.
    going : frozenset of str
        Folded names of what the change takes.

    Raises
    ------
    RefusedError
        When it is in use.
    """
    held = draft.stock.parts if kind is ItemKind.PART else draft.stock.joints
    if folded(name) in held and folded(name) not in going:
        raise refusals.name_in_use(draft.change, name, kind=kind)


def draft_adjust(draft: Draft) -> None:
    """Let parts and joints weigh what the person says, or cost it.

    Parameters
    ----------
    draft : Draft
        The change.

    Raises
    ------
    RefusedError
        When anything of it has to stay or is gone.
    """
    change = draft.change
    saves = change.mass_kg is not None
    items = [*draft.parts(saves=saves), *draft.joints(saves=saves)]
    if change.mass_kg is None:
        for item in items:
            draft.replace(item, item, "as it is, its cost adjusted")
        return
    for item, mass in zip(items, shared_out(items, change.mass_kg), strict=True):
        record = item.record
        if isinstance(record, Joint):
            grams = 1000 * mass.likely / item.pieces
            new: Part | Joint = replace(
                record, mass_each_g=grams, known_by=KnownBy.ESTIMATE
            )
        else:
            new = replace(
                record,
                mass_each_kg=mass.likely / item.pieces,
                mass_tolerance_kg=None,
                known_by=KnownBy.ESTIMATE,
            )
        changed = replace(item, record=new, mass_kg=mass, u_rel=0.0, is_known=True)
        draft.replace(item, changed, "adjusted", scales=False)
