"""What a ledger of changes is made of: entries, applied changes, what remains."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from benchpack.errors import Problem
from benchpack.model.add_backs import AddBack, Per
from benchpack.model.change import Change
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.touches import Touch
from benchpack.results.change_checks_heat import SizedPlate
from benchpack.results.joint_facts import JointFacts
from benchpack.results.ledger_resizing import Resized

__all__ = [
    "AddedBack",
    "Applied",
    "Item",
    "ItemKind",
    "Ledger",
    "LedgerEntry",
    "Resized",
]

NOTHING = Range.exactly(0.0)
"""No mass."""


class ItemKind(StrEnum):
    """What an entry is about."""

    PART = "part"
    JOINT = "joint"
    ADDED = "added"
    ADD_BACK = "add-back"


@dataclass(frozen=True, slots=True, eq=False)
class Item:
    """A part or joint as it stands after some changes.

    Parameters
    ----------
    record : Part or Joint
        What it is; after a change as the change makes it.
    mass_kg : Range
        Mass of all its pieces; without width where it was not changed.
    u_rel : float
        Standard uncertainty of that mass as a share of it, by how it is known; 0 where
        nothing is said, or the range says it.
    is_known : bool
        False where no mass is recorded: it then counts as nothing.
    facts : JointFacts or None
        What a joint comes to, None for a part.
    made_by : str
        Name of the change that made it, empty for what is there today.
    """

    record: Part | Joint
    mass_kg: Range
    u_rel: float = 0.0
    is_known: bool = True
    facts: JointFacts | None = None
    made_by: str = ""

    @property
    def name(self) -> str:
        """Name of the part or joint."""
        return self.record.name

    @property
    def kind(self) -> ItemKind:
        """Part or joint."""
        return ItemKind.JOINT if isinstance(self.record, Joint) else ItemKind.PART

    @property
    def pieces(self) -> int:
        """How many pieces it has."""
        return self.record.count


@dataclass(frozen=True, slots=True)
class LedgerEntry:
    """What one change does to one part or joint.

    Parameters
    ----------
    change : str
        Name of the change.
    item_kind : ItemKind
        A part or joint of today, one that is added, or an add-back.
    item : str
        Its name.
    before_kg, after_kg : Range
        Mass per pack before and after the change.
    pieces_before, pieces_after : int
        Its pieces before and after.
    reason : str
        What happens to it, in words.
    known_u_kg : float
        Standard uncertainty of the saving from how the present mass is known.
    """

    change: str
    item_kind: ItemKind
    item: str
    before_kg: Range
    after_kg: Range
    pieces_before: int
    pieces_after: int
    reason: str
    known_u_kg: float = 0.0

    @property
    def saved_kg(self) -> float:
        """Likely mass saved; negative where it becomes heavier."""
        return self.before_kg.likely - self.after_kg.likely


@dataclass(frozen=True, slots=True, eq=False)
class Applied:
    """A change that counts, with all that it does.

    Parameters
    ----------
    change : Change
        The change.
    entries : tuple of LedgerEntry
        What it does to each part and joint, add-backs not among them.
    resized : tuple of Resized
        Parts that it makes of another material, by design and data-sheet values.
    before, after : tuple of Item
        Parts and joints that it takes up, and what stands in their place.
    needs : frozenset of str
        Changes without which it cannot be: those it requires, and those that made
        what it acts on.
    notes : tuple of Problem
        What has to be known about it.
    touches : frozenset of Touch
        What it touches; from it follow add-backs and duties.
    """

    change: Change
    entries: tuple[LedgerEntry, ...]
    resized: tuple[Resized, ...]
    before: tuple[Item, ...]
    after: tuple[Item, ...]
    needs: frozenset[str]
    notes: tuple[Problem, ...]
    touches: frozenset[Touch] = frozenset()


@dataclass(frozen=True, slots=True)
class AddedBack:
    """One add-back of one change, in the sum or not.

    Parameters
    ----------
    change : str
        Name of the change.
    add_back : AddBack
        What has to be added back, and why.
    mass_kg : Range
        Its mass per pack.
    amount : float
        Square metres or bolts that it goes by, 1 for the pack.
    parts : tuple of str
        The parts that it is for.
    waived : str
        Why the person took it out of the sum, empty where it is in.
    covered_by : str
        Part that does the same already, empty where none does.
    plate : SizedPlate or None
        How its mass follows from the heat path, None where it is the usual one.
    """

    change: str
    add_back: AddBack
    mass_kg: Range
    amount: float
    parts: tuple[str, ...]
    waived: str = ""
    covered_by: str = ""
    plate: SizedPlate | None = None

    @property
    def is_counted(self) -> bool:
        """True where it is in the sum."""
        return not self.waived and not self.covered_by

    @property
    def source(self) -> str:
        """Where its mass comes from, with the mark."""
        if self.plate is not None:
            return "sized by the heat path, q L^2 / (2 k dT), over the area (derived)"
        return f"{self.add_back.source} ({self.add_back.mark})"

    @property
    def rule(self) -> str:
        """When it is needed, and whether the heat path sized it, as sentences."""
        sized = "" if self.plate is None else " Its wall follows from the heat path."
        return f"{self.add_back.rule}{sized}"

    def entry(self) -> LedgerEntry:
        """Give it as an entry of the ledger."""
        return LedgerEntry(
            self.change,
            ItemKind.ADD_BACK,
            self.add_back.key,
            NOTHING,
            self.mass_kg,
            0,
            round(self.amount) if self.add_back.per is Per.BOLT else 1,
            self.rule,
        )


@dataclass(frozen=True, slots=True, eq=False)
class Ledger:
    """Where each kilogram and each joint of the subject goes.

    Parameters
    ----------
    pack : str
        Name of the subject.
    today_kg : float
        Its weighed mass.
    unaccounted_kg : float
        What no part or joint explains; it stays as it is.
    applied : tuple of Applied
        The changes that count, in order.
    refused : tuple of (Change, Problem)
        The changes that do not, each with the reason.
    conflicts : tuple of Problem
        Of those, the ones that are at odds with another change; they name both.
    parts, joints : mapping of str to Item
        What remains, by folded name.
    became : mapping of str to str
        For each part that is gone what it became part of, empty where it is out.
    add_backs : tuple of AddedBack
        What the changes need back, with what is not in the sum.
    """

    pack: str
    today_kg: float
    unaccounted_kg: float
    applied: tuple[Applied, ...] = ()
    refused: tuple[tuple[Change, Problem], ...] = ()
    conflicts: tuple[Problem, ...] = ()
    parts: Mapping[str, Item] = field(default_factory=dict)
    joints: Mapping[str, Item] = field(default_factory=dict)
    became: Mapping[str, str] = field(default_factory=dict)
    add_backs: tuple[AddedBack, ...] = ()

    @property
    def entries(self) -> tuple[LedgerEntry, ...]:
        """All entries, change by change, the add-backs of each last."""
        return tuple(
            entry for applied in self.applied for entry in self.entries_of(applied)
        )

    def entries_of(self, applied: Applied) -> tuple[LedgerEntry, ...]:
        """Give the entries of one change, its add-backs last."""
        name = applied.change.name
        backs = [
            back.entry()
            for back in self.add_backs
            if back.change == name and back.is_counted
        ]
        return (*applied.entries, *backs)

    @property
    def saved_kg(self) -> float:
        """Likely mass saved, the sum over the entries."""
        return math.fsum(entry.saved_kg for entry in self.entries)

    @property
    def proposed_kg(self) -> Range:
        """Mass of the pack that remains, its range with all ends at once.

        Summed over what remains, not over what goes: the two agree, or the ledger is
        wrong.
        """
        left = [item.mass_kg for item in (*self.parts.values(), *self.joints.values())]
        left += [back.mass_kg for back in self.add_backs if back.is_counted]
        ends = zip(*(mass.ends for mass in left), strict=True) if left else [()] * 3
        return Range(*(math.fsum((self.unaccounted_kg, *end)) for end in ends))

    def final_part(self, name: str) -> Item | None:
        """Give the part that a part is or has become part of, None where it is out.

        Parameters
        ----------
        name : str
            Name of a part of today, or of one that a change made.
        """
        seen: set[str] = set()
        key = name.strip().casefold()
        while key not in self.parts:
            if key in seen or key not in self.became:
                return None
            seen.add(key)
            key = self.became[key].strip().casefold()
        return self.parts[key]

    def applied_to(self, change: str) -> Applied | None:
        """Give what a change does, None where it does not count."""
        return next((one for one in self.applied if one.change.name == change), None)
