"""Rows of horizontal bars: names at the left, figures at the bars' ends."""

from __future__ import annotations

import heapq
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QStaticText

from benchpack.report.chart_specs import FloatArray, FormatValue, no_values, plain_text
from benchpack.ui.charts.ink import (
    LEFT,
    elided,
    line_pen,
    text_size,
)
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.theme import colour, font

_GAP = 6.0
_BAR_SHARE = 0.62
_MOST_MEASURED = 20
_SHARE_OF_WIDTH = 0.38
_MOST_LAYOUTS = 400


class RowOverlay(Overlay):
    """Draws the rows that are in view; a subclass colours the bars.

    Attributes
    ----------
    names : sequence of str
        Names in the order shown.
    all_names : sequence of str
        The same names in any order; another object when they change.
    start, end : FloatArray
        Where each bar begins and ends (n,), in the unit of the axis.
    value : FloatArray
        Figure written at the end of each bar (n,).
    spread : FloatArray or None
        Half the length of each whisker (n,), drawn around `end`.
    """

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=20)
        self.names: Sequence[str] = ()
        self.all_names: Sequence[str] = ()
        self.start = self.end = self.value = no_values()
        self.spread: FloatArray | None = None
        self.format_value: FormatValue = plain_text
        self.selected = -1
        self.current = -1
        self._measured: Sequence[str] = ()
        self._widest = 0.0
        self._at_left: NDArray[np.bool_] = np.empty(0, dtype=np.bool_)
        self._metrics = QFontMetricsF(font("note"))
        self._layouts: dict[str, QStaticText] = {}
        self._ink = self._patch = QColor()

    def names_width(self, room: float) -> float:
        """Give the pixels for the column of names, at most a share of the room."""
        if self._measured is not self.all_names:
            longest = heapq.nlargest(_MOST_MEASURED, self.all_names, key=len)
            used = font("note")
            widths = (text_size(name, used).width() for name in longest)
            self._widest = max(widths, default=0.0)
            self._measured = self.all_names
        return min(self._widest + 2 * _GAP, _SHARE_OF_WIDTH * room)

    def figures_left(self) -> NDArray[np.bool_]:
        """Give which figures (n,) stand left of their bars, the others right."""
        return self.value < 0

    def figure_room(self, *, left: bool) -> float:
        """Give the pixels for the figures beyond the bars on one side."""
        at_left = self.figures_left()
        side = self.value[at_left if left else ~at_left]
        side = side[np.isfinite(side)]
        if len(side) == 0:
            return _GAP
        used = font("note")
        extremes = (float(side.min()), float(side.max()))
        widths = (text_size(self.format_value(one), used).width() for one in extremes)
        return max(widths) + 2 * _GAP

    def figure_text(self, row: int) -> str:
        """Write the figure at the end of a row's bar."""
        return self.format_value(float(self.value[row]))

    def rows_in_view(self, area: PlotArea) -> range:
        """Give the rows whose middle is in view."""
        first = max(0, int(np.ceil(area.y_low - 0.5)))
        return range(first, min(len(self.names), int(np.floor(area.y_high + 0.5))))

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Paint one bar; subclasses implement it."""
        raise NotImplementedError

    def name_ink(self, row: int) -> str:
        """Give the colour of a row's name."""
        del row
        return self.tokens.text

    def draw_between(self, painter: QPainter, area: PlotArea) -> None:
        """Draw what lies over the bars; nothing unless a subclass does."""

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw tints, bars, whiskers and texts of the rows in view."""
        rows = self.rows_in_view(area)
        height = area.rect.height() / (area.y_high - area.y_low)
        self._at_left = self.figures_left()
        self._metrics = QFontMetricsF(painter.font())
        self._ink = QColor(self.tokens.text)
        self._patch = colour(self.tokens.panel, alpha=0.85)
        for row in rows:
            top = area.y_pixel(float(row))
            band = QRectF(0, top, area.rect.right(), height)
            self._draw_tint(painter, row, band)
            self._write_name(painter, area, row, band)
            if np.isfinite(self.end[row]):
                self._draw_row(painter, area, row)
            else:
                self._write_unknown(painter, area, band)
        self.draw_between(painter, area)

    def bar_rect(self, area: PlotArea, row: int) -> QRectF:
        """Give the pixels of a bar, at least one pixel wide."""
        height = area.rect.height() / (area.y_high - area.y_low)
        ends = area.x_pixel(float(self.start[row])), area.x_pixel(float(self.end[row]))
        left, right = min(ends), max(ends)
        top = area.y_pixel(float(row)) + height * (1 - _BAR_SHARE) / 2
        width = max(right - left, 1.0)
        return QRectF(left, top, width, height * _BAR_SHARE)

    def _draw_tint(self, painter: QPainter, row: int, band: QRectF) -> None:
        if row == self.selected:
            painter.fillRect(band, colour(self.tokens.subject, alpha=0.12))
        if row == self.current:
            painter.fillRect(band, colour(self.tokens.text, alpha=0.06))

    def _write_name(
        self, painter: QPainter, area: PlotArea, row: int, band: QRectF
    ) -> None:
        column = area.rect.left() - 2 * _GAP
        name = self.names[row]
        if self._widest > column:
            name = elided(name, painter.font(), column)
        laid_out = self._laid_out(name, painter)
        size = laid_out.size()
        left = column + _GAP - size.width()
        painter.setPen(QColor(self.name_ink(row)))
        painter.drawStaticText(
            QPointF(left, band.center().y() - size.height() / 2), laid_out
        )

    def _laid_out(self, name: str, painter: QPainter) -> QStaticText:
        """Give a name laid out once for as long as it keeps being shown."""
        found = self._layouts.get(name)
        if found is None:
            if len(self._layouts) >= _MOST_LAYOUTS:
                self._layouts.clear()
            found = QStaticText(name)
            found.setTextFormat(Qt.TextFormat.PlainText)
            found.prepare(painter.transform(), painter.font())
            self._layouts[name] = found
        return found

    def _draw_row(self, painter: QPainter, area: PlotArea, row: int) -> None:
        bar = self.bar_rect(area, row)
        inside = bar.intersected(area.rect.adjusted(-1, 0, 1, 0))
        if not inside.isEmpty():
            self.fill_bar(painter, inside, row)
        reach = self._draw_whisker(painter, area, row, bar)
        self._write_figure(painter, area, row, reach, bar.center().y())

    def _write_unknown(self, painter: QPainter, area: PlotArea, band: QRectF) -> None:
        zero = min(max(area.x_pixel(0.0), area.rect.left()), area.rect.right())
        painter.setPen(QColor(self.tokens.second))
        place = QRectF(zero + _GAP, band.top(), 20, band.height())
        painter.drawText(place, LEFT, "–")

    def _draw_whisker(
        self, painter: QPainter, area: PlotArea, row: int, bar: QRectF
    ) -> tuple[float, float]:
        """Draw one whisker and give the pixels that bar and whisker reach."""
        left, right = bar.left(), bar.right()
        if self.spread is None or not np.isfinite(self.spread[row]):
            return left, right
        middle = float(self.end[row])
        spread = float(self.spread[row])
        low, high = area.x_pixel(middle - spread), area.x_pixel(middle + spread)
        y = bar.center().y()
        painter.setPen(line_pen(self.tokens.text, 1.0))
        ends = (max(low, area.rect.left()), min(high, area.rect.right()))
        if ends[0] < ends[1]:
            painter.drawLine(QLineF(ends[0], y, ends[1], y))
        for x in (low, high):
            if area.rect.left() <= x <= area.rect.right():
                painter.drawLine(QLineF(x, y - 3, x, y + 3))
        return min(left, low), max(right, high)

    def _write_figure(
        self,
        painter: QPainter,
        area: PlotArea,
        row: int,
        reach: tuple[float, float],
        middle: float,
    ) -> None:
        metrics = self._metrics
        text = self.figure_text(row)
        width, height = metrics.horizontalAdvance(text), metrics.height()
        left = reach[0] - _GAP - width if self._at_left[row] else reach[1] + _GAP
        left = max(area.rect.left() + 2, min(left, area.rect.right() - width))
        top = middle - height / 2
        patch = QRectF(left - 2, top, width + 4, height)
        painter.fillRect(patch, self._patch)
        painter.setPen(self._ink)
        painter.drawText(QPointF(left, top + metrics.ascent()), text)
