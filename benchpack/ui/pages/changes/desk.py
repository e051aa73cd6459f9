"""The proposal on screen, and what of it takes longer than an edit may."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Signal

from benchpack.errors import DataError, Problem
from benchpack.model.study import Study
from benchpack.results.change_checks import proposal_checks
from benchpack.results.check import Check
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_choice import Suggestion, suggest
from benchpack.results.proposal_matters import Matters, mass_matters, value_matters
from benchpack.results.proposal_trials import ProposalChance, simulate
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace

CHANCE, MATTERS, CHOICE, CHECKS = "chance", "what matters", "suggestion", "checks"
"""Names of what is worked out in the background."""
_WORDS = {
    CHANCE: "Working out the chance",
    MATTERS: "Working out what matters",
    CHOICE: "Working out the suggestion",
    CHECKS: "Checking the changes",
}
Work = Callable[[ProposalResults, Token], Any]


class ProposalDesk(QObject):
    """Holds the proposal; what belongs to an older one is never given.

    Signals
    -------
    found(str)
        Something that was wanted is there: one of `CHANCE`, `MATTERS`, `CHOICE`,
        `CHECKS`.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QObject
        Owner.

    Attributes
    ----------
    results : ProposalResults or None
        The proposal, None where the study has no subject.
    study : Study
        The study as it is shown; its worth may be passing by.
    missing : Problem or None
        Why there is no proposal.
    """

    found = Signal(str)

    def __init__(self, workspace: Workspace, parent: QObject) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self.results: ProposalResults | None = None
        self.study: Study = workspace.state.study
        self.missing: Problem | None = None
        self._held: dict[str, Any] = {}
        self._running: set[str] = set()

    def take(self) -> None:
        """Take over the state of the document; what is out of date is dropped."""
        state = self._workspace.state
        before, self.study = self.results, state.study
        try:
            self.results, self.missing = (
                proposal(
                    state.library,
                    state.study,
                    previous=before,
                    gap=self._workspace.results,
                ),
                None,
            )
        except DataError as error:
            self.results, self.missing = None, error.problems[0]
        for name in tuple(self._running):
            self._workspace.runner.cancel(self._key(name))
        self._running.clear()
        self._held.clear()

    def pass_worth(self) -> None:
        """Take over a worth that passes by; only what hangs on it is out of date."""
        self.study = self._workspace.state.study

    def clear(self) -> None:
        """Forget the proposal, for instance because another library is open."""
        for name in tuple(self._running):
            self._workspace.runner.cancel(self._key(name))
        self._running.clear()
        self._held.clear()
        self.results = None

    @property
    def worth_is_passing(self) -> bool:
        """True while the worth is another than the proposal was reckoned with."""
        if self.results is None:
            return False
        return self.study.worth_per_kg != self.results.study.worth_per_kg

    def has(self, name: str) -> bool:
        """Tell whether something is there for the present proposal."""
        return name in self._held

    @property
    def chance(self) -> ProposalChance | None:
        """The trials; None where no change counts, or while they are worked out."""
        held: ProposalChance | None = self._held.get(CHANCE)
        return held

    @property
    def matters(self) -> tuple[Matters | None, Matters | None]:
        """What matters for the mass saved and for the net worth."""
        held: tuple[Matters | None, Matters | None] = self._held.get(
            MATTERS, (None, None)
        )
        return held

    @property
    def suggestion(self) -> Suggestion | None:
        """The best changes together, None while they are looked for."""
        held: Suggestion | None = self._held.get(CHOICE)
        return held

    def checks(self, change: str) -> tuple[Check, ...] | None:
        """Give the checks of a change, None while they are worked out."""
        held: dict[str, tuple[Check, ...]] | None = self._held.get(CHECKS)
        return None if held is None else held.get(change, ())

    def want(self, name: str) -> None:
        """Have something worked out, unless it is there or under way."""
        results = self.results
        if results is None or name in self._held or name in self._running:
            return
        self._running.add(name)
        work = _WORK[name]

        def run(token: Token) -> tuple[str, ProposalResults, Any]:
            return name, results, work(results, token)

        self._workspace.runner.start(
            self._key(name),
            run,
            done=self._on_found,
            failed=self._on_failed,
            words=_WORDS[name],
        )

    @staticmethod
    def _key(name: str) -> str:
        return f"proposal {name}"

    def _on_found(self, told: tuple[str, ProposalResults, Any]) -> None:
        name, results, value = told
        if results is not self.results:
            return
        self._running.discard(name)
        self._held[name] = value
        self.found.emit(name)

    def _on_failed(self, error: BaseException) -> None:
        self._running.clear()
        self._workspace.notifier.report(error)


def _chance(results: ProposalResults, token: Token) -> ProposalChance | None:
    return simulate(results, cancelled=token.cancelled)


def _matters(
    results: ProposalResults, token: Token
) -> tuple[Matters | None, Matters | None]:
    value = value_matters(results, cancelled=token.cancelled)
    return mass_matters(results), value


def _choice(results: ProposalResults, token: Token) -> Suggestion:
    return suggest(results, cancelled=token.cancelled)


def _checks(results: ProposalResults, token: Token) -> dict[str, tuple[Check, ...]]:
    del token
    return proposal_checks(
        results.library,
        results.study,
        results.ledger,
        inventory=results.today.inventory,
    )


_WORK: dict[str, Work] = {
    CHANCE: _chance,
    MATTERS: _matters,
    CHOICE: _choice,
    CHECKS: _checks,
}
