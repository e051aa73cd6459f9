"""Lines and bands over a grid, and the trend of the peers drawn with them."""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from benchpack.report.chart_specs import FloatArray, TrendBand
from benchpack.ui.charts.clipping import cut_line, cut_places, with_crossings
from benchpack.ui.charts.ink import line_pen
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.theme import colour


def draw_line(
    painter: QPainter, area: PlotArea, x: FloatArray, y: FloatArray, *, pen: QPen
) -> None:
    """Draw a line over a rising grid (k,), cut at the edges of the plot."""
    if len(x) == 2 and _is_inside(area, x, y):
        painter.setPen(pen)
        painter.drawLine(area.point(x[0], y[0]), area.point(x[1], y[1]))
        return
    known = np.isfinite(y)
    if np.count_nonzero(known) < 2:
        return
    places = cut_places(x[known], low=area.x_low, high=area.x_high)
    if len(places) == 0:
        return
    values = np.interp(places, x[known], y[known])
    across, down = cut_line(places, values, low=area.y_low, high=area.y_high)
    path = pg.arrayToQPath(area.x(across), area.y(down), connect="finite")
    painter.strokePath(path, pen)


def draw_band(
    painter: QPainter,
    area: PlotArea,
    x: FloatArray,
    low: FloatArray,
    high: FloatArray,
    *,
    fill: QColor,
) -> None:
    """Fill between two lines over a rising grid (k,), cut at the plot's edges."""
    if len(x) == 2 and _is_inside(area, x, low) and _is_inside(area, x, high):
        corners = zip((x[0], x[1], x[1], x[0]), (*low, *high[::-1]), strict=True)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(fill)
        # Smoothing a large area costs most of the chart; its edges get lines.
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        painter.drawPolygon([area.point(*corner) for corner in corners])
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=True)
        return
    known = np.isfinite(low) & np.isfinite(high)
    if np.count_nonzero(known) < 2:
        return
    places = cut_places(x[known], low=area.x_low, high=area.x_high)
    if len(places) == 0:
        return
    pair = tuple(np.interp(places, x[known], line[known]) for line in (low, high))
    places, pair = with_crossings(places, pair, low=area.y_low, high=area.y_high)
    bottom, top = (area.y(np.clip(one, area.y_low, area.y_high)) for one in pair)
    across = area.x(places)
    path: QPainterPath = pg.arrayToQPath(
        np.concatenate((across, across[::-1])), np.concatenate((bottom, top[::-1]))
    )
    painter.fillPath(path, fill)


def _is_inside(area: PlotArea, x: FloatArray, y: FloatArray) -> bool:
    """Whether two points lie in the plot, so that nothing has to be cut."""
    (left, right), (first, last) = x.tolist(), y.tolist()
    across = area.x_low <= left and right <= area.x_high
    return across and all(area.y_low <= end <= area.y_high for end in (first, last))


class BandOverlay(Overlay):
    """The trend of the peers and its prediction band."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=-200)
        self.trend: TrendBand | None = None

    def show_band(self, trend: TrendBand | None) -> None:
        """Draw another trend, or none."""
        self.trend = trend
        self.update()

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the band and the line in it."""
        trend, tokens = self.trend, self.tokens
        if trend is None:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        fill = colour(tokens.peer, alpha=0.13)
        draw_band(painter, area, trend.x, trend.low, trend.high, fill=fill)
        draw_line(painter, area, trend.x, trend.mid, pen=line_pen(tokens.second, 1.5))
