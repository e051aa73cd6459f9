"""The change that swaps joints for another one."""

from __future__ import annotations

from dataclasses import replace

from benchpack.model.families import Counted
from benchpack.model.joint import Joint
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import KnownBy
from benchpack.results import ledger_refusals as refusals
from benchpack.results.joint_facts import JointFacts, joint_facts
from benchpack.results.joint_mass import reading_of
from benchpack.results.ledger_parts import check_name_is_free
from benchpack.results.ledger_record import Item, ItemKind
from benchpack.results.ledger_stock import Draft
from benchpack.results.ledger_today import folded

_ROOT_OF_3 = 3.0**0.5


def draft_swap(draft: Draft, study: Study) -> None:
    """Put one joint in the place of others, a seal line's among them.

    Parameters
    ----------
    draft : Draft
        The change.
    study : Study
        What the new joint costs.

    Raises
    ------
    RefusedError
        When anything of it has to stay or is gone, or nothing is known of the new one.
    """
    change, stock = draft.change, draft.stock
    items = draft.joints()
    going = frozenset(folded(item.name) for item in items)
    check_name_is_free(draft, change.into, ItemKind.JOINT, going=going)
    first = items[0].record
    if not isinstance(first, Joint):
        raise TypeError(first)
    facts = joint_facts(_new_joint(draft, first), study)
    mass = _mass(draft, facts)
    if change.mass_kg is not None:
        grams = 1000 * mass.likely / facts.joint.count
        given = replace(facts.joint, mass_each_g=grams, known_by=KnownBy.ESTIMATE)
        facts = joint_facts(given, study)
    for item in items:
        draft.remove(item, f"swapped for {change.into}", into=change.into)
    for item in items:
        line = stock.sealing.get(folded(item.name))
        if line is not None:
            draft.sealing[folded(change.into)] = line
    new = Item(facts.joint, mass, facts=facts, made_by=change.name)
    draft.add(new, "swapped in")


def _new_joint(draft: Draft, first: Joint) -> Joint:
    """Give the joint that comes: what is not said of it stays as it was."""
    change = draft.change
    tightening = change.tightening or first.tightening
    if not change.family.strip() and not change.designation.strip():
        return replace(
            first,
            name=change.into.strip(),
            count=change.count or first.count,
            length_mm=change.length_mm or first.length_mm,
            tightening=tightening,
        )
    family, _ = reading_of(change.family, change.designation)
    if family is None:
        raise refusals.refused(
            change,
            f"Nothing is known of the joint {change.into}: neither its family nor its "
            "designation names one.",
            "Choose a family.",
            value=change.family or change.designation,
        )
    is_line = family.counted is Counted.LINE
    return Joint(
        first.pack,
        change.into.strip(),
        family=change.family.strip() or family.name,
        designation=change.designation,
        count=change.count or (1 if is_line else first.count),
        length_mm=change.length_mm or (first.length_mm if is_line else None),
        role=first.role,
        joins=first.joins,
        to=first.to,
        subsystem=first.subsystem,
        tightening=change.tightening if is_line else tightening,
    )


def _mass(draft: Draft, facts: JointFacts) -> Range:
    """Give the mass of the new joint; it may not come in for nothing."""
    change = draft.change
    if change.mass_kg is not None:
        return change.mass_kg
    if facts.mass_kg != facts.mass_kg:
        raise refusals.refused(
            change,
            f"What {change.into} weighs cannot be worked out.",
            "Give its mass, or a designation, and the length of a seam or bead.",
            value=change.into,
        )
    if facts.known_by is KnownBy.ASSUMED:
        what = f"The mass of {facts.joint.name} is only assumed to close the balance."
        raise refusals.refused(change, what, "Weigh it.", value=facts.joint.name)
    half = 0.0 if facts.mass_u_rel != facts.mass_u_rel else facts.mass_u_rel
    half *= _ROOT_OF_3 * facts.mass_kg
    low = max(0.0, facts.mass_kg - half)
    return Range(low, facts.mass_kg, facts.mass_kg + half)
