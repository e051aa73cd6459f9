"""A list of choices that the mouse wheel cannot change in passing."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QWidget


class ChoiceBox(QComboBox):
    """A combo box for scrolling forms: the wheel passes by until it has focus."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the wheel through to the form unless the box has the focus."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()
