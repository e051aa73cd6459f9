"""The ledger of a proposal: each kilogram and each joint can go once."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import replace

from benchpack.errors import DataError, Problem, Severity
from benchpack.model.change import Change, ChangeKind
from benchpack.model.change_needs import lacking
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results import ledger_refusals as refusals
from benchpack.results.ledger_add_backs import add_backs_for
from benchpack.results.ledger_merging import draft_integrate, draft_mould_in
from benchpack.results.ledger_parts import (
    draft_add,
    draft_adjust,
    draft_remove,
    draft_substitute,
)
from benchpack.results.ledger_record import (
    AddedBack,
    Applied,
    Item,
    ItemKind,
    Ledger,
    LedgerEntry,
    Resized,
)
from benchpack.results.ledger_refusals import RefusedError
from benchpack.results.ledger_stock import Draft, Stock
from benchpack.results.ledger_swaps import draft_swap
from benchpack.results.ledger_today import Today, today_of
from benchpack.results.ledger_touches import touches_of
from benchpack.results.ledger_turned import Turned, Turning
from benchpack.results.wording import listed

__all__ = [
    "AddedBack",
    "Applied",
    "Item",
    "ItemKind",
    "Ledger",
    "LedgerEntry",
    "Resized",
    "build_ledger",
]

_DRAFTS = {
    ChangeKind.REMOVE: draft_remove,
    ChangeKind.SUBSTITUTE: draft_substitute,
    ChangeKind.INTEGRATE: draft_integrate,
    ChangeKind.MOULD_IN: draft_mould_in,
    ChangeKind.ADD: draft_add,
    ChangeKind.ADJUST: draft_adjust,
}


def build_ledger(
    library: Library,
    study: Study,
    changes: Iterable[Change],
    *,
    today: Today | None = None,
) -> Ledger:
    """Let changes act in order on what is left of the subject.

    A change that touches what has to stay, is gone or seals is refused as a whole, and
    the others go on; so is one without a change that it requires.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Names the subject; sets programme, rates and currency.
    changes : iterable of Change
        In order; those that are switched off do nothing.
    today : Today, optional
        The subject before any change, where it was taken up already.

    Returns
    -------
    Ledger
        Today's mass less the sum of the entries is the mass of what remains.

    Raises
    ------
    KeyError
        When the library has no such pack.
    """
    start = today_of(library, study, previous=today)
    every = tuple(changes)
    known = {change.name: change for change in every}
    banned: dict[str, RefusedError] = {}
    while True:
        run = _Run(start, study, banned)
        for change in every:
            if change.is_on:
                run.apply(change)
        late = _without_what_they_require(run, known)
        if not late:
            return run.ledger()
        banned.update(late)


def _without_what_they_require(
    run: _Run, known: dict[str, Change]
) -> dict[str, RefusedError]:
    """Give the changes that count, but not what they require."""
    found = {}
    for name, applied in run.applied.items():
        change = applied.change
        for other in change.requires:
            if other in run.applied:
                continue
            why = f"{other} does not count"
            if other not in known:
                why = f"the study has no change {other!r}"
            elif not known[other].is_on:
                why = f"{other} is switched off"
            found[name] = refusals.conflict(
                change,
                f"{name} requires {other}, and {why}.",
                f"Mend or switch on {other}, or switch {name} off.",
                value=other,
            )
            break
    return found


class _Run:
    """One pass over the changes."""

    def __init__(
        self, today: Today, study: Study, banned: dict[str, RefusedError]
    ) -> None:
        self.stock = Stock(today)
        self.study = study
        self.banned = banned
        self.applied: dict[str, Applied] = {}
        self.refused: list[tuple[Change, RefusedError]] = []

    def apply(self, change: Change) -> None:
        try:
            self._check(change)
            draft = Draft(self.stock, change)
            if change.kind is ChangeKind.SWAP_JOINTS:
                draft_swap(draft, self.study)
            else:
                _DRAFTS[change.kind](draft)
        except RefusedError as error:
            self.refused.append((change, error))
        except DataError as error:
            # A part or joint as the change makes it has figures no record can hold.
            self.refused.append((change, refusals.not_recordable(change, error)))
        else:
            self.applied[change.name] = self.stock.take(draft)

    def _check(self, change: Change) -> None:
        if change.name in self.banned:
            raise self.banned[change.name]
        if change.name in self.applied:
            raise refusals.twice_there(change, change.name)
        for problem in lacking(change)[:1]:
            raise RefusedError(problem.at(record=change.name))
        if not change.programme.fits(self.study.programme):
            raise refusals.refused(
                change,
                f"It fits a {change.programme}, the study is of a "
                f"{self.study.programme}.",
                "Switch it off, or choose a later programme in the study.",
                value=str(change.programme),
            )
        for other in self.applied.values():
            if change.name in other.change.excludes or (
                other.change.name in change.excludes
            ):
                raise refusals.conflict(
                    change,
                    f"{change.name} and {other.change.name} exclude each other.",
                    "Switch one of the two off.",
                    value=other.change.name,
                )

    def ledger(self) -> Ledger:
        today, stock = self.stock.today, self.stock
        bare = Ledger(
            pack=today.pack,
            today_kg=today.pack_kg,
            unaccounted_kg=math.fsum((today.pack_kg, -today.recorded_kg)),
            applied=tuple(self.applied.values()),
            refused=tuple((change, error.problem) for change, error in self.refused),
            conflicts=tuple(e.problem for _, e in self.refused if e.is_conflict),
            parts=stock.parts,
            joints=stock.joints,
            became=stock.became,
        )
        sealing = frozenset(stock.sealing)
        turning = Turning(bare, today, sealing)
        turnings = [(one, turning.turned_by(one)) for one in bare.applied]
        touched = tuple(
            replace(
                applied,
                touches=touches_of(applied, today, sealing, turned),
                notes=(*applied.notes, *_notes_on_welds(applied, turned)),
            )
            for applied, turned in turnings
        )
        backs = add_backs_for(turnings, bare, today)
        return replace(bare, applied=touched, add_backs=backs)


def _notes_on_welds(applied: Applied, turned: tuple[Turned, ...]) -> Iterator[Problem]:
    """Say which welds are left at parts that are polymer now."""
    for one in turned:
        names = tuple(item.name for item in one.welds)
        if names:
            yield Problem(
                f"{one.part.name} is polymer now, and {listed(names, most=3)} cannot "
                "join it.",
                "Swap it for a bead, a screw or a clip, or integrate the parts.",
                record=applied.change.name,
                value=one.part.name,
                severity=Severity.WARNING,
            )
