"""The line above the table: pack and filter at the left, what can be done right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from benchpack.ui.forms.filter_bar import FilterBar
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.widgets.pack_picker import PackPicker

_TOP = Qt.AlignmentFlag.AlignTop


class JointsBar(QWidget):
    """Holds the pack that is shown, the filter and the buttons of the page."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.picker = PackPicker("Pack whose joints are shown")
        self.picker.setToolTip("The pack whose joints are shown; selected everywhere")
        self.filter = FilterBar(
            "row",
            hint="Filter, e.g. count > 20",
            examples="mass of all > 100, role = seal, mass each = unknown",
        )
        self.count_in = QPushButton("Count in")
        self.add = QPushButton("Add")
        self.edit = QPushButton("Edit")
        self.remove = QPushButton("Remove")
        self.columns = QPushButton("Columns")
        self.export = QPushButton("Export")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.picker, 2, _TOP)
        row.addWidget(self.filter, 3)
        row.addSpacing(8)
        for button, name, tip in (
            (
                self.count_in,
                "Count in",
                f"Enter what is counted ({key_text('Ctrl+Shift+W')})",
            ),
            (self.add, "Add joint", f"Add a joint ({key_text('Ctrl+Shift+N')})"),
            (
                self.edit,
                "Edit joint",
                f"All fields of the joint ({key_text('Ctrl+Return')})",
            ),
            (
                self.remove,
                "Remove joints",
                f"Remove the selected joints ({key_text('Ctrl+Shift+Del')})",
            ),
            (self.columns, "Columns", "Choose the columns that are shown"),
            (
                self.export,
                "Export joints",
                f"Write the joints as CSV ({key_text('Ctrl+Shift+J')})",
            ),
        ):
            button.setToolTip(tip)
            button.setAccessibleName(name)
            row.addWidget(button, 0, _TOP)
