"""A figure that says where it comes from."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget

from benchpack.ui.theme import TextRole, set_text_role


class FigureButton(QPushButton):
    """A figure that can be clicked, or asked about with F1.

    Attributes
    ----------
    explain_key, explain_record : str
        Key of what explains it, and the record that it belongs to.

    Parameters
    ----------
    explain_key : str
        As above.
    parent : QWidget
        Owner.
    role : str
        Text role of the theme.
    """

    def __init__(
        self, explain_key: str, parent: QWidget, *, role: TextRole = "strong"
    ) -> None:
        super().__init__("–", parent)
        self.explain_key = explain_key
        self.explain_record = ""
        self.setProperty("look", "figure")
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        set_text_role(self, role)


class AskedButton(FigureButton):
    """A figure that answers click and F1 itself, as what explains it is held here.

    Signals
    -------
    asked(object)
        What `asked_about` gives, when it was clicked or F1 was pressed on it.
    """

    asked = Signal(object)

    def __init__(
        self, explain_key: str, parent: QWidget, *, role: TextRole = "strong"
    ) -> None:
        super().__init__(explain_key, parent, role=role)
        self.clicked.connect(self._on_clicked)

    def asked_about(self) -> object:
        """Give what is asked about: the key, unless a subclass holds more."""
        return self.explain_key

    def _on_clicked(self) -> None:
        self.asked.emit(self.asked_about())

    def event(self, event: QEvent) -> bool:
        """Claim F1 before the window sees it."""
        override = event.type() == QEvent.Type.ShortcutOverride
        if override and isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_F1:
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Say on F1 where the figure comes from."""
        if event.key() == Qt.Key.Key_F1:
            self._on_clicked()
        else:
            super().keyPressEvent(event)
