"""The widgets of a chart: title and buttons, plot or empty sentence, note."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import (
    QGraphicsScene,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollBar,
    QSizePolicy,
    QStackedWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.chart_specs import ChartSpec
from benchpack.ui.charts.plot import Canvas, Plot
from benchpack.ui.charts.tool_button import tool_button
from benchpack.ui.palette import Roles
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN, font, set_text_role
from benchpack.ui.widgets.steady import Steady

_WRAP = int(Qt.TextFlag.TextWordWrap)


class ChartLayout:
    """Builds the widgets of a chart and draws their words into pictures."""

    def __init__(self, owner: QWidget, *, view: pg.ViewBox) -> None:
        self.title = QLabel(owner)
        self.title.setWordWrap(True)
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setSizePolicy(
            QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum
        )
        set_text_role(self.title, "section")
        self.note = QLabel(owner)
        self.note.setWordWrap(True)
        self.note.setTextFormat(Qt.TextFormat.PlainText)
        set_text_role(self.note, "note")
        self.reset_button = tool_button("Reset view", "reset", owner)
        self.menu_button = tool_button("Copy or save this chart", "more", owner)
        self.menu_button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.plot = Plot(view)
        self.canvas = Canvas(self.plot, parent=owner)
        self.canvas.setMinimumSize(120, 80)
        self.canvas.setAccessibleName("Plot")
        self.scroll_bar = QScrollBar(Qt.Orientation.Vertical, owner)
        self.scroll_bar.setAccessibleName("Rows")
        self.scroll_bar.hide()
        self.empty_label = QLabel(owner)
        self.empty_button = QPushButton(owner)
        self._stack = QStackedWidget(owner)
        self._head, self._beside = QHBoxLayout(), QHBoxLayout()
        self._in_front = 0
        self._arrange(owner)

    def _arrange(self, owner: QWidget) -> None:
        self.empty_label.setWordWrap(True)
        self.empty_label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        empty = QWidget(owner)
        middle = QVBoxLayout(empty)
        middle.setSpacing(SPACE_AROUND)
        middle.addStretch()
        middle.addWidget(self.empty_label)
        middle.addWidget(self.empty_button, 0, Qt.AlignmentFlag.AlignHCenter)
        middle.addStretch()
        drawn = QWidget(owner)
        beside = self._beside
        drawn.setLayout(beside)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.setSpacing(0)
        beside.addWidget(self.canvas)
        beside.addWidget(self.scroll_bar)
        self._stack.addWidget(drawn)
        self._stack.addWidget(empty)
        head = self._head
        head.setSpacing(0)
        top = Qt.AlignmentFlag.AlignTop
        head.addWidget(Steady(self.title, parent=owner), 1)
        head.addWidget(self.reset_button, 0, top)
        head.addWidget(self.menu_button, 0, top)
        column = QVBoxLayout(owner)
        column.setContentsMargins(SPACE_AROUND, 12, SPACE_AROUND, 12)
        column.setSpacing(SPACE_BETWEEN)
        column.addLayout(head)
        column.addWidget(self._stack, 1)
        self._note_place = Steady(self.note, parent=owner)
        column.addWidget(self._note_place)

    @property
    def _owner(self) -> QWidget:
        """The chart, asked of Qt: a reference here would close a cycle."""
        owner = self._stack.parentWidget()
        assert owner is not None
        return owner

    def show_words(self, spec: ChartSpec) -> None:
        """Show title, note, and the empty sentence where there is no data."""
        empty = spec.is_empty
        for label, text in ((self.title, spec.title), (self.note, spec.note)):
            if label.text() != text:
                label.setText(text)
        self._note_place.setVisible(bool(spec.note) and not empty)
        if empty:
            self.empty_label.setText(spec.empty_sentence)
            self.empty_button.setText(spec.empty_action_text)
            self.empty_button.setVisible(bool(spec.empty_action_text))
        self.reset_button.setVisible(not empty)
        self.menu_button.setVisible(not empty)
        self._stack.setCurrentIndex(1 if empty else self._in_front)

    def add_button(self, button: QWidget) -> None:
        """Put a button into the head, before the others."""
        top = Qt.AlignmentFlag.AlignTop
        self._head.insertWidget(self._head.indexOf(self.reset_button), button, 0, top)

    def add_view(self, view: QWidget) -> None:
        """Keep another view of the same data, for `show_view`."""
        self._stack.addWidget(view)

    def show_view(self, view: QWidget | None) -> None:
        """Show a view that was added in place of the plot; None shows the plot."""
        self._in_front = 0 if view is None else self._stack.indexOf(view)
        if not self.is_empty:
            self._stack.setCurrentIndex(self._in_front)

    @contextmanager
    def plot_in_front(self) -> Iterator[None]:
        """Lay out the plot where another view hides it, for as long as it is drawn."""
        shown = self._stack.currentIndex()
        if shown <= 1:
            yield
            return
        self._stack.setUpdatesEnabled(False)
        self._stack.setCurrentIndex(0)
        self._beside.activate()
        try:
            yield
        finally:
            self._stack.setCurrentIndex(shown)
            self._stack.setUpdatesEnabled(True)

    @property
    def is_empty(self) -> bool:
        """Whether the sentence shows in place of the plot."""
        return self._stack.currentIndex() == 1

    def recolour(self, tokens: Roles) -> None:
        """Take the colours of a scheme."""
        self.canvas.setBackground(QColor(tokens.panel))

    def draw(self, painter: QPainter, tokens: Roles) -> None:
        """Draw words and plot into a picture, without buttons."""
        painter.fillRect(self._owner.rect(), QColor(tokens.panel))
        self._draw_label(painter, self.title, tokens.text)
        if self.is_empty:
            self._draw_label(painter, self.empty_label, tokens.second)
            return
        self._draw_plot(painter)
        if self.note.isVisibleTo(self._owner):
            self._draw_label(painter, self.note, tokens.second)

    def _draw_label(self, painter: QPainter, label: QLabel, ink: str) -> None:
        place = label.mapTo(self._owner, label.rect().topLeft())
        painter.setFont(label.font())
        painter.setPen(QColor(ink))
        box = QRectF(QPointF(place), label.size())
        painter.drawText(box, int(label.alignment()) | _WRAP, label.text())

    def _draw_plot(self, painter: QPainter) -> None:
        scene: QGraphicsScene = self.canvas.scene()
        exported = [one for one in scene.items() if hasattr(one, "setExportMode")]
        for item in exported:
            item.setExportMode(export=True, opts={"antialias": True})
        place = self.canvas.mapTo(self._owner, self.canvas.rect().topLeft())
        target = QRectF(QPointF(place), self.canvas.size())
        painter.setFont(font("note"))
        try:
            scene.render(painter, target, QRectF(self.canvas.viewRect()))
        finally:
            for item in exported:
                item.setExportMode(export=False)
