"""Which changes of a study to put forward: a suggestion under budget and conflicts."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from itertools import combinations

from benchpack.calc.choosing import choose_changes
from benchpack.errors import CancelledError, Problem
from benchpack.model.change import Change, ChangeKind
from benchpack.results.ledger import ItemKind, Ledger, build_ledger
from benchpack.results.ledger_today import folded
from benchpack.results.proposal import ProposalResults, with_changes
from benchpack.results.proposal_effect import Effect
from benchpack.results.proposal_effects import effects_of

_LEAST_MONEY = 1e-6
_MAKERS = (ChangeKind.INTEGRATE, ChangeKind.ADD, ChangeKind.SWAP_JOINTS)


@dataclass(frozen=True, slots=True, eq=False)
class Suggestion:
    """The changes with the highest net worth that can be had together.

    Parameters
    ----------
    chosen : tuple of str
        Names of the changes to switch on, in the study's order.
    not_possible : tuple of (str, Problem)
        Changes that cannot count whatever is chosen, each with the reason.
    budget : float
        One-time money for tools, infinite where there is no limit.
    results : ProposalResults
        The proposal with just these switched on.
    """

    chosen: tuple[str, ...]
    not_possible: tuple[tuple[str, Problem], ...]
    budget: float
    results: ProposalResults


def suggest(
    results: ProposalResults,
    *,
    budget: float | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Suggestion:
    """Suggest which changes of a study to switch on; it changes nothing itself.

    Each change is worth what it is worth alone, with the changes that it needs, times
    its chance of release, less its validation; two that cannot both count exclude each
    other. What is chosen is then reckoned as a whole.

    Parameters
    ----------
    results : ProposalResults
        The proposal; changes that are switched off are looked at as well.
    budget : float, optional
        One-time money for tools; by default the study's.
    cancelled : callable, optional
        Asked often whether to stop.

    Raises
    ------
    CancelledError
        Once `cancelled` says so.
    """
    if budget is None:
        given = results.study.tooling_budget
        budget = math.inf if given is None else given
    field = _Field(results, cancelled)
    possible = [name for name in field.names if name in field.alone]
    place = {name: i for i, name in enumerate(possible)}
    chosen = choose_changes(
        [_money(expected(field.alone[name])) for name in possible],
        [field.alone[name].tooling.likely for name in possible],
        budget=budget,
        conflicts=[(place[a], place[b]) for a, b in field.conflicts(possible)],
        requirements=[
            (place[name], place[need])
            for name in possible
            for need in field.needs[name]
            if need in place
        ],
    ).chosen
    names = {possible[i] for i in chosen}
    found = _as_a_whole(results, names)
    return Suggestion(
        chosen=tuple(effect.name for effect in found.effects),
        not_possible=tuple(field.refused.items()),
        budget=budget,
        results=found,
    )


def expected(effect: Effect) -> float:
    """Give what a change is worth by its chance; validation is spent either way."""
    spent = effect.validation_per_pack.likely
    return effect.release_chance * (effect.net_worth.likely + spent) - spent


def _money(worth: float) -> float:
    """Give a worth that can be told from nothing; the solver scales by the largest."""
    return worth if abs(worth) > _LEAST_MONEY else 0.0


def _as_a_whole(results: ProposalResults, names: set[str]) -> ProposalResults:
    """Give the proposal of what is chosen, without what turns out not to count."""
    while True:
        found = with_changes(
            results,
            [replace(one, is_on=one.name in names) for one in results.changes],
        )
        late = {change.name for change, _ in found.ledger.refused}
        if not late:
            return found
        names = names - late


class _Field:
    """The changes of a study, each looked at with just what it needs."""

    def __init__(
        self, results: ProposalResults, cancelled: Callable[[], bool] | None
    ) -> None:
        self._results, self._cancelled = results, cancelled
        self._changes = {one.name: replace(one, is_on=True) for one in results.changes}
        self.names = list(self._changes)
        self.needs = {name: self._needs(name) for name in self.names}
        self.alone: dict[str, Effect] = {}
        self.refused: dict[str, Problem] = {}
        self._touched: dict[str, frozenset[tuple[bool, str]]] = {}
        for name in self.names:
            self._look_at(name)

    def _needs(self, name: str) -> frozenset[str]:
        """Give all changes that one needs: required, or making what it acts on."""
        found: set[str] = set()
        new = {name}
        while new:
            asked = {other for one in new for other in self._asks(one)}
            new = asked - found - {name}
            found |= new
        return frozenset(found)

    def _asks(self, name: str) -> set[str]:
        change = self._changes.get(name)
        if change is None:
            return set()
        today = self._results.today
        acted = {folded(part) for part in (*change.parts, *change.joints)}
        if change.kind is ChangeKind.MOULD_IN:
            acted.add(folded(change.into))
        lacking = acted - today.parts.keys() - today.joints.keys()
        makers = {
            other.name
            for other in self._changes.values()
            if other.kind in _MAKERS and folded(other.into) in lacking
        }
        return (makers | {*change.requires}) - {name}

    def _look_at(self, name: str) -> None:
        ledger = self._ledger({name, *self.needs[name]})
        refused = next((why for one, why in ledger.refused if one.name == name), None)
        applied = ledger.applied_to(name)
        if refused is not None or applied is None:
            self.refused[name] = refused or Problem(f"{name} does not count.")
            return
        effects = self._effects(ledger)
        self.alone[name] = next(one for one in effects if one.name == name)
        self._touched[name] = frozenset(
            (entry.item_kind is ItemKind.JOINT, folded(entry.item))
            for entry in applied.entries
        )

    def _effects(self, ledger: Ledger) -> tuple[Effect, ...]:
        results = self._results
        return effects_of(
            ledger,
            results.today,
            supply=results.supply,
            worth_per_kg=results.study.worth_likely_per_kg,
        )

    def _ledger(self, names: Iterable[str]) -> Ledger:
        if self._cancelled is not None and self._cancelled():
            raise CancelledError("the suggestion")
        wanted = set(names)
        results = self._results
        changes: list[Change] = [
            change for name, change in self._changes.items() if name in wanted
        ]
        return build_ledger(
            results.library, results.study, changes, today=results.today
        )

    def conflicts(self, names: Iterable[str]) -> list[tuple[str, str]]:
        """Give the pairs that cannot both count, or are of no use together."""
        return [pair for pair in combinations(names, 2) if self._clash(*pair)]

    def _clash(self, one: str, other: str) -> bool:
        first, second = self._changes[one], self._changes[other]
        if one in second.excludes or other in first.excludes:
            return True
        if not self._touched[one] & self._touched[other]:
            return False
        if one in self.needs[other] or other in self.needs[one]:
            return False
        ledger = self._ledger({one, other, *self.needs[one], *self.needs[other]})
        if ledger.refused:
            return True
        # Two new materials for one part: the second undoes what the first is worth.
        worth = {effect.name: expected(effect) for effect in self._effects(ledger)}
        alone = [expected(self.alone[name]) for name in (one, other)]
        return worth[one] + worth[other] <= max(alone)
