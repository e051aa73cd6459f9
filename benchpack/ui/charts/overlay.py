"""Drawing in pixels over and under a plot, where data coordinates do not help."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from benchpack.report.chart_specs import FloatArray
from benchpack.ui.charts.ink import LEFT, MIDDLE, RIGHT, elided, line_pen, text_size
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.ticks import tick_texts, ticks
from benchpack.ui.palette import Roles
from benchpack.ui.theme import font, theme

_MOST_TICKS = 7
_BETWEEN_NAMES = 10.0


@dataclass(frozen=True, slots=True)
class PlotArea:
    """The rectangle of a plot in pixels and the data range it shows."""

    rect: QRectF
    x_low: float
    x_high: float
    y_low: float
    y_high: float
    downwards: bool = False

    def x(self, values: FloatArray) -> FloatArray:
        """Give pixels across for values (n,)."""
        share = (values - self.x_low) / (self.x_high - self.x_low)
        return np.asarray(self.rect.left() + share * self.rect.width())

    def y(self, values: FloatArray) -> FloatArray:
        """Give pixels down for values (n,)."""
        share = (values - self.y_low) / (self.y_high - self.y_low)
        if not self.downwards:
            share = 1 - share
        return np.asarray(self.rect.top() + share * self.rect.height())

    def x_pixel(self, value: float) -> float:
        """Give pixels across for one value."""
        share = (value - self.x_low) / (self.x_high - self.x_low)
        return self.rect.left() + share * self.rect.width()

    def y_pixel(self, value: float) -> float:
        """Give pixels down for one value."""
        share = (value - self.y_low) / (self.y_high - self.y_low)
        share = share if self.downwards else 1 - share
        return self.rect.top() + share * self.rect.height()

    def point(self, x: float, y: float) -> QPointF:
        """Give the pixel of a place in data coordinates."""
        return QPointF(self.x_pixel(x), self.y_pixel(y))


def plot_area(plot: Plot) -> PlotArea:
    """Read the rectangle and the range of a plot, in the plot's coordinates."""
    view = plot.vb
    (x_low, x_high), (y_low, y_high) = view.viewRange()
    rect = plot.mapRectFromItem(view, view.rect())
    return PlotArea(rect, x_low, x_high, y_low, y_high, bool(view.yInverted()))


