"""The changes of a proposal as lines of its table: texts and how each stands."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from benchpack.model.change import Change, ChangeKind
from benchpack.model.change_needs import lacking
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.report.display import Display
from benchpack.report.proposal_text import money_text
from benchpack.results.closure import Grade
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect
from benchpack.results.wording import listed
from benchpack.units.formatting import UNKNOWN

_INTO = {
    ChangeKind.INTEGRATE: "{acts} into {into}",
    ChangeKind.MOULD_IN: "{acts} into {into}",
    ChangeKind.SWAP_JOINTS: "{acts} for {into}",
    ChangeKind.ADD: "{into}",
}


@dataclass(frozen=True, slots=True)
class ChangeLine:
    """One change as the table shows it.

    Parameters
    ----------
    change : Change
        The change.
    effect : Effect or None
        What it comes to, None where it does not count.
    grade : Grade
        Fail where it is refused, look where it is not complete or comes out heavier,
        else none.
    words : str
        What it acts on, or why it does not count.
    saved, saved_range : str
        The mass it saves, and the range in brackets.
    """

    change: Change
    effect: Effect | None
    grade: Grade
    words: str
    saved: str
    saved_range: str


def change_lines(results: ProposalResults, display: Display) -> tuple[ChangeLine, ...]:
    """Give the lines of all changes in order.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    display : Display
        How figures are shown.
    """
    return tuple(_lines(results, display))


def _lines(results: ProposalResults, display: Display) -> Iterator[ChangeLine]:
    effects = {effect.name: effect for effect in results.effects}
    refusals = {change.name: problem for change, problem in results.ledger.refused}
    for change in results.changes:
        effect = effects.get(change.name)
        problem = refusals.get(change.name)
        grade, words = Grade.NONE, acts_on(change)
        if not change.is_on:
            words = f"switched off: {words}"
        elif problem is not None:
            # What is only not filled in yet is no refusal of what the person wants.
            open_yet = bool(lacking(change))
            grade = Grade.LOOK if open_yet else Grade.FAIL
            lead = "not complete" if open_yet else "refused"
            words = f"{lead}: {problem.what} {problem.remedy}".strip()
        elif effect is not None and effect.saved_kg.likely < 0:
            grade, words = Grade.LOOK, f"comes out heavier: {words}"
        saved = UNKNOWN
        if effect is not None:
            mass = effect.saved_kg
            saved = display.ranged_mass_text(mass.likely, mass.low, mass.high)
        yield ChangeLine(change, effect, grade, words, *in_two(saved))


def acts_on(change: Change) -> str:
    """Say in a few words what a change does to what.

    Parameters
    ----------
    change : Change
        The change.
    """
    acts = listed((*change.parts, *change.joints), most=2)
    form = _INTO.get(change.kind, "{acts}" if acts else "")
    said = form.format(acts=acts, into=change.into or "…")
    if change.material and change.kind is not ChangeKind.ADD:
        said += f" in {change.material}"
    return f"{change.kind}: {said}" if said else str(change.kind)


def in_two(text: str) -> tuple[str, str]:
    """Split ``6.2 kg (4.1 to 7.9)`` into the figure and its range."""
    likely, opened, rest = text.partition(" (")
    return likely, f"({rest}" if opened else ""


def net_worth(effect: Effect, study: Study) -> Range:
    """Give the net worth of a change at the worth of a study, per pack.

    Parameters
    ----------
    effect : Effect
        What the change comes to.
    study : Study
        The study, whose worth may be another than the effect was reckoned with.
    """
    once = effect.tooling_per_pack + effect.validation_per_pack
    return effect.saved_kg.scaled(study.worth_likely_per_kg) - effect.money - once


def worth_texts(effect: Effect | None, study: Study) -> tuple[str, str]:
    """Write the net worth of a change and its range, a dash where it does not count.

    Parameters
    ----------
    effect : Effect or None
        What it comes to.
    study : Study
        Sets the worth, and how money is shown.
    """
    if effect is None:
        return UNKNOWN, ""
    return in_two(money_text(net_worth(effect, study), Display(study)))


def totals_worth(results: ProposalResults, study: Study) -> Range:
    """Give the net worth of a proposal at the worth of a study, per pack."""
    return sum(
        (net_worth(effect, study) for effect in results.effects), Range.exactly(0.0)
    )


def gap_left_texts(results: ProposalResults, display: Display) -> tuple[str, str]:
    """Give what is left of the gap, a dash where there is none, with its label.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    display : Display
        How masses are shown.
    """
    totals = results.totals
    if math.isnan(totals.gap_kg) or totals.gap_kg <= 0:
        return "Gap left", UNKNOWN
    label = f"Left of {display.mass_text(totals.gap_kg)}"
    return label, display.mass_text(max(totals.gap_left_kg, 0.0))
