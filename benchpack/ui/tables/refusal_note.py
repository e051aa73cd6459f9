"""The sentence that stands at a cell whose entry cannot be taken."""

from __future__ import annotations

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QLabel, QWidget

from benchpack.errors import Problem
from benchpack.ui.theme import font, theme

_WIDTH = 280


class RefusalNote(QLabel):
    """A small label below an editor; hidden until there is something to say.

    Parameters
    ----------
    parent : QWidget
        The viewport the editor lies in.
    """

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._viewport = parent
        self.setObjectName("refusal_note")
        self.setWordWrap(True)
        self.setFont(font("note"))
        self.setAccessibleName("Why the entry is not taken")
        self._recolour()
        theme().theme_changed.connect(self._recolour)
        self.hide()

    def _recolour(self) -> None:
        roles = theme().roles
        self.setStyleSheet(
            f"background: {roles.panel}; color: {roles.fail};"
            f" border: 1px solid {roles.fail}; padding: 4px 8px;"
        )

    def show_problem(self, problem: Problem, editor: QWidget) -> None:
        """Say what is wrong below the editor, above it where there is no room."""
        sentence = f"{problem.what} {problem.remedy}".strip()
        self.setText(sentence)
        self.setAccessibleDescription(sentence)
        self.setFixedWidth(_WIDTH)
        self.adjustSize()
        room = self._viewport.size()
        x = max(0, min(editor.x(), room.width() - _WIDTH))
        y = editor.y() + editor.height() + 2
        if y + self.height() > room.height():
            y = max(0, editor.y() - self.height() - 2)
        self.move(QPoint(x, y))
        self.show()
        self.raise_()
