"""Which joints are seal lines, which clamp them, and what keeps each line tight."""

from __future__ import annotations

import math
from collections.abc import Iterable
from enum import StrEnum

from benchpack.model.families import Counted, FamilySort, GasketKind
from benchpack.model.gaskets import ANAEROBIC, CURED_IN_PLACE, FORMED_IN_PLACE
from benchpack.results.joint_facts import JointFacts
from benchpack.results.seal_flange import folded

_CLAMPING_ROLES = ("seal", "clamp")
_GASKETS = ("gasket", "sealant bead")
BONDING = (ANAEROBIC, FORMED_IN_PLACE)
_NEEDS_NO_SCREWS = (*BONDING, CURED_IN_PLACE)


class Holding(StrEnum):
    """What keeps a seal line tight."""

    CLAMPED = "clamped by screws"
    BONDED = "bonded or cured in place"
    SEAM = "a seam that is tight by itself"


def is_seal_line(facts: JointFacts) -> bool:
    """Say whether a joint is a seal line: gasket, sealant, or a line that seals."""
    if facts.family is None:
        is_line = facts.joint.length_mm is not None
    else:
        is_line = facts.family.counted is Counted.LINE
    seals = facts.kind in _GASKETS or "seal" in folded(facts.joint.role)
    return is_line and seals


def is_clamp(facts: JointFacts) -> bool:
    """Say whether a joint is a screw, stud or nut whose role is to clamp or to seal."""
    family, role = facts.family, folded(facts.joint.role)
    return (
        family is not None
        and family.sort in (FamilySort.SCREW, FamilySort.NUT)
        and any(word in role for word in _CLAMPING_ROLES)
    )


def counted_clamps(clamps: Iterable[JointFacts]) -> tuple[JointFacts, ...]:
    """Give the clamps that are counted: nuts only where there are no screws or studs.

    Parameters
    ----------
    clamps : iterable of JointFacts
        The clamps between two parts.
    """
    held = tuple(clamps)
    screws = tuple(facts for facts in held if not is_nut(facts))
    return screws or held


def is_nut(facts: JointFacts) -> bool:
    """Say whether a joint is a nut."""
    return facts.family is not None and facts.family.sort is FamilySort.NUT


def line_key(facts: JointFacts, pair: frozenset[str]) -> tuple[object, ...]:
    """Give what the rows of one line share; without both parts a row stands alone."""
    if "" in pair:
        return (id(facts),)
    return pair, facts.kind, folded(facts.joint.designation)


def pair_of(facts: JointFacts) -> frozenset[str]:
    """Give the two parts that a joint joins, in no order; empty text where unknown."""
    return frozenset((folded(facts.joint.joins), folded(facts.joint.to)))


def holding_of(
    facts: JointFacts, kind: GasketKind | None, clamps: tuple[JointFacts, ...]
) -> Holding:
    """Say what keeps a seal line tight.

    Parameters
    ----------
    facts : JointFacts
        A row of the line.
    kind : GasketKind or None
        Its kind of gasket.
    clamps : tuple of JointFacts
        What clamps it.
    """
    sort = None if facts.family is None else facts.family.sort
    if sort in (FamilySort.WELD, FamilySort.FORMED):
        return Holding.SEAM
    if sort is FamilySort.BEAD and facts.kind not in _GASKETS:
        return Holding.BONDED
    bonds = kind in _NEEDS_NO_SCREWS and not clamps
    return Holding.BONDED if bonds else Holding.CLAMPED


def gasket_width_mm(facts: JointFacts) -> float:
    """Give the width by the designation; a round bead counts with its diameter."""
    read = facts.read
    width = read.width_mm if read.width_mm is not None else read.diameter_mm
    return math.nan if width is None else width
