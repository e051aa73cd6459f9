"""The words at the foot of the window."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from benchpack.session.document import Change
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN, set_text_role
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.workspace import Workspace

_REMARK_MS = 8000


class StatusWords(QWidget):
    """When it was saved, what the library holds, what undo would take back."""

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.workspace = workspace
        self.saved = QLabel("saved")
        self.holds = QLabel()
        self.remark = QLabel()
        self.undo = QLabel()
        layout = QHBoxLayout(self)
        layout.setContentsMargins(SPACE_AROUND, 0, SPACE_BETWEEN, 0)
        layout.setSpacing(SPACE_AROUND)
        for label in (self.saved, self.holds, self.remark):
            set_text_role(label, "note")
            layout.addWidget(label)
        layout.addStretch(1)
        set_text_role(self.undo, "note")
        layout.addWidget(self.undo)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.remark.clear)
        workspace.changed.connect(self._on_changed)
        workspace.opened.connect(self._on_opened)
        workspace.notifier.said.connect(self.say)
        self._show_counts()

    def say(self, text: str) -> None:
        """Show a remark for a while."""
        self.remark.setText(text)
        self._timer.start(_REMARK_MS)

    def _on_changed(self, change: Change) -> None:
        if change.passing:
            return
        # The person's own clock is meant here.
        now = datetime.now().astimezone()
        self.saved.setText(f"saved {now:%H:%M}")
        self._show_counts()

    def _on_opened(self) -> None:
        self.saved.setText("saved")
        self._show_counts()

    def _show_counts(self) -> None:
        library = self.workspace.state.library
        counts = (
            (len(library.packs), "pack"),
            (library.part_count, "part"),
            (library.joint_count, "joint row"),
        )
        self.holds.setText(
            ", ".join(
                f"{count:,}".replace(",", "\u2009")
                + f" {word}{'' if count == 1 else 's'}"
                for count, word in counts
            )
        )
        label = self.workspace.document.undo_label
        self.undo.setText(f"Undo “{label}” {key_text('Ctrl+Z')}" if label else "")
