"""The open document: the only door through which a state changes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from benchpack.model.library import Library
from benchpack.session.state import Changed, State, difference

UNDO_LIMIT = 500
"""How many edits can be taken back."""


class Store(Protocol):
    """Where a library is kept; each write is one transaction."""

    def write(self, old: Library, new: Library) -> None:
        """Store what differs between two libraries."""

    def close(self) -> None:
        """Let go of the file."""


@dataclass(frozen=True, slots=True)
class Change:
    """What listeners are told.

    Parameters
    ----------
    label : str
        The edit in words, as the undo menu names it.
    changed : Changed
        Kinds of records touched.
    passing : bool
        True for a state that is shown while a control is held, and not stored.
    """

    label: str
    changed: Changed
    passing: bool = False


@dataclass(frozen=True, slots=True)
class _Step:
    label: str
    before: State
    merge: str


class Document:
    """An open library: state, undo and redo, and writing through to the store.

    Parameters
    ----------
    state : State
        What is open.
    store : Store or None
        Where edits go; None keeps them in memory only.
    path : Path or None
        The library file, for the title and the list of recent files.
    """

    def __init__(
        self, state: State, store: Store | None = None, *, path: Path | None = None
    ) -> None:
        self._state = state
        self._kept = state
        self._store = store
        self.path = path
        self._undo: list[_Step] = []
        self._redo: list[_Step] = []
        self._listeners: list[Callable[[Change], None]] = []

    @property
    def state(self) -> State:
        """What is shown; while a control is held it may not be stored yet."""
        return self._state

    @property
    def undo_label(self) -> str:
        """Name of the edit that undo takes back, empty when there is none."""
        return self._undo[-1].label if self._undo else ""

    @property
    def redo_label(self) -> str:
        """Name of the edit that redo brings back, empty when there is none."""
        return self._redo[-1].label if self._redo else ""

    def subscribe(self, listener: Callable[[Change], None]) -> Callable[[], None]:
        """Tell a listener of every change; gives the call that stops it."""
        self._listeners.append(listener)

        def stop() -> None:
            if listener in self._listeners:
                self._listeners.remove(listener)

        return stop

    def apply(self, label: str, state: State, *, merge: str = "") -> None:
        """Make a state the open one: store it, remember the old one, tell listeners.

        Parameters
        ----------
        label : str
            The edit in words, ``mass of tray``.
        state : State
            The new state.
        merge : str
            Edits that follow each other with the same non-empty key are one step of
            undo.

        Raises
        ------
        DataError
            When it cannot be stored; the state then stays as it was.
        """
        before = self._kept
        if difference(before, state) is Changed.NOTHING:
            self._show(label, state, before)
            return
        self._write(before, state)
        follows = self._undo and not self._redo
        joins = merge and follows and self._undo[-1].merge == merge
        if not joins:
            self._undo.append(_Step(label, before, merge))
            del self._undo[:-UNDO_LIMIT]
        self._redo.clear()
        self._show(label, state, before)

    def preview(self, label: str, state: State) -> None:
        """Show a state while a control is held; `apply` or `settle` ends it.

        Parameters
        ----------
        label : str
            What is being changed.
        state : State
            The passing state.
        """
        changed = difference(self._state, state)
        self._state = state
        if changed is not Changed.NOTHING:
            self._tell(Change(label, changed, passing=True))

    def settle(self, label: str) -> None:
        """Keep what a preview shows as one edit."""
        self.apply(label, self._state)

    def undo(self) -> str:
        """Take back the last edit; gives its label, empty when there is none.

        Raises
        ------
        DataError
            When it cannot be stored.
        """
        return self._step(self._undo, self._redo)

    def redo(self) -> str:
        """Bring back the edit last taken back; gives its label or empty text.

        Raises
        ------
        DataError
            When it cannot be stored.
        """
        return self._step(self._redo, self._undo)

    def close(self) -> None:
        """Let go of the store and the listeners."""
        self._listeners.clear()
        if self._store is not None:
            self._store.close()
            self._store = None

    def _step(self, source: list[_Step], target: list[_Step]) -> str:
        if not source:
            return ""
        step = source[-1]
        before = self._kept
        self._write(before, step.before)
        source.pop()
        target.append(_Step(step.label, before, ""))
        self._show(step.label, step.before, before)
        return step.label

    def _write(self, old: State, new: State) -> None:
        if self._store is not None:
            self._store.write(old.library, new.library)
        self._kept = new

    def _show(self, label: str, state: State, before: State) -> None:
        changed = difference(self._state, state) | difference(before, state)
        self._state = state
        if changed is not Changed.NOTHING:
            self._tell(Change(label, changed))

    def _tell(self, change: Change) -> None:
        for listener in tuple(self._listeners):
            listener(change)
