"""A figure that says where it comes from."""

from __future__ import annotations

from PySide6.QtCore import Qt
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
