"""The sheet of value: what gap, target and proposal are worth per pack."""

from __future__ import annotations

import math

from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.gaps import GapColumn, Gaps
from benchpack.report.audit.packs import Packs
from benchpack.report.audit.proposal import Proposal
from benchpack.report.audit.record import AuditSheet, Format, Look
from benchpack.report.audit.value_proposal import (
    chance_rows,
    proposal_rows,
    share_of_gap,
)
from benchpack.report.audit.value_rows import HEADS, WIDTHS, ValueRows
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.results import Results

_PURPOSE = (
    "What gap, target and proposal are worth per pack. The figures as handed over stay "
    "beside those that move."
)


def value_sheet(
    results: Results,
    packs: Packs,
    gaps: Gaps,
    *,
    proposed: tuple[ProposalResults, Proposal] | None,
    chance: ProposalChance | None,
) -> AuditSheet:
    """Build the sheet of value.

    Parameters
    ----------
    results : Results
        The results.
    packs : Packs
        The sheet of packs.
    gaps : Gaps
        The sheet of gaps.
    proposed : tuple of (ProposalResults, Proposal) or None
        The proposal and its sheet.
    chance : ProposalChance or None
        Its trials.
    """
    draft = Draft("Value", _PURPOSE, WIDTHS)
    draft.heads(*HEADS)
    rows = ValueRows(draft, results.study.currency)
    draft.section("The gap")
    rows.words("subject", results.study.subject)
    rows.words("reference", results.study.reference or "none chosen")
    if gaps.row is None:
        said = results.missing.what if results.missing else "There is no reference."
        rows.words("gap to the reference", "none", said)
    else:
        _gap(rows, results, gaps)
    draft.section("The target")
    _target(rows, results, has_gap=gaps.row is not None)
    if proposed is not None:
        draft.section("The proposal")
        proposal_rows(rows, *proposed, packs, has_gap=gaps.row is not None)
    if chance is not None:
        draft.section("The chance of the proposal")
        chance_rows(rows, chance)
    return draft.sheet()


def _gap(rows: ValueRows, results: Results, gaps: Gaps) -> None:
    """Write the gap to the study's reference, its shares and its value."""
    comparison, place, valuation = results.comparison, results.place, results.valuation
    assert comparison is not None
    assert place is not None
    assert valuation is not None
    rows.words("counted", str(results.study.basis), "as handed over; see Assumptions")
    for title, column, value, how in (
        (
            "gap as weighed",
            GapColumn.AS_WEIGHED,
            comparison.as_weighed_kg,
            "mass - reference mass, as compared",
        ),
        (
            "energy share",
            GapColumn.ENERGY_SHARE,
            comparison.energy_share_kg,
            "what carries the difference of energy",
        ),
        (
            "density share",
            GapColumn.DENSITY_SHARE,
            comparison.density_share_kg,
            "the rest: the gap at equal energy",
        ),
    ):
        rows.one(title, gaps.at(column), float(value[place]), unit="kg", how=how)
    rows.one(
        "gap on the basis",
        gaps.at(GapColumn.GAP),
        results.gap_kg,
        unit="kg",
        how="the basis of sheet Assumptions",
        name=names.GAP,
    )
    rows.one(
        "u(gap)",
        gaps.at(GapColumn.GAP_U),
        float(comparison.gap_u_kg[place]),
        unit="kg",
        how="standard uncertainty, sheet Uncertainty",
    )
    worths = (valuation.low, valuation.likely, valuation.high)
    rows.three(
        "value of the gap",
        [
            gaps.at(column)
            for column in (GapColumn.LOW, GapColumn.LIKELY, GapColumn.HIGH)
        ],
        [float(worth[place]) for worth in worths],
        unit="CUR/pack",
        how="gap x low, likely and high worth x share captured",
        labels=names.GAP_VALUE,
        look=Look.SUM,
    )


def _target(rows: ValueRows, results: Results, *, has_gap: bool) -> None:
    """Write the saving that is promised, and what it is worth."""
    study, name = results.study, names.TARGET
    target = math.nan if study.target_kg is None else study.target_kg
    rows.one(
        "target",
        f'IF(COUNT({name})=0,"",{name})',
        target,
        unit="kg",
        how="the saving that is promised per pack",
    )
    rows.three(
        "worth of the target",
        [f'IF(COUNT({name})=0,"",{name}*{worth})' for worth in names.WORTH],
        [target * worth for worth in study.worth_per_kg],
        unit="CUR/pack",
        how="target x low, likely and high worth",
    )
    if has_gap:
        share = target / results.gap_kg if results.gap_kg > 0 else math.nan
        rows.one(
            "target as a share of the gap",
            share_of_gap(name),
            share,
            unit="%",
            how="nothing where the subject is not heavier",
            number_format=Format.SHARE,
        )
