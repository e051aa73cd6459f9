"""Works out what each change of a proposal comes to."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from benchpack.errors import Problem, Severity
from benchpack.model.change import ChangeKind
from benchpack.model.duties import duties_for
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.process import process_of
from benchpack.model.ranges import Range
from benchpack.results.change_cost import (
    CostChange,
    break_even_of_parts,
    compare_costs,
    cost_of_part,
)
from benchpack.results.change_joining import JoiningChange, compare_joining
from benchpack.results.change_supply import Supply, break_even, per_pack
from benchpack.results.joint_facts import USUAL_CURRENCY
from benchpack.results.ledger_record import (
    AddedBack,
    Applied,
    Item,
    ItemKind,
    Ledger,
    LedgerEntry,
)
from benchpack.results.ledger_today import Today, folded
from benchpack.results.proposal_effect import NONE, Effect

_MADE = (ChangeKind.SUBSTITUTE, ChangeKind.INTEGRATE, ChangeKind.MOULD_IN)


def effects_of(
    ledger: Ledger, today: Today, *, supply: Supply, worth_per_kg: float
) -> tuple[Effect, ...]:
    """Give what each change that counts comes to.

    Parameters
    ----------
    ledger : Ledger
        The changes and what they do.
    today : Today
        The subject before any change.
    supply : Supply
        Rates, currency, volume, years and interest.
    worth_per_kg : float
        Likely worth of a kilogram.
    """
    last = _last_takers(ledger)
    chances = _chances(ledger)
    return tuple(
        _Reckoning(ledger, applied, today, supply).effect(
            worth_per_kg, last=last, chance=chances[applied.change.name]
        )
        for applied in ledger.applied
    )


def effects_at_worth(
    effects: Iterable[Effect], worth_per_kg: float, *, supply: Supply
) -> tuple[Effect, ...]:
    """Give effects at another worth of a kilogram, everything else as it was.

    Parameters
    ----------
    effects : iterable of Effect
        What the changes come to.
    worth_per_kg : float
        Likely worth of a kilogram.
    supply : Supply
        The supply that the effects were reckoned with.
    """
    found = []
    for one in effects:
        before_once = one.saved_kg.scaled(worth_per_kg) - one.money
        once = one.tooling.likely + one.validation_cost.likely
        found.append(
            replace(
                one,
                net_worth=before_once - one.tooling_per_pack - one.validation_per_pack,
                break_even_volume=break_even(once, before_once.likely, supply),
            )
        )
    return tuple(found)


_Key = tuple[bool, str]


def _key(entry: LedgerEntry) -> _Key:
    return entry.item_kind is ItemKind.JOINT, folded(entry.item)


def _last_takers(ledger: Ledger) -> dict[_Key, str]:
    """Give the last change that takes up each part and joint."""
    return {
        _key(entry): applied.change.name
        for applied in ledger.applied
        for entry in applied.entries
    }


def _chances(ledger: Ledger) -> dict[str, float]:
    """Give the chance of each change with those that it needs, each counted once."""
    needs = {one.change.name: one.needs for one in ledger.applied}
    own = {one.change.name: one.change.release_chance for one in ledger.applied}
    found = {}
    for name in own:
        every, new = {name}, {name}
        while new:
            new = {other for one in new for other in needs.get(one, ())} - every
            every |= new
        found[name] = math.prod(own.get(one, 1.0) for one in every)
    return found


class _Reckoning:
    """Works out one change."""

    def __init__(
        self, ledger: Ledger, applied: Applied, today: Today, supply: Supply
    ) -> None:
        self.ledger, self.applied, self.today = ledger, applied, today
        self.supply, self.change = supply, applied.change
        self.unknown: list[str] = []

    def effect(
        self, worth_per_kg: float, *, last: dict[_Key, str], chance: float
    ) -> Effect:
        change, applied = self.change, self.applied
        entries = self.ledger.entries_of(applied)
        backs = tuple(b for b in self.ledger.add_backs if b.change == change.name)
        saved = _sum(e.before_kg for e in entries) - _sum(e.after_kg for e in entries)
        cost = self._cost()
        joining = self._joining()
        part_cost = self._or_given(change.part_cost, cost.part_cost, cost.why)
        tooling = self._tooling(cost)
        duties = duties_for(applied.touches)
        validation = change.validation_cost or NONE
        if change.validation_cost is None and duties:
            self.unknown.append("What validating it costs is not given")
        tooling_per_pack = self._per_pack(tooling, "tooling")
        validation_per_pack = self._per_pack(validation, "validation")
        joining_cost = self._or_given(change.joining_cost, joining.money, joining.why)
        add_back_cost = self._add_back_cost(backs)
        money = part_cost + joining_cost + add_back_cost
        before_once = saved.scaled(worth_per_kg) - money
        return Effect(
            change=change,
            applied=applied,
            entries=entries,
            add_backs=backs,
            saved_kg=saved,
            add_back_kg=_sum(b.mass_kg for b in backs if b.is_counted),
            drawn_kg=_sum(
                e.after_kg
                if last.get(_key(e), change.name) == change.name
                else Range.exactly(e.after_kg.likely)
                for e in entries
            ),
            known_u_kg=math.hypot(*(e.known_u_kg for e in entries)),
            part_cost=part_cost,
            joining_cost=joining_cost,
            add_back_cost=add_back_cost,
            seconds=change.seconds or joining.seconds,
            tooling=tooling,
            validation_cost=validation,
            tooling_per_pack=tooling_per_pack,
            validation_per_pack=validation_per_pack,
            net_worth=before_once - tooling_per_pack - validation_per_pack,
            break_even_volume=break_even(
                tooling.likely + validation.likely, before_once.likely, self.supply
            ),
            part_break_even_volume=break_even_of_parts(cost, self.supply),
            release_chance=chance,
            lead_weeks=self._lead_weeks(),
            cost=cost,
            duties=duties,
            unknown=tuple(dict.fromkeys(f"{said}." for said in self.unknown)),
            notes=(*applied.notes, *self._notes()),
        )

    def _cost(self) -> CostChange:
        def costs(items: Iterable[Item]) -> list[Part]:
            return [item.record for item in items if isinstance(item.record, Part)]

        before, after = (
            [
                cost_of_part(part, self.today.material(part.material), self.supply)
                for part in costs(items)
            ]
            for items in (self.applied.before, self.applied.after)
        )
        return compare_costs(before, after, self.supply)

    def _joining(self) -> JoiningChange:
        before, after = (
            [
                item.facts
                for item in items
                if isinstance(item.record, Joint) and item.facts is not None
            ]
            for items in (self.applied.before, self.applied.after)
        )
        kept = {id(facts) for facts in before} & {id(facts) for facts in after}
        return compare_joining(
            (facts for facts in before if id(facts) not in kept),
            (facts for facts in after if id(facts) not in kept),
            self.today.inventory.rates,
        )

    def _or_given(
        self, given: Range | None, computed: Range, why: tuple[str, ...]
    ) -> Range:
        if given is not None:
            return given
        self.unknown.extend(why)
        return computed

    def _tooling(self, cost: CostChange) -> Range:
        change = self.change
        if change.tooling is not None:
            return change.tooling
        adds = change.kind is ChangeKind.ADD
        if change.kind not in _MADE and not adds:
            return NONE
        made_new = [one for one in cost.after if one not in cost.before]
        if change.kind is ChangeKind.MOULD_IN or not change.process.strip():
            self.unknown.append("What its tools cost is not given")
            return NONE
        if any(one.tooling is None for one in made_new):
            self.unknown.append("What its tools cost is not known")
        return cost.tooling

    def _per_pack(self, one_time: Range, what: str) -> Range:
        found = per_pack(one_time, self.supply)
        if found is None:
            self.unknown.append(f"The yearly volume, and so its {what} per pack")
            return NONE
        return found

    def _add_back_cost(self, backs: tuple[AddedBack, ...]) -> Range:
        counted = [back for back in backs if back.is_counted]
        if counted and self.supply.currency != USUAL_CURRENCY:
            self.unknown.append(f"Usual costs of add-backs are in {USUAL_CURRENCY}")
            return NONE
        return _sum(
            Range(
                *(
                    mass * price
                    for mass, price in zip(
                        back.mass_kg.ends, back.add_back.price_per_kg.ends, strict=True
                    )
                )
            )
            for back in counted
        )

    def _lead_weeks(self) -> Range | None:
        if self.change.lead_weeks is not None:
            return self.change.lead_weeks
        found = process_of(self.change.process)
        return None if found is None else found.lead_weeks

    def _notes(self) -> Iterator[Problem]:
        for name in dict.fromkeys(
            name for one in self.applied.resized for name in one.without_knock_down
        ):
            yield self._note(
                f"{name} has no design knock-down: its data-sheet value is counted.",
                "Enter knock-downs for heat, long load and moisture.",
                name,
            )
        if self.change.uses_data_sheet and self.applied.resized:
            yield self._note(
                "It is sized with data-sheet values, design knock-downs are off.",
                "Switch them on for a figure that may be promised.",
                "",
            )
        found = process_of(self.change.process)
        volume = self.supply.yearly_volume
        if found and not math.isnan(volume) and not found.suits_volume(volume):
            yield self._note(
                f"{found.name} is not usual at {volume:.0f} packs a year.",
                "Choose another process, or check the volume.",
                found.name,
            )

    def _note(self, what: str, remedy: str, value: str) -> Problem:
        return Problem(
            what,
            remedy,
            record=self.change.name,
            value=value,
            severity=Severity.WARNING,
        )


def _sum(ranges: Iterable[Range]) -> Range:
    return sum(ranges, NONE)
