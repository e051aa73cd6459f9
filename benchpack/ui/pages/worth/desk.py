"""The worth of the study on screen, and what of it takes longer than a tick may."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any

from PySide6.QtCore import QObject, Signal

from benchpack.errors import Problem
from benchpack.model.assumptions import ASSUMPTION_NAMES, assumption_values
from benchpack.model.study import Study
from benchpack.results.proposal_matters import Share, Swing
from benchpack.results.proposal_trials import ProposalChance, simulate
from benchpack.results.worth_case import WorthCase, worth_case
from benchpack.results.worth_map import WorthMap, worth_map
from benchpack.results.worth_matters import worth_shares, worth_swings
from benchpack.results.worth_sets import IN_USE, SetOutcome, set_outcomes
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace

CHANCE, SHARES = "chance", "shares"
"""Names of what is worked out in the background."""
_WORDS = {CHANCE: "Working out the chance", SHARES: "Working out what matters"}
_OTHERS = tuple(
    one.name for one in fields(Study) if one.name not in set(ASSUMPTION_NAMES)
)
_RECORDS = ("packs", "parts", "joints", "materials", "changes")


class WorthDesk(QObject):
    """Holds the case; what belongs to an older one is never given.

    Signals
    -------
    found(str)
        Something that was wanted is there: `CHANCE` or `SHARES`.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QObject
        Owner.

    Attributes
    ----------
    is_passing : bool
        True while a control is held, and what is shown is not kept yet.
    """

    found = Signal(str)

    def __init__(self, workspace: Workspace, parent: QObject) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self._case: WorthCase | None = None
        self.is_passing = False
        self._held: dict[str, tuple[WorthCase, Any]] = {}
        self._running: dict[str, WorthCase] = {}
        self._at_once: dict[tuple[str, ...], Any] = {}
        self._sets: tuple[WorthCase, tuple[SetOutcome, ...]] | None = None

    @property
    def case(self) -> WorthCase:
        """The case of the results on screen."""
        if self._case is None:
            self.take(passing=False)
        assert self._case is not None
        return self._case

    @property
    def study(self) -> Study:
        """The study as it is shown."""
        return self.case.study

    def take(self, *, passing: bool) -> None:
        """Take over the present results; work for older ones is stopped."""
        self._case = worth_case(self._workspace.results, previous=self._case)
        self.is_passing = passing
        self._at_once.clear()
        for name in tuple(self._running):
            if not _HOLDS[name](self._running[name], self._case):
                self._stop(name)

    def clear(self) -> None:
        """Forget everything, for instance because another library is open."""
        for name in tuple(self._running):
            self._stop(name)
        self._held.clear()
        self._at_once.clear()
        self._case = self._sets = None

    def _stop(self, name: str) -> None:
        self._running.pop(name, None)
        self._workspace.runner.cancel(_key(name))

    # What is reckoned at once, when it is asked for

    def swings(self) -> tuple[float, tuple[Swing, ...]] | Problem:
        """Give the value of the programme when one input goes to its ends."""
        found: tuple[float, tuple[Swing, ...]] | Problem
        found = self._once(("swings",), worth_swings)
        return found

    def map(self, x_key: str, y_key: str) -> WorthMap | Problem:
        """Give the value of the programme over two assumptions."""

        def make(case: WorthCase) -> WorthMap | Problem:
            return worth_map(case, x_key, y_key)

        found: WorthMap | Problem = self._once(("map", x_key, y_key), make)
        return found

    def outcomes(self) -> tuple[SetOutcome, ...]:
        """Give what the study comes to now and with each set.

        What a set comes to does not hang on what the study assumes now, so it is
        reckoned again only when something else has changed.
        """
        case, held = self.case, self._sets
        if held is None or not _same_but_assumptions(held[0], case):
            sets = case.gap.library.sets_of(case.study.name)
            held = self._sets = (case, set_outcomes(case, sets))
        now = assumption_values(case.study)
        return (
            SetOutcome(IN_USE, case.study, case, None, is_in_use=True),
            *(
                replace(one, is_in_use=assumption_values(one.assumptions) == now)
                for one in held[1][1:]
            ),
        )

    def _once(self, key: tuple[str, ...], make: Callable[[WorthCase], Any]) -> Any:
        if key not in self._at_once:
            self._at_once[key] = make(self.case)
        return self._at_once[key]

    # What is worked out in the background

    def has(self, name: str) -> bool:
        """Tell whether something is there for the present case."""
        held = self._held.get(name)
        return held is not None and _HOLDS[name](held[0], self.case)

    @property
    def chance(self) -> ProposalChance | None:
        """The trials; None where no change counts, or while they are worked out."""
        return self._held[CHANCE][1] if self.has(CHANCE) else None

    @property
    def shares(self) -> tuple[Share, ...] | Problem | None:
        """Shares of the variance of the value, None while they are worked out."""
        return self._held[SHARES][1] if self.has(SHARES) else None

    def want(self, name: str) -> None:
        """Have something worked out, unless it is there, under way, or passing by."""
        if self.is_passing or self.has(name) or name in self._running:
            return
        case = self.case
        self._running[name] = case

        def run(token: Token) -> Any:
            return _WORK[name](case, token)

        def done(value: Any) -> None:
            if self._running.get(name) is case:
                del self._running[name]
                self._held[name] = (case, value)
                self.found.emit(name)

        def failed(error: BaseException) -> None:
            if self._running.get(name) is case:
                del self._running[name]
            self._workspace.notifier.report(error)

        self._workspace.runner.start(
            _key(name), run, done=done, failed=failed, words=_WORDS[name]
        )


def _key(name: str) -> str:
    return f"worth {name}"


def _same_records(one: WorthCase, other: WorthCase) -> bool:
    first, second = one.gap.library, other.gap.library
    return all(getattr(first, name) is getattr(second, name) for name in _RECORDS)


def _same_but_assumptions(one: WorthCase, other: WorthCase) -> bool:
    """Tell whether the sets of two cases come to the same."""
    first, second = one.gap.library, other.gap.library
    return (
        _same_records(one, other)
        and first.assumption_sets is second.assumption_sets
        and all(
            getattr(one.study, name) == getattr(other.study, name) for name in _OTHERS
        )
    )


def _same_masses(one: WorthCase, other: WorthCase) -> bool:
    """Tell whether two cases save the same masses, with the same target."""
    if one.proposal is None or other.proposal is None:
        return one.proposal is other.proposal
    return (
        one.proposal.ledger is other.proposal.ledger
        and one.study.target_kg == other.study.target_kg
    )


def _same_money(one: WorthCase, other: WorthCase) -> bool:
    """Tell whether two cases come to the same in everything."""
    return one.study == other.study and _same_records(one, other)


def _chance(case: WorthCase, token: Token) -> ProposalChance | None:
    if case.proposal is None:
        return None
    return simulate(case.proposal, cancelled=token.cancelled)


def _shares(case: WorthCase, token: Token) -> tuple[Share, ...] | Problem:
    return worth_shares(case, cancelled=token.cancelled)


_WORK: dict[str, Callable[[WorthCase, Token], Any]] = {
    CHANCE: _chance,
    SHARES: _shares,
}
_HOLDS: dict[str, Callable[[WorthCase, WorthCase], bool]] = {
    CHANCE: _same_masses,
    SHARES: _same_money,
}
