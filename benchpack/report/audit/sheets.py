"""All sheets of the audit workbook, in their order."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchpack.errors import DataError, Problem
from benchpack.model.process import process_of
from benchpack.report.audit.assumption_tables import Used
from benchpack.report.audit.assumptions import Assumptions, assumptions_sheet
from benchpack.report.audit.by_year import by_year_sheet
from benchpack.report.audit.change_rows import Sources
from benchpack.report.audit.gaps import gaps_sheet
from benchpack.report.audit.joint_costs import joint_costs_sheet
from benchpack.report.audit.ledger import ledger_sheet
from benchpack.report.audit.packs import packs_sheet
from benchpack.report.audit.part_costs import costed_parts, part_costs_sheet
from benchpack.report.audit.price import price_sheet
from benchpack.report.audit.price_parts import PriceParts
from benchpack.report.audit.programme import programme_sheet
from benchpack.report.audit.proposal import no_proposal_sheet, proposal_sheet
from benchpack.report.audit.read_me import read_me_sheet
from benchpack.report.audit.record import AuditCell, AuditSheet
from benchpack.report.audit.trend import trend_sheet
from benchpack.report.audit.uncertainty import uncertainty_sheet
from benchpack.report.audit.value import value_sheet
from benchpack.report.audit.vehicle import vehicle_sheet
from benchpack.results.joint_facts import rates_of
from benchpack.results.ledger_today import folded
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.worth_case import WorthCase

__all__ = ["AuditCell", "AuditSheet", "audit_sheets"]


def audit_sheets(
    case: WorthCase,
    chance: ProposalChance | None,
    *,
    fingerprint: str,
    made_on: date,
    further: Iterable[AuditSheet] = (),
) -> tuple[AuditSheet, ...]:
    """Give all sheets: read me, assumptions, packs, gaps, proposal, worth, and proofs.

    Parameters
    ----------
    case : WorthCase
        What the saving is worth, with the gap and the proposal.
    chance : ProposalChance or None
        The trials of the proposal.
    fingerprint : str
        Fingerprint of study and library.
    made_on : date
        Date that the workbook bears.
    further : iterable of AuditSheet
        Sheets that come after those of the worth; their formulas find the figures by
        the defined names of `names`.

    Returns
    -------
    tuple of AuditSheet
        In the order of the workbook.

    Raises
    ------
    DataError
        When there is nothing to compare.
    """
    results, proposal = case.gap, case.proposal
    comparison = results.comparison
    if comparison is None:
        raise DataError(results.missing or Problem("There is nothing to compare."))
    assumptions = assumptions_sheet(
        case.study,
        case.supply,
        _used(proposal, chance),
        subject_volume=comparison.subject.yearly_volume,
    )
    packs = packs_sheet(results, comparison, assumptions.shares)
    trend = trend_sheet(comparison, packs)
    gaps = gaps_sheet(results, comparison, packs, trend=trend)
    uncertainty = uncertainty_sheet(results, comparison, packs, gaps, trend=trend)
    proofs = [uncertainty] if trend is None else [trend.sheet, uncertainty]
    years = by_year_sheet(case, assumptions.volumes)
    proposed = parts = None
    front = no_proposal_sheet()
    if proposal is not None:
        sources = _sources(proposal, assumptions)
        found = proposal_sheet(proposal, sources)
        proposed, front = (proposal, found), found.sheet
        parts = PriceParts(proposal, found, sources)
        behind = (sources.ledger.sheet, sources.parts.sheet, sources.joints.sheet)
        proofs += [sheet for sheet in behind if sheet is not None]
    rest = (
        assumptions.sheet,
        packs.sheet,
        gaps.sheet,
        front,
        value_sheet(results, packs, gaps, proposed=proposed, chance=chance),
        programme_sheet(case, gaps, years),
        years.sheet,
        price_sheet(case, parts),
        vehicle_sheet(case, packs),
        *further,
        *proofs,
    )
    read_me = read_me_sheet(
        results, proposal, rest, fingerprint=fingerprint, made_on=made_on
    )
    return (read_me, *rest)


def _sources(results: ProposalResults, assumptions: Assumptions) -> Sources:
    """Give the sheets that the sheet of the proposal draws on."""
    return Sources(
        ledger_sheet(results, assumptions.add_backs, results.study.currency),
        part_costs_sheet(results, assumptions),
        joint_costs_sheet(results.effects, rates_of(results.study)),
    )


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
