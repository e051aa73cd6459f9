"""What can be done with changes: make, copy, order, remove, take a suggestion over."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QObject, Signal

from benchpack.errors import DataError
from benchpack.model.change import Change, ChangeKind
from benchpack.session.change_edits import free_change_name
from benchpack.ui.pages.changes.desk import ProposalDesk
from benchpack.ui.pages.changes.new_change import new_change
from benchpack.ui.pages.changes.proposal_edits import ProposalEdits
from benchpack.ui.pages.changes.proposal_view import ProposalView
from benchpack.ui.pages.changes.subject_model import Selection
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.workspace import Workspace

Entry = tuple[str, str, Callable[[], None]]


class ChangeActions(QObject):
    """Makes edits of the proposal from what is chosen on the page.

    Signals
    -------
    change_made(object)
        A `Change` that is new.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    desk : ProposalDesk
        The proposal.
    edits : ProposalEdits
        Where edits go.
    view : ProposalView
        Where things are chosen; the owner.
    """

    change_made = Signal(object)

    def __init__(
        self,
        workspace: Workspace,
        desk: ProposalDesk,
        *,
        edits: ProposalEdits,
        view: ProposalView,
    ) -> None:
        super().__init__(view)
        self._workspace = workspace
        self._desk = desk
        self._edits = edits
        self._view = view

    def entries(self) -> list[Entry]:
        """Give what the menu of the table offers: words, key and call."""
        table = self._view.table
        return [
            ("Switch on or off", "Space", table.switch_current),
            ("Move up", "Alt+Up", self.move_up),
            ("Move down", "Alt+Down", self.move_down),
            ("Add a copy", "Ctrl+Shift+D", self.copy_change),
            ("Remove", "Ctrl+Shift+Del", self.remove_change),
        ]

    def make(self, kind: ChangeKind, selection: Selection | None = None) -> None:
        """Make a change of a kind of what is chosen, or of a given selection."""
        results = self._desk.results
        if results is None:
            return
        if selection is None:
            selection = self._view.tree.selection()
        if kind is not ChangeKind.ADD and self._is_locked(selection):
            return
        try:
            change = new_change(
                kind,
                selection,
                study=results.study.name,
                today=results.today,
                changes=results.changes,
            )
        except DataError as error:
            problem = error.problems[0]
            self._workspace.notifier.say(f"{problem.what} {problem.remedy}")
            self._view.tree.setFocus()
            return
        self._add(change)

    def make_candidate(self, part: str, material: str) -> None:
        """Make a change of a part to a material that it was compared in."""
        results = self._desk.results
        if results is None or self._is_locked(Selection((part,))):
            return
        change = new_change(
            ChangeKind.SUBSTITUTE,
            Selection((part,)),
            study=results.study.name,
            today=results.today,
            changes=results.changes,
        )
        name = free_change_name(results.changes, f"{part} in {material}")
        self._add(replace(change, name=name, material=material))

    def _is_locked(self, selection: Selection) -> bool:
        """Say which of a selection has to stay, and why; True when one does."""
        locked = self._view.tree.items.locked(selection)
        if locked:
            row = locked[0]
            more = f", and {len(locked) - 1} more" if len(locked) > 1 else ""
            self._workspace.notifier.say(f"{row.name} stays: {row.locked}{more}.")
        return bool(locked)

    def _add(self, change: Change) -> None:
        # At the end, so that it takes nothing from those that are there.
        if not self._edits.add(change):
            self._workspace.notifier.say(f"New change: {change.name}.")
            self.change_made.emit(change)

    def copy_change(self) -> None:
        """Add a copy of the current change at the end, switched off."""
        change = self._edits.change(self._view.table.current)
        results = self._desk.results
        if change is None or results is None:
            return
        name = free_change_name(results.changes, f"{change.name}, copy")
        # Switched on it would be refused: what it acts on is taken already.
        self._add(replace(change, name=name, is_on=False))

    def remove_change(self) -> None:
        """Remove the current change; undo brings it back."""
        name = self._view.table.current
        if name and self._edits.remove((name,)):
            key = key_text("Ctrl+Z")
            self._workspace.notifier.say(f"Removed {name}. {key} brings it back.")

    def move_up(self) -> None:
        """Move the current change up by one."""
        self._view.table.move_current(-1)

    def move_down(self) -> None:
        """Move the current change down by one."""
        self._view.table.move_current(1)

    def order(self, names: tuple[str, ...]) -> None:
        """Put the changes into an order; the moved one stays the current one."""
        moved = self._view.table.current
        if self._edits.order(names, moved or names[0]):
            self._view.table.go_to(moved)

    def take_suggestion(self, names: tuple[str, ...]) -> None:
        """Switch on just the suggested changes."""
        if self._edits.choose(names):
            said = "Took the suggestion over"
            key = key_text("Ctrl+Z")
            self._workspace.notifier.say(f"{said}. {key} brings back what was on.")
