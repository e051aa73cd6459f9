"""A slider with three handles: low, likely and high worth per kilogram."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractSlider, QSizePolicy, QWidget

from benchpack.ui.theme import colour, theme

STEPS = 1000
"""Positions over the length of the slider."""
_MARGIN = 9
_HANDLES = ("low", "likely", "high")


class WorthSlider(QAbstractSlider):
    """Low, likely and high on one line; the slider's own value is the likely one.

    The arrow keys move the likely handle, with Shift the low one and with Ctrl the
    high one. Handles push each other so that low <= likely <= high always holds.

    Signals
    -------
    moved(float, float, float)
        The worths while a handle is dragged or stepped.
    released()
        The handle was let go, or a key pressed: keep what was shown.
    """

    moved = Signal(float, float, float)
    released = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._worths = [1.0, 3.0, 6.0]
        self._top = 12.0
        self._held: int | None = None
        self.setRange(0, STEPS)
        self.valueChanged.connect(self._on_value_set)
        self.setOrientation(Qt.Orientation.Horizontal)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("Worth per mass, low, likely and high")
        theme().theme_changed.connect(self.update)

    @property
    def worths(self) -> tuple[float, float, float]:
        """Low, likely and high."""
        low, likely, high = self._worths
        return low, likely, high

    def show_worths(self, low: float, likely: float, high: float) -> None:
        """Show worths without telling anyone; the scale stays while dragging."""
        self._worths = [low, likely, high]
        fits = 0.2 * self._top <= high <= 0.95 * self._top
        if self._held is None and not fits:
            self._top = max(2 * high, 1e-9)
        self._sync()

    def _sync(self) -> None:
        with QSignalBlocker(self):
            self.setValue(round(STEPS * self._worths[1] / self._top))
        low, likely, high = self._worths
        self.setAccessibleDescription(
            f"low {low:.2f}, likely {likely:.2f}, high {high:.2f}"
        )
        self.setToolTip(
            f"Low {low:.2f}, likely {likely:.2f}, high {high:.2f}.\n"
            "Drag a handle, or use the arrow keys; Shift moves low, Ctrl moves high."
        )
        self.update()

    def _x(self, worth: float) -> float:
        span = max(1, self.width() - 2 * _MARGIN)
        return _MARGIN + span * min(worth / self._top, 1.0)

    def _worth(self, x: float) -> float:
        span = max(1, self.width() - 2 * _MARGIN)
        step = self._step()
        raw = self._top * min(max((x - _MARGIN) / span, 0.0), 1.0)
        return round(raw / step) * step

    def _step(self) -> float:
        for step in (0.01, 0.05, 0.1, 0.5, 1, 5, 10, 50, 100, 500):
            if self._top / step <= 400:
                return step
        return self._top / 400

    def _nearest(self, x: float) -> int:
        distances = [abs(self._x(worth) - x) for worth in self._worths]
        # The likely handle lies on top, so it wins where handles coincide.
        return min((1, 0, 2), key=distances.__getitem__)

    def _move(self, handle: int, worth: float) -> None:
        worth = max(0.0, round(worth, 10))
        moved = [
            min(old, worth) if i < handle else max(old, worth) if i > handle else worth
            for i, old in enumerate(self._worths)
        ]
        if moved != self._worths:
            self._worths = moved
            self._sync()
            self.moved.emit(*moved)

    def _on_value_set(self, value: int) -> None:
        """Take a value that a screen reader sets as the likely worth."""
        self._move(1, self._top * value / STEPS)
        self.released.emit()

    def sizeHint(self) -> QSize:
        """Give room for the three handles."""
        return QSize(140, 28)

    def minimumSizeHint(self) -> QSize:
        """Give the least useful size."""
        return QSize(96, 28)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take the nearest handle."""
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        x = event.position().x()
        self._held = self._nearest(x)
        self._move(self._held, self._worth(x))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag the handle that is held."""
        if self._held is not None:
            self._move(self._held, self._worth(event.position().x()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let the handle go and fit the scale again."""
        if self._held is not None and event.button() is Qt.MouseButton.LeftButton:
            self._held = None
            self.released.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step a handle with the arrow keys."""
        directions = {
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Down: -1,
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Up: 1,
            Qt.Key.Key_PageDown: -10,
            Qt.Key.Key_PageUp: 10,
        }
        direction = directions.get(Qt.Key(event.key()))
        if direction is None:
            # The base class would move its own value and leave the worths behind.
            event.ignore()
            return
        handle = 1
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            handle = 0
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            handle = 2
        self._move(handle, self._worths[handle] + direction * self._step())
        self.released.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Step the likely handle with the wheel, as the arrow keys do."""
        turns = event.angleDelta().y()
        if turns and self.hasFocus():
            self._move(1, self._worths[1] + (1 if turns > 0 else -1) * self._step())
            self.released.emit()
        else:
            event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the line, the band from low to high, and the handles."""
        del event
        roles = theme().roles
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = self.height() / 2
        low, likely, high = (self._x(worth) for worth in self._worths)
        painter.setPen(QPen(colour(roles.hairline), 2))
        painter.drawLine(
            QPointF(_MARGIN, middle), QPointF(self.width() - _MARGIN, middle)
        )
        painter.setPen(QPen(colour(roles.subject, alpha=0.45), 4))
        painter.drawLine(QPointF(low, middle), QPointF(high, middle))
        painter.setPen(QPen(colour(roles.subject), 2))
        for x in (low, high):
            painter.drawLine(QPointF(x, middle - 6), QPointF(x, middle + 6))
        ring = roles.text if self.hasFocus() else roles.panel
        painter.setPen(QPen(colour(ring), 2))
        painter.setBrush(colour(roles.subject))
        painter.drawEllipse(QRectF(likely - 7, middle - 7, 14, 14))
