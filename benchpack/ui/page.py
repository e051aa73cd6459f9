"""What a page is."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent

from benchpack.session.document import Change
from benchpack.session.state import Changed
from benchpack.ui.widgets.entry_area import EntryArea
from benchpack.ui.workspace import Workspace


class Page(EntryArea):
    """A page of the window; refreshes while visible, remembers it while hidden.

    Subclasses give `title`, build their widgets in ``__init__`` and implement
    `refresh`. The first refresh comes with the first showing.

    Parameters
    ----------
    workspace : Workspace
        The open document and its results.

    Signals
    -------
    open_requested(), demo_requested()
        An empty page offers to open a file, or the demo.
    """

    title = ""
    shortcuts: tuple[tuple[str, str], ...] = ()
    open_requested = Signal()
    demo_requested = Signal()

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.workspace = workspace
        self._stale = Changed.EVERYTHING
        self.setAccessibleName(f"{self.title} page")
        workspace.changed.connect(self._on_workspace_changed)
        workspace.opened.connect(self._on_workspace_opened)

    def refresh(self, changed: Changed) -> None:
        """Show the present results.

        Parameters
        ----------
        changed : Changed
            What may have changed since the last refresh.
        """
        raise NotImplementedError

    def go_to_place(self, record: str, column: str) -> None:
        """Go to a record's cell, if the page shows such records.

        Parameters
        ----------
        record : str
            Name of the record.
        column : str
            Head, title or key of the column, empty for none.
        """

    def bring_up_to_date(self) -> None:
        """Refresh if anything changed since the last refresh."""
        if self._stale is not Changed.NOTHING:
            changed, self._stale = self._stale, Changed.NOTHING
            self.refresh(changed)

    def _on_workspace_changed(self, change: Change) -> None:
        self._stale |= change.changed
        if self.isVisible():
            self.bring_up_to_date()

    def _on_workspace_opened(self) -> None:
        self._stale = Changed.EVERYTHING
        if self.isVisible():
            self.bring_up_to_date()

    def showEvent(self, event: QShowEvent) -> None:
        """Bring the page up to date when it comes into view."""
        super().showEvent(event)
        self.bring_up_to_date()
