"""Checks of the clamp loads of a pack's screws.

The figures are estimates for comparing packs after VDI 2230-1. The design of a joint
takes the whole guideline: working loads, embedding, bearing pressure, fatigue.
"""

from __future__ import annotations

from collections.abc import Iterable

from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.check import Check
from benchpack.results.clamp_loads import ClampLoad, clamp_loads
from benchpack.results.clamp_nuts import nut_key, tightening_of_nuts
from benchpack.results.clamp_plastics import PlasticParts
from benchpack.results.clamp_screws import Screw, Unknown, screw_of
from benchpack.results.clamp_words import (
    clamp_figures,
    clamp_remedy,
    clamp_words,
    plastic_words,
)
from benchpack.results.closure import Grade
from benchpack.results.inventory import Inventory
from benchpack.results.joint_facts import JointFacts
from benchpack.results.wording import Wording
from benchpack.units.number_style import NumberStyle

__all__ = [
    "CAUTION",
    "KIND",
    "ClampLoad",
    "Screw",
    "Unknown",
    "clamp_check",
    "clamp_checks",
    "clamp_load",
]

KIND = "clamp load"
CAUTION = (
    "Clamp loads are estimates for comparing packs after VDI 2230-1, not the design of "
    "a joint: working loads, embedding, bearing pressure and fatigue are not in them."
)
"""What has to stand beside every clamp load."""
FULL = 0.95
"""Share of the proof load above which little is left (common practice, no source)."""
WIDE_FACTOR = 2.0
"""Tightening factor above which the scatter is wide (common practice, no source)."""


def clamp_load(
    facts: JointFacts, study: Study, *, tightening: str = ""
) -> ClampLoad | Unknown | None:
    """Give the clamp load of a screw, or why there is none.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    study : Study
        Friction in the thread and under the head.
    tightening : str
        How it is tightened where the joint itself does not say.

    Returns
    -------
    ClampLoad or Unknown or None
        None for what is no screw or stud.
    """
    screw = screw_of(facts, tightening)
    return clamp_loads((screw,), study)[0] if isinstance(screw, Screw) else screw


def clamp_check(facts: JointFacts, study: Study) -> ClampLoad | None:
    """Give the clamp load of a screw, None where it has none or is not known.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    study : Study
        Friction in the thread and under the head.
    """
    load = clamp_load(facts, study)
    return load if isinstance(load, ClampLoad) else None


def clamp_checks(
    inventory: Inventory, study: Study, *, library: Library | None = None
) -> tuple[Check, ...]:
    """Check the clamp load of every screw and stud of a pack.

    Parameters
    ----------
    inventory : Inventory
        The joints of the pack.
    study : Study
        Friction, and how figures are written.
    library : Library, optional
        Parts and materials, to see which screws clamp plastic.

    Returns
    -------
    tuple of Check
        One for each row of screws, in the order of the joints.
    """
    by_nut = tightening_of_nuts(inventory.facts)
    found = [
        (facts, screw_of(facts, by_nut.get(nut_key(facts), "")))
        for facts in inventory.facts
    ]
    judge = _Judge((screw for _, screw in found), study)
    plastics = PlasticParts(library, inventory)
    return tuple(
        judge.check(facts, screw, plastic_words(plastics.squeezed_by(facts)))
        for facts, screw in found
        if screw is not None
    )


class _Judge:
    """Judges screws; what many rows share is worked out and worded once."""

    def __init__(self, screws: Iterable[Screw | Unknown | None], study: Study) -> None:
        distinct = {id(screw): screw for screw in screws if isinstance(screw, Screw)}
        loads = clamp_loads(list(distinct.values()), study)
        self._study = study
        self._wording = Wording(NumberStyle(decimal_mark=study.decimal_mark))
        self._loads = dict(zip(distinct, loads, strict=True))
        self._figures = {
            key: clamp_figures(load, study) for key, load in self._loads.items()
        }
        self._words: dict[tuple[int, int], str] = {}

    def check(self, facts: JointFacts, screw: Screw | Unknown, plastic: str) -> Check:
        joint = facts.joint
        if isinstance(screw, Unknown):
            return Check(KIND, joint.name, Grade.NONE, screw.words, (), screw.remedy)
        load = self._loads[id(screw)]
        key = id(screw), joint.count
        if key not in self._words:
            words = clamp_words(load, self._wording, count=joint.count)
            self._words[key] = words
        remedy = clamp_remedy(
            load,
            self._wording,
            in_plastic=bool(plastic),
            is_full=load.utilisation > FULL,
            is_wide=load.method.factor > WIDE_FACTOR,
        )
        return Check(
            KIND,
            joint.name,
            _grade(load, asks_for_look=bool(remedy)),
            f"{self._words[key]} {plastic}".rstrip(),
            self._figures[id(screw)],
            remedy,
        )


def _grade(load: ClampLoad, *, asks_for_look: bool) -> Grade:
    if load.utilisation > 1.0:
        return Grade.FAIL
    return Grade.LOOK if asks_for_look else Grade.GOOD
