"""Checks of the seal lines of a pack: pitch and load against what is allowed."""

from __future__ import annotations

import math
from collections.abc import Iterable

from benchpack.calc.seal_line import least_joint_count
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.check import Check
from benchpack.results.clamp import ClampLoad, clamp_load
from benchpack.results.clamp_nuts import nut_key, tightening_of_nuts
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.inventory import Inventory
from benchpack.results.seal_lines import Holding, SealLine, seal_lines
from benchpack.results.seal_trial import (
    LEAK_TEST_KPA,
    SealTrial,
    Tried,
    trial_of,
    try_out,
)
from benchpack.results.seal_words import (
    flange_words,
    line_figures,
    metres,
    millimetres,
    missing,
    newtons,
    not_applicable_words,
    only_between_metals_words,
    pitches,
    thicker_mm,
)
from benchpack.results.wording import Wording, listed
from benchpack.units.number_style import NumberStyle, labelled

__all__ = [
    "KIND",
    "LEAK_TEST_KPA",
    "SealLine",
    "SealTrial",
    "Tried",
    "least_clamp_n",
    "line_of",
    "seal_check",
    "seal_checks",
    "seal_lines",
    "trial_of",
    "try_out",
]

KIND = "seal line"


def seal_checks(
    library: Library, inventory: Inventory, study: Study
) -> tuple[Check, ...]:
    """Check every seal line of a pack.

    Parameters
    ----------
    library : Library
        Parts and materials.
    inventory : Inventory
        The joints of the pack.
    study : Study
        Friction of the screws, and how figures are written.

    Returns
    -------
    tuple of Check
        One for each seal line, in the order of the joints.
    """
    wording = Wording(NumberStyle(decimal_mark=study.decimal_mark))
    return tuple(
        seal_check(line, least_clamp_n=least_clamp_n(line, study), wording=wording)
        for line in seal_lines(library, inventory)
    )


def line_of(lines: Iterable[SealLine], joint: str) -> SealLine | None:
    """Give the seal line that a joint is part of or clamps, None where there is none.

    Parameters
    ----------
    lines : iterable of SealLine
        The seal lines of the pack.
    joint : str
        Name of a gasket, a bead, or of screws that clamp one.
    """
    clamped: SealLine | None = None
    for line in lines:
        if any(facts.joint.name == joint for facts in line.joints):
            return line
        if clamped is None and any(f.joint.name == joint for f in line.clamps):
            clamped = line
    return clamped


def least_clamp_n(line: SealLine, study: Study) -> float:
    """Give the least clamp load of the screws of a line, N; NaN where one is unknown.

    Parameters
    ----------
    line : SealLine
        A seal line.
    study : Study
        Friction of the screws.
    """
    by_nut = tightening_of_nuts(line.nuts)
    loads = [
        clamp_load(facts, study, tightening=by_nut.get(nut_key(facts), ""))
        for facts in line.clamps
    ]
    known = [load.least_n for load in loads if isinstance(load, ClampLoad)]
    return min(known) if known and len(known) == len(loads) else math.nan


def seal_check(line: SealLine, *, least_clamp_n: float, wording: Wording) -> Check:
    """Check one seal line.

    Parameters
    ----------
    line : SealLine
        The line.
    least_clamp_n : float
        Least clamp load of its screws, N; NaN where not known.
    wording : Wording
        How figures are written.
    """
    wrong = only_between_metals_words(line)
    if wrong:
        remedy = "Take a sealant that cures in air, or a gasket."
        return Check(KIND, line.name, Grade.FAIL, wrong, line_figures(line), remedy)
    if line.holding is not Holding.CLAMPED:
        words = not_applicable_words(line)
        return Check(KIND, line.name, Grade.NONE, words, line_figures(line))
    if math.isnan(line.pitch_mm) or math.isnan(line.allowed_mm):
        return _unknown(line, wording)
    return _judged(line, least_clamp_n, wording)


