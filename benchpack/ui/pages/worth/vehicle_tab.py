"""The worth by the vehicle beside the entered one, and the steps to it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QLabel,
    QScrollArea,
    QSplitter,
    QWidget,
)

from benchpack.report.worth_figures import Shown
from benchpack.report.worth_vehicle import vehicle_sentences, vehicle_spec
from benchpack.report.worth_vehicle_steps import Step, vehicle_steps
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.pages.worth.asked_figure import AskedFigure
from benchpack.ui.pages.worth.desk import WorthDesk
from benchpack.ui.pages.worth.tab import WorthTab
from benchpack.ui.theme import font, set_text_role
from benchpack.ui.widgets.controls import named, text_label
from benchpack.ui.workspace import Workspace

_ROW = 21
_HEADS = ("Step", "Value", "Where from")


class VehicleTab(WorthTab):
    """Sentences, the worths side by side, and the steps as a table of figures."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__("Vehicle", workspace, parent)
        self.warning = text_label(role="strong")
        self.words = text_label(role="note")
        self.chart = named(SetsChart(self), "Worths of a kilogram side by side")
        self.view = self.with_table(self.chart)
        self.steps = QScrollArea(self)
        self.steps.setWidgetResizable(True)
        self.steps.setFrameShape(QFrame.Shape.NoFrame)
        self.steps.setAccessibleName("Steps to the worth by the vehicle")
        body = self._body = named(QWidget(self.steps), "Steps")
        self._grid = QGridLayout(body)
        self._grid.setContentsMargins(16, 4, 8, 4)
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(0)
        for place, head in enumerate(_HEADS):
            label = QLabel(head, body)
            set_text_role(label, "note")
            self._grid.addWidget(label, 0, place)
        self._grid.setColumnStretch(2, 1)
        self.steps.setWidget(body)
        self._rows: list[tuple[QLabel, AskedFigure, QLabel, QLabel]] = []
        self.splitter = QSplitter(Qt.Orientation.Vertical, self)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.view)
        self.splitter.addWidget(self.steps)
        self.splitter.setSizes([240, 240])
        for label in (self.warning, self.words):
            label.setContentsMargins(16, 8, 16, 0)
            self.column.addWidget(label)
        self.column.addWidget(self.splitter, 1)
        self.entry = self.view

    def figure(self, key: str) -> AskedFigure:
        """Give the button of a step by the key that explains it."""
        return next(one for _, one, *_ in self._rows if one.shown.key == key)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present vehicle."""
        case = desk.case
        said = vehicle_sentences(case)
        apart = case.derived.disagreement is not None
        self._say(self.warning, said[0] if apart else "")
        self._say(self.words, " ".join(said[1:] if apart else said))
        self.chart.show_spec(vehicle_spec(case))
        self._show_steps(vehicle_steps(case))

    @staticmethod
    def _say(label: QLabel, text: str) -> None:
        if label.text() != text:
            label.setText(text)
        if label.isHidden() == bool(text):
            label.setVisible(bool(text))

    def _show_steps(self, steps: tuple[Step, ...]) -> None:
        while len(self._rows) < len(steps):
            self._add_row()
        for row, widgets in enumerate(self._rows):
            is_used = row < len(steps)
            words, figure, entered, source = widgets
            for widget in (words, source):
                widget.setVisible(is_used)
            has_key = is_used and bool(steps[row].key)
            figure.setVisible(has_key)
            entered.setVisible(is_used and not has_key)
            if is_used:
                self._show_row(widgets, steps[row])

    def _show_row(
        self, row: tuple[QLabel, AskedFigure, QLabel, QLabel], step: Step
    ) -> None:
        words, figure, entered, source = row
        for label, text in (
            (words, step.words),
            (entered, step.text),
            (source, step.source),
        ):
            if label.text() != text:
                label.setText(text)
        shown = Shown(step.key, step.words, step.text, why=f"From: {step.source}.")
        figure.show_figure(shown, step.text)

    def _add_row(self) -> None:
        body, place = self._body, len(self._rows) + 1
        words, entered, source = QLabel(body), QLabel(body), QLabel(body)
        entered.setContentsMargins(6, 0, 0, 0)
        figure = AskedFigure(body, role="note")
        entered.setFont(font("note"))
        figure.setStyleSheet("padding: 0 4px;")
        figure.asked.connect(self.asked)
        words.setBuddy(figure)
        set_text_role(words, "note")
        set_text_role(source, "note")
        for column, widget in enumerate((words, figure, source)):
            self._grid.addWidget(widget, place, column)
        self._grid.addWidget(entered, place, 1)
        self._grid.setRowMinimumHeight(place, _ROW)
        source.setWordWrap(True)
        self._rows.append((words, figure, entered, source))
        self._grid.setRowStretch(place, 0)
        self._grid.setRowStretch(place + 1, 1)
