"""Edits of named sets of assumptions as pure functions."""

from __future__ import annotations

from dataclasses import replace

from benchpack.errors import DataError, Problem
from benchpack.model.assumptions import AssumptionSet, assumption_values
from benchpack.session.state import State


def with_kept_set(state: State, name: str) -> State:
    """Give the state in which the present assumptions are kept under a name.

    Parameters
    ----------
    state : State
        The state before.
    name : str
        Name of the set; one that is there already is replaced.

    Raises
    ------
    DataError
        When the name is blank.
    """
    # Nothing belongs to a study that is not stored yet.
    state = state.with_study()
    study = state.study
    kept = AssumptionSet(study.name, name.strip(), **assumption_values(study))
    own = state.library.sets_of(study.name)
    names = [one.name for one in own]
    if kept.name in names:
        own = tuple(kept if one.name == kept.name else one for one in own)
    else:
        own = (*own, kept)
    return _with_sets(state, own)


def with_used_set(state: State, name: str) -> State:
    """Give the state whose study reckons with the assumptions of a set.

    Raises
    ------
    DataError
        When there is no such set.
    """
    return state.with_study(**assumption_values(_found(state, name)))


def with_renamed_set(state: State, old: str, new: str) -> State:
    """Give the state in which a set has another name.

    Raises
    ------
    DataError
        When there is no such set, the name is blank, or another set has it.
    """
    found, name = _found(state, old), new.strip()
    own = state.library.sets_of(state.study.name)
    if name != old and any(one.name == name for one in own):
        raise DataError(
            Problem(
                f"A set of assumptions is already called {name!r}.",
                "Give this one another name.",
                column="assumption set",
                value=name,
            )
        )
    renamed = replace(found, name=name)
    return _with_sets(state, tuple(renamed if one is found else one for one in own))


def without_set(state: State, name: str) -> State:
    """Give the state without a set of assumptions.

    Raises
    ------
    DataError
        When there is no such set.
    """
    found = _found(state, name)
    own = state.library.sets_of(state.study.name)
    return _with_sets(state, tuple(one for one in own if one is not found))


def _found(state: State, name: str) -> AssumptionSet:
    own = state.library.sets_of(state.study.name)
    found = next((one for one in own if one.name == name), None)
    if found is None:
        raise DataError(
            Problem(f"There is no set of assumptions {name!r}.", "Choose another one.")
        )
    return found


def _with_sets(state: State, own: tuple[AssumptionSet, ...]) -> State:
    sets = {**state.library.assumption_sets, state.study.name: own}
    if not own:
        del sets[state.study.name]
    return state.with_library(assumption_sets=sets)
