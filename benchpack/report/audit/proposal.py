"""The sheet of the proposal: what each change comes to, and the sums."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from benchpack.report.audit import names
from benchpack.report.audit.change_rows import (
    LIKELY,
    ChangeRows,
    Sources,
    break_even_body,
    own_chances,
)
from benchpack.report.audit.draft import Draft, address, span
from benchpack.report.audit.ledger import LedgerColumn
from benchpack.report.audit.names import Triple
from benchpack.report.audit.proposal_columns import ENDS, HEADS, WIDTHS, ProposalColumn
from benchpack.report.audit.record import AuditSheet, Format, Look, formula, text
from benchpack.report.proposal_text import refusal_text
from benchpack.results.proposal import ProposalResults

_PURPOSE = (
    "What each change comes to per pack, after less before; money is positive where it "
    "costs. Blue figures are given with the change."
)
_ENDS_SAY = (
    "Each row takes a figure at its own low, likely or high end. Mass saved and net "
    "worth take masses after a change and costs at the opposite end."
)
_NAMED: Mapping[ProposalColumn, Triple] = {
    ProposalColumn.TOOLS: names.TOOLS,
    ProposalColumn.VALIDATION: names.VALIDATION,
    ProposalColumn.NET_WORTH: names.NET_WORTH,
}
_FORMATS: Mapping[ProposalColumn, Format] = {
    ProposalColumn.SECONDS: Format.TENTH,
    ProposalColumn.TOOLS: Format.COUNT,
    ProposalColumn.VALIDATION: Format.COUNT,
}


@dataclass(frozen=True, slots=True)
class Proposal:
    """The sheet, and where its sums stand.

    Parameters
    ----------
    sheet : AuditSheet
        The sheet.
    draft : Draft
        Gives the addresses of its cells.
    sums : int
        Row of the low ends of the sums; likely and high follow.
    """

    sheet: AuditSheet
    draft: Draft
    sums: int

    def at(self, column: ProposalColumn, end: int) -> str:
        """Give the address of a sum for formulas on other sheets."""
        return self.draft.outside(self.sums + end, column)


def no_proposal_sheet() -> AuditSheet:
    """Build the sheet for a study that proposes nothing."""
    draft = Draft("Proposal", _PURPOSE, WIDTHS)
    draft.heads("The study has no proposal.")
    return draft.sheet()


def proposal_sheet(results: ProposalResults, sources: Sources) -> Proposal:
    """Build the sheet of the proposal.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    sources : Sources
        The sheets that it draws on.
    """
    draft = Draft("Proposal", _PURPOSE, WIDTHS, fixed_columns=4)
    draft.notes(_ENDS_SAY)
    currency = results.study.currency
    draft.heads(*(head.replace("CUR", currency) for head in HEADS))
    first = draft.next_row
    own = {
        effect.name: address(first + 3 * place + LIKELY, ProposalColumn.OWN_CHANCE)
        for place, effect in enumerate(results.effects)
    }
    chances = own_chances(results.effects, own)
    for number, effect in enumerate(results.effects, start=1):
        rows = ChangeRows(effect, sources, first=draft.next_row)
        draft.cells.update(rows.write(number, chances[effect.name]))
        draft.next_row += len(ENDS)
    draft.section("All changes that count")
    sums = draft.next_row
    _sums(draft, results, sources, rows=range(first, sums - 2))
    if results.ledger.refused:
        draft.section("Changes that do not count")
        for change, problem in results.ledger.refused:
            draft.line(text(change.name), text(refusal_text(problem)), start=1)
    return Proposal(draft.sheet(), draft, sums)


def _sums(
    draft: Draft, results: ProposalResults, sources: Sources, *, rows: Sequence[int]
) -> None:
    """Write the sums at all three ends."""
    totals, column, sums = results.totals, ProposalColumn, draft.next_row

    def at(one: ProposalColumn, end: int) -> str:
        return address(sums + end, one)

    for end, word in enumerate(ENDS):
        row = draft.line(text("all together"), None, text(word), start=column.CHANGE)
        for one, value in (
            (column.ADD_BACKS, totals.add_back_kg),
            (column.SECONDS, totals.seconds),
            (column.PARTS, totals.part_cost),
            (column.JOINING, totals.joining_cost),
            (column.ADD_BACK_COST, totals.add_back_cost),
            (column.TOOLS, totals.tooling),
            (column.VALIDATION, totals.validation_cost),
            (column.TOOLS_PER_PACK, totals.tooling_per_pack),
            (column.VALIDATION_PER_PACK, totals.validation_per_pack),
            (column.NET_WORTH, totals.net_worth),
        ):
            body = _sum_of_end(one, rows, word)
            named = _NAMED.get(one, ("", "", ""))[end]
            form = _FORMATS.get(one, Format.CENT)
            cell = formula(body, value.ends[end], form, name=named, look=Look.SUM)
            draft.put(row, one, cell)
        saved = formula(
            _saved_body(sources, end),
            totals.saved_kg.ends[end],
            name=names.SAVED[end],
            look=Look.SUM,
        )
        draft.put(row, column.SAVED, saved)
    likely = sums + LIKELY
    expected = _sum_of_end(column.EXPECTED, rows, ENDS[LIKELY])
    draft.put(
        likely,
        column.EXPECTED,
        formula(expected, totals.expected_kg, look=Look.SUM),
    )
    pays = formula(
        break_even_body(at), totals.break_even_volume, Format.COUNT, look=Look.SUM
    )
    draft.put(likely, column.BREAK_EVEN, pays)


def _sum_of_end(column: ProposalColumn, rows: Sequence[int], word: str) -> str:
    if not rows:
        return "0"
    ends = span(ProposalColumn.END, rows)
    return f'SUMIF({ends},"{word}",{span(column, rows)})'


def _saved_body(sources: Sources, end: int) -> str:
    """Give what all save together: today's masses less what remains of each thing."""
    ledger = sources.ledger
    remains = (
        LedgerColumn.REMAINS_HIGH,
        LedgerColumn.AFTER_LOW + 1,
        LedgerColumn.REMAINS_LOW,
    )[end]
    before = ledger.sum_of_all(LedgerColumn.BEFORE_LOW + 1)
    return f"{before}-{ledger.sum_of_all(remains)}"
