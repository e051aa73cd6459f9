"""Edits of a proposal's changes as pure functions."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.change import Change
from benchpack.session.state import State


def with_new_change(state: State, change: Change, *, at: int | None = None) -> State:
    """Give the state with one more change in its study's proposal.

    Parameters
    ----------
    state : State
        The state before.
    change : Change
        The change. Its study is stored along with it where it is the one on screen
        and was not stored yet.
    at : int, optional
        Place in the order, from 0; at the end by default.

    Raises
    ------
    DataError
        When there is no such study, or it has a change of that name.
    """
    library = state.library
    if library.study(change.study) is None:
        if change.study != state.study.name:
            raise DataError(_no_study(change.study))
        state = state.with_study()
    changes = list(state.library.changes_of(change.study))
    if any(old.name == change.name for old in changes):
        raise DataError(_taken(change.name))
    changes.insert(len(changes) if at is None else at, change)
    return with_changes(state, change.study, changes)


def with_change_values(
    state: State, study: str, change: str, values: Mapping[str, Any]
) -> State:
    """Give the state in which some attributes of one change are others.

    Parameters
    ----------
    state : State
        The state before.
    study, change : str
        Names of the study and of the change.
    values : mapping of str to object
        New attribute values. A new name is carried through to the changes that
        require or exclude it.

    Raises
    ------
    DataError
        When the change cannot be so, the name is taken, or there is no such change.
    """
    changes = list(state.library.changes_of(study))
    at = _place(state, study, change)
    new = replace(changes[at], **values)
    if new.study != study:
        what = f"{change} belongs to {study}."
        remedy = "Make a new change in the other study instead."
        raise DataError(Problem(what, remedy, record=change, column="study"))
    changes[at] = new
    if new.name != change:
        if sum(other.name == new.name for other in changes) > 1:
            raise DataError(_taken(new.name).at(record=change))
        changes = [_pointing(other, change, new.name) for other in changes]
    return with_changes(state, study, changes)


def without_changes(state: State, study: str, names: Collection[str]) -> State:
    """Give the state in which a proposal lacks some changes, by name.

    What excluded them no longer does; what requires them still says so.
    """
    gone = frozenset(names)
    kept = []
    for change in state.library.changes_of(study):
        if change.name in gone:
            continue
        left = tuple(name for name in change.excludes if name not in gone)
        same = left == change.excludes
        kept.append(change if same else replace(change, excludes=left))
    return with_changes(state, study, kept)


def with_changes_ordered(state: State, study: str, names: Sequence[str]) -> State:
    """Give the state in which the changes of a proposal stand in another order.

    Parameters
    ----------
    state : State
        The state before.
    study : str
        Name of the study.
    names : sequence of str
        Names of all its changes in the new order.

    Raises
    ------
    DataError
        When the names are not those of its changes, each once.
    """
    changes = {change.name: change for change in state.library.changes_of(study)}
    if sorted(names) != sorted(changes):
        what = f"The order does not name each change of {study} once."
        raise DataError(Problem(what, "Order all of them.", record=study))
    return with_changes(state, study, [changes[name] for name in names])


def with_change_switched(
    state: State, study: str, change: str, *, is_on: bool
) -> State:
    """Give the state in which one change is on or off.

    Raises
    ------
    DataError
        When there is no such change.
    """
    return with_change_values(state, study, change, {"is_on": is_on})


def with_changes_chosen(state: State, study: str, names: Collection[str]) -> State:
    """Give the state in which just these changes of a proposal are on.

    Raises
    ------
    DataError
        When one of them is not there.
    """
    for name in names:
        _place(state, study, name)
    changes = state.library.changes_of(study)
    chosen = [
        change
        if change.is_on == (change.name in names)
        else replace(change, is_on=not change.is_on)
        for change in changes
    ]
    return with_changes(state, study, chosen)


def with_changes(state: State, study: str, changes: Sequence[Change]) -> State:
    """Give the state in which a proposal has just these changes, in this order.

    Parameters
    ----------
    state : State
        The state before; it is given back where nothing differs.
    study : str
        Name of the study.
    changes : sequence of Change
        The changes, each with a name of its own.

    Raises
    ------
    DataError
        When there is no such study, or a change is of another one or named twice.
    """
    library = state.library
    if library.study(study) is None:
        raise DataError(_no_study(study))
    seen: set[str] = set()
    for change in changes:
        if change.study != study:
            what = f"{change.name} belongs to {change.study}, not to {study}."
            raise DataError(Problem(what, record=change.name, column="study"))
        if change.name in seen:
            raise DataError(_taken(change.name))
        seen.add(change.name)
    own = tuple(changes)
    if own == library.changes_of(study):
        return state
    all_changes = {**library.changes, study: own}
    if not own:
        del all_changes[study]
    return state.with_library(changes=all_changes)


def free_change_name(changes: Collection[Change], wanted: str) -> str:
    """Give a name that no change has yet: the wanted one, or one with a number.

    Parameters
    ----------
    changes : collection of Change
        The changes of the proposal.
    wanted : str
        What it does, "lid panel in SMC" for instance.
    """
    taken = {change.name for change in changes}
    name, number = wanted, 2
    while name in taken:
        name, number = f"{wanted} {number}", number + 1
    return name


def _pointing(change: Change, old: str, new: str) -> Change:
    if old not in (*change.requires, *change.excludes):
        return change
    requires = tuple(new if name == old else name for name in change.requires)
    excludes = tuple(new if name == old else name for name in change.excludes)
    return replace(change, requires=requires, excludes=excludes)


def _place(state: State, study: str, change: str) -> int:
    names = [own.name for own in state.library.changes_of(study)]
    if change not in names:
        raise DataError(Problem(f"{study} has no change {change!r}.", record=change))
    return names.index(change)


def _no_study(name: str) -> Problem:
    what = f"There is no study called {name!r}."
    return Problem(what, "Add the study first.", column="study", value=name)


def _taken(name: str) -> Problem:
    what = f"A change is already called {name!r}."
    remedy = "Give this one another name."
    return Problem(what, remedy, record=name, column="change", value=name)
