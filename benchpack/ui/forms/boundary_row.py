"""What was on the scale, in a form: a summary and a way to edit it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from benchpack.model.boundary import ITEMS, UNKNOWN_BOUNDARY, Boundary, Weighed
from benchpack.ui.theme import set_text_role


def boundary_summary(boundary: Boundary) -> str:
    """Give a boundary in one or two sentences."""
    if not boundary.is_known:
        return "What was on the scale is not recorded."
    out = [item for item in ITEMS if boundary.state(item) is Weighed.OUT]
    unknown = [item for item in ITEMS if boundary.state(item) is Weighed.UNKNOWN]
    weighed = len(ITEMS) - len(out) - len(unknown)
    text = f"{weighed} of {len(ITEMS)} items were on the scale"
    text += f"; not {', '.join(out)}." if out else "."
    return f"{text} Not known: {', '.join(unknown)}." if unknown else text


class BoundaryRow(QWidget):
    """Shows a boundary in words with a button to edit it.

    Signals
    -------
    edit_requested()
        The button was pressed.
    """

    edit_requested = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.summary = QLabel(self)
        self.summary.setWordWrap(True)
        set_text_role(self.summary, "note")
        self.button = QPushButton("Edit boundary", self)
        self.button.clicked.connect(self.edit_requested)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.addWidget(self.summary, 0, 0)
        grid.addWidget(self.button, 0, 1)
        grid.setColumnStretch(0, 1)

    def show_boundary(self, boundary: Boundary | None) -> None:
        """Put a boundary into words."""
        self.summary.setText(boundary_summary(boundary or UNKNOWN_BOUNDARY))
