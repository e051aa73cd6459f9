"""Edits of the proposal as the page makes them, each one step of undo."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from benchpack.errors import Problem
from benchpack.model.change import Change
from benchpack.session.change_edits import (
    with_change_switched,
    with_change_values,
    with_changes_chosen,
    with_changes_ordered,
    with_new_change,
    without_changes,
)
from benchpack.session.state import State
from benchpack.ui.tables.edits import attempt
from benchpack.ui.workspace import Workspace


class ProposalEdits:
    """Changes the proposal of the study on screen.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    """

    def __init__(self, workspace: Workspace) -> None:
        self._workspace = workspace

    @property
    def study(self) -> str:
        """Name of the study on screen."""
        return self._workspace.state.study.name

    def change(self, name: str) -> Change | None:
        """Give a change by its name."""
        found = (one for one in self._workspace.state.changes if one.name == name)
        return next(found, None)

    def add(self, change: Change) -> tuple[Problem, ...]:
        """Add a change at the end; gives why it cannot be."""

        def make(state: State) -> State:
            return with_new_change(state, change)

        return attempt(self._workspace, f"change {change.name}", make)

    def set(
        self, name: str, label: str, values: Mapping[str, Any]
    ) -> tuple[Problem, ...]:
        """Give a change other values; gives why it cannot be so."""
        study = self.study

        def make(state: State) -> State:
            return with_change_values(state, study, name, values)

        return attempt(self._workspace, f"{label} of {name}", make)

    def switch(self, name: str) -> bool:
        """Switch a change on that is off, or off; True when it was done."""
        study, change = self.study, self.change(name)
        if change is None:
            return False
        is_on = not change.is_on

        def make(state: State) -> State:
            return with_change_switched(state, study, name, is_on=is_on)

        word = "on" if is_on else "off"
        return self._workspace.edit(f"{name} switched {word}", make)

    def order(self, names: Sequence[str], moved: str) -> bool:
        """Put the changes into another order; True when they are."""
        study = self.study

        def make(state: State) -> State:
            return with_changes_ordered(state, study, names)

        return self._workspace.edit(f"place of {moved}", make)

    def remove(self, names: Sequence[str]) -> bool:
        """Remove changes; True when they are gone."""
        study = self.study
        what = names[0] if len(names) == 1 else f"{len(names)} changes"

        def make(state: State) -> State:
            return without_changes(state, study, names)

        return self._workspace.edit(f"removal of {what}", make)

    def choose(self, names: Sequence[str]) -> bool:
        """Switch on just these; True when it was done."""
        study = self.study

        def make(state: State) -> State:
            return with_changes_chosen(state, study, names)

        return self._workspace.edit("suggestion taken over", make)
