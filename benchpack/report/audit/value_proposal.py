"""What the proposal comes to on the sheet of value."""

from __future__ import annotations

import math

from benchpack.report.audit import names
from benchpack.report.audit.change_rows import LIKELY
from benchpack.report.audit.packs import PackColumn, Packs
from benchpack.report.audit.proposal import Proposal
from benchpack.report.audit.proposal_columns import (
    MONEY_PER_PACK,
    ONCE_PER_PACK,
    ProposalColumn,
)
from benchpack.report.audit.record import Format, Look
from benchpack.report.audit.value_rows import ValueRows
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance

_VALUE = "value of the program: it does not move with this workbook"


def share_of_gap(amount: str) -> str:
    """Give the formula of an amount as a share of the gap, empty where none is.

    Parameters
    ----------
    amount : str
        A name or an address.
    """
    gap = names.GAP
    both = f"COUNT({amount},{gap})<2"
    return f'IF({both},"",IF({gap}>0,{amount}/{gap},""))'


def proposal_rows(
    rows: ValueRows,
    results: ProposalResults,
    proposal: Proposal,
    packs: Packs,
    *,
    has_gap: bool,
) -> None:
    """Write what the proposal saves, costs and is worth.

    Parameters
    ----------
    rows : ValueRows
        The sheet.
    results : ProposalResults
        The proposal.
    proposal : Proposal
        Its sheet.
    packs : Packs
        The sheet of packs.
    has_gap : bool
        Whether there is a reference.
    """
    _masses(rows, results, proposal, packs, has_gap=has_gap)
    _money(rows, results, proposal)
    _worth(rows, results, proposal)


def _masses(
    rows: ValueRows,
    results: ProposalResults,
    proposal: Proposal,
    packs: Packs,
    *,
    has_gap: bool,
) -> None:
    totals, saved = results.totals, names.SAVED
    today = rows.one(
        "mass today",
        packs.at(packs.subject, PackColumn.MASS),
        totals.today_kg,
        unit="kg",
        how="as weighed",
    )
    rows.three(
        "mass saved",
        saved,
        totals.saved_kg.ends,
        unit="kg",
        how="add-backs taken off; each change at its low, likely or high end",
    )
    rows.three(
        "mass proposed",
        [f"{today}-{name}" for name in reversed(saved)],
        totals.proposed_kg.ends,
        unit="kg",
        how="mass today - mass saved",
    )
    rows.one(
        "expected saving",
        proposal.at(ProposalColumn.EXPECTED, LIKELY),
        totals.expected_kg,
        unit="kg",
        how="sum over the changes of chance of release x likely saving",
    )
    rows.one(
        "saved less target",
        f'IF(COUNT({names.TARGET})=0,"",{saved[LIKELY]}-{names.TARGET})',
        totals.saved_kg.likely - totals.target_kg,
        unit="kg",
        how="below 0: short of the target",
    )
    if not has_gap:
        return
    rows.one(
        "share of the gap that it closes",
        share_of_gap(saved[LIKELY]),
        totals.share_of_gap,
        unit="%",
        how="mass saved / gap, where the subject is heavier",
        number_format=Format.SHARE,
    )
    rows.one(
        "gap that is left",
        f'IF(COUNT({names.GAP})=0,"",{names.GAP}-{saved[LIKELY]})',
        totals.gap_left_kg,
        unit="kg",
        how="gap on the basis - mass saved",
    )


