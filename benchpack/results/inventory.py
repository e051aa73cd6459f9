"""The joining inventory of one pack: what all joints weigh, take and cost."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from benchpack.calc.joining import station_count
from benchpack.errors import Problem
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis
from benchpack.results.joint_facts import JointFacts, Rates, facts_of, rates_of
from benchpack.results.joint_totals import Measure, Totals, totals_of

__all__ = [
    "NOT_RECORDED",
    "Group",
    "Grouping",
    "Inventory",
    "Measure",
    "Totals",
    "grouped",
    "inventory",
    "joining",
    "natural_key",
    "totals_of",
]

NOT_RECORDED = "not recorded"
"""Name of the group of joints for which nothing was recorded."""


class Grouping(StrEnum):
    """By what joints are put together."""

    KIND = "kind"
    SIZE = "size"
    ROLE = "role"
    SUBSYSTEM = "subsystem"
    JOINED_PAIR = "joined pair"


@dataclass(frozen=True, slots=True)
class Group:
    """Some joints of an inventory that belong together.

    Parameters
    ----------
    name : str
        What they share.
    members : tuple of int
        Their places in the inventory's facts.
    totals : Totals
        Their sums.
    """

    name: str
    members: tuple[int, ...]
    totals: Totals


@dataclass(frozen=True, slots=True, eq=False)
class Inventory:
    """What holds one pack together.

    Parameters
    ----------
    pack : str
        Its name.
    facts : tuple of JointFacts
        Its joints in the order of the library.
    totals, carry_over : Totals
        Sums over all joints, and over those that have to stay.
    energy_kwh, pack_mass_kg : float
        Energy and mass of the pack, NaN where it is not recorded itself.
    structure_kg : float
        Its mass without cells, NaN where that of the cells is not known.
    seal_m : float
        Length of gaskets, sealant and other beads that seal, m.
    sizes : tuple of str
        Distinct sizes of screws, nuts, inserts, rivets and clips.
    drives, tools : tuple of str
        Distinct drives of screws and nuts, and all tools: these drives, setting tools
        by size, and one head for each kind of seam and bead.
    stations : int or None
        Stations that the time fills at the takt time; None where no time is known.
    takt_time_s : float
        Takt time of the study, s.
    energy_basis : EnergyBasis
        What the energy means.
    rates : Rates
        What time costs, and the currency.
    """

    pack: str
    facts: tuple[JointFacts, ...]
    totals: Totals
    carry_over: Totals
    energy_kwh: float
    pack_mass_kg: float
    structure_kg: float
    seal_m: float
    sizes: tuple[str, ...]
    drives: tuple[str, ...]
    tools: tuple[str, ...]
    stations: int | None
    takt_time_s: float
    energy_basis: EnergyBasis
    rates: Rates = field(repr=False)

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is amiss with single joints, in their order."""
        return tuple(p for facts in self.facts for p in facts.problems)

    def place(self, joint: str) -> int | None:
        """Give the place of a joint in the facts, None where it is not there."""
        places = (i for i, facts in enumerate(self.facts) if facts.joint.name == joint)
        return next(places, None)


def inventory(
    library: Library, study: Study, pack: str, *, previous: Inventory | None = None
) -> Inventory:
    """Take the inventory of one pack.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Labour and station rate, takt time and currency.
    pack : str
        Name of a pack.
    previous : Inventory, optional
        An inventory taken before; the facts of joints that are still the same
        objects are taken over.

    Raises
    ------
    KeyError
        When the library has neither such a pack nor joints of it.
    """
    record = library.packs.get(pack)
    if record is None and not library.joints_of(pack):
        raise KeyError(pack)
    energy_kwh, mass_kg, cells_kg = _of_pack(record)
    facts = _facts(library, study, pack, previous)
    totals = totals_of(facts)
    return Inventory(
        pack=pack,
        facts=facts,
        totals=totals,
        carry_over=totals_of(f for f in facts if f.joint.carry_over),
        energy_kwh=energy_kwh,
        pack_mass_kg=mass_kg,
        structure_kg=mass_kg - cells_kg,
        seal_m=math.fsum(f.line_mm for f in facts if f.is_seal_line) / 1000,
        sizes=_distinct(f.size for f in facts if f.is_fastener),
        drives=_distinct(f.drive for f in facts),
        tools=_distinct(f.tool for f in facts),
        stations=_stations(totals, study.takt_time_s),
        takt_time_s=study.takt_time_s,
        energy_basis=EnergyBasis(record.energy_basis)
        if record
        else EnergyBasis.UNKNOWN,
        rates=rates_of(study),
    )


