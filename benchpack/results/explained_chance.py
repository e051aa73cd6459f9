"""Figures of the trials of a proposal that say where they come from."""

from __future__ import annotations

import math

from benchpack.results.figure import Figure, Input
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance

CHANCE_KEYS = ("chance of the target", "chance saved", "chance value")
"""Keys of `chance_figure`: chance of the target, mass saved, net worth."""
_SOURCE = (
    "trials as in JCGM 101:2008, Supplement 1 to the Guide to the expression of "
    "uncertainty in measurement"
)
_BETWEEN = "eight in ten trials lie between the two: P10 to P90"


def chance_figure(results: ProposalResults, chance: ProposalChance, key: str) -> Figure:
    """Say where a figure of the trials comes from.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    chance : ProposalChance
        Its trials.
    key : str
        One of `CHANCE_KEYS`.

    Returns
    -------
    Figure
        With what each change brings in.
    """
    target, saved, _ = CHANCE_KEYS
    money = results.study.currency
    inputs = (
        Input("trials", chance.saved_kg.count, "", f"seed {chance.seed}"),
        *_common(results, chance, with_money=key not in (target, saved)),
    )
    if key == target:
        return Figure(
            key=key,
            label="Chance of saving the target or more",
            value=100 * chance.chance_of_target,
            unit="%",
            formula="trials with saved >= target / all trials, saved = sum r (B - b A)",
            inputs=(
                Input("target", chance.target_kg, "kg", "the study"),
                *inputs,
                *_masses(results),
            ),
            source=_SOURCE,
            missing="The study has no target." if math.isnan(chance.target_kg) else "",
        )
    if key == saved:
        trials, unit, label = chance.saved_kg, "kg", "Mass saved, middle of the trials"
        formula, each = "saved = sum r (B - b A), its middle", _masses(results)
    else:
        trials, unit, label = chance.value, money, "Net worth, middle of the trials"
        formula = "w saved - p sum r M - sum r O - V, its middle"
        each = tuple(
            Input(one.name, one.net_worth.likely, money, "net worth of the change")
            for one in results.effects
        )
    return Figure(
        key=key,
        label=label,
        value=trials.p50,
        unit=unit,
        formula=formula,
        inputs=(*inputs, *each),
        source=_SOURCE,
        low=trials.p10,
        high=trials.p90,
        range_meaning=_BETWEEN,
    )


def _common(
    results: ProposalResults, chance: ProposalChance, *, with_money: bool
) -> tuple[Input, ...]:
    common, study = chance.common, results.study
    found = [
        Input("b, mass estimate", common.mass_bias.likely, "", str(common.mass_bias))
    ]
    if with_money:
        level = common.price_level
        unit = f"{study.currency}/kg"
        found += [
            Input("p, price level", level.likely, "", str(level)),
            Input("w, worth", study.worth_likely_per_kg, unit, "low to high"),
        ]
    return tuple(found)


def _masses(results: ProposalResults) -> tuple[Input, ...]:
    return tuple(
        Input(
            one.name,
            one.saved_kg.likely,
            "kg",
            f"saved if released, chance r {one.release_chance:.2g}",
        )
        for one in results.effects
    )
