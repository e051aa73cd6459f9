"""Sum of parts and joints against the pack's mass, as one slim bar."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QEvent, QPoint, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPicture,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolButton, QWidget

from benchpack.report.chart_specs import ClosureSpec
from benchpack.ui.charts.chart_actions import ChartActions
from benchpack.ui.charts.closure_drawing import (
    bar_rect,
    draw_closure,
    height_of,
    segments,
)
from benchpack.ui.charts.ink import line_pen
from benchpack.ui.charts.readout import Readout
from benchpack.ui.charts.tool_button import tool_button
from benchpack.ui.palette import Roles
from benchpack.ui.theme import RADIUS, SPACE_INSIDE, theme

_LEAST_WIDTH = 200


class ClosureBar(QWidget):
    """A bar of greys with a sign and a word.

    Signals
    -------
    picked(str)
        Name of the segment that was clicked, or chosen with Enter.
    explain_requested(str)
        F1: the key of the figure that the bar shows.
    said(str)
        A remark for the status line, for instance where a picture was saved.
    """

    picked = Signal(str)
    explain_requested = Signal(str)
    said = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._spec = ClosureSpec()
        self._current = -1
        self._selected = ""
        self._focus_ring = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Closure")
        self.tokens = theme().roles
        self.readout = Readout(self)
        self.readout.recolour(self.tokens)
        self.actions_of_chart = ChartActions(self, reset=None)
        self.menu_button = tool_button("Copy or save this bar", "more", self)
        self.menu_button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.menu_button.setMenu(self.actions_of_chart.menu)
        self.menu_button.hide()
        theme().theme_changed.connect(self._on_theme_changed)

    @property
    def spec(self) -> ClosureSpec:
        """What is shown."""
        return self._spec

    @property
    def current(self) -> int:
        """Segment that the pointer or the keyboard is at, -1 for none."""
        return self._current

    @property
    def selected(self) -> str:
        """Name of the selected segment, "" for none."""
        return self._selected

    def show_spec(self, spec: ClosureSpec) -> None:
        """Show other masses."""
        self._spec = spec
        self.menu_button.setVisible(not spec.is_empty)
        self._leave()
        self.setAccessibleDescription(self.text_summary())
        self.update()

    def set_selected(self, name: str) -> None:
        """Mark a segment as selected; "" marks none."""
        self._selected = name
        self.update()

    def title_text(self) -> str:
        """Give what stands beside the sign, as the title of a picture."""
        return self._spec.title or self._spec.verdict_text

    def item_names(self) -> Sequence[str]:
        """Give the names of the segments."""
        return self._spec.names

    def text_summary(self) -> str:
        """Say in words what the bar shows, for the screen reader."""
        spec = self._spec
        if spec.is_empty:
            return spec.empty_sentence
        total = spec.format_value(float(np.nansum(spec.masses)))
        return (
            f"{spec.verdict_text}. Sum of parts and joints {total}, {spec.pack_text}."
        )

    def readout_at(self, index: int) -> str:
        """Give a segment's name, mass and share of the pack."""
        spec = self._spec
        mass = float(spec.masses[index])
        text = f"{spec.names[index]}\n{spec.format_value(mass)}"
        if spec.pack_mass > 0:
            text += f", {100 * mass / spec.pack_mass:.0f} % of the pack"
        return text

    def segment_centre(self, index: int) -> QPointF:
        """Give the middle of a segment in the widget's pixels."""
        return segments(self._spec, bar_rect(self.width()))[index].center()

    def nearest(self, place: QPointF) -> int:
        """Give the segment under a place, -1 for none."""
        if self._spec.is_empty:
            return -1
        boxes = segments(self._spec, bar_rect(self.width()))
        hits = (
            index
            for index, box in enumerate(boxes)
            if box.adjusted(0, -3, 0, 3).contains(place)
        )
        return next(hits, -1)

    def record_picture(self, tokens: Roles) -> QPicture:
        """Record the bar in the colours of any scheme, for a picture."""
        picture = QPicture()
        painter = QPainter(picture)
        painter.fillRect(self.rect(), tokens.panel)
        draw_closure(painter, self._spec, tokens, width=self.width(), marked=-1)
        painter.end()
        return picture

    def _go_to(self, index: int, place: QPoint) -> None:
        self._current = index
        window = self.window()
        if self.readout.parentWidget() is not window:
            self.readout.setParent(window)  # the bar is too slim for a read-out
        self.readout.show_near(self.mapTo(window, place), self.readout_at(index))
        self.update()

    def _leave(self) -> None:
        self._current = -1
        self.readout.hide()
        self.update()

    def _step(self, by: int) -> None:
        if self._spec.is_empty:
            return
        last = len(self._spec.names) - 1
        start = -1 if by > 0 else last + 1
        at = min(max((self._current if self._current >= 0 else start) + by, 0), last)
        self._go_to(at, self.segment_centre(at).toPoint())

    def _on_theme_changed(self, tokens: Roles) -> None:
        self.tokens = tokens
        self.readout.recolour(tokens)
        self.update()

    def sizeHint(self) -> QSize:
        """Give a slim bar."""
        return QSize(480, height_of())

    def minimumSizeHint(self) -> QSize:
        """Give the least size that can be read."""
        return QSize(_LEAST_WIDTH, height_of())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show the read-out of the segment under the pointer."""
        index = self.nearest(event.position())
        if index < 0:
            self._leave()
        elif index != self._current or not self.readout.isVisible():
            self._go_to(index, event.position().toPoint())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Pick the segment under the pointer."""
        index = self.nearest(event.position())
        if index >= 0 and event.button() == Qt.MouseButton.LeftButton:
            self.picked.emit(self._spec.names[index])

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Show our own menu."""
        if not self._spec.is_empty:
            self.actions_of_chart.menu.popup(event.globalPos())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the button at the right end of the words."""
        super().resizeEvent(event)
        self.menu_button.adjustSize()
        right = round(bar_rect(self.width()).right())
        self.menu_button.move(right - self.menu_button.width(), 2)

    def leaveEvent(self, event: QEvent) -> None:
        """Hide the read-out."""
        self._leave()
        super().leaveEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus ring to people who use the keyboard."""
        by_key = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)
        self._focus_ring = event.reason() in by_key
        self.update()
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Hide the read-out and the focus ring."""
        self._focus_ring = False
        self._leave()
        super().focusOutEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with the arrows, pick with Enter, explain with F1."""
        key = event.key()
        if key in (Qt.Key.Key_Right, Qt.Key.Key_Left):
            self._step(1 if key == Qt.Key.Key_Right else -1)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._current >= 0:
            self.picked.emit(self._spec.names[self._current])
        elif key == Qt.Key.Key_F1:
            self.explain_requested.emit(self._spec.explain_key)
        elif event.matches(self.actions_of_chart.copy_keys):
            self.actions_of_chart.copy_data()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw words, bar and focus ring."""
        del event
        painter = QPainter(self)
        names = self._spec.names
        chosen = names.index(self._selected) if self._selected in names else -1
        marked = self._current if self._current >= 0 else chosen
        draw_closure(
            painter,
            self._spec,
            self.tokens,
            width=self.width(),
            marked=marked,
            free=self.menu_button.width() + SPACE_INSIDE,
        )
        if self._focus_ring:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(line_pen(self.tokens.subject, 2))
            painter.drawRoundedRect(self.rect().adjusted(1, 1, -1, -1), RADIUS, RADIUS)
