"""The ledger sheet: where each kilogram goes, change by change."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum

from benchpack.model.ranges import Range
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.names import Triple
from benchpack.report.audit.record import (
    AuditCell,
    AuditSheet,
    Format,
    fixed,
    formula,
    record,
    text,
)
from benchpack.report.proposal_table import COUNTED, IS_THERE, TAKEN_OUT
from benchpack.results.joint_facts import USUAL_CURRENCY
from benchpack.results.ledger_record import AddedBack, ItemKind, LedgerEntry
from benchpack.results.ledger_today import folded
from benchpack.results.proposal import Effect, ProposalResults

_PURPOSE = (
    "What each change does to each part and joint, and what has to be added back. Grey "
    "masses were worked out in the program, which no formula can (resizing by "
    "function, add-backs by area and bolts); they may be overwritten."
)
_WIDTHS = (5, 32, 19, 10, 30, *(10,) * 7, 9, *(10,) * 8, 8, 8, 70)


class LedgerColumn(IntEnum):
    """The columns of the sheet; of three figures the low one."""

    NUMBER = 0
    CHANGE = 1
    STATUS = 2
    KIND = 3
    ITEM = 4
    BEFORE_LOW = 5
    AFTER_LOW = 8
    SAVED = 11
    LATER = 12
    REMAINS_LOW = 13
    REMAINS_HIGH = 14
    PRICE_LOW = 15
    COST_LOW = 18
    PIECES_BEFORE = 21
    PIECES_AFTER = 22
    REASON = 23


_HEADS = (
    "no.",
    "change",
    "status",
    "item kind",
    "item",
    "before low [kg]",
    "before likely [kg]",
    "before high [kg]",
    "after low [kg]",
    "after likely [kg]",
    "after high [kg]",
    "saved [kg]",
    "changed again later",
    "remains low [kg]",
    "remains high [kg]",
    "price low [CUR/kg]",
    "price likely [CUR/kg]",
    "price high [CUR/kg]",
    "cost low [CUR]",
    "cost likely [CUR]",
    "cost high [CUR]",
    "pieces before",
    "pieces after",
    "what happens",
)


@dataclass(frozen=True, slots=True)
class LedgerSheet:
    """The sheet, and where the entries of each change stand.

    Parameters
    ----------
    sheet : AuditSheet
        The sheet.
    draft : Draft
        Gives the addresses of its cells.
    entries, add_backs : mapping of str to sequence of int
        Rows of what a change does to parts and joints, and of its add-backs.
    parts : mapping of str to int
        Row of the last entry of each part, by its folded name.
    """

    sheet: AuditSheet
    draft: Draft
    entries: Mapping[str, Sequence[int]]
    add_backs: Mapping[str, Sequence[int]]
    parts: Mapping[str, int]

    def sum(self, rows: Sequence[int], column: int) -> str:
        """Give the sum of one column over rows that follow each other."""
        return f"SUM({self.draft.outside_span(column, rows)})" if rows else "0"

    def sum_of_all(self, column: int) -> str:
        """Give the sum of one column over everything that counts."""
        rows = [*self.entries.values(), *self.add_backs.values()]
        every = sorted(row for some in rows for row in some)
        return self.sum(every, column)


def ledger_sheet(
    results: ProposalResults, prices: Mapping[str, Triple], currency: str
) -> LedgerSheet:
    """Build the ledger sheet.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    prices : mapping of str to tuple of str
        Cells with the prices of add-backs.
    currency : str
        Code of the currency.
    """
    draft = Draft("Ledger", _PURPOSE, _WIDTHS, fixed_columns=2)
    draft.heads(*(head.replace("CUR", currency) for head in _HEADS))
    last = {
        _key(entry): effect.name
        for effect in results.effects
        for entry in effect.applied.entries
    }
    entries: dict[str, list[int]] = {}
    backs: dict[str, list[int]] = {}
    before: dict[_Key, tuple[int, Range]] = {}
    for number, effect in enumerate(results.effects, start=1):
        name = effect.name
        entries[name] = []
        for entry in effect.applied.entries:
            again = before.get(_key(entry))
            place = Place(
                number,
                is_worked_out=effect.change.mass_kg is None,
                is_changed_later=last[_key(entry)] != name,
                same_as=again[0] if again and again[1] == entry.before_kg else None,
            )
            cells = list(_masses(draft.next_row, entry, place))
            row = draft.line(*cells, *[None] * 6, *_pieces(entry))
            entries[name].append(row)
            before[_key(entry)] = row, entry.after_kg
        backs[name] = [
            _back_line(draft, number, back, prices=prices, currency=currency)
            for back in effect.add_backs
            if back.is_counted
        ]
    for number, effect in enumerate(results.effects, start=1):
        for back in effect.add_backs:
            if not back.is_counted:
                _left_out(draft, number, effect, back)
    parts = {name: row for (is_joint, name), (row, _) in before.items() if not is_joint}
    return LedgerSheet(draft.sheet(), draft, entries, backs, parts)


_Key = tuple[bool, str]


@dataclass(frozen=True, slots=True)
class Place:
    """How an entry stands among the others.

    Parameters
    ----------
    number : int
        Number of its change.
    is_worked_out : bool
        True where the program has worked out the mass after it.
    is_changed_later : bool
        True where a later change takes it up again.
    same_as : int or None
        Row of the earlier entry whose mass after it is the mass before this one.
    """

    number: int
    is_worked_out: bool = True
    is_changed_later: bool = False
    same_as: int | None = None


def _key(entry: LedgerEntry) -> _Key:
    return entry.item_kind is ItemKind.JOINT, folded(entry.item)


def _masses(row: int, entry: LedgerEntry, place: Place) -> Iterator[AuditCell]:
    yield text(str(place.number))
    yield text(entry.change)
    yield text(COUNTED)
    yield text(str(entry.item_kind))
    yield text(entry.item)
    for end, mass in enumerate(entry.before_kg.ends):
        if place.same_as is None:
            yield record(mass, Format.THOUSANDTH)
        else:
            earlier = address(place.same_as, LedgerColumn.AFTER_LOW + end)
            yield formula(earlier, mass, Format.THOUSANDTH)
    is_given = not place.is_worked_out or entry.after_kg.high == 0
    for mass in entry.after_kg.ends:
        yield (record if is_given else fixed)(mass, Format.THOUSANDTH)
    before = address(row, LedgerColumn.BEFORE_LOW + 1)
    low, likely, high = (address(row, LedgerColumn.AFTER_LOW + end) for end in range(3))
    again = address(row, LedgerColumn.LATER)
    yield formula(f"{before}-{likely}", entry.saved_kg, Format.THOUSANDTH)
    yield text("yes" if place.is_changed_later else "no")
    drawn = (
        Range.exactly(entry.after_kg.likely)
        if place.is_changed_later
        else entry.after_kg
    )
    for cell, value in ((low, drawn.low), (high, drawn.high)):
        body = f'IF({again}="yes",{likely},{cell})'
        yield formula(body, value, Format.THOUSANDTH)


def _pieces(entry: LedgerEntry) -> Iterator[AuditCell]:
    yield record(entry.pieces_before, Format.COUNT)
    yield record(entry.pieces_after, Format.COUNT)
    yield text(entry.reason)


def _back_line(
    draft: Draft,
    number: int,
    back: AddedBack,
    *,
    prices: Mapping[str, Triple],
    currency: str,
) -> int:
    """Write an add-back with its cost, mass x price at each end."""
    row, entry = draft.next_row, back.entry()
    cells = list(_masses(row, entry, Place(number)))
    per_kg = back.add_back.price_per_kg.ends
    is_usual = currency == USUAL_CURRENCY
    for cell, price_per_kg in zip(prices[back.add_back.key], per_kg, strict=True):
        body = f'IF(COUNT({cell})=0,"",{cell})'
        cells.append(formula(body, price_per_kg if is_usual else None))
    for end in range(3):
        mass = address(row, LedgerColumn.AFTER_LOW + end)
        price = address(row, LedgerColumn.PRICE_LOW + end)
        cost = back.mass_kg.ends[end] * per_kg[end] if is_usual else 0.0
        cells.append(formula(f"IF(COUNT({price})=0,0,{mass}*{price})", cost))
    return draft.line(*cells, *_pieces(entry))


def _left_out(draft: Draft, number: int, effect: Effect, back: AddedBack) -> None:
    """Write an add-back that is not in the sum, with the reason."""
    row = draft.line(
        text(str(number)),
        text(effect.name),
        text(TAKEN_OUT if back.waived else IS_THERE),
        text("add-back"),
        text(back.add_back.key),
    )
    draft.put(row, LedgerColumn.REASON, text(back.waived or back.covered_by))