class Overlay(QGraphicsItem):
    """Base of what is drawn in the pixels of a plot.

    Parameters
    ----------
    plot : PlotItem
        The plot that it belongs to.
    depth : float
        Below -100 it lies under the data, above 0 over it.
    """

    def __init__(self, plot: Plot, *, depth: float) -> None:
        super().__init__(plot)
        self._plot = plot
        self.tokens: Roles = theme().roles
        self.setZValue(depth)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw; subclasses implement it."""
        raise NotImplementedError

    def grown(self) -> None:
        """Take over a new size of the plot."""
        self.prepareGeometryChange()
        self.update()

    def boundingRect(self) -> QRectF:
        """Give the whole plot with its margins."""
        return QRectF(self._plot.rect())

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionGraphicsItem,  # noqa: ARG002  # Qt's signature
        widget: QWidget | None = None,  # noqa: ARG002  # Qt's signature
    ) -> None:
        """Draw with the font of notes and without smoothing."""
        area = plot_area(self._plot)
        if area.rect.width() < 1 or area.rect.height() < 1:
            return
        painter.save()
        painter.setFont(font("note"))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        self.draw(painter, area)
        painter.restore()


class Frame(Overlay):
    """Grid, zero lines, ticks and the words of the axes."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=-300)
        self.x_label = ""
        self.y_label = ""
        self.decimal_mark = "."
        self.x_names: Sequence[str] = ()
        self.x_most = math.inf
        self.has_y_ticks = True
        self.zero_x = False
        self.zero_y = False

    def x_ticks(self, area: PlotArea) -> tuple[FloatArray, list[str]]:
        """Give the ticks across and their texts, few enough not to touch."""
        if self.x_names:
            return self._named_ticks(area)
        most = min(_MOST_TICKS, max(3, int(area.rect.width() // 64)))
        values, step = ticks(area.x_low, min(area.x_high, self.x_most), most=most)
        return values, tick_texts(values, step=step, decimal_mark=self.decimal_mark)

    def _named_ticks(self, area: PlotArea) -> tuple[FloatArray, list[str]]:
        """Give the names at 0, 1, 2 that are in view, as many as have room."""
        first = max(0, math.ceil(area.x_low))
        last = min(len(self.x_names) - 1, math.floor(area.x_high))
        used = font("note")
        widest = max((text_size(one, used).width() for one in self.x_names), default=0)
        room = area.rect.width() / max(area.x_high - area.x_low, 1e-9)
        every = max(1, math.ceil((widest + _BETWEEN_NAMES) / max(room, 1.0)))
        places = range(first + -first % every, last + 1, every)
        names = [self.x_names[place] for place in places]
        return np.array(places, dtype=np.float64), names

    def y_ticks(self, area: PlotArea) -> tuple[FloatArray, list[str]]:
        """Give the ticks upwards and their texts."""
        most = min(_MOST_TICKS, max(3, int(area.rect.height() // 36)))
        values, step = ticks(area.y_low, area.y_high, most=most)
        return values, tick_texts(values, step=step, decimal_mark=self.decimal_mark)

    def y_tick_width(self) -> float:
        """Give the pixels that the widest text beside the y axis takes."""
        _, texts = self.y_ticks(plot_area(self._plot))
        used = font("note")
        return max((text_size(text, used).width() for text in texts), default=0.0)

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the grid first, then zero lines, then the words."""
        self._draw_x(painter, area)
        if self.has_y_ticks:
            self._draw_y(painter, area)
        painter.setPen(line_pen(self.tokens.second))
        rect = area.rect
        if self.zero_x and area.x_low <= 0 <= area.x_high:
            x = area.x_pixel(0.0)
            painter.drawLine(QLineF(x, rect.top(), x, rect.bottom()))
        if self.zero_y and area.y_low <= 0 <= area.y_high:
            y = area.y_pixel(0.0)
            painter.drawLine(QLineF(rect.left(), y, rect.right(), y))
        painter.setPen(QColor(self.tokens.second))
        height = painter.fontMetrics().height()
        full = QRectF(self._plot.rect())
        label = elided(self.x_label, painter.font(), full.width())
        is_wide = painter.fontMetrics().horizontalAdvance(label) > rect.width()
        left, width = (0.0, full.width()) if is_wide else (rect.left(), rect.width())
        below = QRectF(left, full.bottom() - height, width, height)
        painter.drawText(below, MIDDLE, label)
        above = QRectF(0, 0, rect.right(), height)
        painter.drawText(above, LEFT, self.y_label)

    def _draw_x(self, painter: QPainter, area: PlotArea) -> None:
        values, texts = self.x_ticks(area)
        rect = area.rect
        height = painter.fontMetrics().height()
        for x, text in zip(area.x(values).tolist(), texts, strict=True):
            if not self.x_names:
                painter.setPen(line_pen(self.tokens.hairline))
                painter.drawLine(QLineF(x, rect.top(), x, rect.bottom()))
            painter.setPen(QColor(self.tokens.second))
            box = QRectF(x - 60, rect.bottom() + 4, 120, height)
            painter.drawText(box, MIDDLE, text)

    def _draw_y(self, painter: QPainter, area: PlotArea) -> None:
        values, texts = self.y_ticks(area)
        rect = area.rect
        height = painter.fontMetrics().height()
        for y, text in zip(area.y(values).tolist(), texts, strict=True):
            painter.setPen(line_pen(self.tokens.hairline))
            painter.drawLine(QLineF(rect.left(), y, rect.right(), y))
            painter.setPen(QColor(self.tokens.second))
            box = QRectF(0, y - height / 2, rect.left() - 6, height)
            painter.drawText(box, RIGHT, text)
