"""Check of screws that are swapped: what they clamp with together, against today."""

from __future__ import annotations

import math
from collections.abc import Iterator

from benchpack.model.change import Change, ChangeKind
from benchpack.results.change_checks_state import Proposed, Subject
from benchpack.results.change_checks_words import capital
from benchpack.results.check import Check
from benchpack.results.clamp import KIND as CLAMP_LOAD
from benchpack.results.clamp import Unknown
from benchpack.results.clamp_loads import ClampLoad
from benchpack.results.clamp_words import forces
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.joint_facts import JointFacts
from benchpack.results.wording import Wording

_AS_MUCH, _NEARLY = 0.99, 0.9


def swap_checks(change: Change, proposed: Proposed) -> Iterator[Check]:
    """Check what screws that are swapped clamp with against those of today.

    Parameters
    ----------
    change : Change
        A swap of joints.
    proposed : Proposed
        The pack before and after.

    Yields
    ------
    Check
        One where both are screws; beads and clips are for the seal line.
    """
    if change.kind is not ChangeKind.SWAP_JOINTS:
        return
    applied = proposed.applied(change.name)
    if applied is None:
        return
    before = [item.facts for item in applied.before if item.facts is not None]
    after = [item.facts for item in applied.after if item.facts is not None]
    today = _clamp(before, proposed.today)
    if not today or not after:
        return
    name, then = after[0].joint.name, _clamp(after, proposed)
    unknown = proposed.clamp(after[0])
    if then:
        yield _compared(name, today, then, proposed.wording)
    elif isinstance(unknown, Unknown):
        yield Check(CLAMP_LOAD, name, Grade.NONE, unknown.words, (), unknown.remedy)
    else:
        said = today.words(proposed.wording)
        words = f"{capital(name)}: no thread clamps any more; today {said}."
        remedy = "Say what holds the parts together and the seal pressed."
        yield Check(CLAMP_LOAD, name, Grade.LOOK, words, (), remedy)


class _Clamp:
    """What some screws clamp with together, at least."""

    def __init__(self, found: list[tuple[JointFacts, ClampLoad]]) -> None:
        self.count = sum(facts.joint.count for facts, _ in found)
        self.each_n = min((load.least_n for _, load in found), default=math.nan)
        self.whole_n = math.fsum(f.joint.count * load.least_n for f, load in found)

    def __bool__(self) -> bool:
        return self.count > 0

    def words(self, wording: Wording) -> str:
        each, whole = forces(self.each_n, wording), forces(self.whole_n, wording)
        return f"{wording.number(self.count)} screws guarantee {each} each, {whole}"


def _clamp(facts: list[JointFacts], pack: Subject | Proposed) -> _Clamp:
    loads = ((one, pack.clamp(one)) for one in facts)
    return _Clamp([(one, load) for one, load in loads if isinstance(load, ClampLoad)])


def _compared(name: str, today: _Clamp, then: _Clamp, wording: Wording) -> Check:
    share = then.whole_n / today.whole_n
    words = (
        f"{then.words(wording)} together, {wording.share(share)} of today's; today "
        f"{today.words(wording)}."
    )
    grade, remedy = Grade.GOOD, ""
    if share < _NEARLY:
        grade = Grade.FAIL
        remedy = "More or stronger screws, or a way of tightening with less scatter."
    elif share < _AS_MUCH:
        grade, remedy = Grade.LOOK, "See whether the joint needs all of today's clamp."
    figures = (
        Input("F_min each, today", today.each_n, "N", "clamp load of the screws"),
        Input("F_min together, today", today.whole_n, "N", "n F_min"),
        Input("F_min each, after", then.each_n, "N", "clamp load of the screws"),
        Input("F_min together, after", then.whole_n, "N", "n F_min"),
    )
    return Check(CLAMP_LOAD, name, grade, capital(words), figures, remedy)
