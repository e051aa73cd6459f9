"""Which saving a study values, and the money that goes with it per pack."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.errors import Problem
from benchpack.model.change_words import ChangeKind
from benchpack.model.ranges import Range
from benchpack.model.worth_words import ValuedMass
from benchpack.results.ledger_record import ItemKind
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import NONE
from benchpack.results.results import Results

MAKE_NEW = (ChangeKind.SUBSTITUTE, ChangeKind.INTEGRATE, ChangeKind.ADD)
"""Kinds of change whose parts are made new."""


@dataclass(frozen=True, slots=True, eq=False)
class ValuedSaving:
    """The saving that is valued, and what it costs; money positive where it costs.

    Parameters
    ----------
    valued : ValuedMass
        Which saving it is; what the study asks for may not be there.
    saved_kg : Range or None
        Mass saved per pack; None where there is nothing to value.
    part_cost, joining_cost, add_back_cost : Range
        Money per pack, after less before.
    tooling, validation_cost : Range
        Money spent once.
    old_cost : float
        What the parts that go cost per pack, NaN where it is not known.
    new_kg : float
        Mass of what is made new per pack, NaN where nothing is.
    note : Problem or None
        What the study asks for and is not there, or what is not counted.
    """

    valued: ValuedMass
    saved_kg: Range | None
    part_cost: Range = NONE
    joining_cost: Range = NONE
    add_back_cost: Range = NONE
    tooling: Range = NONE
    validation_cost: Range = NONE
    old_cost: float = math.nan
    new_kg: float = math.nan
    note: Problem | None = None

    @property
    def money(self) -> Range:
        """Money per pack without what is spent once."""
        return self.part_cost + self.joining_cost + self.add_back_cost

    @property
    def spend(self) -> Range:
        """Money spent once: tools and validation."""
        return self.tooling + self.validation_cost


def valued_saving(gap: Results, proposal: ProposalResults | None) -> ValuedSaving:
    """Give the saving that a study values.

    Parameters
    ----------
    gap : Results
        The gap, with the study.
    proposal : ProposalResults or None
        Its proposal; None where it has none.

    Returns
    -------
    ValuedSaving
        Where the study asks for what is not there, the share of the gap instead.
    """
    wanted = gap.study.valued_mass
    if wanted is ValuedMass.PROPOSAL and proposal is not None and proposal.effects:
        return _of_proposal(proposal)
    if wanted is ValuedMass.TARGET and gap.study.target_kg is not None:
        return ValuedSaving(
            ValuedMass.TARGET, Range.exactly(gap.study.target_kg), note=_NO_COSTS
        )
    return _of_gap(gap, wanted)


_NO_COSTS = Problem(
    "No cost is counted: only a proposal says what parts, joints and tools cost.",
    "Value the proposal, or read this as worth without cost.",
)


def _of_gap(gap: Results, wanted: ValuedMass) -> ValuedSaving:
    note = {
        ValuedMass.PROPOSAL: Problem(
            "No change counts, so the share captured of the gap is valued.",
            "Add changes on the Changes page to value a proposal with its cost.",
        ),
        ValuedMass.TARGET: Problem(
            "No target is set, so the share captured of the gap is valued.",
            "Set a target.",
        ),
    }.get(wanted, _NO_COSTS)
    if not gap.gap_kg >= NOTHING_KG:
        return ValuedSaving(ValuedMass.SHARE, None, note=note)
    share, (low, high) = gap.study.share_captured, gap.gap_range_kg()
    ends = (gap.gap_kg, gap.gap_kg) if math.isnan(low) else (low, high)
    saved = Range(share * ends[0], share * gap.gap_kg, share * ends[1])
    return ValuedSaving(ValuedMass.SHARE, saved, note=note)


def _of_proposal(proposal: ProposalResults) -> ValuedSaving:
    totals = proposal.totals
    return ValuedSaving(
        ValuedMass.PROPOSAL,
        totals.saved_kg,
        part_cost=totals.part_cost,
        joining_cost=totals.joining_cost,
        add_back_cost=totals.add_back_cost,
        tooling=totals.tooling,
        validation_cost=totals.validation_cost,
        old_cost=_old_cost(proposal),
        new_kg=_new_kg(proposal),
    )


def _old_cost(proposal: ProposalResults) -> float:
    """Give what the parts that the changes take up cost today."""
    today = {id(item.record) for item in proposal.today.parts.values()}
    known = 0.0
    for effect in proposal.effects:
        taken = [i for i in effect.applied.before if i.kind is ItemKind.PART]
        costs = effect.cost.before
        for item, cost in zip(taken, costs, strict=True):
            if id(item.record) not in today or cost in effect.cost.after:
                continue
            if cost.total is None:
                return math.nan
            known += cost.total.likely
    return known


def _new_kg(proposal: ProposalResults) -> float:
    """Give the mass of the parts that are made new, as they stand in the end."""
    masses = {}
    for effect in proposal.effects:
        if effect.change.kind not in MAKE_NEW:
            continue
        for item in effect.applied.after:
            final = proposal.ledger.final_part(item.name)
            if item.kind is ItemKind.PART and final is not None:
                masses[final.name] = final.mass_kg.likely
    return math.fsum(masses.values()) if masses else math.nan
