"""A seal line as it is tried out, in words."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.results.closure import Grade
from benchpack.results.seal_lines import Holding, SealLine
from benchpack.results.seal_trial import SealTrial, Tried
from benchpack.results.seal_words import (
    metres,
    millimetres,
    newtons,
    not_applicable_words,
    only_between_metals_words,
)
from benchpack.results.wording import ON_SCREEN, Wording, listed
from benchpack.units.number_style import labelled

NOTES = (
    "The stiffness of the flange sets the count, not the strength of the screws.",
    (
        "Corners, ports and connectors need screws closer, 60 mm or less, and the "
        "flange flat within 0.2 to 0.3 mm over 300 mm (common practice, no source)."
    ),
    "The flange counts as flat bar: a returned edge or a rib allows more.",
    (
        "An estimate to compare with. Whether a pack is tight, a leak test shows, by "
        "licensed practice."
    ),
)
"""What has to be known about every figure of a seal line."""

_WORD = {Grade.GOOD: "Holds", Grade.LOOK: "Wants a look", Grade.FAIL: "Too far apart"}


@dataclass(frozen=True, slots=True)
class TrialText:
    """A trial in words.

    Parameters
    ----------
    headline : str
        What is allowed, and what it means against today.
    grade : Grade
        How the screws as tried stand; none where that is not known.
    verdict : str
        The grade as a word with its reason, empty where there is none.
    details : tuple of str
        Load on each screw and the give of the other flange.
    """

    headline: str
    grade: Grade = Grade.NONE
    verdict: str = ""
    details: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TrialNames:
    """How a trial names things.

    Parameters
    ----------
    material : str
        The tried material, empty for a modulus of one's own.
    other : str
        The flange on the other side.
    unfit : str
        Material on which the tried sealant does not cure, empty where it does.
    """

    material: str = ""
    other: str = "the other flange"
    unfit: str = ""


def recorded_words(line: SealLine, *, wording: Wording = ON_SCREEN) -> str:
    """Say what is recorded of a seal line.

    Parameters
    ----------
    line : SealLine
        The line.
    wording : Wording
        How figures are written.
    """
    joint = line.joints[0].joint
    what = joint.designation.strip() or line.joints[0].kind or "seal"
    sides = listed(tuple(dict.fromkeys(flange.part or "?" for flange in line.flanges)))
    if not math.isnan(line.length_mm):
        what = f"{what}, {metres(line.length_mm, wording)}"
    words = [what, f"between {sides}"]
    if line.count:
        held = f"{wording.number(line.count)} screws"
        if not math.isnan(line.pitch_mm):
            held += f" at {millimetres(line.pitch_mm, wording)}"
        words.append(held)
    text = f"Recorded: {'; '.join(words)}."
    if line.holding is not Holding.CLAMPED:
        text = f"{text} {not_applicable_words(line)}"
    wrong = only_between_metals_words(line)
    return f"{text} {wrong}" if wrong else text


def trial_text(
    trial: SealTrial,
    tried: Tried,
    *,
    line: SealLine,
    names: TrialNames,
    least_clamp_n: float = math.nan,
    wording: Wording = ON_SCREEN,
) -> TrialText:
    """Put a trial into words.

    Parameters
    ----------
    trial, tried : SealTrial, Tried
        What was tried and what came out.
    line : SealLine
        The recorded line.
    names : TrialNames
        Material and other flange.
    least_clamp_n : float
        Least clamp load of the present screws, N; NaN where not known.
    wording : Wording
        How figures are written.
    """
    if math.isnan(tried.allowed_mm):
        return TrialText(_lacking_words(trial))
    grade, verdict = _verdict(trial, tried, wording)
    details = (
        _load_words(tried, line, least_clamp_n, wording),
        _both_words(trial, tried, names, wording),
    )
    if tried.gasket_n + max(tried.lift_n, 0.0) > least_clamp_n:
        grade, verdict = Grade.FAIL, "The screws are too weak for it."
    if names.unfit:
        grade = Grade.FAIL
        verdict = f"This sealant cures between metals only, not on {names.unfit}."
    return TrialText(
        _headline(trial, tried, line, names, wording),
        grade,
        verdict,
        tuple(filter(None, details)),
    )


def _headline(
    trial: SealTrial,
    tried: Tried,
    line: SealLine,
    names: TrialNames,
    wording: Wording,
) -> str:
    thickness = millimetres(trial.thickness_mm, wording)
    modulus = labelled(wording.number(trial.modulus_mpa / 1000, decimals=1), "GPa")
    what = (
        f"{thickness} {f'of {names.material}' if names.material else f'at {modulus}'}"
    )
    allowed = millimetres(tried.allowed_mm, wording)
    if tried.is_other_softer:
        said = f"The other side ({names.other}) gives way more and allows {allowed}"
    else:
        said = f"{what} allows {allowed}"
    if tried.least_count is None:
        return f"{said}. How many screws that is needs the length of the line."
    count = wording.number(tried.least_count)
    screws = f"{count} screw{'' if tried.least_count == 1 else 's'}"
    said = f"{said}: {screws} hold {metres(trial.length_mm, wording)}"
    if not line.count or math.isnan(line.pitch_mm):
        return f"{said}."
    today = f"{wording.number(line.count)} at {millimetres(line.pitch_mm, wording)}"
    return f"{said}; today {today}."


def _verdict(trial: SealTrial, tried: Tried, wording: Wording) -> tuple[Grade, str]:
    if tried.count is None or tried.grade is Grade.NONE:
        return Grade.NONE, ""
    lost = wording.number(tried.loss_mm, decimals=2)
    may = labelled(wording.number(trial.allowed_loss_mm, decimals=2), "mm")
    pitch = millimetres(tried.pitch_mm, wording)
    count = wording.number(tried.count)
    words = f"{count} screws stand {pitch} apart, midway {lost} of {may} are lost"
    if tried.allowed_both_mm < tried.pitch_mm <= tried.allowed_mm:
        words += ", without the give of the other side"
    return tried.grade, f"{_WORD[tried.grade]}: {words}."


def _load_words(tried: Tried, line: SealLine, least_n: float, wording: Wording) -> str:
    if math.isnan(tried.gasket_n):
        return "The load on the screws needs the width of the gasket."
    words = f"The gasket puts {newtons(tried.gasket_n, wording)} on each screw"
    if tried.lift_n > 0:
        words += f", the pressure inside {newtons(tried.lift_n, wording)} more"
    if not line.count:
        return f"{words}."
    if math.isnan(least_n):
        return f"{words}; what today's screws clamp with is not known."
    return f"{words}; today's clamp with at least {newtons(least_n, wording)}."


def _both_words(
    trial: SealTrial, tried: Tried, names: TrialNames, wording: Wording
) -> str:
    if math.isnan(trial.other_n_mm):
        return f"The other side ({names.other}) is taken as rigid."
    both = millimetres(tried.allowed_both_mm, wording)
    words = f"With the give of both sides {both}"
    if tried.least_count_both is None:
        return f"{words}."
    return f"{words}, {wording.number(tried.least_count_both)} screws."


def _lacking_words(trial: SealTrial) -> str:
    wanted = (
        ("the modulus", trial.modulus_mpa),
        ("the thickness", trial.thickness_mm),
        ("the pressure midway", trial.pressure_low_mpa),
        ("the pressure at a screw", trial.pressure_high_mpa),
        ("the allowed loss", trial.allowed_loss_mm),
    )
    lacking = tuple(word for word, value in wanted if math.isnan(value))
    return f"Enter {listed(lacking)} to see the pitch."
