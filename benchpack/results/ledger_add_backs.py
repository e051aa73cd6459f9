"""What the changes of a ledger need back: foil, straps, limiters, barriers, plates."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property

from benchpack.model.add_backs import ADD_BACKS, HEAT_PLATE, AddBack, Per
from benchpack.model.boundary import Weighed
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.touches import Touch
from benchpack.model.words import Subsystem
from benchpack.results.change_checks_heat import HeatCase, sized_plate
from benchpack.results.heat_layers import Layers
from benchpack.results.ledger_record import AddedBack, Applied, Ledger
from benchpack.results.ledger_resizing import is_metal
from benchpack.results.ledger_today import Today, folded
from benchpack.results.ledger_turned import Turned

Turnings = Sequence[tuple[Applied, tuple[Turned, ...]]]


def add_backs_for(
    turnings: Turnings, ledger: Ledger, today: Today
) -> tuple[AddedBack, ...]:
    """Give what the changes need back, each thing once.

    What goes by the pack is needed once, whatever number of changes asks for it: the
    first that does and has not waived it carries it.

    Parameters
    ----------
    turnings : sequence of (Applied, tuple of Turned)
        The changes in order, each with the parts it turns from metal to polymer.
    ledger : Ledger
        What remains after all changes.
    today : Today
        The subject before any change.

    Returns
    -------
    tuple of AddedBack
        Change by change; what is waived or there already is in it too.
    """
    covered = {
        add_back.key: _covered_by(add_back, ledger, today) for add_back in ADD_BACKS
    }
    plates = _Plates(today)
    found: list[AddedBack] = []
    carried: set[str] = set()
    sleeved: set[str] = set()
    for applied, turned in turnings:
        for usual in _of_change(applied, turned, covered, sleeved=sleeved):
            back = plates.sized(usual, turned)
            by_pack = back.add_back.per is Per.PACK or back.amount == 0
            if by_pack and back.add_back.key in carried:
                continue
            if by_pack and back.is_counted:
                carried.add(back.add_back.key)
            found.append(back)
    return tuple(found)


class _Plates:
    """Sizes the plates that spread heat, where parts lie beneath cells."""

    def __init__(self, today: Today) -> None:
        self._today = today

    @cached_property
    def _layers(self) -> Layers:
        records = (item.record for item in self._today.parts.values())
        parts = (record for record in records if isinstance(record, Part))
        return Layers(parts, self._today.materials)

    def sized(self, back: AddedBack, turned: Sequence[Turned]) -> AddedBack:
        """Give a heat plate with the mass of its sized wall, where that is known."""
        if back.add_back.key != HEAT_PLATE:
            return back
        meant = [one.part for one in turned if back.add_back.when in one.touches]
        known = back.amount > 0 and all(
            part.area_m2 and self._layers.beneath_cells(part) for part in meant
        )
        if not known:
            return back
        plate = sized_plate(HeatCase(), back.amount)
        return replace(back, mass_kg=plate.mass_kg, plate=plate)


def _of_change(
    applied: Applied,
    turned: tuple[Turned, ...],
    covered: Mapping[str, str],
    *,
    sleeved: set[str],
) -> Iterator[AddedBack]:
    """Give the add-backs of one change; each screw is sleeved once in all."""
    for add_back in ADD_BACKS:
        meant = [one for one in turned if add_back.when in one.touches]
        screws = {
            folded(item.name): item.pieces for one in meant for item in one.screws
        }
        left = {key: count for key, count in screws.items() if key not in sleeved}
        is_by_bolt = add_back.per is Per.BOLT
        if not meant or (is_by_bolt and not left):
            continue
        if is_by_bolt and not applied.change.waiver(add_back.key):
            sleeved.update(left)
        mass_kg, amount = _mass(add_back, meant, sum(left.values()))
        yield AddedBack(
            change=applied.change.name,
            add_back=add_back,
            mass_kg=mass_kg,
            amount=amount,
            parts=tuple(one.part.name for one in meant),
            waived=applied.change.waiver(add_back.key),
            covered_by=covered[add_back.key],
        )


def _mass(
    add_back: AddBack, meant: Sequence[Turned], bolts: int
) -> tuple[Range, float]:
    """Give the mass and what it goes by; 0 m2 where the pack's mass has to do."""
    if add_back.per is Per.PACK:
        return add_back.mass_kg, 1.0
    if add_back.per is Per.BOLT:
        return add_back.mass_kg.scaled(bolts), float(bolts)
    area_m2 = math.fsum(
        one.part.count * one.part.area_m2 for one in meant if one.part.area_m2
    )
    if area_m2 == 0 and add_back.pack_mass_kg is not None:
        return add_back.pack_mass_kg, 0.0
    return add_back.mass_kg.scaled(area_m2), area_m2


def _covered_by(add_back: AddBack, ledger: Ledger, today: Today) -> str:
    """Give what does the same already, empty where there is nothing."""
    for key, item in ledger.parts.items():
        if any(word in key for word in add_back.covered_by):
            return item.name
        record = item.record
        if (
            add_back.when is Touch.POLYMER_HEAT_PATH
            and item.made_by
            and isinstance(record, Part)
            and record.subsystem is Subsystem.COOLING
            and is_metal(today.material(record.material))
        ):
            return item.name
    pack = today.library.packs[today.library.packs.position(today.pack)]
    for word in add_back.covered_by:
        if pack.boundary.state(folded(word)) is Weighed.IN:
            return f"{word} of the boundary record"
    return ""
