"""The line above the table: filter at the left, what can be done at the right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from benchpack.ui.forms.filter_bar import FilterBar
from benchpack.ui.widgets.key_text import key_text


class LibraryBar(QWidget):
    """Holds the filter and the buttons of the page."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.filter = FilterBar(
            "pack",
            hint="Filter, e.g. energy > 60 and chemistry = LFP",
            examples="mass < 450, year >= 2024, cells mass = unknown",
        )
        self.add = QPushButton("Add pack")
        self.remove = QPushButton("Remove")
        self.columns = QPushButton("Columns")
        self.weigh_in = QPushButton("Weigh-in")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.filter, 1)
        row.addSpacing(16)
        for button, tip in (
            (self.add, f"Add a pack ({key_text('Ctrl+Shift+N')})"),
            (self.remove, f"Remove the selected packs ({key_text('Ctrl+Shift+Del')})"),
            (self.columns, "Choose the columns that are shown"),
            (self.weigh_in, f"Enter parts from the scale ({key_text('Ctrl+Shift+W')})"),
        ):
            button.setToolTip(tip)
            row.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
