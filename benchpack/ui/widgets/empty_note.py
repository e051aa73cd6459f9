"""What the page says when there is nothing to show, and what can be done."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget


class EmptyNote(QWidget):
    """One sentence with buttons below it.

    Parameters
    ----------
    name : str
        What screen readers call it.
    sentence : str
        What is missing.
    buttons : sequence of QPushButton
        What can be done about it.
    parent : QWidget
        Owner.
    """

    def __init__(
        self,
        name: str,
        sentence: str,
        *,
        buttons: Sequence[QPushButton],
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.sentence = QLabel(sentence)
        self.sentence.setWordWrap(True)
        self.sentence.setTextFormat(Qt.TextFormat.PlainText)
        self.sentence.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addStretch(1)
        for button in buttons:
            row.addWidget(button)
        row.addStretch(1)
        layout = QVBoxLayout(self)
        layout.addStretch(2)
        layout.addWidget(self.sentence)
        layout.addSpacing(8)
        layout.addLayout(row)
        layout.addStretch(3)
