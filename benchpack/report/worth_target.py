"""The savings target as figures: what it is worth, and how likely it is."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from benchpack.model.words import Basis
from benchpack.report.display import Display
from benchpack.report.worth_figures import Shown, money_shown
from benchpack.results.explained_chance import CHANCE_KEYS
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_target import STRETCH
from benchpack.units.formatting import UNKNOWN, format_chance, format_range

CHANCE, SAVED, _ = CHANCE_KEYS
STRETCHED = "chance stretch"
"""Key of what one trial in five saves."""
COMPUTING = "computing"
"""Stands where a figure is still worked out."""
WITHOUT_TARGET = "No target is set."
NO_TARGET = f"{WITHOUT_TARGET} Enter the saving that is promised."
WITHOUT_PROPOSAL = "There is no proposal."
NO_PROPOSAL = "There is no proposal, so nothing says how likely it is."


def has_proposal(case: WorthCase) -> bool:
    """Say whether a change counts."""
    return case.proposal is not None and bool(case.proposal.effects)


def has_gap(case: WorthCase) -> bool:
    """Say whether the subject is heavier than what it is measured against."""
    return case.gap.gap_kg >= NOTHING_KG


def no_gap_words(case: WorthCase) -> str:
    """Say why there is no gap to close.

    Parameters
    ----------
    case : WorthCase
        A case without one.
    """
    study, missing = case.study, case.gap.missing
    if missing is not None:
        return f"There is no gap to close: {missing.what}"
    against = f"{study.reference}, counted {study.basis}"
    if study.basis is Basis.TREND:
        against = "the trend of its peers"
    return f"There is no gap to close: {study.subject} is not heavier than {against}."


def target_shown(case: WorthCase) -> Shown:
    """Give the target with its worth as one figure: ``6.0 kg, 18 EUR``."""
    target, display = case.target, Display(case.study)
    if target.value is None:
        return Shown("target worth", "Target", "none", why=NO_TARGET)
    mass = display.mass_text(target.target_kg)
    money = money_shown("", "", target.value, display)
    text = f"{mass}, {money.text}"
    why = f"Worth of {mass} a pack, at low and at high worth {money.span}."
    return Shown("target worth", "Target", text, why=why)


def share_shown(case: WorthCase) -> Shown:
    """Give the target's share of the gap."""
    key, label, target = "target share", "Share of the gap", case.target
    if math.isnan(target.target_kg):
        return Shown(key, label, why=NO_TARGET)
    if math.isnan(target.share_of_gap):
        return Shown(key, label, why=no_gap_words(case))
    text, whole = share_texts(case)
    why = ""
    if target.share_range is None:
        why = "The range of the gap goes down to zero, so the share has no upper end."
    return Shown(key, label, text, whole.removeprefix(text).strip(), why)


def share_texts(case: WorthCase) -> tuple[str, str]:
    """Give the target's share of the gap, alone and with its range.

    Parameters
    ----------
    case : WorthCase
        A case with a target and a gap.
    """
    write, target = Display(case.study).share_text, case.target
    text, found = write(target.share_of_gap), target.share_range
    if found is None or write(found.low) == write(found.high):
        return text, text
    return text, format_range(found.likely, found.low, found.high, _optional(write))


def left_texts(case: WorthCase) -> tuple[str, str]:
    """Give the gap still open, alone and with its range; none of it below zero.

    Parameters
    ----------
    case : WorthCase
        A case with a gap and a proposal.
    """
    display, target = Display(case.study), case.target
    text, found = display.mass_text(max(0.0, target.left_kg)), target.left_range
    if found is None:
        return text, text
    low, likely, high = (max(0.0, end) for end in found.ends)
    if display.mass_text(low) == display.mass_text(high):
        return text, text
    return text, display.ranged_mass_text(likely, low, high)


def _optional(write: Callable[[float], str]) -> Callable[[float | None], str]:
    def written(value: float | None) -> str:
        return UNKNOWN if value is None else write(value)

    return written


def chance_shown(
    case: WorthCase, chance: ProposalChance | None, *, is_known: bool
) -> Shown:
    """Give the chance of reaching the target.

    Parameters
    ----------
    case : WorthCase
        The case.
    chance : ProposalChance or None
        The trials.
    is_known : bool
        False while they are worked out.
    """
    label = "Chance"
    if math.isnan(case.target.target_kg):
        return Shown(CHANCE, label, why=NO_TARGET)
    if not has_proposal(case):
        return Shown(CHANCE, label, why=NO_PROPOSAL)
    if not is_known or chance is None:
        return Shown(CHANCE, label, COMPUTING)
    why = "Share of the trials that save the target or more."
    return Shown(CHANCE, label, format_chance(chance.chance_of_target), why=why)


def middle_shown(
    case: WorthCase, chance: ProposalChance | None, *, is_known: bool
) -> tuple[Shown, Shown]:
    """Give what half of the trials save, and what one in five saves.

    Parameters
    ----------
    case : WorthCase
        The case.
    chance : ProposalChance or None
        The trials.
    is_known : bool
        False while they are worked out.
    """
    middle = Shown(SAVED, "Half of the trials save", why=NO_PROPOSAL)
    stretch = Shown(STRETCHED, "One in five saves", why=NO_PROPOSAL)
    if not has_proposal(case):
        return middle, stretch
    if not is_known or chance is None:
        return replace(middle, text=COMPUTING), replace(stretch, text=COMPUTING)
    display, saved = Display(case.study), chance.saved_kg
    return (
        replace(
            middle,
            text=display.mass_text(saved.p50),
            why="P50: half of the trials save this or more.",
        ),
        replace(
            stretch,
            text=display.mass_text(float(saved.quantile(STRETCH))),
            why="Stretch: one trial in five saves this or more.",
        ),
    )


def target_figures(
    case: WorthCase, chance: ProposalChance | None, *, is_known: bool
) -> tuple[Shown, ...]:
    """Give the figures of the target.

    Parameters
    ----------
    case : WorthCase
        The case.
    chance : ProposalChance or None
        The trials, None where no change counts or while they are worked out.
    is_known : bool
        False while they are worked out.
    """
    display, target = Display(case.study), case.target
    worth = Shown("target worth", "Worth a pack", why=NO_TARGET)
    if target.value is not None:
        worth = money_shown("target worth", "Worth a pack", target.value, display)
    left = Shown("gap left", "Gap still open", why=WITHOUT_PROPOSAL)
    if has_proposal(case) and not has_gap(case):
        left = replace(left, why=no_gap_words(case))
    elif math.isfinite(target.left_kg):
        text, whole = left_texts(case)
        span = whole.removeprefix(text).strip()
        left = replace(left, text=text, span=span, why="After the proposal.")
    least = Shown("least worth", "Pays from a worth of", why=WITHOUT_PROPOSAL)
    if math.isfinite(target.least_worth_per_kg):
        text = display.worth_text(target.least_worth_per_kg)
        least = Shown("least worth", "Pays from a worth of", text)
    elif has_proposal(case):
        why = "It saves no mass, so no worth pays for it."
        least = Shown("least worth", "Pays from a worth of", why=why)
    return (
        worth,
        share_shown(case),
        chance_shown(case, chance, is_known=is_known),
        *middle_shown(case, chance, is_known=is_known),
        least,
        left,
    )
