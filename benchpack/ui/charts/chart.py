"""How a chart answers to mouse and keys."""

from __future__ import annotations

from typing import Any

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QRect, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QWidget

from benchpack.ui.charts.chart_base import ChartBase
from benchpack.ui.charts.ink import line_pen
from benchpack.ui.charts.view import RowView, ZoomView
from benchpack.ui.theme import RADIUS

_NEXT = {
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Down: 1,
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Up: -1,
}
_PICK = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)


class Chart(ChartBase):
    """Base of the charts; a subclass draws its spec and knows its items.

    Signals and parameters are those of `ChartBase`.
    """

    def __init__(
        self, kind: str, *, view: ZoomView | RowView, parent: QWidget | None = None
    ) -> None:
        super().__init__(kind, view=view, parent=parent)
        self._focus_ring = False
        scene = self.parts.canvas.scene()
        scene.sigMouseMoved.connect(self._on_scene_mouse_moved)
        scene.sigMouseClicked.connect(self._on_scene_mouse_clicked)

    def go_to(self, index: int) -> None:
        """Make an item current and show its read-out."""
        self._current = index
        place = self.item_position(index)
        self.readout.show_near(place.toPoint(), self.readout_at(index))
        self.mark_items()

    def _step(self, by: int) -> None:
        order = self.keyboard_order()
        if len(order) == 0:
            return
        found = np.flatnonzero(order == self._current)
        if len(found):
            at = min(max(int(found[0]) + by, 0), len(order) - 1)
        else:
            at = 0 if by > 0 else len(order) - 1
        self.go_to(int(order[at]))

    def _on_scene_mouse_moved(self, place: QPointF) -> None:
        index = self.nearest(place)
        if index < 0:
            self.leave_item()
            text = self.hover_text(place)
            if text:
                self.readout.show_near(place.toPoint(), text)
        elif index != self._current or not self.readout.isVisible():
            self.go_to(index)

    def _on_scene_mouse_clicked(self, event: Any) -> None:
        if event.button() != Qt.MouseButton.LeftButton or event.double():
            return
        place = event.scenePos()
        index = self.nearest(place)
        if index >= 0:
            self.picked.emit(self.item_names()[index])

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Show our own menu."""
        if not self.parts.is_empty:
            self.actions_of_chart.menu.popup(event.globalPos())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with the arrows, pick with Enter, explain with F1, copy with Ctrl+C."""
        key = Qt.Key(event.key())
        if key in _NEXT:
            self._step(_NEXT[key])
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self._current = -1
            self._step(1 if key == Qt.Key.Key_Home else -1)
        elif key in _PICK and self._current >= 0:
            self.picked.emit(self.item_names()[self._current])
        elif key == Qt.Key.Key_F1:
            self.explain_requested.emit(self._common.explain_key)
        elif key == Qt.Key.Key_Escape and self._current >= 0:
            self.leave_item()
        elif event.matches(self.actions_of_chart.copy_keys):
            self.actions_of_chart.copy_data()
        else:
            super().keyPressEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Hide the read-out when the pointer goes."""
        self.leave_item()
        super().leaveEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus ring to people who use the keyboard."""
        by_key = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)
        self._focus_ring = event.reason() in by_key
        self.update()
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the focus ring away."""
        self._focus_ring = False
        self.leave_item()
        self.update()
        super().focusOutEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the focus ring; the rest draws itself."""
        super().paintEvent(event)
        if self._focus_ring:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(line_pen(self.tokens.subject, 2))
            ring: QRect = self.rect().adjusted(1, 1, -1, -1)
            painter.drawRoundedRect(ring, RADIUS, RADIUS)
