"""Edits as pure functions: a state and a gesture give the next state."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELD
from benchpack.model.pack_table import PackTable, column_value
from benchpack.model.part import Part
from benchpack.session.state import State


def _name_taken(name: str) -> DataError:
    return DataError(
        Problem(
            f"A pack is already called {name!r}.",
            "Give this one another name.",
            column="pack",
            value=name,
        )
    )


def with_pack_values(state: State, row: int, values: Mapping[str, Any]) -> State:
    """Give the state in which some attributes of one pack are changed.

    Parameters
    ----------
    state : State
        The state before.
    row : int
        Row of the pack in the library.
    values : mapping of str to object
        New attribute values, None for "not known". A new name is carried through to
        parts, joints and studies.

    Raises
    ------
    DataError
        When the pack cannot be so, or the name is taken.
    """
    return with_pack_blocks(state, [(row, values)])


def with_pack_blocks(
    state: State, changes: Iterable[tuple[int, Mapping[str, Any]]]
) -> State:
    """Give the state in which several packs are changed at once, or none.

    Parameters
    ----------
    state : State
        The state before.
    changes : iterable of (row, values)
        As for `with_pack_values`.

    Raises
    ------
    DataError
        With the problems of every pack that cannot be so.
    """
    packs = state.library.packs
    problems: list[Problem] = []
    renamed: dict[str, str] = {}
    cells: dict[str, dict[int, Any]] = {}
    for row, values in changes:
        old = packs[row]
        try:
            new = replace(old, **values)
        except DataError as error:
            problems.extend(problem.at(row=row + 1) for problem in error.problems)
            continue
        if new.name != old.name:
            renamed[old.name] = new.name
        for name in values:
            value = column_value(PACK_FIELD[name], getattr(new, name))
            cells.setdefault(name, {})[row] = value
    if not problems:
        problems.extend(_clashes(packs, renamed))
    if problems:
        raise DataError(*problems)
    for name, new_cells in cells.items():
        packs = packs.with_cells(name, list(new_cells), list(new_cells.values()))
    return _renamed(state, packs, renamed)


def _clashes(packs: PackTable, renamed: Mapping[str, str]) -> list[Problem]:
    taken: set[str] = set()
    clashes = []
    for name in renamed.values():
        if name in taken or (packs.has(name) and name not in renamed):
            clashes.append(_name_taken(name).problems[0])
        taken.add(name)
    return clashes


def _renamed(state: State, packs: PackTable, renamed: Mapping[str, str]) -> State:
    library = replace(state.library, packs=packs)
    if not renamed:
        return replace(state, library=library)

    def new_name(name: str) -> str:
        return renamed.get(name, name)

    parts = {
        new_name(name): tuple(replace(part, pack=renamed[name]) for part in parts)
        if name in renamed
        else parts
        for name, parts in library.parts.items()
    }
    joints = {
        new_name(name): tuple(replace(joint, pack=renamed[name]) for joint in joints)
        if name in renamed
        else joints
        for name, joints in library.joints.items()
    }
    studies = tuple(
        replace(
            study,
            subject=new_name(study.subject),
            reference=new_name(study.reference),
            peers=tuple(map(new_name, study.peers)),
        )
        for study in library.studies
    )
    library = replace(library, parts=parts, joints=joints, studies=studies)
    return replace(state, library=library)


def without_packs(state: State, rows: Sequence[int]) -> State:
    """Give the state without some packs, their parts and their joints.

    Parameters
    ----------
    state : State
        The state before.
    rows : sequence of int
        Rows of the packs in the library.
    """
    library = state.library
    gone = {str(library.packs.names[row]) for row in rows}
    return state.with_library(
        packs=library.packs.without(rows),
        parts={n: p for n, p in library.parts.items() if n not in gone},
        joints={n: j for n, j in library.joints.items() if n not in gone},
    )


def with_parts(state: State, pack: str, parts: Sequence[Part]) -> State:
    """Give the state in which a pack has just these parts."""
    return state.with_library(parts={**state.library.parts, pack: tuple(parts)})


def with_joints(state: State, pack: str, joints: Sequence[Joint]) -> State:
    """Give the state in which a pack has just these joints."""
    return state.with_library(joints={**state.library.joints, pack: tuple(joints)})


def with_taken_in(state: State, other: Library) -> State:
    """Give the state with the records of another library taken in.

    Packs, parts, joints, materials, sources and studies are added; a pack or study
    whose name is already there is replaced along with its parts and joints or with
    its changes, where it brings any.

    Parameters
    ----------
    state : State
        The state before.
    other : Library
        What was read from a file.
    """
    library = state.library
    packs = library.packs
    known = [row for row, name in enumerate(other.packs.names) if packs.has(name)]
    rows = [packs.position(name) for name in other.packs.names[known]]
    for name, column in other.packs.columns.items() if known else ():
        packs = packs.with_cells(name, rows, column[known])
    packs = packs.joined(other.packs.without(known)) if len(other.packs) else packs
    return state.with_library(
        packs=packs,
        parts={**library.parts, **other.parts},
        joints={**library.joints, **other.joints},
        materials=_by_name(library.materials, other.materials),
        sources=_by_name(library.sources, other.sources),
        studies=_by_name(library.studies, other.studies),
        changes={**library.changes, **other.changes},
    )


def with_records_joined(state: State, other: Library) -> State:
    """Give the state in which parts and joints have joined the packs they name.

    Parameters
    ----------
    state : State
        The state before.
    other : Library
        Holds them. One whose name its pack has already takes that one's place; all
        others of the pack stay.

    Raises
    ------
    DataError
        When a pack is not there.
    """
    library = state.library
    names = dict.fromkeys((*other.parts, *other.joints))
    lacking = [name for name in names if not library.packs.has(name)]
    if lacking:
        remedy = "Add the pack first."
        raise DataError(
            *(Problem(f"There is no pack called {n!r}.", remedy) for n in lacking)
        )
    return state.with_library(
        parts=_joined(library.parts, other.parts),
        joints=_joined(library.joints, other.joints),
    )


def _joined(
    old: Mapping[str, tuple[Any, ...]], new: Mapping[str, tuple[Any, ...]]
) -> Mapping[str, tuple[Any, ...]]:
    if not new:
        return old
    groups = dict(old)
    for pack, records in new.items():
        groups[pack] = _by_name(groups.get(pack, ()), records)
    return groups


def _by_name(old: tuple[Any, ...], new: tuple[Any, ...]) -> tuple[Any, ...]:
    if not new:
        return old
    return tuple({record.name: record for record in (*old, *new)}.values())
