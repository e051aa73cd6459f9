"""What the menu does to hand something over."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from benchpack.ui.handover.handing_over import HandingOver
from benchpack.ui.workspace import Workspace


class HandoverCommands(QObject):
    """The slots behind the actions that write files of the study on screen.

    Parameters
    ----------
    window : QWidget
        The window; it owns this object.
    workspace : Workspace
        The open document.
    """

    def __init__(self, window: QWidget, workspace: Workspace) -> None:
        super().__init__(window)
        self._window = window
        self.workspace = workspace
        self.handing_over = HandingOver(workspace, window)

    def on_export_brief(self) -> None:
        """Ask where, and write the brief as PDF or as a web page."""
        self.handing_over.ask("pdf", "web")

    def on_export_workbook(self) -> None:
        """Ask where, and write the workbook with live formulas."""
        self.handing_over.ask("workbook")

    def on_export_gaps(self) -> None:
        """Ask where, and write the table of gaps with its schema."""
        self.handing_over.ask("gaps")

    def on_export_bundle(self) -> None:
        """Ask where, and write the study with all its records as one file."""
        self.handing_over.ask("bundle")

    def on_export_everything(self) -> None:
        """Ask for a folder, and write everything into it."""
        self.handing_over.ask_and_write_everything()