def _unknown(line: SealLine, wording: Wording) -> Check:
    lacking = missing(line)
    pitch = ""
    if not math.isnan(line.pitch_mm):
        pitch = f"Present pitch {millimetres(line.pitch_mm, wording)}. "
    words = f"{pitch}What pitch is allowed is not known."
    if math.isnan(line.pitch_mm) and not math.isnan(line.allowed_mm):
        allowed = millimetres(line.allowed_mm, wording)
        words = f"{allowed} are allowed. The present pitch is not known."
    remedy = f"Record {listed(lacking)}."
    return Check(KIND, line.name, Grade.NONE, words, line_figures(line), remedy)


def _judged(line: SealLine, least_n: float, wording: Wording) -> Check:
    now = try_out(trial_of(line))
    # The third is said only where it lies between the two.
    is_between = line.allowed_both_mm < line.pitch_mm <= line.allowed_mm
    both_mm = line.allowed_both_mm if is_between else math.nan
    pitch, allowed, both = pitches(
        line.pitch_mm, line.allowed_mm, both_mm, wording=wording
    )
    flange = flange_words(line.governing, wording)
    words = [f"Present pitch {pitch} against {allowed} allowed by {flange}."]
    grade = now.grade
    if line.pitch_mm > line.allowed_mm:
        reason, remedy = _lost_words(line, wording), _closer(line, wording)
    else:
        reason, remedy = _doubt(line, both)
        grade = Grade.LOOK if reason else grade
    words += [reason, _load_words(line, now.gasket_n, least_n, wording)]
    if now.gasket_n > least_n or now.gasket_n + now.lift_n > least_n:
        grade = Grade.FAIL
        remedy = remedy or "Take more or stronger screws, or tighten with less scatter."
    figures = (
        *line_figures(line),
        Input("gasket on each screw", now.gasket_n, "N", "p_max b C"),
        Input(
            "leak test on each screw", now.lift_n, "N", f"{LEAK_TEST_KPA:g} kPa A C / L"
        ),
        Input("least clamp load", least_n, "N", "clamp load of the screws"),
    )
    said = " ".join(filter(None, words))
    return Check(KIND, line.name, grade, said, figures, remedy)


def _doubt(line: SealLine, both: str) -> tuple[str, str]:
    """Say why a pitch within the allowed one wants a look, and what to do."""
    other, flange = line.other, line.governing
    if line.pitch_mm > line.allowed_both_mm:
        give = (
            f"With the give of the other side too ({other.words}) {both} are allowed."
        )
        return give, "Stand the screws a little closer, or try the line out."
    if other.lacking:
        return "The other flange is taken as rigid.", f"Record {listed(other.lacking)}."
    soft = [one for one in (flange, other) if not one.is_knocked_down]
    if soft:
        names = listed(tuple(dict.fromkeys(one.material for one in soft)))
        doubt = (
            f"The modulus of {names} is that of the data sheet, cold and short-term."
        )
        return doubt, f"Record the stiffness knock-down of {names}."
    return "", ""


def _lost_words(line: SealLine, wording: Wording) -> str:
    may_mm = math.nan if line.kind is None else line.kind.allowed_loss_mm
    lost = wording.number(line.loss_mm, decimals=2)
    may = labelled(wording.number(may_mm, decimals=2), "mm")
    if line.bonds:
        return f"Midway the bead is stretched by {lost} of {may} allowed."
    return f"Midway the gasket loses {lost} of {may} allowed."


def _closer(line: SealLine, wording: Wording) -> str:
    count = float(least_joint_count(line.length_mm, line.allowed_mm))
    hold = f"{wording.number(count)} screws hold {metres(line.length_mm, wording)}"
    thicker = thicker_mm(line)
    if not math.isfinite(thicker):
        return f"{hold}."
    # A tenth less would not hold.
    thickness = millimetres(math.ceil(10 * thicker) / 10, wording)
    return f"{hold}, or {thickness} of {line.governing.material} at the present pitch."


def _load_words(
    line: SealLine, gasket_n: float, least_n: float, wording: Wording
) -> str:
    if math.isnan(gasket_n):
        return (
            "The load on the screws needs the width of the gasket, 12x6 for instance."
        )
    load = newtons(gasket_n, wording)
    each = f"The gasket puts {load} on each of {line.count} screws"
    if math.isnan(least_n):
        return f"{each}; their clamp load is not known."
    return f"{each}, which clamp with at least {newtons(least_n, wording)}."
