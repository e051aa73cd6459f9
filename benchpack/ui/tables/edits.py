"""How a table hands edits on."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Protocol

from benchpack.errors import DataError, Problem
from benchpack.session.state import State
from benchpack.ui.workspace import Workspace

Values = Mapping[str, Any]
"""New attribute values of one record."""


class TableEdits(Protocol):
    """What a table needs to change the records it shows."""

    def change(
        self,
        label: str,
        changes: Sequence[tuple[int, Values]],
        *,
        added: Sequence[Values] = (),
    ) -> tuple[Problem, ...]:
        """Change records by row and add new ones, all or none as one undo step.

        Problems of added records carry their place in `added` as the row.
        """


def attempt(
    workspace: Workspace, label: str, make: Callable[[State], State]
) -> tuple[Problem, ...]:
    """Make an edit and give what was wrong with it.

    Parameters
    ----------
    workspace : Workspace
        The open document; it also lists the problems.
    label : str
        The edit in words.
    make : callable
        Gives the next state of the present one.

    Returns
    -------
    tuple of Problem
        Empty when the edit was made.
    """
    found: list[Problem] = []

    def watched(state: State) -> State:
        try:
            return make(state)
        except DataError as error:
            found.extend(error.problems)
            raise

    if workspace.edit(label, watched):
        return ()
    return tuple(found) or (
        Problem("The edit could not be stored.", "See the list of problems."),
    )
