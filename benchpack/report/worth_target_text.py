"""The savings target in words: what it is worth, how likely, what has to be true."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from benchpack.errors import Problem
from benchpack.model.worth_words import ValuedMass
from benchpack.report.display import Display
from benchpack.report.worth_figures import least_volume_text
from benchpack.report.worth_target import (
    NO_PROPOSAL,
    NO_TARGET,
    WITHOUT_PROPOSAL,
    has_gap,
    has_proposal,
    left_texts,
    no_gap_words,
    share_texts,
)
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.wording import listed
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_target import STRETCH
from benchpack.units.formatting import format_chance, format_number

_MOST = 6


@dataclass(frozen=True, slots=True)
class Reading:
    """Some sentences under a heading.

    Parameters
    ----------
    heading : str
        What they are about.
    sentences : tuple of str
        Whole sentences.
    """

    heading: str
    sentences: tuple[str, ...]


def target_readings(
    case: WorthCase, chance: ProposalChance | None, *, is_known: bool
) -> tuple[Reading, ...]:
    """Say what the target comes to, how likely it is, and what has to be true.

    Parameters
    ----------
    case : WorthCase
        The case.
    chance : ProposalChance or None
        The trials, None where no change counts or while they are worked out.
    is_known : bool
        False while they are worked out.
    """
    display = Display(case.study)
    return (
        Reading("The target", (_target(case, display),)),
        Reading("How likely it is", _likely(case, chance, is_known=is_known)),
        Reading("What has to be true", _conditions(case, display)),
        Reading("What stays open", (_open(case, display),)),
    )


def _target(case: WorthCase, display: Display) -> str:
    target, study = case.target, case.study
    if target.value is None:
        return NO_TARGET
    low, likely, high = target.value.ends
    mass = display.mass_text(target.target_kg)
    money = display.money_range_text(likely, low, high)
    lead = f"{mass} a pack are promised, worth {money}"
    if math.isnan(target.share_of_gap):
        return f"{lead}. There is no gap to compare it with."
    gap = display.mass_text(case.gap.gap_kg)
    _, share = share_texts(case)
    return f"{lead}: {share} of the gap of {gap}, counted {study.basis}."


def _likely(
    case: WorthCase, chance: ProposalChance | None, *, is_known: bool
) -> tuple[str, ...]:
    if not has_proposal(case):
        return (NO_PROPOSAL,)
    if not is_known or chance is None:
        return ("The trials are being worked out.",)
    display, saved = Display(case.study), chance.saved_kg
    middle = display.mass_text(saved.p50)
    stretch = display.mass_text(float(saved.quantile(STRETCH)))
    said = [
        f"Half of the trials save {middle} or more (P50).",
        f"One in five saves {stretch} or more (stretch).",
    ]
    if not math.isnan(chance.target_kg):
        target = display.mass_text(chance.target_kg)
        trials = format_number(saved.count, style=display.style)
        reached = format_chance(chance.chance_of_target)
        said.append(f"{target} are reached in {reached} of {trials} trials.")
    return tuple(said)


def _conditions(case: WorthCase, display: Display) -> tuple[str, ...]:
    if not has_proposal(case):
        return (WITHOUT_PROPOSAL,)
    return (*_releases(case, display), _least_worth(case, display), _volume(case))


def _releases(case: WorthCase, display: Display) -> tuple[str, ...]:
    target = case.target
    if math.isnan(target.target_kg):
        return (NO_TARGET,)
    if target.short_kg > 0:
        saved = display.mass_text(abs(target.proposed_kg))
        word = "saves" if target.proposed_kg >= 0 else "adds"
        short = display.mass_text(target.short_kg)
        return (
            "More than the proposal has to be saved to reach the target.",
            f"With every change released it {word} {saved}, {short} short of it.",
        )
    if not target.needed:
        return ("No single change has to be released: any one may fall away.",)
    said = [f"Each of these has to be released: {_named(target.needed, display)}."]
    if target.spare:
        said.append(f"Any one of these may fall away: {_named(target.spare, display)}.")
    return tuple(said)


def _named(changes: Sequence[tuple[str, float]], display: Display) -> str:
    texts = tuple(f"{name} ({display.mass_text(kg)})" for name, kg in changes)
    return listed(texts, most=_MOST)


def _least_worth(case: WorthCase, display: Display) -> str:
    least = case.target.least_worth_per_kg
    if math.isnan(least):
        return "No worth pays for it: the proposal saves no mass."
    if least == 0:
        return "It pays even where mass is worth nothing: its costs fall."
    entered = display.worth_text(case.study.worth_likely_per_kg)
    return f"A worth of {display.worth_text(least)} at least; {entered} is entered."


def _volume(case: WorthCase) -> str:
    found = case.programme
    if isinstance(found, Problem):
        return found.what
    if case.saving.valued is not ValuedMass.PROPOSAL:
        return "The volume does not matter: what is valued has no cost."
    if math.isinf(found.break_even_packs):
        return "It pays at no volume."
    return f"It pays from {least_volume_text(found, Display(case.study))} on."


def _open(case: WorthCase, display: Display) -> str:
    left = case.target.left_kg
    if not has_proposal(case):
        return WITHOUT_PROPOSAL
    if not has_gap(case):
        return no_gap_words(case)
    if left <= 0:
        return _closed(case, display)
    gap = display.mass_text(case.gap.gap_kg)
    if left > case.gap.gap_kg:
        return f"The proposal widens the gap of {gap} to {display.mass_text(left)}."
    _, whole = left_texts(case)
    return f"After the proposal {whole} of the gap of {gap} are left."


def _closed(case: WorthCase, display: Display) -> str:
    """Say that the gap is closed, and what of it stays at the worst ends."""
    found = case.target.left_range
    if found is None or found.high < NOTHING_KG:
        return "The proposal closes the gap."
    most = display.mass_text(found.high)
    return f"By likely figures the proposal closes the gap; {most} may stay at most."
