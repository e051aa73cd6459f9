"""A study as it is typed: fields of text, and what is wrong with them. No Qt."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.study import Study
from benchpack.session.state import State

WORTH_FIELDS = ("worth_low_per_kg", "worth_likely_per_kg", "worth_high_per_kg")

_ROW_OF = {
    "name": "name",
    "worth": "worth",
    "exponent": "exponent",
    "share captured": "share",
    "target": "target",
    "currency": "currency",
    "mass unit": "mass_unit",
    "decimal mark": "decimal_mark",
    "labour rate": "rates",
    "station rate": "rates",
    "takt time": "takt",
    "thread friction": "friction",
    "head friction": "friction",
    "programme": "programme",
    "yearly volume": "volume",
    "programme years": "years",
    "discount rate": "discount",
    "tooling budget": "budget",
}
"""Row of the form by the column that a problem of a `Study` names."""


@dataclass(frozen=True, slots=True)
class Attempt:
    """What the fields make of a study.

    Parameters
    ----------
    study : Study or None
        The study, None while something is wrong.
    errors : mapping of str to str
        Complaints by row of the form.
    """

    study: Study | None
    errors: Mapping[str, str]


def attempt(
    before: Study, values: Mapping[str, Any], errors: Mapping[str, str]
) -> Attempt:
    """Make a study of what was typed.

    Parameters
    ----------
    before : Study
        The study as it was.
    values : mapping of str to object
        New values by attribute.
    errors : mapping of str to str
        What is already known to be wrong, by row of the form.
    """
    try:
        study = replace(before, **values)
    except DataError as error:
        found = {_ROW_OF.get(p.column, "name"): said(p) for p in error.problems}
        return Attempt(None, {**found, **errors})
    return Attempt(None if errors else study, errors)


def said(problem: Problem) -> str:
    """Give a problem as a sentence for under its field."""
    return f"{problem.what} {problem.remedy}".strip()


def free_study_name(state: State) -> str:
    """Give a name that no study has yet, ``Study 2`` for instance."""
    taken = {study.name for study in state.library.studies}
    number = len(taken) + 1
    while f"Study {number}" in taken:
        number += 1
    return f"Study {number}"
