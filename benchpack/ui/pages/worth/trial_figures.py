"""The figures of the trials, as figures that say where they come from."""

from __future__ import annotations

from dataclasses import replace

from benchpack.report.worth_target import CHANCE, SAVED, STRETCHED
from benchpack.results.explained_chance import chance_figure
from benchpack.results.figure import Figure
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.worth_target import STRETCH

OF_TRIALS = (CHANCE, SAVED, STRETCHED)
"""Keys that `trial_figure` answers."""


def trial_figure(
    proposal: ProposalResults, chance: ProposalChance, *, key: str
) -> Figure:
    """Say where a figure of the trials comes from.

    Parameters
    ----------
    proposal : ProposalResults
        The proposal.
    chance : ProposalChance
        Its trials.
    key : str
        One of `OF_TRIALS`.
    """
    figure = chance_figure(proposal, chance, SAVED if key == STRETCHED else key)
    if key != STRETCHED:
        return figure
    return replace(
        figure,
        key=key,
        label="Mass saved by one trial in five, or more",
        value=float(chance.saved_kg.quantile(STRETCH)),
        formula=figure.formula.replace("its middle", "its 80th per cent"),
    )
