"""Check of the seal lines at what a change makes: pitch on the new flange."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from benchpack.results.change_checks_state import Proposed
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.seal import KIND, least_clamp_n, seal_check
from benchpack.results.seal_lines import Holding, SealLine
from benchpack.results.seal_words import (
    millimetres,
    only_between_metals_words,
    thicker_mm,
)

_SAME = 1e-9
_SEEN_MM = 0.5
_AS_GOOD = 0.97
_BEYOND = "No flange can be as soft as its figures make it."
_CORRECT = "Check its thickness, its modulus and the length of the seal."


def seal_line_checks(changed: Iterable[str], proposed: Proposed) -> Iterator[Check]:
    """Check the seal lines at parts and joints that a change makes.

    Parameters
    ----------
    changed : iterable of str
        Folded names of the parts and joints.
    proposed : Proposed
        The pack before and after.

    Yields
    ------
    Check
        Of each line that has such a flange, is such a joint or is clamped by one; not
        of seams and beads that are tight without screws.
    """
    names = frozenset(changed)
    for line, at in proposed.lines_at:
        if names.isdisjoint(at):
            continue
        if line.holding is not Holding.CLAMPED and not only_between_metals_words(line):
            continue
        if line.governing.modulus_mpa == 0 or math.isinf(thicker_mm(line)):
            yield Check(KIND, line.name, Grade.NONE, _BEYOND, (), _CORRECT)
            continue
        least = least_clamp_n(line, proposed.study)
        found = seal_check(line, least_clamp_n=least, wording=proposed.wording)
        yield _against_today(found, line, proposed)


def _against_today(found: Check, line: SealLine, proposed: Proposed) -> Check:
    """Give a check with the pitch that is allowed today, where it is another."""
    today = proposed.today.lines_by_name.get(line.name)
    if today is None or math.isnan(today.allowed_mm):
        return found
    figure = Input(
        "C today, allowed pitch", today.allowed_mm, "mm", "before the change"
    )
    figures = (*found.figures, figure)
    words, grade = found.words, found.grade
    if abs(today.allowed_mm - line.allowed_mm) > _SEEN_MM:
        allowed = millimetres(today.allowed_mm, proposed.wording)
        words += f" Today {allowed} are allowed."
    if grade is Grade.FAIL and _fails_alike(today, line, proposed):
        # What fails today already is no fault of the change.
        grade, words = Grade.LOOK, f"{words} It fails today already, the same way."
    return replace(found, grade=grade, words=words, figures=figures)


def _fails_alike(today: SealLine, line: SealLine, proposed: Proposed) -> bool:
    """Say whether a line fails today too, and the change makes it no worse."""
    if only_between_metals_words(line):
        return False
    same_pitch = line.pitch_mm <= today.pitch_mm * (1 + _SAME)
    if not same_pitch or line.allowed_mm < _AS_GOOD * today.allowed_mm:
        return False
    least = least_clamp_n(today, proposed.study)
    check = seal_check(today, least_clamp_n=least, wording=proposed.wording)
    return check.grade is Grade.FAIL
