"""Edits of single materials as pure functions."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from benchpack.errors import Problem
from benchpack.model.material import Material
from benchpack.session.change_names import with_renamed_materials
from benchpack.session.state import State


def without_materials(state: State, names: Collection[str]) -> State:
    """Give the state in which the library lacks some materials, by name.

    Parts and changes that name one keep its name, and are refused where they need it.
    """
    gone = frozenset(names)
    kept = tuple(one for one in state.library.materials if one.name not in gone)
    return state.with_library(materials=kept)


def free_material_name(materials: Sequence[Material], wanted: str) -> str:
    """Give a name that no material has yet: the wanted one, or one with a number.

    Parameters
    ----------
    materials : sequence of Material
        The materials of the library.
    wanted : str
        What it is.
    """
    taken = {material.name for material in materials}
    name, number = wanted, 2
    while name in taken:
        name, number = f"{wanted} {number}", number + 1
    return name


def with_material_names(state: State, renamed: Mapping[str, str]) -> State:
    """Give the state in which parts and changes follow new names of materials.

    Parameters
    ----------
    state : State
        The state whose materials have their new names already.
    renamed : mapping of str to str
        New names by old ones.
    """
    library = state.library
    parts = {
        pack: tuple(
            replace(part, material=renamed[part.material])
            if part.material in renamed
            else part
            for part in own
        )
        for pack, own in library.parts.items()
        if any(part.material in renamed for part in own)
    }
    if parts:
        library = replace(library, parts={**library.parts, **parts})
    return replace(state, library=with_renamed_materials(library, renamed))


def name_taken(name: str) -> Problem:
    """Say that a material has the name already."""
    return Problem(
        f"A material is already called {name!r}.",
        "Give this one another name.",
        column="material",
        value=name,
        record=name,
    )
