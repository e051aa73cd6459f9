"""A request for what is handed over of a study, as it comes from the command line."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime

from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.report.audit.sheets import AuditSheet, audit_sheets
from benchpack.results.fingerprint import fingerprint_of
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance, simulate
from benchpack.results.results import Results, compute
from benchpack.results.worth_case import WorthCase, worth_case
from benchpack.session.study_request import take_study


@dataclass(frozen=True, slots=True, eq=False)
class HandedOver:
    """Everything that a brief and an audit workbook are made of.

    Parameters
    ----------
    case : WorthCase
        What the saving is worth, with the gap and the proposal.
    chance : ProposalChance or None
        The trials of the proposal.
    fingerprint : str
        Of the study and all it is answered from.
    """

    case: WorthCase
    chance: ProposalChance | None
    fingerprint: str

    @property
    def results(self) -> Results:
        """The gap."""
        return self.case.gap

    @property
    def proposal(self) -> ProposalResults | None:
        """What should close the gap, None where the study has no changes."""
        return self.case.proposal

    @property
    def refused(self) -> tuple[Problem, ...]:
        """Why changes of the proposal do not count, change by change."""
        if self.proposal is None:
            return ()
        return tuple(problem for _, problem in self.proposal.ledger.refused)


def take_handover(
    library: Library, name: str, *, wanted: str, currency: str
) -> HandedOver:
    """Compute what is handed over of the study that is asked for.

    Parameters
    ----------
    library : Library
        The records.
    name : str
        Name of the study; empty for the first one.
    wanted : str
        What is to be made of it, ``brief`` for instance.
    currency : str
        Code of the file's money.

    Raises
    ------
    DataError
        When there is no such study, it has nothing to compare, or the money of the
        file is in another currency.
    """
    study = take_study(library, name, wanted=wanted, currency=currency)
    return hand_over(library, study)


def hand_over(library: Library, study: Study) -> HandedOver:
    """Compute what is handed over of a study.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        The study.

    Raises
    ------
    DataError
        When there is nothing to compare.
    """
    results = compute(library, study)
    if results.comparison is None:
        problem = results.missing or Problem("There is nothing to compare.")
        raise DataError(problem.at(record=study.name))
    case = worth_case(results)
    chance = None if case.proposal is None else simulate(case.proposal)
    return HandedOver(case, chance, fingerprint_of(library, study))


def sheets_of(given: HandedOver, *, made_on: date) -> tuple[AuditSheet, ...]:
    """Give the sheets of the audit workbook of a study that was worked out.

    Parameters
    ----------
    given : HandedOver
        What they are made of.
    made_on : date
        Date that the workbook bears.
    """
    return audit_sheets(
        given.case, given.chance, fingerprint=given.fingerprint, made_on=made_on
    )


def today() -> date:
    """Give the day on which something is made, where the person is."""
    return datetime.now(tz=UTC).astimezone().date()
