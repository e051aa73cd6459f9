"""The sheet of part costs: what the parts that go and come cost, by process."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum

from benchpack.model.part import Part
from benchpack.model.process import process_of
from benchpack.model.ranges import Range
from benchpack.report.audit import names
from benchpack.report.audit.assumption_tables import ProcessCells
from benchpack.report.audit.assumptions import Assumptions
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.record import (
    AuditCell,
    AuditSheet,
    Format,
    formula,
    record,
    text,
)
from benchpack.results.change_cost import PartCost
from benchpack.results.ledger_record import Item
from benchpack.results.ledger_today import folded
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect

_PURPOSE = (
    "What the parts that come and those that go cost per pack: material m p / (1 - "
    "scrap), making cycle time x rates / utilisation; ends of a range in quadrature."
)
_WIDTHS = (32, 30, 9, 8, 10, 22, 26, *(11,) * 6, 9, *(12,) * 4, 50)


class PartColumn(IntEnum):
    """The columns of the sheet; of three figures the low one."""

    CHANGE = 0
    PART = 1
    SIDE = 2
    PIECES = 3
    MASS_EACH = 4
    MATERIAL = 5
    PROCESS = 6
    MATERIAL_LOW = 7
    MAKING_LOW = 10
    SETS = 13
    TOOLS_LOW = 14
    OLD = 17
    WHY = 18


_HEADS = (
    "change",
    "part",
    "comes or goes",
    "pieces",
    "mass each [kg]",
    "material",
    "process",
    "material low [CUR]",
    "material likely [CUR]",
    "material high [CUR]",
    "making low [CUR]",
    "making likely [CUR]",
    "making high [CUR]",
    "tool sets",
    "tools low [CUR]",
    "tools likely [CUR]",
    "tools high [CUR]",
    "old part, likely [CUR]",
    "not known, not counted",
)


@dataclass(frozen=True, slots=True)
class CostedPart:
    """A part whose cost enters a change.

    Parameters
    ----------
    part : Part
        The part.
    cost : PartCost
        What it costs.
    comes : bool
        True where it comes, False where it goes.
    """

    part: Part
    cost: PartCost
    comes: bool


def costs_are_modelled(effect: Effect) -> bool:
    """Tell whether the money for parts is what the cost model says."""
    return effect.change.part_cost is None


def tools_are_modelled(effect: Effect) -> bool:
    """Tell whether the money for tools is what the cost model says."""
    return effect.change.tooling is None and effect.tooling == effect.cost.tooling


def costed_parts(effect: Effect) -> tuple[CostedPart, ...]:
    """Give the parts whose cost enters a change: those that come, then those that go.

    Parameters
    ----------
    effect : Effect
        The change.
    """
    cost, applied = effect.cost, effect.applied
    found: list[CostedPart] = []
    has_tools = tools_are_modelled(effect) and cost.tooling.high > 0
    if costs_are_modelled(effect) or has_tools:
        come = zip(_parts(applied.after), cost.after, strict=True)
        found += [CostedPart(p, c, comes=True) for p, c in come if c not in cost.before]
    if costs_are_modelled(effect):
        gone = zip(_parts(applied.before), cost.before, strict=True)
        found += [CostedPart(p, c, comes=False) for p, c in gone if c not in cost.after]
    return tuple(found)


def _parts(items: Iterable[Item]) -> list[Part]:
    return [item.record for item in items if isinstance(item.record, Part)]


@dataclass(frozen=True, slots=True)
class PartCosts:
    """The sheet, and where the parts of each change stand.

    Parameters
    ----------
    sheet : AuditSheet or None
        None where no part has a cost.
    draft : Draft
        Gives the addresses of its cells.
    come, gone : mapping of str to sequence of int
        Rows of the parts that come and go, by change.
    old : tuple of int
        Rows of parts that go and are in the pack today.
    """

    sheet: AuditSheet | None
    draft: Draft
    come: Mapping[str, Sequence[int]]
    gone: Mapping[str, Sequence[int]]
    old: tuple[int, ...] = ()

    def money(self, change: str, end: int) -> str:
        """Give the formula of the money for parts of a change, after less before.

        What goes is credited only where the same is known of all that comes.

        Parameters
        ----------
        change : str
            Name of the change.
        end : int
            0 for low, 1 for likely, 2 for high.
        """
        come, gone = self.come[change], self.gone[change]
        pieces = []
        for first in (PartColumn.MATERIAL_LOW, PartColumn.MAKING_LOW):
            new = self.draft.outside_span(first + end, come) if come else ""
            old = self.draft.outside_span(first + 2 - end, gone) if gone else ""
            if new:
                pieces.append(f"+SUM({new})")
            if new and old:
                pieces.append(f"-IF(COUNT({new})={len(come)},SUM({old}),0)")
            elif old:
                pieces.append(f"-SUM({old})")
        return "".join(pieces).removeprefix("+") or "0"

    def tools(self, change: str, end: int) -> str:
        """Give the formula of the money for the tools of what comes."""
        come = self.come[change]
        if not come:
            return "0"
        return f"SUM({self.draft.outside_span(PartColumn.TOOLS_LOW + end, come)})"


def part_costs_sheet(results: ProposalResults, assumptions: Assumptions) -> PartCosts:
    """Build the sheet of part costs.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    assumptions : Assumptions
        The sheet of assumptions.
    """
    currency = results.study.currency
    draft = Draft("Part costs", _PURPOSE, _WIDTHS, fixed_columns=2)
    draft.heads(*(head.replace("CUR", currency) for head in _HEADS))
    come: dict[str, list[int]] = {}
    gone: dict[str, list[int]] = {}
    old: list[int] = []
    start = draft.next_row
    for effect in results.effects:
        come[effect.name], gone[effect.name] = [], []
        for costed in costed_parts(effect):
            side = come if costed.comes else gone
            row = draft.line(*_row(draft.next_row, effect.name, costed, assumptions))
            side[effect.name].append(row)
            if not costed.comes and is_of_today(costed.part, results):
                draft.put(row, PartColumn.OLD, _old(row, costed.cost))
                old.append(row)
    sheet = draft.sheet() if draft.next_row > start else None
    return PartCosts(sheet, draft, come, gone, tuple(old))


def is_of_today(part: object, results: ProposalResults) -> bool:
    """Tell whether a part is in the pack today, and none that a change made."""
    return any(part is item.record for item in results.today.parts.values())


def _old(row: int, cost: PartCost) -> AuditCell:
    """Give what an old part costs, empty where material or making is not known."""
    material, making = (
        address(row, first + 1)
        for first in (PartColumn.MATERIAL_LOW, PartColumn.MAKING_LOW)
    )
    body = f'IF(COUNT({material},{making})<2,"",{material}+{making})'
    return formula(body, None if cost.total is None else cost.total.likely)


def _row(
    row: int, change: str, costed: CostedPart, assumptions: Assumptions
) -> Iterator[AuditCell | None]:
    part, cost = costed.part, costed.cost
    making = process_of(part.process)
    process = None if making is None else assumptions.processes.get(making.name)
    yield text(change)
    yield text(part.name)
    yield text("comes" if costed.comes else "goes")
    yield record(part.count, Format.COUNT)
    yield record(part.mass_each_kg, Format.THOUSANDTH)
    yield text(part.material)
    yield text(cost.process or part.process)
    yield from _material(row, part, cost, assumptions=assumptions, process=process)
    if process is None or cost.processing is None or cost.tooling is None:
        yield from [text("")] * 7
    else:
        yield from _making(row, cost.processing, process)
        yield formula(_sets(row, process), float(cost.tool_sets), Format.COUNT)
        sets = address(row, PartColumn.SETS)
        for cell, end in zip(process.tooling, cost.tooling.ends, strict=True):
            yield formula(f"{sets}*{cell}", end, Format.COUNT)
    yield None
    yield text("; ".join(cost.why))


def _material(
    row: int,
    part: Part,
    cost: PartCost,
    *,
    assumptions: Assumptions,
    process: ProcessCells | None,
) -> Iterator[AuditCell]:
    """Give material m p / (1 - scrap) of all pieces."""
    price = assumptions.prices.get(folded(part.material))
    if price is None:
        yield from [text("")] * 3
        return
    mass, pieces = (
        address(row, PartColumn.MASS_EACH),
        address(row, PartColumn.PIECES),
    )
    for end in range(3):
        scrap = process.scrap if process is not None else None
        bought = f"{mass}/(1-{scrap[end]})" if scrap else mass
        body = f'IF(COUNT({mass},{price})<2,"",{pieces}*{bought}*{price})'
        yield formula(body, None if cost.material is None else cost.material.ends[end])


def _making(row: int, making: Range, process: ProcessCells) -> Iterator[AuditCell]:
    """Give cycle time x rates / utilisation of all pieces."""
    pieces, likely = (
        address(row, PartColumn.PIECES),
        address(row, PartColumn.MAKING_LOW + 1),
    )

    def cost(cycle: str, machine: str) -> str:
        people = f"{process.operators}*{names.LABOUR_RATE}"
        return f"{pieces}*{cycle}/3600*({machine}+{people})/{process.utilisation}"

    def spread(end: int) -> str:
        by_cycle = cost(process.cycle[end], process.machine[1])
        by_rate = cost(process.cycle[1], process.machine[end])
        return f"SQRT(SUMSQ({likely}-{by_cycle},{likely}-{by_rate}))"

    yield formula(f"MAX(0,{likely}-{spread(0)})", making.low)
    yield formula(cost(process.cycle[1], process.machine[1]), making.likely)
    yield formula(f"{likely}+{spread(2)}", making.high)


def _sets(row: int, process: ProcessCells) -> str:
    """Give how many sets of tools the programme wears out."""
    if process.life is None:
        return "1"
    parts = f"{names.YEARLY_VOLUME}*{names.PROGRAMME_YEARS}"
    needed = f"{parts}*{address(row, PartColumn.PIECES)}/{process.life}"
    return f"IF(COUNT({names.YEARLY_VOLUME})=0,1,MAX(1,ROUNDUP({needed},0)))"
