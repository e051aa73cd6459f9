"""What the sheet of the price draws from the proposal: old parts, new mass, money."""

from __future__ import annotations

import math

from benchpack.report.audit.change_rows import LIKELY, Sources
from benchpack.report.audit.draft import address
from benchpack.report.audit.ledger import LedgerColumn
from benchpack.report.audit.part_costs import (
    PartColumn,
    costs_are_modelled,
    is_of_today,
)
from benchpack.report.audit.programme_saving import of_what_is_valued
from benchpack.report.audit.proposal import Proposal
from benchpack.report.audit.proposal_columns import ProposalColumn
from benchpack.report.audit.value_rows import ValueRows
from benchpack.results.ledger_record import ItemKind
from benchpack.results.ledger_today import folded
from benchpack.results.proposal import ProposalResults
from benchpack.results.worth_saving import MAKE_NEW

_NOTHING = '""'


class PriceParts:
    """Gives formulas on the proposal; nothing where something else is valued.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    proposal : Proposal
        Its sheet.
    sources : Sources
        The sheets that it draws on.
    """

    def __init__(
        self, results: ProposalResults, proposal: Proposal, sources: Sources
    ) -> None:
        self.results, self.proposal, self.sources = results, proposal, sources

    def sum(self, *columns: ProposalColumn, sign: str = "") -> str:
        """Give likely sums of the proposal.

        Parameters
        ----------
        *columns : ProposalColumn
            What is summed up.
        sign : str
            Stands before the sum.
        """
        if not self.results.effects:
            return "0"
        summed = "+".join(self.proposal.at(column, LIKELY) for column in columns)
        return of_what_is_valued(f"{sign}({summed})")

    def old_parts(self, rows: ValueRows) -> str:
        """Give what the parts of today that go cost; writes what has no formula.

        Parameters
        ----------
        rows : ValueRows
            The sheet.
        """
        if not self.results.effects:
            return _NOTHING
        rest, parts = self._rest(rows), self.sources.parts
        if not parts.old:
            return of_what_is_valued(rest, _NOTHING)
        cells = parts.draft.outside_span(PartColumn.OLD, parts.old)
        lacks = f"COUNT({cells},{rest})<{len(parts.old) + 1}"
        return of_what_is_valued(f'IF({lacks},"",SUM({cells})+{rest})', _NOTHING)

    def _rest(self, rows: ValueRows) -> str:
        """Write what old parts cost where the cost of a change is given as a whole."""
        if all(map(costs_are_modelled, self.results.effects)):
            return "0"
        rows.values(
            "old parts of changes with a given cost",
            (None, _cost_not_on_sheet(self.results), None),
            unit="CUR/pack",
            how="value of the program: their parts are not on sheet Part costs",
        )
        cell = address(rows.draft.next_row - 1, LIKELY + 1)
        return f'IF(COUNT({cell})=0,"",{cell})'

    def new_kg(self) -> str:
        """Give the mass of what is made new, as it stands in the end."""
        ledger = self.sources.ledger
        found = dict.fromkeys(
            ledger.parts[folded(final.name)]
            for effect in self.results.effects
            if effect.change.kind in MAKE_NEW
            for item in effect.applied.after
            if item.kind is ItemKind.PART
            and (final := self.results.ledger.final_part(item.name)) is not None
        )
        after = LedgerColumn.AFTER_LOW + LIKELY
        cells = (ledger.draft.outside(row, after) for row in found)
        return of_what_is_valued("+".join(cells) or _NOTHING, _NOTHING)


def _cost_not_on_sheet(results: ProposalResults) -> float:
    """Give what today's parts cost that go with a cost given as a whole."""
    known = 0.0
    for effect in results.effects:
        if costs_are_modelled(effect):
            continue
        taken = [i for i in effect.applied.before if i.kind is ItemKind.PART]
        for item, cost in zip(taken, effect.cost.before, strict=True):
            if cost in effect.cost.after or not is_of_today(item.record, results):
                continue
            known += math.nan if cost.total is None else cost.total.likely
    return known
