"""The subject as it stands today: what changes can act on, found by name."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from benchpack.calc.uncertainty import standard_uncertainty_from_tolerance
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import RELATIVE_UNCERTAINTY
from benchpack.results.inventory import Inventory, inventory
from benchpack.results.joint_facts import JointFacts
from benchpack.results.ledger_record import NOTHING, Item
from benchpack.results.seal_lines import seal_lines
from benchpack.results.seal_rows import Holding

_LARGEST_SHARE = 1e9
"""An uncertainty beyond this times the mass is as good as unknown, but stays finite."""

__all__ = ["Today", "folded", "joint_item", "today_of"]


@dataclass(frozen=True, slots=True, eq=False)
class Today:
    """The parts and joints of one pack before any change.

    Parameters
    ----------
    library : Library
        The records it was taken from.
    inventory : Inventory
        Its joints.
    pack_kg : float
        Its weighed mass.
    parts, joints : mapping of str to Item
        By folded name; of several of one name the first, the others under a name that
        nobody can write.
    twice : frozenset of str
        Folded names that more than one part, or more than one joint, bears.
    at : mapping of str to tuple of str
        Folded names of the joints at each part.
    inside : mapping of str to tuple of str
        Names of the parts that sit in each part.
    sealing : mapping of str to str
        For each joint that is a seal line or clamps one, the name of the line; empty
        where no line is recorded.
    materials : mapping of str to Material
        By folded name.
    """

    library: Library
    inventory: Inventory
    pack_kg: float
    parts: Mapping[str, Item]
    joints: Mapping[str, Item]
    twice: frozenset[str]
    at: Mapping[str, tuple[str, ...]]
    inside: Mapping[str, tuple[str, ...]]
    sealing: Mapping[str, str]
    materials: Mapping[str, Material]

    @property
    def pack(self) -> str:
        """Name of the pack."""
        return self.inventory.pack

    @property
    def recorded_kg(self) -> float:
        """Mass of all parts and joints that have one."""
        every = (*self.parts.values(), *self.joints.values())
        return math.fsum(item.mass_kg.likely for item in every)

    def material(self, name: str) -> Material | None:
        """Give the material of a name, None where it is not in the library."""
        return self.materials.get(folded(name))


def folded(name: str) -> str:
    """Give a name as it is compared: without case and blanks around it."""
    return name.strip().casefold()


def today_of(library: Library, study: Study, *, previous: Today | None = None) -> Today:
    """Take up a study's subject as it stands today.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Names the subject, and sets what joints cost.
    previous : Today, optional
        The same taken before; it is taken over as far as its records are the same.

    Raises
    ------
    KeyError
        When the library has no such pack.
    """
    if previous is not None and _is_same(previous, library, study):
        return previous
    old = previous.inventory if previous is not None else None
    stock = inventory(library, study, study.subject, previous=old)
    twice: set[str] = set()
    parts = _by_name((_part_item(p) for p in library.parts_of(study.subject)), twice)
    joints = _by_name(map(joint_item, stock.facts), twice)
    return Today(
        library=library,
        inventory=stock,
        pack_kg=stock.pack_mass_kg,
        parts=parts,
        joints=joints,
        twice=frozenset(twice),
        at=_at(joints),
        inside=_inside(parts),
        sealing=_sealing(library, stock),
        materials={folded(m.name): m for m in library.materials},
    )


def _is_same(previous: Today, library: Library, study: Study) -> bool:
    old, stock = previous.library, previous.inventory
    same_rates = (
        study.labour_rate_per_h == stock.rates.labour_per_h
        and study.station_rate_per_h == stock.rates.station_per_h
        and study.currency == stock.rates.currency
        and study.takt_time_s == stock.takt_time_s
    )
    return (
        same_rates
        and study.subject == stock.pack
        and old.packs is library.packs
        and old.parts_of(stock.pack) is library.parts_of(stock.pack)
        and old.joints_of(stock.pack) is library.joints_of(stock.pack)
        and old.materials is library.materials
    )


def _part_item(part: Part) -> Item:
    if part.mass_kg is None:
        return Item(part, NOTHING, is_known=False)
    return Item(part, Range.exactly(part.mass_kg), _part_u_rel(part))


def _part_u_rel(part: Part) -> float:
    if part.mass_tolerance_kg is not None and part.mass_each_kg:
        u_kg = float(standard_uncertainty_from_tolerance(part.mass_tolerance_kg))
        return min(u_kg / part.mass_each_kg, _LARGEST_SHARE)
    return RELATIVE_UNCERTAINTY[part.known_by] or 0.0


def joint_item(facts: JointFacts, *, made_by: str = "") -> Item:
    """Give a joint as it stands.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    made_by : str
        Name of the change that makes it, empty for one of today.
    """
    if math.isnan(facts.mass_kg):
        return Item(facts.joint, NOTHING, is_known=False, facts=facts, made_by=made_by)
    u_rel = facts.mass_u_rel
    u_rel = 0.0 if math.isnan(u_rel) else min(u_rel, _LARGEST_SHARE)
    mass = Range.exactly(facts.mass_kg)
    return Item(facts.joint, mass, u_rel, facts=facts, made_by=made_by)


def _by_name(items: Iterable[Item], twice: set[str]) -> dict[str, Item]:
    found: dict[str, Item] = {}
    for place, item in enumerate(items):
        key = folded(item.name)
        if key in found:
            twice.add(key)
            key = f"{key}\0{place}"
        found[key] = item
    return found


def _at(joints: Mapping[str, Item]) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for key, item in joints.items():
        for end in dict.fromkeys(ends_of(item)):
            if end:
                found.setdefault(end, []).append(key)
    return {end: tuple(keys) for end, keys in found.items()}


def ends_of(item: Item) -> tuple[str, ...]:
    """Give the folded names of the parts that a joint joins, none for a part."""
    record = item.record
    if not isinstance(record, Joint):
        return ()
    return folded(record.joins), folded(record.to)


def _inside(parts: Mapping[str, Item]) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for item in parts.values():
        record = item.record
        if isinstance(record, Part) and record.inside.strip():
            found.setdefault(folded(record.inside), []).append(record.name)
    return {outer: tuple(names) for outer, names in found.items()}


def _sealing(library: Library, stock: Inventory) -> dict[str, str]:
    """Give the line that each joint is or clamps; what is tight by itself as well."""
    found: dict[str, str] = {}
    # Only the names count here: absurd sizes are for the checks to speak of.
    with np.errstate(all="ignore"):
        lines = seal_lines(library, stock)
    for line in lines:
        held = line.joints
        if line.holding is Holding.CLAMPED:
            held = (*held, *line.clamps)
        for facts in held:
            found.setdefault(folded(facts.joint.name), line.name)
    for facts in stock.facts:
        # A screw whose role is to seal does so where no gasket was recorded as well.
        if facts.clamps_seal:
            found.setdefault(folded(facts.joint.name), "")
    return found
