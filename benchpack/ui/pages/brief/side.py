"""The left of the Brief page: choices, files, fingerprint."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from benchpack.ui.pages.brief.choices_panel import ChoicesPanel
from benchpack.ui.pages.brief.exports_panel import ExportsPanel
from benchpack.ui.pages.brief.fingerprint_row import FingerprintRow
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN, SPACE_INSIDE
from benchpack.ui.widgets.controls import hairline, named, plain_button, text_label
from benchpack.ui.workspace import Workspace

_WIDTH = 404
_EVERYTHING = "all of these, and the charts as PNG and SVG"
_OUTWARD = (
    f"{_EVERYTHING}; workbook, tables and bundle hold what a customer brief leaves out"
)


class BriefSide(QWidget):
    """Scrolls, but for the button that writes everything.

    Parameters
    ----------
    workspace : Workspace
        The settings.
    """

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.choices = ChoicesPanel(workspace)
        self.exports = ExportsPanel()
        self.fingerprint = FingerprintRow()
        self.everything_button = plain_button("Everything into a folder…")
        self.everything_line = text_label(role="note")
        inner = QWidget()
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, SPACE_BETWEEN, SPACE_BETWEEN)
        column.setSpacing(SPACE_AROUND)
        for widget in (self.choices, self.exports, self.fingerprint):
            column.addWidget(widget)
        column.addStretch(1)
        self.area = named(QScrollArea(), "Choices and files")
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.area.setWidget(inner)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(SPACE_INSIDE)
        layout.addWidget(self.area, 1)
        layout.addWidget(hairline())
        layout.addSpacing(SPACE_INSIDE)
        layout.addWidget(self.everything_button)
        layout.addWidget(self.everything_line)
        self.setFixedWidth(_WIDTH)
        self.show_settings()

    def show_settings(self) -> None:
        """Show what the person chose, and what that means for the files."""
        self.choices.show_settings()
        words = _OUTWARD if self.choices.audiences["customer"].isChecked() else ""
        self.everything_line.setText(words or _EVERYTHING)
        self.everything_button.setAccessibleDescription(words or _EVERYTHING)
