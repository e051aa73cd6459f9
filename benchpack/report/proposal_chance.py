"""The chance of a proposal and what matters for it, in words."""

from __future__ import annotations

import math
from collections.abc import Collection

from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.report.display import Display
from benchpack.report.proposal_text import money_text, saving_text
from benchpack.results.proposal_choice import Suggestion
from benchpack.results.proposal_matters import Matters
from benchpack.results.proposal_trials import ProposalChance
from benchpack.units.formatting import format_chance, format_number, format_share


def chance_text(chance: ProposalChance | None, study: Study) -> str:
    """Say what the trials come to: P10, P50, P90, and the chance of the target.

    Parameters
    ----------
    chance : ProposalChance or None
        The trials, None where no change counts.
    study : Study
        How numbers are shown.

    Returns
    -------
    str
        Chances are never 0 or 100 per cent.
    """
    if chance is None:
        return "No change counts, so there is no chance to state."
    display, saved = Display(study), chance.saved_kg
    trials = format_number(saved.count, style=display.style)
    middle = Range(saved.p10, saved.p50, saved.p90)
    lead = f"Of {trials} trials the middle one (P50, in brackets P10 to P90): "
    said = [f"{lead}{saving_text(middle, display)}."]
    if math.isnan(chance.target_kg):
        said.append("The study has no target.")
    else:
        target = display.mass_text(chance.target_kg)
        said.append(
            f"The chance of saving the target of {target} or more is "
            f"{format_chance(chance.chance_of_target)}."
        )
    money = Range(chance.value.p10, chance.value.p50, chance.value.p90)
    said.append(
        f"Net worth {display.money_range_text(money.likely, money.low, money.high)} a "
        f"pack; the chance that it gains anything is "
        f"{format_chance(chance.chance_of_gain)}."
    )
    return " ".join(said)


def suggestion_text(suggestion: Suggestion, now: Collection[str] = ()) -> str:
    """Say how many changes are suggested and what they come to together.

    Parameters
    ----------
    suggestion : Suggestion
        The changes with the highest net worth.
    now : collection of str
        Names of the changes that are on.
    """
    results = suggestion.results
    display, totals = Display(results.study), results.totals
    if not suggestion.chosen:
        return "No change is worth its cost: best is to switch all of them off."
    said = f"{len(suggestion.chosen)} of {len(results.changes)} together"
    if set(suggestion.chosen) == set(now):
        said = "What is on is the best together"
    saved = saving_text(totals.saved_kg, display)
    said = f"{said}: {saved}, net worth {money_text(totals.net_worth, display)} a pack"
    if math.isfinite(suggestion.budget):
        tools = display.money_text(totals.tooling.likely)
        said += f", tools {tools} of {display.money_text(suggestion.budget)}"
    return f"{said}."


def matters_text(matters: Matters | None, *, what: str) -> str:
    """Say what matters most for a figure, by its share of the variance.

    Parameters
    ----------
    matters : Matters or None
        What matters, None where no change counts.
    what : str
        The figure in words, "the mass saved" for instance.
    """
    if matters is None or not matters.shares:
        return ""
    first = matters.shares[0]
    if math.isnan(first.total):
        return f"Nothing is uncertain about {what}."
    share = format_share(min(1.0, max(0.0, first.total)))
    return f"{first.name} matters most for {what}: {share} of its variance."
