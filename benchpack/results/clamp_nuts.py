"""How nuts are tightened, and with them the studs and screws that they sit on."""

from __future__ import annotations

from collections.abc import Iterable

from benchpack.model.families import FamilySort
from benchpack.results.clamp_plastics import joined_parts
from benchpack.results.joint_facts import JointFacts

NutKey = tuple[frozenset[str], str]
"""The parts that are joined, and the thread."""


def nut_key(facts: JointFacts) -> NutKey:
    """Give what a nut shares with the stud or screw that it sits on.

    Parameters
    ----------
    facts : JointFacts
        A nut, stud or screw.
    """
    return frozenset(joined_parts(facts)), facts.read.thread


def tightening_of_nuts(joints: Iterable[JointFacts]) -> dict[NutKey, str]:
    """Give how nuts are tightened, by the parts they join and their thread.

    Parameters
    ----------
    joints : iterable of JointFacts
        Joints of one pack; what is no nut, or does not say, is passed over.
    """
    return {
        nut_key(facts): facts.joint.tightening.strip()
        for facts in joints
        if facts.family is not None
        and facts.family.sort is FamilySort.NUT
        and facts.joint.tightening.strip()
        and joined_parts(facts)
    }
