"""Edits of packs as the table and the form hand them on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from benchpack.errors import Problem
from benchpack.session.record_edits import with_pack_rows
from benchpack.session.state import State
from benchpack.ui.tables.edits import attempt
from benchpack.ui.workspace import Workspace


class PackEdits:
    """Changes and adds packs of the open document.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    """

    def __init__(self, workspace: Workspace) -> None:
        self._workspace = workspace

    def change(
        self,
        label: str,
        changes: Sequence[tuple[int, Mapping[str, Any]]],
        *,
        added: Sequence[Mapping[str, Any]] = (),
    ) -> tuple[Problem, ...]:
        """Change packs by row and add new ones, see `TableEdits`."""

        def make(state: State) -> State:
            return with_pack_rows(state, changes, added)

        return attempt(self._workspace, label, make)
