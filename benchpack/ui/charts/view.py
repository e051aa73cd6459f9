"""How a plot answers to wheel and drag."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QGraphicsSceneWheelEvent

from benchpack.ui.palette import Roles
from benchpack.ui.theme import colour

_LEAST_DRAG = 8.0


class ZoomView(pg.ViewBox):  # type: ignore[misc]  # pyqtgraph is untyped
    """Wheel zooms about the pointer, a drag zooms into its rectangle."""

    def __init__(self) -> None:
        super().__init__(enableMenu=False)
        self.setMouseMode(pg.ViewBox.RectMode)
        self.disableAutoRange()

    def recolour(self, tokens: Roles) -> None:
        """Colour the rectangle that a drag draws."""
        self.rbScaleBox.setPen(QColor(tokens.subject))
        self.rbScaleBox.setBrush(colour(tokens.subject, alpha=0.1))

    def mouseDragEvent(self, event: Any, axis: int | None = None) -> None:
        """Zoom, unless the drag is so short that a click was meant."""
        if _is_short(event):
            event.accept()
            self.rbScaleBox.hide()
            return
        super().mouseDragEvent(event, axis)


class RowView(pg.ViewBox):  # type: ignore[misc]  # pyqtgraph is untyped
    """Wheel and drag scroll rows; with Ctrl the wheel zooms the value axis.

    Signals
    -------
    scrolled(float)
        Pixels to scroll down by.
    shifted(float)
        Pixels to move right by.
    zoomed(float, float)
        Factor of the value range and the value that stays in place.
    """

    scrolled = Signal(float)
    shifted = Signal(float)
    zoomed = Signal(float, float)

    def __init__(self) -> None:
        super().__init__(enableMenu=False)
        self.setMouseEnabled(x=False, y=False)
        self.invertY()
        self.disableAutoRange()
        self.scrolls = False

    def recolour(self, tokens: Roles) -> None:
        """Take nothing: no rectangle is drawn here."""

    def wheelEvent(
        self, event: QGraphicsSceneWheelEvent, axis: int | None = None
    ) -> None:
        """Scroll the rows, or zoom where all rows are in view or Ctrl is held."""
        del axis
        notches = event.delta() / 120
        wants_zoom = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if self.scrolls and not wants_zoom:
            self.scrolled.emit(-60.0 * notches)
        else:
            self.zoomed.emit(0.85**notches, self.mapToView(event.pos()).x())
        event.accept()

    def mouseDragEvent(self, event: Any, axis: int | None = None) -> None:
        """Scroll the rows with the pointer and shift a zoomed value axis."""
        del axis
        event.accept()
        moved = event.pos() - event.lastPos()
        self.scrolled.emit(-moved.y())
        self.shifted.emit(-moved.x())


def _is_short(event: Any) -> bool:
    moved = event.pos() - event.buttonDownPos()
    finished = event.isFinish()
    return bool(finished and moved.manhattanLength() < _LEAST_DRAG)


def shows_range(view: pg.ViewBox, home: Sequence[float]) -> bool:
    """Whether a view shows the range (x low, x high, y low, y high), or none is set."""
    if not home:
        return True
    x, y = view.viewRange()
    return bool(np.allclose((*x, *y), home, rtol=1e-9))
