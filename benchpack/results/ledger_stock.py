"""What is left while changes act one after the other, and the draft of one change."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache

from benchpack.errors import Problem, Severity
from benchpack.model.change import Change
from benchpack.model.joint import Joint
from benchpack.model.material import Material
from benchpack.model.words import KnownBy
from benchpack.results import ledger_refusals as refusals
from benchpack.results.ledger_record import (
    NOTHING,
    Applied,
    Item,
    ItemKind,
    LedgerEntry,
    Resized,
)
from benchpack.results.ledger_today import Today, ends_of, folded


class Stock:
    """Parts and joints that are left, and who took the others.

    Parameters
    ----------
    today : Today
        The subject before any change.
    """

    def __init__(self, today: Today) -> None:
        self.today = today
        self.parts = dict(today.parts)
        self.joints = dict(today.joints)
        self.sealing = dict(today.sealing)
        self._at = dict(today.at)
        self._gone: dict[tuple[ItemKind, str], tuple[str, str]] = {}

    def part(self, change: Change, name: str) -> Item:
        """Give a part that is left.

        Raises
        ------
        RefusedError
            When it is gone, was never there, or shares its name with another.
        """
        return self._find(change, name, ItemKind.PART)

    def joint(self, change: Change, name: str) -> Item:
        """Give a joint that is left.

        Raises
        ------
        RefusedError
            When it is gone, was never there, or shares its name with another.
        """
        return self._find(change, name, ItemKind.JOINT)

    def _find(self, change: Change, name: str, kind: ItemKind) -> Item:
        key = folded(name)
        held = self.parts if kind is ItemKind.PART else self.joints
        gone = self._gone.get((kind, key))
        if key in held and gone is None and key in self.today.twice:
            raise refusals.twice_there(change, name)
        if key in held:
            return held[key]
        if gone is not None:
            raise refusals.taken_away(change, name, by=gone[0], into=gone[1])
        raise refusals.not_there(change, name, kind=kind, pack=self.today.pack)

    def joints_at(self, part: str) -> list[Item]:
        """Give the joints that are left at a part, by its folded name."""
        keys = self._at.get(part, ())
        held = (self.joints.get(key) for key in keys)
        return [item for item in held if item is not None and part in ends_of(item)]

    @property
    def became(self) -> dict[str, str]:
        """For each part that is gone what it became part of, empty where it is out."""
        return {
            key: into
            for (kind, key), (_, into) in self._gone.items()
            if kind is ItemKind.PART
        }

    def material(self, name: str) -> Material | None:
        """Give the material of a name, None where it is not in the library."""
        return self.today.material(name)

    def take(self, draft: Draft) -> Applied:
        """Let a change that holds come about."""
        for item, into in draft.gone:
            held = self.parts if item.kind is ItemKind.PART else self.joints
            key = folded(item.name)
            held.pop(key, None)
            self._gone[item.kind, key] = (draft.change.name, into)
        for item in draft.come:
            self._put(item)
        self.sealing.update(draft.sealing)
        return draft.applied()

    def _put(self, item: Item) -> None:
        key = folded(item.name)
        held = self.parts if item.kind is ItemKind.PART else self.joints
        held[key] = item
        self._gone.pop((item.kind, key), None)
        for end in dict.fromkeys(ends_of(item)):
            keys = self._at.get(end, ())
            if key not in keys:
                self._at[end] = (*keys, key)


class Draft:
    """What one change would do; nothing happens before the whole of it holds.

    Parameters
    ----------
    stock : Stock
        What is left.
    change : Change
        The change.
    """

    def __init__(self, stock: Stock, change: Change) -> None:
        self.stock = stock
        self.change = change
        self.entries: list[LedgerEntry] = []
        self.gone: list[tuple[Item, str]] = []
        self.come: list[Item] = []
        self.sealing: dict[str, str] = {}
        self.resized: list[Resized] = []
        self.before: list[Item] = []
        self.after: list[Item] = []
        self.notes: list[Problem] = []
        self.needs: set[str] = set(change.requires)

    def parts(self, *, saves: bool = True) -> list[Item]:
        """Give the parts that the change names, each once however it is written."""
        names = {folded(name): name for name in reversed(self.change.parts)}
        return [self.part_to_change(names[k], saves=saves) for k in reversed(names)]

    def joints(self, *, saves: bool = True) -> list[Item]:
        """Give the joints that the change names, each once however it is written."""
        names = {folded(name): name for name in reversed(self.change.joints)}
        return [self.joint_to_change(names[k], saves=saves) for k in reversed(names)]

    def part_to_change(self, name: str, *, saves: bool = True) -> Item:
        """Give a part that may be changed; `saves` where its mass has to be known."""
        return self._changeable(self.stock.part(self.change, name), saves=saves)

    def joint_to_change(self, name: str, *, saves: bool = True) -> Item:
        """Give a joint that may be changed."""
        item = self.stock.joint(self.change, name)
        # A joint without a mass may go: its time and money are the point.
        return self._changeable(item, saves=saves and item.is_known)

    def _changeable(self, item: Item, *, saves: bool) -> Item:
        if item.record.carry_over:
            raise refusals.stays(self.change, item)
        if saves and item.record.known_by is KnownBy.ASSUMED:
            raise refusals.only_assumed(self.change, item)
        if saves and not item.is_known:
            raise refusals.not_weighed(self.change, item)
        if item.made_by:
            self.needs.add(item.made_by)
        return item

    def remove(self, item: Item, reason: str, *, into: str = "") -> None:
        """Take a part or joint away, all of its mass and pieces with it."""
        self._enter(item, None, reason)
        self.gone.append((item, into))

    def release(
        self, item: Item, reason: str, *, along_with: str, into: str = ""
    ) -> None:
        """Take away a joint that goes along with a part."""
        if item.record.carry_over:
            raise refusals.stays(self.change, item, along_with=along_with)
        if item.made_by:
            self.needs.add(item.made_by)
        if item.record.known_by is KnownBy.ASSUMED:
            raise refusals.only_assumed(self.change, item)
        self.remove(item, reason, into=into)

    def replace(
        self, item: Item, new: Item, reason: str, *, scales: bool = True
    ) -> None:
        """Put a changed part or joint in the place of one of the same name.

        `scales` where the new mass goes with the old one, whose error it then shares.
        """
        self._enter(item, new, reason, scales=scales)
        self.come.append(new)

    def add(self, new: Item, reason: str) -> None:
        """Put in something that was not there."""
        kind = ItemKind.ADDED if new.kind is ItemKind.PART else ItemKind.JOINT
        self.entries.append(
            LedgerEntry(
                self.change.name,
                kind,
                new.name,
                NOTHING,
                new.mass_kg,
                0,
                new.pieces,
                reason,
                new.mass_kg.likely * new.u_rel,
            )
        )
        self.come.append(new)
        self.after.append(new)

    def attach(self, joints: Iterable[Item], parts: frozenset[str], name: str) -> None:
        """Let joints at parts that become one hold on to the new part."""
        for item in joints:
            record = item.record
            if not isinstance(record, Joint):
                continue
            joins = name if folded(record.joins) in parts else record.joins
            to = name if folded(record.to) in parts else record.to
            self.come.append(replace(item, record=_held(record, joins, to)))

    def note(self, what: str, remedy: str = "", *, value: str = "") -> None:
        """Say what has to be known about the change."""
        self.notes.append(
            Problem(
                what,
                remedy,
                record=self.change.name,
                value=value,
                severity=Severity.WARNING,
            )
        )

    def _enter(
        self, item: Item, new: Item | None, reason: str, *, scales: bool = True
    ) -> None:
        before = item.mass_kg.likely
        after = NOTHING if new is None else new.mass_kg
        uncertain = abs(before - after.likely) if scales else before
        self.entries.append(
            LedgerEntry(
                self.change.name,
                item.kind,
                item.name,
                item.mass_kg,
                after,
                item.pieces,
                0 if new is None else new.pieces,
                reason,
                uncertain * item.u_rel,
            )
        )
        self.before.append(item)
        if new is not None:
            self.after.append(new)
        if item.kind is ItemKind.JOINT and not item.is_known:
            self.note(
                f"No mass is known for {item.name}: it saves nothing here.",
                "Weigh 20 and divide, or write its designation.",
                value=item.name,
            )

    def applied(self) -> Applied:
        """Give what the change does."""
        return Applied(
            self.change,
            tuple(self.entries),
            tuple(self.resized),
            tuple(self.before),
            tuple(self.after),
            frozenset(self.needs),
            tuple(self.notes),
        )


@lru_cache(maxsize=16_384)
def _held(joint: Joint, joins: str, to: str) -> Joint:
    """Give a joint between other parts; the same one each time, and made once."""
    return replace(joint, joins=joins, to=to)
