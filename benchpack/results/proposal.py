"""A proposal: what the changes of a study come to, beside the gap they should close."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from benchpack.errors import DataError, Problem
from benchpack.model.change import Change
from benchpack.model.duties import DUTIES, Duty
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.change_checks import proposal_checks
from benchpack.results.change_supply import Supply, subject_volume_of, supply_of
from benchpack.results.check import Check
from benchpack.results.ledger import AddedBack, Ledger, build_ledger
from benchpack.results.ledger_today import Today, today_of
from benchpack.results.proposal_effect import Effect
from benchpack.results.proposal_effects import effects_at_worth, effects_of
from benchpack.results.proposal_totals import Totals, totals_of_changes
from benchpack.results.results import Results, compute

__all__ = [
    "Effect",
    "ProposalResults",
    "ReopenedDuty",
    "Totals",
    "proposal",
    "with_changes",
]


@dataclass(frozen=True, slots=True)
class ReopenedDuty:
    """One function that has to be validated again, and the changes that reopen it.

    Parameters
    ----------
    duty : Duty
        The function with its requirements.
    changes : tuple of str
        Names of the changes, in order.
    """

    duty: Duty
    changes: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class ProposalResults:
    """Everything that is shown of a proposal.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        The study with worth, target and programme.
    changes : tuple of Change
        All its changes in order, those that are switched off too.
    gap : Results
        The gap that the proposal should close.
    today : Today
        The subject before any change.
    supply : Supply
        Volume, years, interest and rates.
    ledger : Ledger
        Where each kilogram and each joint goes, and the changes that are refused.
    effects : tuple of Effect
        What each change that counts comes to, in order.
    duties : tuple of ReopenedDuty
        What has to be validated again; it cannot be taken off.
    totals : Totals
        The sums.
    """

    library: Library
    study: Study
    changes: tuple[Change, ...]
    gap: Results
    today: Today
    supply: Supply
    ledger: Ledger
    effects: tuple[Effect, ...]
    duties: tuple[ReopenedDuty, ...]
    totals: Totals

    @cached_property
    def checks_by_change(self) -> Mapping[str, tuple[Check, ...]]:
        """The checks of each change that counts, worked out when first asked for."""
        return proposal_checks(
            self.library, self.study, self.ledger, inventory=self.today.inventory
        )

    @property
    def checks(self) -> tuple[Check, ...]:
        """The checks of all changes that count, in order."""
        return tuple(
            check
            for effect in self.effects
            for check in self.checks_by_change.get(effect.name, ())
        )

    @property
    def add_backs(self) -> tuple[AddedBack, ...]:
        """What the changes need back, with what is not in the sum."""
        return self.ledger.add_backs

    def effect(self, change: str) -> Effect | None:
        """Give what a change comes to, None where it does not count."""
        return next((one for one in self.effects if one.name == change), None)

    def refusal(self, change: str) -> Problem | None:
        """Give why a change does not count, None where it does or is switched off."""
        found = (why for one, why in self.ledger.refused if one.name == change)
        return next(found, None)

    @property
    def notes(self) -> tuple[Problem, ...]:
        """What has to be known about the changes that count, in order."""
        return tuple(note for effect in self.effects for note in effect.notes)


def proposal(
    library: Library,
    study: Study,
    *,
    previous: ProposalResults | None = None,
    gap: Results | None = None,
) -> ProposalResults:
    """Compute the proposal of a study.

    Parameters
    ----------
    library : Library
        The records with the changes.
    study : Study
        The study; its name chooses the changes.
    previous : ProposalResults, optional
        The state before; what cannot have changed is taken over.
    gap : Results, optional
        The gap of the study, where it is known already.

    Returns
    -------
    ProposalResults
        Changes that cannot count are in its ledger, each with the reason.

    Raises
    ------
    DataError
        When the study's subject is not in the library.
    """
    changes = library.changes_of(study.name)
    return _computed(library, study, changes, previous=previous, gap=gap)


def with_changes(
    results: ProposalResults, changes: Iterable[Change]
) -> ProposalResults:
    """Give the proposal that a study would have with other changes.

    Parameters
    ----------
    results : ProposalResults
        The proposal as it is.
    changes : iterable of Change
        Its changes in order, for instance with one of them switched off.
    """
    return _computed(
        results.library,
        results.study,
        tuple(changes),
        previous=results,
        gap=results.gap,
    )


def _computed(
    library: Library,
    study: Study,
    changes: tuple[Change, ...],
    *,
    previous: ProposalResults | None,
    gap: Results | None,
) -> ProposalResults:
    if not library.packs.has(study.subject):
        what = f"The study {study.name} has no subject."
        if study.subject:
            what = f"There is no pack {study.subject!r} for the study {study.name}."
        raise DataError(Problem(what, "Choose a subject.", record=study.name))
    old_today = previous.today if previous else None
    today = today_of(library, study, previous=old_today)
    if gap is None:
        gap = compute(library, study, previous=previous.gap if previous else None)
    supply = supply_of(study, subject_volume=subject_volume_of(library, study))
    worth = study.worth_likely_per_kg
    same = previous is not None and (
        previous.today is today
        and previous.changes == changes
        and previous.study.programme is study.programme
    )
    if previous is not None and same:
        ledger = previous.ledger
    else:
        ledger = build_ledger(library, study, changes, today=today)
    if previous is not None and same and previous.supply == supply:
        effects = effects_at_worth(previous.effects, worth, supply=supply)
    else:
        effects = effects_of(ledger, today, supply=supply, worth_per_kg=worth)
    return ProposalResults(
        library=library,
        study=study,
        changes=changes,
        gap=gap,
        today=today,
        supply=supply,
        ledger=ledger,
        effects=effects,
        duties=_duties(effects),
        totals=totals_of_changes(ledger, effects, gap.gap_kg, study, supply),
    )


def _duties(effects: tuple[Effect, ...]) -> tuple[ReopenedDuty, ...]:
    found = []
    for duty in DUTIES:
        names = tuple(one.name for one in effects if duty in one.duties)
        if names:
            found.append(ReopenedDuty(duty, names))
    return tuple(found)
