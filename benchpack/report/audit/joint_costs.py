"""The sheet of joint costs: what the joints that go and come cost and take."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum

from benchpack.model.families import Range as FamilyRange
from benchpack.model.joint import Joint
from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.record import (
    AuditCell,
    AuditSheet,
    Format,
    formula,
    record,
    text,
)
from benchpack.results.change_joining import compare_joining
from benchpack.results.joint_facts import JointFacts, Rates
from benchpack.results.ledger_record import Item
from benchpack.results.proposal_effect import Effect

_PURPOSE = (
    "What the joints that come and those that go cost and take per pack: pieces x "
    "(cost each + time each x (labour + station rate) / 3600)."
)
_WIDTHS = (32, 30, 9, 8, *(10,) * 6, 12, 12, *(11,) * 6)


class JointColumn(IntEnum):
    """The columns of the sheet; of three figures the low one."""

    CHANGE = 0
    JOINT = 1
    SIDE = 2
    PIECES = 3
    COST_LOW = 4
    TIME_LOW = 7
    COST_SOURCE = 10
    TIME_SOURCE = 11
    MONEY_LOW = 12
    SECONDS_LOW = 15


_HEADS = (
    "change",
    "joint",
    "comes or goes",
    "pieces",
    "cost each low [CUR]",
    "cost each likely [CUR]",
    "cost each high [CUR]",
    "time each low [s]",
    "time each likely [s]",
    "time each high [s]",
    "cost is",
    "time is",
    "money low [CUR]",
    "money likely [CUR]",
    "money high [CUR]",
    "time low [s]",
    "time likely [s]",
    "time high [s]",
)


@dataclass(frozen=True, slots=True)
class JointCosts:
    """The sheet, and where the joints of each change stand.

    Parameters
    ----------
    sheet : AuditSheet or None
        None where no joint has a cost.
    draft : Draft
        Gives the addresses of its cells.
    come, gone : mapping of str to sequence of int
        Rows of the joints that come and go, by change.
    """

    sheet: AuditSheet | None
    draft: Draft
    come: Mapping[str, Sequence[int]]
    gone: Mapping[str, Sequence[int]]

    def sum(self, change: str, first: JointColumn, end: int) -> str:
        """Give the formula of money or seconds of a change, after less before.

        Parameters
        ----------
        change : str
            Name of the change.
        first : JointColumn
            MONEY_LOW or SECONDS_LOW.
        end : int
            0 for low, 1 for likely, 2 for high.
        """
        pieces = []
        if come := self.come[change]:
            pieces.append(f"SUM({self.draft.outside_span(first + end, come)})")
        if gone := self.gone[change]:
            pieces.append(f"-SUM({self.draft.outside_span(first + 2 - end, gone)})")
        return "".join(pieces) or "0"


def joint_costs_sheet(effects: Iterable[Effect], rates: Rates) -> JointCosts:
    """Build the sheet of joint costs.

    Parameters
    ----------
    effects : iterable of Effect
        The changes that count.
    rates : Rates
        Labour and station rate, and the currency.
    """
    draft = Draft("Joint costs", _PURPOSE, _WIDTHS, fixed_columns=2)
    draft.heads(*(head.replace("CUR", rates.currency) for head in _HEADS))
    come: dict[str, list[int]] = {}
    gone: dict[str, list[int]] = {}
    start = draft.next_row
    for effect in effects:
        come[effect.name], gone[effect.name] = [], []
        change = effect.change
        if change.joining_cost is not None and change.seconds is not None:
            continue
        after, before = _facts(effect.applied.after), _facts(effect.applied.before)
        kept = {id(facts) for facts in before} & {id(facts) for facts in after}
        for side, word, joints in ((come, "comes", after), (gone, "goes", before)):
            for facts in joints:
                if id(facts) in kept:
                    continue
                cells = _row(draft.next_row, facts, rates)
                row = draft.line(
                    text(effect.name), text(facts.joint.name), text(word), *cells
                )
                side[effect.name].append(row)
    sheet = draft.sheet() if draft.next_row > start else None
    return JointCosts(sheet, draft, come, gone)


def _facts(items: Iterable[Item]) -> list[JointFacts]:
    return [
        item.facts
        for item in items
        if isinstance(item.record, Joint) and item.facts is not None
    ]


def _row(row: int, facts: JointFacts, rates: Rates) -> Iterator[AuditCell]:
    family = facts.family
    cost_range = family.cost if family and facts.is_cost_usual else None
    time_range = family.time_s if family and facts.is_time_usual else None
    yield record(facts.joint.count, Format.COUNT)
    for factor in _relative(cost_range):
        yield record(facts.cost_each * factor, Format.THOUSANDTH)
    for factor in _relative(time_range):
        yield record(facts.time_each_s * factor, Format.TENTH)
    yield text("usual" if facts.is_cost_usual else "entered")
    yield text("usual" if facts.is_time_usual else "entered")
    found = compare_joining((), (facts,), rates)
    pieces = address(row, JointColumn.PIECES)
    hourly = f"({names.LABOUR_RATE}+{names.STATION_RATE})/3600"
    for end, money in enumerate(found.money.ends):
        cost = address(row, JointColumn.COST_LOW + end)
        time = address(row, JointColumn.TIME_LOW + end)
        each = f"{pieces}*({cost}+{time}*{hourly})"
        yield formula(f"IF(COUNT({cost},{time})<2,0,{each})", money)
    for end, seconds in enumerate(found.seconds.ends):
        time = address(row, JointColumn.TIME_LOW + end)
        yield formula(f"IF(COUNT({time})=0,0,{pieces}*{time})", seconds, Format.TENTH)


def _relative(usual: FamilyRange | None) -> tuple[float, float, float]:
    """Give low, likely and high of a usual figure as shares of the likely one."""
    if usual is None or not usual.likely > 0:
        return 1.0, 1.0, 1.0
    return usual.low / usual.likely, 1.0, usual.high / usual.likely
