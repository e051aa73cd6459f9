"""All sheets of the audit workbook, in their order."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchpack.errors import DataError, Problem
from benchpack.model.process import process_of
from benchpack.report.audit.assumption_tables import Used
from benchpack.report.audit.assumptions import Assumptions, assumptions_sheet
from benchpack.report.audit.change_rows import Sources
from benchpack.report.audit.gaps import gaps_sheet
from benchpack.report.audit.joint_costs import joint_costs_sheet
from benchpack.report.audit.ledger import ledger_sheet
from benchpack.report.audit.packs import packs_sheet
from benchpack.report.audit.part_costs import costed_parts, part_costs_sheet
from benchpack.report.audit.proposal import Proposal, no_proposal_sheet, proposal_sheet
from benchpack.report.audit.read_me import read_me_sheet
from benchpack.report.audit.record import AuditCell, AuditSheet
from benchpack.report.audit.trend import trend_sheet
from benchpack.report.audit.uncertainty import uncertainty_sheet
from benchpack.report.audit.value import value_sheet
from benchpack.results.change_supply import Supply, supply_of
from benchpack.results.joint_facts import rates_of
from benchpack.results.ledger_today import folded
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.results import Results

__all__ = ["AuditCell", "AuditSheet", "audit_sheets"]


def audit_sheets(
    results: Results,
    proposal: ProposalResults | None,
    chance: ProposalChance | None,
    *,
    fingerprint: str,
    made_on: date,
    further: Iterable[AuditSheet] = (),
) -> tuple[AuditSheet, ...]:
    """Give all sheets: read me, assumptions, packs, gaps, proposal, value, and proofs.

    Parameters
    ----------
    results : Results
        Results with a comparison.
    proposal : ProposalResults or None
        The proposal of the same study, None where it has none.
    chance : ProposalChance or None
        Its trials.
    fingerprint : str
        Fingerprint of study and library.
    made_on : date
        Date that the workbook bears.
    further : iterable of AuditSheet
        Sheets that come after "Value"; their formulas find the figures by the defined
        names of `names`.

    Returns
    -------
    tuple of AuditSheet
        In the order of the workbook.

    Raises
    ------
    DataError
        When there is nothing to compare.
    """
    comparison = results.comparison
    if comparison is None:
        raise DataError(results.missing or Problem("There is nothing to compare."))
    assumptions = assumptions_sheet(
        results.study, _supply(results), _used(proposal, chance)
    )
    packs = packs_sheet(results, comparison, assumptions.shares)
    trend = trend_sheet(comparison, packs)
    gaps = gaps_sheet(results, comparison, packs, trend=trend)
    uncertainty = uncertainty_sheet(results, comparison, packs, gaps, trend=trend)
    proofs = [uncertainty] if trend is None else [trend.sheet, uncertainty]
    proposed: tuple[ProposalResults, Proposal] | None = None
    front = no_proposal_sheet()
    if proposal is not None:
        found, behind = _proposal(proposal, assumptions)
        proposed, front = (proposal, found), found.sheet
        proofs += behind
    value = value_sheet(results, packs, gaps, proposed=proposed, chance=chance)
    rest = (
        assumptions.sheet,
        packs.sheet,
        gaps.sheet,
        front,
        value,
        *further,
        *proofs,
    )
    read_me = read_me_sheet(
        results, proposal, rest, fingerprint=fingerprint, made_on=made_on
    )
    return (read_me, *rest)


def _supply(results: Results) -> Supply:
    assert results.comparison is not None
    volume = results.comparison.subject.yearly_volume
    return supply_of(results.study, subject_volume=volume)


def _proposal(
    results: ProposalResults, assumptions: Assumptions
) -> tuple[Proposal, list[AuditSheet]]:
    """Give the sheet of the proposal, and those that it draws on."""
    currency = results.study.currency
    ledger = ledger_sheet(results, assumptions.add_backs, currency)
    parts = part_costs_sheet(results.effects, assumptions, currency)
    joints = joint_costs_sheet(results.effects, rates_of(results.study))
    found = proposal_sheet(results, Sources(ledger, parts, joints))
    every = (ledger.sheet, parts.sheet, joints.sheet)
    return found, [sheet for sheet in every if sheet is not None]


def _used(proposal: ProposalResults | None, chance: ProposalChance | None) -> Used:
    """Give the materials, processes and add-backs that the proposal draws on."""
    if proposal is None:
        return Used()
    costed = [one for effect in proposal.effects for one in costed_parts(effect)]
    names = {folded(one.part.material): one.part.material for one in costed}
    makings = [process_of(one.part.process) for one in costed]
    backs = {
        back.add_back.key: back.add_back
        for back in proposal.add_backs
        if back.is_counted
    }
    return Used(
        materials={
            key: (name, proposal.today.material(name))
            for key, name in names.items()
            if key
        },
        processes=tuple(dict.fromkeys(one for one in makings if one is not None)),
        add_backs=tuple(backs.values()),
        common=None if chance is None else chance.common,
    )
