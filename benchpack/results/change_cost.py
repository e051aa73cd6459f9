"""What parts cost by process, before and after a change, and from which volume it pays.

The rates are those of the study; those of the processes are in EUR and hold for parts
of the size of a tray or a lid, so that small parts have no process cost here.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np

from benchpack.calc.part_cost import material_cost, process_cost
from benchpack.model.change import ProgrammeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.process import Process, process_of
from benchpack.model.ranges import Range
from benchpack.results.change_supply import Supply, break_even
from benchpack.results.joint_facts import USUAL_CURRENCY

LEAST_PART_KG = 1.0
"""From this mass on the figures of a process hold (working range, no source)."""


@dataclass(frozen=True, slots=True)
class PartCost:
    """What one kind of part costs per pack; None where it cannot be said.

    Parameters
    ----------
    part : str
        Name of the part.
    process : str
        The process that was found, empty where none was.
    material, processing : Range or None
        Money per pack for its material and for making it.
    tooling : Range or None
        One-time money for its tools, all sets that the programme wears out.
    tool_sets : int
        How many sets that is.
    why : tuple of str
        What is not known, as clauses.
    """

    part: str
    process: str = ""
    material: Range | None = None
    processing: Range | None = None
    tooling: Range | None = None
    tool_sets: int = 0
    why: tuple[str, ...] = ()

    @property
    def total(self) -> Range | None:
        """Material and making per pack without tooling, None where either is open."""
        if self.material is None or self.processing is None:
            return None
        return self.material + self.processing


def cost_of_part(part: Part, material: Material | None, supply: Supply) -> PartCost:
    """Give what a part costs per pack.

    Parameters
    ----------
    part : Part
        The part with its mass, count and process.
    material : Material or None
        Its material, None where the library does not have it.
    supply : Supply
        Rates, currency and volume.

    Returns
    -------
    PartCost
        The ends of a range are those of its inputs, added in quadrature.
    """
    price = None if material is None else material.price_per_kg
    making = process_of(part.process)
    return _cost(part.name, part.count, part.mass_each_kg, price, making, supply)


@lru_cache(maxsize=8192)
def _cost(
    name: str,
    count: int,
    mass_kg: float | None,
    price_per_kg: float | None,
    making: Process | None,
    supply: Supply,
) -> PartCost:
    why = []
    material = processing = tooling = None
    sets = 0
    if mass_kg is None:
        why.append("its mass is not recorded")
    elif price_per_kg is None:
        why.append("its material has no price")
    else:
        scrap = making.scrap if making is not None else None
        material = _material(mass_kg, price_per_kg, scrap).scaled(count)
    if making is None:
        why.append("its process is not one with known rates")
    elif supply.currency != USUAL_CURRENCY:
        why.append(f"the rates of processes are in {USUAL_CURRENCY}")
    elif mass_kg is None or mass_kg < LEAST_PART_KG:
        why.append("it is too small for the rates of the process")
    else:
        processing = _processing(making, supply).scaled(count)
        sets = _tool_sets(making, count, supply)
        tooling = making.tooling.scaled(sets)
    found = "" if making is None else making.name
    return PartCost(name, found, material, processing, tooling, sets, tuple(why))


def _material(mass_kg: float, price_per_kg: float, scrap: Range | None) -> Range:
    # The mass itself carries no range here: its own change does.
    shares = np.zeros(3) if scrap is None else np.array(scrap.ends)
    low, likely, high = material_cost(mass_kg, price_per_kg, scrap=shares).tolist()
    return Range(low, likely, high)


def _processing(making: Process, supply: Supply) -> Range:
    """Give the cost of one cycle; one input at a time, its ends in quadrature."""
    cycle, rate = making.cycle_s, making.machine_rate_per_h
    cycles = np.array([cycle.likely, cycle.low, cycle.high, cycle.likely, cycle.likely])
    rates = np.array([rate.likely, rate.likely, rate.likely, rate.low, rate.high])
    likely, *ends = process_cost(
        cycles,
        machine_rate_per_h=rates,
        labour_rate_per_h=supply.labour_per_h,
        operators=making.operators,
        utilisation=making.utilisation,
    ).tolist()
    down = math.hypot(*(likely - end for end in ends[::2]))
    up = math.hypot(*(end - likely for end in ends[1::2]))
    return Range(max(0.0, likely - down), likely, likely + up)


def _tool_sets(making: Process, count: int, supply: Supply) -> int:
    parts = supply.yearly_volume * supply.years * count
    if making.tool_life is None or math.isnan(parts):
        return 1
    return max(1, math.ceil(parts / making.tool_life.likely))


@dataclass(frozen=True, slots=True)
class CostChange:
    """What the parts of a change cost more, after less before, per pack.

    Parameters
    ----------
    part_cost : Range
        Money per pack; what is not known counts as nothing.
    tooling : Range
        One-time money for the new tools.
    old_tooling : Range
        One-time money for the old tools where these have to be bought too.
    why : tuple of str
        What is not known, as sentences without a full stop.
    before, after : tuple of PartCost
        What the parts cost before and after.
    """

    part_cost: Range
    tooling: Range
    old_tooling: Range
    why: tuple[str, ...] = ()
    before: tuple[PartCost, ...] = field(default=(), repr=False)
    after: tuple[PartCost, ...] = field(default=(), repr=False)


_NONE = Range.exactly(0.0)


def compare_costs(
    before: Sequence[PartCost], after: Sequence[PartCost], supply: Supply
) -> CostChange:
    """Give what new parts cost more than the old ones.

    What the old parts cost is credited only where the same is known of all new parts,
    so that an unknown cost is never a saving.

    Parameters
    ----------
    before, after : sequence of PartCost
        Parts that go and parts that come; one that is in both cancels out.
    supply : Supply
        Whether the old tools have to be bought too.
    """
    gone = [cost for cost in before if cost not in after]
    come = [cost for cost in after if cost not in before]
    why = [f"{cost.part}: {reason}" for cost in (*come, *gone) for reason in cost.why]
    total = _NONE
    for what in ("material", "processing"):
        new = [getattr(cost, what) for cost in come]
        old = [getattr(cost, what) for cost in gone]
        total += _sum(new)
        if None not in new:
            total -= _sum(old)
    is_new = supply.programme is ProgrammeKind.NEW
    return CostChange(
        total,
        _sum([cost.tooling for cost in come]),
        _sum([cost.tooling for cost in gone]) if is_new else _NONE,
        tuple(dict.fromkeys(why)),
        tuple(before),
        tuple(after),
    )


def _sum(ranges: Iterable[Range | None]) -> Range:
    return sum((one for one in ranges if one is not None), _NONE)


def break_even_of_parts(cost: CostChange, supply: Supply) -> float:
    """Give the yearly volume from which the new parts are cheaper than the old ones.

    Mass is not counted, only what parts and their tools cost.

    Parameters
    ----------
    cost : CostChange
        What the parts cost before and after.
    supply : Supply
        Years and interest.

    Returns
    -------
    float
        Packs a year, NaN where a cost is not known.
    """
    if cost.why:
        return math.nan
    extra = cost.tooling.likely - cost.old_tooling.likely
    return break_even(extra, -cost.part_cost.likely, supply)
