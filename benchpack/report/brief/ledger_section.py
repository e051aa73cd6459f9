"""The ledger of a proposal: where each kilogram goes, with its add-backs."""

from __future__ import annotations

from benchpack.model.ranges import Range
from benchpack.report.brief.blocks import Audience, Block, Column, Paragraph, Table
from benchpack.report.display import Display
from benchpack.report.proposal_text import note_texts, refusal_text, secondary_text
from benchpack.results.ledger import AddedBack, LedgerEntry
from benchpack.results.ledger_record import ItemKind
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect
from benchpack.results.wording import listed
from benchpack.units.formatting import UNKNOWN, format_mass, format_range

_DECIMALS = 3
_MOST_NAMES = 4
_NOTHING = Range.exactly(0.0)
_Row = tuple[str, ...]


def ledger_blocks(proposal: ProposalResults, audience: Audience) -> tuple[Block, ...]:
    """Give the ledger change by change, with the add-backs of each.

    Parameters
    ----------
    proposal : ProposalResults
        The proposal.
    audience : Audience
        Changes that are refused are an internal matter.
    """
    blocks: list[Block] = []
    if proposal.effects:
        blocks.append(_Writer(proposal).by_change())
    else:
        blocks.append(Paragraph("No change counts.", "note"))
    said = [secondary_text(proposal)]
    if audience is Audience.INTERNAL:
        said += [refusal_text(problem) for _, problem in proposal.ledger.refused]
    said += note_texts(proposal.notes)
    return (*blocks, *(Paragraph(text, "note") for text in said))


def items_blocks(proposal: ProposalResults) -> tuple[Block, ...]:
    """Give the ledger part by part and joint by joint.

    Parameters
    ----------
    proposal : ProposalResults
        The proposal.
    """
    return (_Writer(proposal).by_item(),)


class _Writer:
    """Writes one ledger."""

    def __init__(self, proposal: ProposalResults) -> None:
        self.proposal = proposal
        self.display = Display(proposal.study)

    def by_change(self) -> Table:
        rows: list[_Row] = []
        groups: list[int] = []
        for number, effect in enumerate(self.proposal.effects, 1):
            groups.append(len(rows))
            rows.append(self._change(number, effect))
            rows += [self._added_back(back) for back in effect.add_backs]
        rows.append(self._sum())
        return Table(
            "",
            self._columns("change, its add-backs"),
            tuple(rows),
            sums=frozenset({len(rows) - 1}),
            groups=frozenset(groups),
        )

    def by_item(self) -> Table:
        rows: list[_Row] = []
        groups: list[int] = []
        for number, effect in enumerate(self.proposal.effects, 1):
            groups.append(len(rows))
            rows.append((f"{number}  {effect.name}", *[""] * 6))
            rows += [self._entry(entry) for entry in effect.entries]
        name, before, after, saved, pieces, said = self._sum()
        ends = self._ends(self.proposal.totals.proposed_kg)
        rows.append((name, before, after, ends, saved, pieces, said))
        columns = [*self._columns("change, its items")]
        columns.insert(3, Column("low to high", self.display.mass_unit, "right"))
        return Table(
            "",
            tuple(columns),
            tuple(rows),
            sums=frozenset({len(rows) - 1}),
            groups=frozenset(groups),
        )

    def _columns(self, first: str) -> tuple[Column, ...]:
        mass = self.display.mass_unit
        return (
            Column(first),
            Column("before", mass, "right"),
            Column("after", mass, "right"),
            Column("saved", mass, "right"),
            Column("pieces", "", "right"),
            Column("what happens"),
        )

    def _mass(self, mass_kg: float | None) -> str:
        return format_mass(
            mass_kg, style=self.display.style, with_unit=False, decimals=_DECIMALS
        )

    def _ranged(self, mass_kg: Range) -> str:
        if self._mass(mass_kg.low) == self._mass(mass_kg.high):
            return self._mass(mass_kg.likely)
        return format_range(mass_kg.likely, mass_kg.low, mass_kg.high, self._mass)

    def _ends(self, mass_kg: Range) -> str:
        low, high = self._mass(mass_kg.low), self._mass(mass_kg.high)
        return "" if low == high else f"{low} to {high}"

    def _change(self, number: int, effect: Effect) -> _Row:
        """Give what a change does, its add-backs apart but in its saving."""
        own = [one for one in effect.entries if one.item_kind is not ItemKind.ADD_BACK]
        before = sum(entry.before_kg.likely for entry in own)
        after = sum(entry.after_kg.likely for entry in effect.entries)
        pieces_before = sum(entry.pieces_before for entry in own)
        pieces_after = sum(entry.pieces_after for entry in own)
        return (
            f"{number}  {effect.name}",
            self._mass(before),
            self._mass(after),
            self._ranged(effect.saved_kg),
            f"{pieces_before} to {pieces_after}",
            _happens(own),
        )

    def _added_back(self, back: AddedBack) -> _Row:
        key = back.add_back.key
        if back.is_counted:
            mass = self._ranged(-back.mass_kg)
            return (f"in it: {key}", "", "", mass, "", back.add_back.rule)
        said = f"not counted: {back.covered_by} is there"
        if back.waived:
            said = f"{self._ranged(back.mass_kg)} taken out of the sum: {back.waived}"
        return (f"not in it: {key}", "", "", UNKNOWN, "", said)

    def _entry(self, entry: LedgerEntry) -> _Row:
        is_add_back = entry.item_kind is ItemKind.ADD_BACK
        return (
            f"add-back: {entry.item}" if is_add_back else entry.item,
            self._mass(entry.before_kg.likely),
            self._mass(entry.after_kg.likely),
            self._ends(entry.after_kg),
            self._mass(entry.saved_kg),
            f"{entry.pieces_before} to {entry.pieces_after}",
            entry.reason,
        )

    def _sum(self) -> _Row:
        totals = self.proposal.totals
        added = totals.add_back_kg
        return (
            f"{self.proposal.study.subject}, all changes",
            self._mass(totals.today_kg),
            self._mass(totals.proposed_kg.likely),
            self._ranged(totals.saved_kg),
            "",
            f"add-backs {self._ranged(added)} in it" if added.high > 0 else "",
        )


def _happens(entries: list[LedgerEntry]) -> str:
    """Say what happens to parts and joints, those of one fate together.

    What comes is named by the fate of what goes, and alone where nothing goes.
    """
    going = [entry for entry in entries if entry.pieces_before] or entries
    fates: dict[str, list[str]] = {}
    for entry in going:
        fates.setdefault(entry.reason, []).append(entry.item)
    return "; ".join(
        f"{listed(tuple(names), most=_MOST_NAMES)} ({fate})"
        for fate, names in fates.items()
    )
