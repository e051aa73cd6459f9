"""Edits of the joints of one pack as table, form and entry bar hand them on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from benchpack.errors import Problem
from benchpack.model.joint import Joint
from benchpack.session.joint_edits import (
    with_joint_rows,
    with_joint_values,
    with_new_joint,
    without_joints,
)
from benchpack.session.state import State
from benchpack.ui.tables.edits import attempt
from benchpack.ui.workspace import Workspace


class PackJoints:
    """Changes, adds and removes joints of the pack that is shown.

    Parameters
    ----------
    workspace : Workspace
        The open document.

    Attributes
    ----------
    pack : str
        Name of the pack that is shown.
    """

    def __init__(self, workspace: Workspace) -> None:
        self._workspace = workspace
        self.pack = ""

    def joints(self) -> tuple[Joint, ...]:
        """Give the joints of the pack."""
        return self._workspace.state.library.joints_of(self.pack)

    def change(
        self,
        label: str,
        changes: Sequence[tuple[int, Mapping[str, Any]]],
        *,
        added: Sequence[Mapping[str, Any]] = (),
    ) -> tuple[Problem, ...]:
        """Change joints by row and add new ones, see `TableEdits`."""
        pack = self.pack

        def make(state: State) -> State:
            return with_joint_rows(state, pack, changes, added)

        return attempt(self._workspace, label, make)

    def add(self, joint: Joint, label: str) -> tuple[Problem, ...]:
        """Add a joint at the end; gives why it cannot be."""

        def make(state: State) -> State:
            return with_new_joint(state, joint)

        return attempt(self._workspace, label, make)

    def change_one(
        self, label: str, joint: str, values: Mapping[str, Any]
    ) -> tuple[Problem, ...]:
        """Change one joint by name; gives why it cannot be so."""
        pack = self.pack

        def make(state: State) -> State:
            return with_joint_values(state, pack, joint, values)

        return attempt(self._workspace, label, make)

    def remove(self, names: Sequence[str]) -> bool:
        """Remove joints by name; True when they are gone."""
        pack = self.pack
        what = names[0] if len(names) == 1 else f"{len(names)} joints"

        def make(state: State) -> State:
            return without_joints(state, pack, frozenset(names))

        return self._workspace.edit(f"removal of {what}", make)
