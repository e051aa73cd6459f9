"""The target: what it is worth, how likely it is, what has to be true."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.worth_target import target_figures
from benchpack.report.worth_target_text import Reading, target_readings
from benchpack.ui.pages.worth.desk import CHANCE, WorthDesk
from benchpack.ui.pages.worth.tab import WorthTab
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import named, plain_button, text_label, unbroken
from benchpack.ui.workspace import Workspace


class TargetTab(WorthTab):
    """A field for the target, its figures, and what it comes to in words."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__("Target", workspace, parent)
        self.figures = self.figure_strip("Figures of the target", count=7)
        self.area = QScrollArea(self)
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setAccessibleName("The target in words")
        self._body = named(QWidget(self.area), "The target in words")
        self._words = QVBoxLayout(self._body)
        self._words.setContentsMargins(16, 8, 16, 8)
        self._words.setSpacing(4)
        self._words.addStretch(1)
        self._labels: list[tuple[QLabel, QLabel]] = []
        self.area.setWidget(self._body)
        self.button = plain_button("Enter the target", "Go to the field at the left")
        self._words.insertWidget(0, self.button, 0, Qt.AlignmentFlag.AlignLeft)
        self.column.addWidget(self.figures)
        self.column.addWidget(self.area, 1)
        self.entry = self.button
        self.button.clicked.connect(self._on_button_clicked)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present target."""
        known = desk.has(CHANCE)
        self.figures.show_figures(
            target_figures(desk.case, desk.chance, is_known=known)
        )
        self._show_readings(target_readings(desk.case, desk.chance, is_known=known))

    def found(self, desk: WorthDesk, what: str) -> None:
        """Show the chance once it is there."""
        if what == CHANCE:
            self.show_desk(desk)

    def text(self) -> str:
        """Give what is said, for tests and screen readers."""
        return "\n".join(words.text() for _, words in self._labels)

    def _show_readings(self, readings: tuple[Reading, ...]) -> None:
        while len(self._labels) < len(readings):
            self._add()
        for (heading, words), reading in zip(self._labels, readings, strict=True):
            said = unbroken("\n".join(reading.sentences))
            if heading.text() != reading.heading:
                heading.setText(reading.heading)
            if words.text() != said:
                words.setText(said)

    def _add(self) -> None:
        heading, words = QLabel(self._body), text_label()
        set_text_role(heading, "strong")
        place = self._words.indexOf(self.button)
        if self._labels:
            heading.setContentsMargins(0, 12, 0, 0)
        self._words.insertWidget(place, heading)
        self._words.insertWidget(place + 1, words)
        self._labels.append((heading, words))

    def _on_button_clicked(self) -> None:
        self.field_requested.emit("target_kg")
