"""Edits of rows of the table of materials as pure functions, all or none."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.material import Material
from benchpack.session.material_edits import name_taken, with_material_names
from benchpack.session.record_edits import ADDED
from benchpack.session.state import State


def with_material_rows(
    state: State,
    changes: Sequence[tuple[int, Mapping[str, Any]]],
    added: Sequence[Mapping[str, Any]],
) -> State:
    """Give the state in which materials are changed and new ones added, all or none.

    Parameters
    ----------
    state : State
        The state before.
    changes : sequence of (row, values)
        Row of a material and its new attribute values. A new name is carried through
        to the parts and the changes that name it.
    added : sequence of dict
        Attribute values of new materials, in order.

    Raises
    ------
    DataError
        With every problem; those of new materials have the source `ADDED`.
    """
    materials = list(state.library.materials)
    problems: list[Problem] = []
    renamed: dict[str, str] = {}
    for row, values in changes:
        old = materials[row]
        try:
            new = replace(old, **values)
        except DataError as error:
            problems.extend(p.at(record=old.name) for p in error.problems)
            continue
        materials[row] = new
        if new.name != old.name:
            renamed[old.name] = new.name
    for place, values in enumerate(added):
        try:
            materials.append(_made(values))
        except DataError as error:
            problems.extend(p.at(source=ADDED, row=place) for p in error.problems)
    problems += _clashes(materials, len(state.library.materials))
    if problems:
        raise DataError(*problems)
    state = state.with_library(materials=tuple(materials))
    return with_material_names(state, renamed) if renamed else state


def _made(values: Mapping[str, Any]) -> Material:
    if not str(values.get("name") or "").strip():
        raise DataError(Problem("The material has no name.", "Give it one."))
    return Material(**values)


def _clashes(materials: Sequence[Material], known: int) -> list[Problem]:
    found = []
    seen: set[str] = set()
    for row, material in enumerate(materials):
        key = material.name.strip().casefold()
        if key in seen:
            problem = name_taken(material.name)
            is_new = row >= known
            found.append(
                problem.at(source=ADDED, row=row - known) if is_new else problem
            )
        seen.add(key)
    return found
