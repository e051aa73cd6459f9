"""What is open: one immutable state, and what differs between two of them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Flag, auto
from typing import Any

from benchpack.model.change import Change
from benchpack.model.library import Library
from benchpack.model.study import Study


class Changed(Flag):
    """Which kinds of records an edit touched; hidden pages remember it."""

    NOTHING = 0
    PACKS = auto()
    PARTS = auto()
    JOINTS = auto()
    MATERIALS = auto()
    SOURCES = auto()
    STUDY = auto()
    ABOUT = auto()
    CHANGES = auto()
    EVERYTHING = PACKS | PARTS | JOINTS | MATERIALS | SOURCES | STUDY | ABOUT | CHANGES


@dataclass(frozen=True, slots=True)
class State:
    """A library and the study that is looked at.

    Parameters
    ----------
    library : Library
        All records.
    study_name : str
        Name of the study on screen; a study of that name need not be stored yet.
    """

    library: Library
    study_name: str = ""

    @property
    def study(self) -> Study:
        """The study on screen."""
        return self.library.study(self.study_name) or self.library.first_study()

    @property
    def changes(self) -> tuple[Change, ...]:
        """The changes of the study on screen, in order."""
        return self.library.changes_of(self.study.name)

    def with_study(self, **changes: Any) -> State:
        """Give the state in which some attributes of the study are changed.

        Raises
        ------
        DataError
            When the study cannot be so.
        """
        study = replace(self.study, **changes)
        return State(self.library.with_study(study), study.name)

    def with_library(self, **changes: Any) -> State:
        """Give the state in which some attributes of the library are changed."""
        return replace(self, library=replace(self.library, **changes))


_FLAGS = {
    "packs": Changed.PACKS,
    "parts": Changed.PARTS,
    "joints": Changed.JOINTS,
    "materials": Changed.MATERIALS,
    "sources": Changed.SOURCES,
    "studies": Changed.STUDY,
    "changes": Changed.CHANGES,
    "assumption_sets": Changed.STUDY,
    "title": Changed.ABOUT,
    "note": Changed.ABOUT,
}


def difference(old: State, new: State) -> Changed:
    """Tell which kinds of records are not the same objects in two states."""
    changed = Changed.NOTHING
    for name, flag in _FLAGS.items():
        if getattr(old.library, name) is not getattr(new.library, name):
            changed |= flag
    if old.study_name != new.study_name:
        changed |= Changed.STUDY
    return changed
