"""Named sets of assumptions side by side."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from benchpack.errors import DataError, Problem
from benchpack.model.assumptions import Assumptions, AssumptionSet, assumption_values
from benchpack.results.worth_case import WorthCase, case_with

IN_USE = ""
"""Name of what the study reckons with now."""


@dataclass(frozen=True, slots=True, eq=False)
class SetOutcome:
    """What a study comes to with one set of assumptions.

    Parameters
    ----------
    name : str
        Name of the set; empty for what the study reckons with now.
    assumptions : Assumptions
        The set, or the study.
    case : WorthCase or None
        What it comes to, None where the study cannot take it.
    why : Problem or None
        Why it cannot.
    is_in_use : bool
        True where the study reckons with just these.
    """

    name: str
    assumptions: Assumptions
    case: WorthCase | None
    why: Problem | None
    is_in_use: bool


def set_outcomes(
    case: WorthCase, sets: Iterable[AssumptionSet]
) -> tuple[SetOutcome, ...]:
    """Give what the study comes to now, and with each set.

    Parameters
    ----------
    case : WorthCase
        The case as it is.
    sets : iterable of AssumptionSet
        The sets of the study.

    Returns
    -------
    tuple of SetOutcome
        What the study reckons with now first, then the sets in order.
    """
    study = case.study
    now = assumption_values(study)
    outcomes = [SetOutcome(IN_USE, study, case, None, is_in_use=True)]
    for one in sets:
        values = assumption_values(one)
        found, why = None, None
        try:
            found = case_with(case, replace(study, **values))
        except DataError as error:
            why = error.problems[0]
        outcomes.append(SetOutcome(one.name, one, found, why, values == now))
    return tuple(outcomes)
