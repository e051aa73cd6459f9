"""The small text that follows the pointer."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QLabel, QWidget

from benchpack.ui.palette import Roles
from benchpack.ui.theme import RADIUS, set_text_role

_AWAY = 14


class Readout(QLabel):
    """Lines of text beside a place, kept inside the parent."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        set_text_role(self, "note")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def recolour(self, tokens: Roles) -> None:
        """Take the colours of a scheme."""
        self.setStyleSheet(
            f"background: {tokens.panel}; color: {tokens.text};"
            f"border: 1px solid {tokens.peer}; border-radius: {RADIUS}px;"
            "padding: 4px 8px;"
        )

    def show_near(self, place: QPoint, text: str) -> None:
        """Show a text right of a place, or left of it where there is no room."""
        self.setText(text)
        self.adjustSize()
        parent = self.parentWidget()
        room = self.rect() if parent is None else parent.rect()
        left, top = place.x() + _AWAY, place.y() - self.height() - _AWAY // 2
        if left + self.width() > room.right():
            left = place.x() - _AWAY - self.width()
        if top < 0:
            top = place.y() + _AWAY
        left = max(0, min(left, room.right() - self.width()))
        self.move(left, max(0, min(top, room.bottom() - self.height())))
        self.show()
        self.raise_()
