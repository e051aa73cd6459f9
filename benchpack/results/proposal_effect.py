"""What one change of a proposal comes to: mass, money, time, what is not known."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.errors import Problem
from benchpack.model.change import Change
from benchpack.model.duties import Duty
from benchpack.model.ranges import Range
from benchpack.results.change_cost import CostChange
from benchpack.results.ledger_record import AddedBack, Applied, ItemKind, LedgerEntry

NONE = Range.exactly(0.0)


@dataclass(frozen=True, slots=True, eq=False)
class Effect:
    """What one change comes to, per pack; money positive where it costs.

    Parameters
    ----------
    change : Change
        The change.
    applied : Applied
        What it does to parts and joints.
    entries : tuple of LedgerEntry
        Its entries, add-backs last.
    add_backs : tuple of AddedBack
        What it needs back, with what is not in the sum.
    saved_kg : Range
        Mass saved, add-backs taken off; negative where it becomes heavier.
    add_back_kg : Range
        Mass of the add-backs in it.
    drawn_kg : Range
        Mass after it of what no later change takes up: what is drawn at random.
    known_u_kg : float
        Standard uncertainty of the saving from how present masses are known.
    part_cost, joining_cost, add_back_cost : Range
        Money per pack, after less before.
    seconds : Range
        Seconds on the line per pack, after less before.
    tooling, validation_cost : Range
        One-time money.
    tooling_per_pack, validation_per_pack : Range
        Its share in each pack, by capital recovery.
    net_worth : Range
        Worth of the mass at the likely worth per kilogram, less all of these.
    break_even_volume : float
        Packs a year from which it pays, the worth of its mass counted; infinite where
        never.
    part_break_even_volume : float
        Packs a year from which the new parts alone are cheaper than the old ones, NaN
        where a cost is not known.
    release_chance : float
        Chance that it comes, with the chances of the changes that it needs.
    lead_weeks : Range or None
        Weeks until it can be on the line.
    cost : CostChange
        What the parts cost before and after.
    duties : tuple of Duty
        What has to be validated again.
    unknown : tuple of str
        What is not known of its money and counts as nothing, as sentences.
    notes : tuple of Problem
        What else has to be known about it.
    """

    change: Change
    applied: Applied
    entries: tuple[LedgerEntry, ...]
    add_backs: tuple[AddedBack, ...]
    saved_kg: Range
    add_back_kg: Range
    drawn_kg: Range
    known_u_kg: float
    part_cost: Range
    joining_cost: Range
    add_back_cost: Range
    seconds: Range
    tooling: Range
    validation_cost: Range
    tooling_per_pack: Range
    validation_per_pack: Range
    net_worth: Range
    break_even_volume: float
    part_break_even_volume: float
    release_chance: float
    lead_weeks: Range | None
    cost: CostChange
    duties: tuple[Duty, ...]
    unknown: tuple[str, ...]
    notes: tuple[Problem, ...]

    @property
    def name(self) -> str:
        """Name of the change."""
        return self.change.name

    @property
    def is_heavier(self) -> bool:
        """True where a new material makes one of its parts heavier."""
        return any(one.is_heavier for one in self.applied.resized)

    @property
    def money(self) -> Range:
        """Money per pack without its share of what is spent once."""
        return self.part_cost + self.joining_cost + self.add_back_cost

    @property
    def pieces(self) -> int:
        """Pieces of joints that it takes away, those it brings taken off."""
        return sum(
            entry.pieces_before - entry.pieces_after
            for entry in self.entries
            if entry.item_kind is ItemKind.JOINT
        )
