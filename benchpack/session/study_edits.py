"""Edits of studies as pure functions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeVar

from benchpack.errors import DataError, Problem
from benchpack.model.study import Study
from benchpack.session.change_names import with_renamed_study
from benchpack.session.state import State

RecordsT = TypeVar("RecordsT")


def with_stored_study(state: State, study: Study, *, instead_of: str) -> State:
    """Give the state with a study on screen that takes the place of another.

    Parameters
    ----------
    state : State
        The state before.
    study : Study
        The study. The changes of the one it replaces follow it.
    instead_of : str
        Name of the study it replaces, which may be its own; empty to add it.

    Raises
    ------
    DataError
        When another study has its name.
    """
    library = state.library
    others = [old.name for old in library.studies if old.name != instead_of]
    if study.name in others:
        problem = Problem(
            f"A study is already called {study.name!r}.",
            "Give this one another name.",
            column="name",
            value=study.name,
        )
        raise DataError(problem)
    studies = tuple(study if old.name == instead_of else old for old in library.studies)
    if study not in studies:
        studies = (*studies, study)
    library = with_renamed_study(library, instead_of, study.name)
    return State(replace(library, studies=studies), study.name)


def without_study(state: State, name: str) -> State:
    """Give the state without a study, its changes and its sets of assumptions.

    Raises
    ------
    DataError
        When it is the only one.
    """
    library = state.library
    studies = tuple(study for study in library.studies if study.name != name)
    if not studies:
        raise DataError(Problem("This is the only study.", "Add another one first."))
    shown = studies[0].name if state.study_name == name else state.study_name
    kept = replace(
        library,
        studies=studies,
        changes=_without(library.changes, name),
        assumption_sets=_without(library.assumption_sets, name),
    )
    return State(kept, shown)


def _without(groups: Mapping[str, RecordsT], name: str) -> Mapping[str, RecordsT]:
    if name not in groups:
        return groups
    return {study: own for study, own in groups.items() if study != name}