def _money(rows: ValueRows, results: ProposalResults, proposal: Proposal) -> None:
    totals, worth = results.totals, results.study.worth_likely_per_kg
    rows.three(
        "worth of the mass saved",
        [f"{names.WORTH[LIKELY]}*{name}" for name in names.SAVED],
        [worth * end for end in totals.saved_kg.ends],
        unit="CUR/pack",
        how="likely worth x mass saved",
    )
    rows.three(
        "money per pack, one-time money not counted",
        [
            "+".join(proposal.at(column, end) for column in MONEY_PER_PACK)
            for end in range(3)
        ],
        totals.money.ends,
        unit="CUR/pack",
        how="parts + joining + add-backs, after less before; positive: it costs",
        labels=names.MONEY,
    )
    for title, labels, value in (
        ("tools, spent once", names.TOOLS, totals.tooling),
        ("validation, spent once", names.VALIDATION, totals.validation_cost),
    ):
        rows.three(
            title,
            labels,
            value.ends,
            unit="CUR",
            how="sum over the changes",
            number_format=Format.COUNT,
        )
    _budget(rows, results)
    for title, column, value in (
        ("tools per pack", ProposalColumn.TOOLS_PER_PACK, totals.tooling_per_pack),
        (
            "validation per pack",
            ProposalColumn.VALIDATION_PER_PACK,
            totals.validation_per_pack,
        ),
    ):
        rows.three(
            title,
            [proposal.at(column, end) for end in range(3)],
            value.ends,
            unit="CUR/pack",
            how="money x capital recovery factor / yearly volume; 0 without a volume",
        )


def _budget(rows: ValueRows, results: ProposalResults) -> None:
    """Write what the budget for tools leaves."""
    budget = results.study.tooling_budget
    left = math.nan if budget is None else budget - results.totals.tooling.likely
    name, tools = names.TOOLING_BUDGET, names.TOOLS[LIKELY]
    rows.one(
        "tooling budget that is left",
        f'IF(COUNT({name})=0,"",{name}-{tools})',
        left,
        unit="CUR",
        how="tooling budget - tools; empty: no limit",
        number_format=Format.COUNT,
    )


def _worth(rows: ValueRows, results: ProposalResults, proposal: Proposal) -> None:
    totals, once = results.totals, ONCE_PER_PACK
    rows.three(
        "net worth at the likely worth",
        names.NET_WORTH,
        totals.net_worth.ends,
        unit="CUR/pack",
        how="sum of the changes, each at its low, likely and high end",
        look=Look.SUM,
    )
    spent = "".join(f"-{proposal.at(column, LIKELY)}" for column in once)
    costs = (
        totals.money.likely
        + totals.tooling_per_pack.likely
        + totals.validation_per_pack.likely
    )
    rows.three(
        "net worth at low, likely and high worth",
        [
            f"{worth}*{names.SAVED[LIKELY]}-{names.MONEY[LIKELY]}{spent}"
            for worth in names.WORTH
        ],
        [
            worth * totals.saved_kg.likely - costs
            for worth in results.study.worth_per_kg
        ],
        unit="CUR/pack",
        how="worth x likely mass saved - likely money",
        look=Look.SUM,
    )
    rows.one(
        "pays from",
        proposal.at(ProposalColumn.BREAK_EVEN, LIKELY),
        totals.break_even_volume,
        unit="packs/year",
        how="one-time money x capital recovery factor / (worth of the mass - money)",
        number_format=Format.COUNT,
    )


def chance_rows(rows: ValueRows, chance: ProposalChance) -> None:
    """Write what the trials came to.

    Parameters
    ----------
    rows : ValueRows
        The sheet.
    chance : ProposalChance
        The trials.
    """
    saved, value = chance.saved_kg, chance.value
    rows.values(
        "mass saved, P10, P50, P90",
        (saved.p10, saved.p50, saved.p90),
        unit="kg",
        how=_VALUE,
    )
    rows.values(
        "net worth, P10, P50, P90",
        (value.p10, value.p50, value.p90),
        unit="CUR/pack",
        how=_VALUE,
    )
    for title, share in (
        ("chance of the target", chance.chance_of_target),
        ("chance that it gains anything", chance.chance_of_gain),
    ):
        if not math.isnan(share):
            rows.values(
                title,
                (None, share, None),
                unit="%",
                how=_VALUE,
                number_format=Format.SHARE,
            )
    rows.values(
        "trials",
        (None, saved.count, None),
        unit=f"seed {chance.seed}",
        how="Monte Carlo, JCGM 101:2008",
        number_format=Format.COUNT,
    )
