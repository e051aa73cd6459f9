"""What the page says when the library holds no pack."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget


class EmptyLibrary(QWidget):
    """One sentence and what can be done about it.

    Signals
    -------
    open_requested()
        A table of packs is to be opened.
    demo_requested()
        The demo is to be opened.
    add_requested()
        A pack is to be entered by hand.
    """

    open_requested = Signal()
    demo_requested = Signal()
    add_requested = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Empty library")
        sentence = QLabel("This library holds no packs yet.")
        sentence.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self.open_button = QPushButton("Open a table")
        self.demo_button = QPushButton("Open the demo")
        self.add_button = QPushButton("Add pack")
        self.open_button.clicked.connect(self.open_requested)
        self.demo_button.clicked.connect(self.demo_requested)
        self.add_button.clicked.connect(self.add_requested)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addStretch(1)
        for button in (self.open_button, self.demo_button, self.add_button):
            row.addWidget(button)
        row.addStretch(1)
        layout = QVBoxLayout(self)
        layout.addStretch(2)
        layout.addWidget(sentence)
        layout.addSpacing(8)
        layout.addLayout(row)
        layout.addStretch(3)
