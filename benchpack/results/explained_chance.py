"""Where the chance of a proposal comes from."""

from __future__ import annotations

import math

from benchpack.results.figure import Figure, Input
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance

_COMMON = "common to all changes, drawn once a trial; common practice, no source"


def explain_chance(results: ProposalResults, chance: ProposalChance) -> Figure:
    """Say where the chance of reaching the target comes from.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    chance : ProposalChance
        Its trials.
    """
    saved, common = chance.saved_kg, chance.common
    sources = {"price level": common.price_level, "mass estimate": common.mass_bias}
    return Figure(
        key="proposal chance",
        label="Chance of saving the target or more",
        value=chance.chance_of_target,
        unit="",
        formula="trials with mass saved >= target, over all trials",
        inputs=(
            Input("target", chance.target_kg, "kg", "the study"),
            Input("trials", saved.count, "", f"seed {chance.seed}, PCG64"),
            Input("P10 of the mass saved", saved.p10, "kg", "one in ten saves less"),
            Input("P50 of the mass saved", saved.p50, "kg", "the middle trial"),
            Input("P90 of the mass saved", saved.p90, "kg", "one in ten saves more"),
            *(
                Input(
                    f"{effect.name}, chance of release",
                    effect.release_chance,
                    "",
                    "with the changes that it needs",
                )
                for effect in results.effects
            ),
            *(
                Input(f"{name}, {end}", value, "", _COMMON)
                for name, factor in sources.items()
                for end, value in zip(("low", "high"), factor.ends[::2], strict=True)
            ),
        ),
        source="JCGM 101:2008, propagation of distributions; ranges are triangular",
        missing="The study has no target." if math.isnan(chance.target_kg) else "",
    )