def _of_pack(record: Pack | None) -> tuple[float, float, float]:
    """Give energy, mass and mass of the cells of a pack, NaN where not known."""
    if record is None:
        return math.nan, math.nan, math.nan
    cells_kg = math.nan if record.cells_mass_kg is None else record.cells_mass_kg
    return record.energy_kwh, record.mass_kg, cells_kg


def _facts(
    library: Library, study: Study, pack: str, previous: Inventory | None
) -> tuple[JointFacts, ...]:
    joints = library.joints_of(pack)
    if previous is None or previous.rates != rates_of(study):
        return facts_of(joints, study)
    # The old joints are held by the old facts: an id cannot have been given anew.
    old = {id(facts.joint): facts for facts in previous.facts}
    kept = [old.get(id(joint)) for joint in joints]
    lacking = [joint for joint, known in zip(joints, kept, strict=True) if not known]
    fresh = iter(facts_of(lacking, study))
    return tuple(next(fresh) if known is None else known for known in kept)


def _stations(totals: Totals, takt_time_s: float) -> int | None:
    if totals.unknown_time == totals.rows:
        return None
    return int(station_count(totals.seconds, takt_time_s))


def grouped(inventory: Inventory, grouping: Grouping) -> tuple[Group, ...]:
    """Put the joints of an inventory together.

    Parameters
    ----------
    inventory : Inventory
        The joints.
    grouping : Grouping
        By what. A joined pair has no order: a to b is b to a.

    Returns
    -------
    tuple of Group
        By name; joints that do not say stand last, as `NOT_RECORDED`.
    """
    members: dict[tuple[str, ...], list[int]] = {}
    held, shared = inventory.facts, _SHARED[grouping]
    for place, facts in enumerate(held):
        members.setdefault(shared(facts), []).append(place)
    groups = [
        Group(_name(key), tuple(places), totals_of([held[i] for i in places]))
        for key, places in members.items()
    ]
    return tuple(sorted(groups, key=_by_name))


def _kind(facts: JointFacts) -> tuple[str, ...]:
    return (facts.kind,)


def _size(facts: JointFacts) -> tuple[str, ...]:
    return (facts.size,)


def _role(facts: JointFacts) -> tuple[str, ...]:
    return (facts.joint.role.strip(),)


def _subsystem(facts: JointFacts) -> tuple[str, ...]:
    return (str(facts.joint.subsystem),)


def _joined_pair(facts: JointFacts) -> tuple[str, ...]:
    return tuple(sorted((facts.joint.joins.strip(), facts.joint.to.strip())))


_SHARED: Mapping[Grouping, Callable[[JointFacts], tuple[str, ...]]] = {
    Grouping.KIND: _kind,
    Grouping.SIZE: _size,
    Grouping.ROLE: _role,
    Grouping.SUBSYSTEM: _subsystem,
    Grouping.JOINED_PAIR: _joined_pair,
}


def _name(shared: tuple[str, ...]) -> str:
    named = [text for text in shared if text]
    if len(named) == 2 and named[0] == named[1]:
        return f"{named[0]} to itself"
    return " and ".join(named) or NOT_RECORDED


def _by_name(group: Group) -> tuple[bool, list[tuple[int, str]]]:
    return group.name == NOT_RECORDED, natural_key(group.name)


def joining(inventory: Inventory, part: str) -> tuple[int, ...]:
    """Give the places of the joints that have a part on one of their sides.

    Parameters
    ----------
    inventory : Inventory
        The joints.
    part : str
        Name of the part.
    """
    return tuple(
        place
        for place, facts in enumerate(inventory.facts)
        if part in (facts.joint.joins, facts.joint.to)
    )


def natural_key(text: str) -> list[tuple[int, str]]:
    """Give what sorts ``M6x20`` before ``M10x25``.

    Parameters
    ----------
    text : str
        A size, or any name.
    """
    pieces = re.split(r"(\d+)", text.casefold())
    return [(int(p), "") if p.isdecimal() else (-1, p) for p in pieces]


def _distinct(texts: Iterable[str]) -> tuple[str, ...]:
    return tuple(sorted(set(texts) - {""}, key=natural_key))
