"""Candidate materials for one part in words: the finding, and one row."""

from __future__ import annotations

import math

from benchpack.model.study import Study
from benchpack.report.display import Display, number_style
from benchpack.results.candidate_record import Candidate, Candidates
from benchpack.results.change_checks_function import SAVING_ELSEWHERE
from benchpack.results.change_checks_words import capital
from benchpack.results.closure import Grade
from benchpack.results.wording import listed
from benchpack.units.formatting import UNKNOWN, format_money, format_number
from benchpack.units.number_style import labelled

_GRADE_WORDS = ((Grade.FAIL, "fail"), (Grade.LOOK, "look"), (Grade.NONE, "unknown"))


def checks_text(row: Candidate) -> str:
    """Say how the checks of a candidate stand: ``1 fail, 3 look`` or ``all good``.

    Parameters
    ----------
    row : Candidate
        A candidate.
    """
    if row.problem is not None:
        return "not computed"
    said = [f"{row.count(g)} {word}" for g, word in _GRADE_WORDS if row.count(g)]
    return ", ".join(said) or ("all good" if row.checks else UNKNOWN)


def candidates_headline(compared: Candidates, study: Study) -> str:
    """Say what comes of the comparison, the lightest and the cheapest first.

    Parameters
    ----------
    compared : Candidates
        The comparison.
    study : Study
        Worth and how numbers are shown.
    """
    display, part = Display(study), compared.part.name
    lighter = [
        row for row, yes in zip(compared.rows, compared.is_lighter, strict=True) if yes
    ]
    if not lighter:
        if not any(math.isfinite(row.mass_kg) for row in compared.rows):
            return f"What candidates for {part} weigh is not known."
        said = f"No candidate makes {part} lighter at equal function"
        return f"{said}; {SAVING_ELSEWHERE}."
    best = min(lighter, key=_by_mass)
    weighs = display.mass_text(best.mass_kg)
    saved = display.mass_text(compared.today.mass_kg - best.mass_kg)
    said = f"{part} in {best.name} weighs {weighs} at equal function, {saved} less"
    words = [f"{capital(said)} than today", *_worth(best, lighter, compared, study)]
    failing = listed(_kinds(best, Grade.FAIL), most=3)
    if failing:
        words.append(f"it fails in {failing}")
    return f"{'; '.join(words)}."


def _worth(
    best: Candidate, lighter: list[Candidate], compared: Candidates, study: Study
) -> list[str]:
    """Say whether the lightest is worth its material, or which gives most for it."""
    gains = [_gain(row, compared, study) for row in lighter]
    most = lighter[gains.index(max(gains))]
    per_kg = Display(study).worth_text(study.worth_likely_per_kg)
    if not math.isfinite(max(gains)):
        return []
    if max(gains) <= 0:
        return [f"none is worth its material at {per_kg}"]
    if most is best:
        return [f"it is worth its material at {per_kg}"]
    return [f"most for its material at {per_kg} gives {most.name}"]


def _by_mass(row: Candidate) -> float:
    return row.mass_kg


def _gain(row: Candidate, compared: Candidates, study: Study) -> float:
    """Give worth of the mass saved less the dearer material; least where not known."""
    saved = compared.today.mass_kg - row.mass_kg
    gain = saved * study.worth_likely_per_kg - (row.cost - compared.today.cost)
    return -math.inf if math.isnan(gain) else gain


def candidate_detail(row: Candidate, study: Study) -> str:
    """Say the figures of one candidate in a few lines, for a read-out.

    Parameters
    ----------
    row : Candidate
        A candidate.
    study : Study
        How numbers are shown.
    """
    if row.problem is not None:
        return row.problem.what
    display, style = Display(study), number_style(study)
    mass = display.ranged_mass_text(row.mass_kg, row.mass_low_kg, row.mass_high_kg)
    lines = [f"{mass} at equal function"]
    if row.governing:
        lines[0] += f", {row.governing} governs"
    if math.isfinite(row.sheet_mass_kg) and row.sheet_mass_kg != row.mass_kg:
        lines.append(f"{display.mass_text(row.sheet_mass_kg)} by the data sheet alone")
    if math.isfinite(row.wall_mm):
        wall = labelled(format_number(row.wall_mm, 1, style=style), "mm")
        lines.append(f"wall {wall}{', the least' if row.wall_is_minimum else ''}")
    if math.isfinite(row.cost):
        money = format_money(row.cost, study.currency, style=style, decimals=2)
        lines.append(f"material {money}")
    if math.isfinite(row.deflection_mm):
        sag = labelled(format_number(row.deflection_mm, 1, style=style), "mm")
        lines.append(f"bends {sag} {row.deflection_kind}")
    if math.isfinite(row.heat_k):
        rise = labelled(format_number(row.heat_k, 2, style=style), "K")
        lines.append(f"{rise} across it in the heat path")
    lines.append(f"checks: {checks_text(row)}")
    return "\n".join(lines)


def failing_text(row: Candidate, *, most: int = 3) -> str:
    """Say which checks of a candidate fail or want a look, the failing first.

    Parameters
    ----------
    row : Candidate
        A candidate.
    most : int
        Name at most so many of each.
    """
    said = [
        f"{word}: {listed(kinds, most=most)}"
        for grade, word in _GRADE_WORDS[:2]
        if (kinds := _kinds(row, grade))
    ]
    return "; ".join(said)


def _kinds(row: Candidate, grade: Grade) -> tuple[str, ...]:
    kinds = (check.kind for check in row.checks if check.grade is grade)
    return tuple(dict.fromkeys(kinds))
