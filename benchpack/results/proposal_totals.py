"""The sums of a proposal over the changes that count."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.results.change_supply import Supply, break_even
from benchpack.results.ledger_record import Ledger
from benchpack.results.proposal_effect import NONE, Effect


@dataclass(frozen=True, slots=True)
class Totals:
    """The sums of a proposal, per pack; money positive where it costs.

    Parameters
    ----------
    today_kg : float
        Mass of the subject as weighed.
    proposed_kg, saved_kg : Range
        What it comes to, and what is saved; all ends at once, without chance.
    add_back_kg : Range
        Mass of the add-backs in it.
    expected_kg : float
        Likely saving of each change by its chance of release.
    gap_kg, gap_left_kg : float
        Gap to the reference on the study's basis today and with the proposal, NaN
        where there is none.
    target_kg : float
        The saving that is promised, NaN where none is.
    pieces : int
        Pieces of joints that go, those that come taken off.
    seconds, part_cost, joining_cost, add_back_cost : Range
        After less before.
    tooling, validation_cost, tooling_per_pack, validation_per_pack : Range
        One-time money, and its share in each pack.
    net_worth : Range
        Worth of the mass at the likely worth per kilogram, less all of these.
    break_even_volume : float
        Packs a year from which the proposal pays, the worth of its mass counted.
    unknown : tuple of str
        Changes of which some money is not known and counts as nothing.
    """

    today_kg: float
    proposed_kg: Range
    saved_kg: Range
    add_back_kg: Range
    expected_kg: float
    gap_kg: float
    gap_left_kg: float
    target_kg: float
    pieces: int
    seconds: Range
    part_cost: Range
    joining_cost: Range
    add_back_cost: Range
    tooling: Range
    validation_cost: Range
    tooling_per_pack: Range
    validation_per_pack: Range
    net_worth: Range
    break_even_volume: float
    unknown: tuple[str, ...]

    @property
    def money(self) -> Range:
        """Money per pack without its share of what is spent once."""
        return self.part_cost + self.joining_cost + self.add_back_cost

    @property
    def share_of_gap(self) -> float:
        """Share of the gap that the proposal closes, NaN where there is no gap."""
        return self.saved_kg.likely / self.gap_kg if self.gap_kg > 0 else math.nan


def totals_of_changes(
    ledger: Ledger,
    effects: tuple[Effect, ...],
    gap_kg: float,
    study: Study,
    supply: Supply,
) -> Totals:
    """Sum up what the changes that count come to.

    Parameters
    ----------
    ledger : Ledger
        The masses.
    effects : tuple of Effect
        What each change comes to.
    gap_kg : float
        Gap to the reference, NaN where there is none.
    study : Study
        Worth and target.
    supply : Supply
        Years and interest.
    """
    proposed = ledger.proposed_kg
    saved = Range.exactly(ledger.today_kg) - proposed

    def summed(name: str) -> Range:
        return sum((getattr(one, name) for one in effects), NONE)

    money = summed("part_cost") + summed("joining_cost") + summed("add_back_cost")
    once = summed("tooling") + summed("validation_cost")
    gained = study.worth_likely_per_kg * saved.likely - money.likely
    return Totals(
        today_kg=ledger.today_kg,
        proposed_kg=proposed,
        saved_kg=saved,
        add_back_kg=summed("add_back_kg"),
        expected_kg=math.fsum(
            one.release_chance * one.saved_kg.likely for one in effects
        ),
        gap_kg=gap_kg,
        gap_left_kg=gap_kg - saved.likely,
        target_kg=math.nan if study.target_kg is None else study.target_kg,
        pieces=sum(one.pieces for one in effects),
        seconds=summed("seconds"),
        part_cost=summed("part_cost"),
        joining_cost=summed("joining_cost"),
        add_back_cost=summed("add_back_cost"),
        tooling=summed("tooling"),
        validation_cost=summed("validation_cost"),
        tooling_per_pack=summed("tooling_per_pack"),
        validation_per_pack=summed("validation_per_pack"),
        net_worth=summed("net_worth"),
        break_even_volume=break_even(once.likely, gained, supply),
        unknown=tuple(one.name for one in effects if one.unknown),
    )
