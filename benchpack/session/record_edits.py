"""Edits of single records beside packs: pasted rows, parts and sources."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

import numpy as np

from benchpack.errors import DataError, Problem
from benchpack.model.material import Source
from benchpack.model.pack import PACK_FIELDS, Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.session.change_names import with_renamed_parts
from benchpack.session.edits import with_pack_blocks, with_parts
from benchpack.session.state import State

ADDED = "added"
"""Source of problems whose row is a place among the new records, from 0."""


def with_pack_rows(
    state: State,
    changes: Sequence[tuple[int, Mapping[str, Any]]],
    added: Sequence[Mapping[str, Any]],
) -> State:
    """Give the state in which packs are changed and new ones added, all or none.

    Parameters
    ----------
    state : State
        The state before.
    changes : sequence of (row, values)
        As for `with_pack_blocks`.
    added : sequence of dict
        Attribute values of new packs, in order.

    Raises
    ------
    DataError
        With every problem; those of new packs have the source `ADDED`.
    """
    problems: list[Problem] = []
    new_state = state
    try:
        new_state = with_pack_blocks(state, changes)
    except DataError as error:
        problems.extend(error.problems)
    packs: list[Pack] = []
    taken: set[str] = set()
    for place, values in enumerate(added):
        try:
            pack = _new_pack(values)
        except DataError as error:
            problems.extend(p.at(source=ADDED, row=place) for p in error.problems)
            continue
        if new_state.library.packs.has(pack.name) or pack.name in taken:
            problem = _taken("pack", pack.name)
            problems.append(problem.at(source=ADDED, row=place, record=pack.name))
        taken.add(pack.name)
        packs.append(pack)
    if problems:
        raise DataError(*problems)
    if not packs:
        return new_state
    table = new_state.library.packs.joined(PackTable.from_packs(packs))
    return new_state.with_library(packs=table)


def _new_pack(values: Mapping[str, Any]) -> Pack:
    missing = [
        Problem(f"{field.title} is empty.", "Fill it in.", column=field.header())
        for field in PACK_FIELDS
        if field.required and values.get(field.name) in (None, "")
    ]
    if missing:
        raise DataError(*missing)
    return Pack(**values)


def _taken(kind: str, name: str) -> Problem:
    what = f"A {kind} is already called {name!r}."
    return Problem(what, "Give this one another name.", column=kind, value=name)


def with_new_part(state: State, part: Part) -> State:
    """Give the state with one more part at the end of its pack's.

    Raises
    ------
    DataError
        When the pack has a part of that name.
    """
    parts = state.library.parts_of(part.pack)
    if any(old.name == part.name for old in parts):
        raise DataError(_taken("part", part.name).at(record=part.name))
    return with_parts(state, part.pack, (*parts, part))


def with_part_values(
    state: State, pack: str, part: str, values: Mapping[str, Any]
) -> State:
    """Give the state in which some attributes of one part are changed.

    Parameters
    ----------
    state : State
        The state before.
    pack, part : str
        Names of the pack and of the part.
    values : mapping of str to object
        New attribute values. A new name is carried through to the parts inside it,
        the joints it is joined by and the changes that act on it.

    Raises
    ------
    DataError
        When the part cannot be so, the name is taken, or there is no such part.
    """
    parts = list(state.library.parts_of(pack))
    place = next((i for i, old in enumerate(parts) if old.name == part), None)
    if place is None:
        raise DataError(Problem(f"{pack} has no part {part!r}.", record=part))
    new = replace(parts[place], **values)
    if new.name == part:
        parts[place] = new
        return with_parts(state, pack, parts)
    if any(old.name == new.name for old in parts):
        raise DataError(_taken("part", new.name).at(record=part))
    parts[place] = new
    parts = [
        replace(old, inside=new.name) if old.inside == part else old for old in parts
    ]
    state = _with_joined(with_parts(state, pack, parts), pack, part, new.name)
    library = with_renamed_parts(state.library, pack, {part: new.name})
    return replace(state, library=library)


def _with_joined(state: State, pack: str, old: str, new: str) -> State:
    joints = state.library.joints_of(pack)
    if not any(old in (joint.joins, joint.to) for joint in joints):
        return state
    renamed = tuple(
        replace(
            joint,
            joins=new if joint.joins == old else joint.joins,
            to=new if joint.to == old else joint.to,
        )
        for joint in joints
    )
    return state.with_library(joints={**state.library.joints, pack: renamed})


def without_parts(state: State, pack: str, names: Collection[str]) -> State:
    """Give the state in which a pack lacks some parts, by name.

    Parts inside a part that is removed move up to where it sat.
    """
    parts = state.library.parts_of(pack)
    outside = {part.name: part.inside for part in parts if part.name in names}

    def place(inside: str) -> str:
        seen = set()
        while inside in outside and inside not in seen:
            seen.add(inside)
            inside = outside[inside]
        return "" if inside in outside else inside

    kept = [
        part if part.inside not in outside else replace(part, inside=place(part.inside))
        for part in parts
        if part.name not in names
    ]
    return with_parts(state, pack, kept)


def with_source(state: State, name: str, source: Source) -> State:
    """Give the state in which the source of a name is replaced, or a new one added.

    Parameters
    ----------
    state : State
        The state before.
    name : str
        Name of the source before the edit.
    source : Source
        The source after it. A new name is carried through to the packs.

    Raises
    ------
    DataError
        When another source has the new name.
    """
    sources = state.library.sources
    names = [old.name for old in sources]
    if source.name != name and source.name in names:
        raise DataError(_taken("source", source.name).at(record=name))
    if name in names:
        at = names.index(name)
        sources = (*sources[:at], source, *sources[at + 1 :])
    else:
        sources = (*sources, source)
    state = state.with_library(sources=sources)
    packs = state.library.packs
    rows = np.flatnonzero(packs.columns["source"] == name).tolist()
    if source.name == name or not name or not rows:
        return state
    packs = packs.with_cells("source", rows, [source.name] * len(rows))
    return state.with_library(packs=packs)
