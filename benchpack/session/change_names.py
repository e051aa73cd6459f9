"""Names that changes point to, carried along when a person renames what they name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TypeVar

from benchpack.model.assumptions import AssumptionSet
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library

OwnedT = TypeVar("OwnedT", Change, AssumptionSet)
Names = Mapping[str, str]
"""New names by old ones."""


def with_renamed_parts(library: Library, pack: str, parts: Names) -> Library:
    """Give the library whose changes call the parts of a pack by their new names.

    Parameters
    ----------
    library : Library
        The library before.
    pack : str
        Subject of the studies whose changes are gone through.
    parts : mapping of str to str
        New names by old ones.
    """

    def renamed(change: Change) -> Change:
        into = change.into
        if change.kind is not ChangeKind.SWAP_JOINTS:
            into = parts.get(into, into)
        return replace(change, parts=_new(change.parts, parts), into=into)

    return _of_subject(library, pack, renamed) if parts else library


def with_renamed_joints(library: Library, pack: str, joints: Names) -> Library:
    """Give the library whose changes call the joints of a pack by their new names."""

    def renamed(change: Change) -> Change:
        into = change.into
        if change.kind is ChangeKind.SWAP_JOINTS:
            into = joints.get(into, into)
        return replace(change, joints=_new(change.joints, joints), into=into)

    return _of_subject(library, pack, renamed) if joints else library


def with_renamed_materials(library: Library, materials: Names) -> Library:
    """Give the library whose changes call materials by their new names, all at once."""

    def renamed(change: Change) -> Change:
        new = materials.get(change.material)
        return change if new is None else replace(change, material=new)

    return _mapped(library, library.changes, renamed)


def with_renamed_study(library: Library, old: str, new: str) -> Library:
    """Give the library in which what is a study's own follows its new name."""
    if old == new:
        return library
    return replace(
        library,
        changes=_follow(library.changes, old, new),
        assumption_sets=_follow(library.assumption_sets, old, new),
    )


def _follow(
    groups: Mapping[str, tuple[OwnedT, ...]], old: str, new: str
) -> Mapping[str, tuple[OwnedT, ...]]:
    if old not in groups:
        return groups
    return {
        new if study == old else study: tuple(replace(one, study=new) for one in own)
        if study == old
        else own
        for study, own in groups.items()
    }


def _new(names: tuple[str, ...], renamed: Names) -> tuple[str, ...]:
    # Two old names may meet in one new name, which a change names once.
    return tuple(dict.fromkeys(renamed.get(name, name) for name in names))


def _of_subject(
    library: Library, pack: str, renamed: Callable[[Change], Change]
) -> Library:
    names = {study.name for study in library.studies if study.subject == pack}
    return _mapped(library, [n for n in library.changes if n in names], renamed)


def _mapped(
    library: Library,
    studies: Mapping[str, tuple[Change, ...]] | list[str],
    renamed: Callable[[Change], Change],
) -> Library:
    """Give the library itself where no change of the studies comes out another."""
    found = {name: tuple(map(renamed, library.changes[name])) for name in studies}
    changed = {n: own for n, own in found.items() if own != library.changes[n]}
    if not changed:
        return library
    return replace(library, changes={**library.changes, **changed})
