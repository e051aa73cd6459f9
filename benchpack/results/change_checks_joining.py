"""Check of joints at a changed part that its new material cannot be joined by."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.model.families import FamilySort
from benchpack.model.material import Material
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_state import Proposed
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.joint_facts import JointFacts
from benchpack.results.ledger_resizing import is_metal
from benchpack.results.ledger_today import folded

JOINING = "joining"
UNLIKE = 1.5
"""Ratio of densities from which two metals do not melt into each other, aluminium and
steel for one (common practice, no source)."""
_FLOWS = ("clinch", "self-piercing rivet", "flow-drill screw")
"""Joints that take hold in a metal that flows."""


def joining_checks(made: PartChange, proposed: Proposed) -> Iterator[Check]:
    """Check welds, clinches and the like at a part of a new material.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    proposed : Proposed
        The pack before and after.

    Yields
    ------
    Check
        One for each joint that cannot be made any more; nothing for those that can.
    """
    if made.new is None or not made.becomes_other:
        return
    own = folded(made.after.name)
    for facts in proposed.joints_at(own):
        ends = (folded(facts.joint.joins), folded(facts.joint.to))
        other = ends[1] if ends[0] == own else ends[0]
        found = _judged(facts, made.new, proposed.material_of(other))
        if found is not None:
            yield found


def _judged(facts: JointFacts, new: Material, other: Material | None) -> Check | None:
    name = facts.joint.name
    welds = facts.family is not None and facts.family.sort is FamilySort.WELD
    if welds and not is_metal(new):
        words = f"{facts.kind.capitalize()}s do not hold {new.name}."
        remedy = "Name the joint that comes in its place: bead, rivets, or moulded in."
        return Check(JOINING, name, Grade.FAIL, words, (), remedy)
    if welds and other is not None and _are_unlike(new, other):
        words = (
            f"{facts.kind.capitalize()}s between {new.name} and {other.name} are "
            "brittle: the two do not melt into each other."
        )
        remedy = "Name the joint that comes in its place, or change both sides."
        return Check(JOINING, name, Grade.FAIL, words, (), remedy)
    if facts.kind in _FLOWS and not is_metal(new):
        words = f"A {facts.kind} takes hold in metal that flows, not in {new.name}."
        remedy = "See that it ends in the metal side, or name another joint."
        return Check(JOINING, name, Grade.LOOK, words, (), remedy)
    return None


def _are_unlike(one: Material, other: Material) -> bool:
    if not is_metal(one) or not is_metal(other):
        return False
    densities = sorted(m.density_kg_m3 or 0.0 for m in (one, other))
    return densities[0] > 0 and densities[1] > UNLIKE * densities[0]
