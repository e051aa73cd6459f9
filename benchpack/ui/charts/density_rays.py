"""Lines of equal density through the origin, labelled at their ends."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QColor, QPainter

from benchpack.report.chart_specs import EnergyMassSpec
from benchpack.ui.charts.ink import LEFT, line_pen, text_size
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.ticks import tick_texts, ticks
from benchpack.ui.palette import mix
from benchpack.ui.theme import font

_MOST = 6


class DensityRays(Overlay):
    """A few rays of round densities that cross the view."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=-250)
        self._factor = 1000.0
        self._unit = ""
        self._mark = "."
        self._low = self._high = float("nan")

    def show_rays(self, spec: EnergyMassSpec) -> None:
        """Take the densities of the packs, which say what rays are of use."""
        self._factor, self._unit = spec.ray_factor, spec.density_unit
        self._mark = spec.decimal_mark
        with np.errstate(divide="ignore", invalid="ignore"):
            density = spec.ray_factor * spec.energy / spec.mass
        known = density[np.isfinite(density) & (density > 0)]
        self._low = float(known.min()) if len(known) else float("nan")
        self._high = float(known.max()) if len(known) else float("nan")

    def densities(self) -> tuple[list[float], list[str]]:
        """Give round densities around those of the packs, and their texts."""
        if not np.isfinite(self._low):
            return [], []
        room = max(0.08 * (self._high - self._low), 0.08 * self._high)
        values, step = ticks(self._low - room, self._high + room, most=_MOST)
        values = values[values > 0]
        texts = tick_texts(values, step=step, decimal_mark=self._mark)
        return values.tolist(), texts

    def label_room(self) -> float:
        """Give the pixels that labels at the right edge take."""
        _, texts = self.densities()
        if not texts:
            return 16.0
        widest = text_size(f"{texts[-1]} {self._unit}", font("note")).width()
        return float(np.ceil(widest)) + 8

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the rays and write each density once, the unit at the last."""
        values, texts = self.densities()
        height = painter.fontMetrics().height()
        kept: list[tuple[QRectF, str, bool]] = []
        for value, text in zip(values, texts, strict=True):
            end = self._end(painter, area, value)
            if end is None:
                continue
            width = text_size(text, painter.font()).width()
            at_top = end[1] <= area.rect.top() + 0.5
            if at_top:
                box = QRectF(end[0] - width / 2, end[1] - height - 2, width, height)
            else:
                top = max(end[1] - height / 2, area.rect.top() - 4)
                box = QRectF(end[0] + 6, top, width + 2, height)
            if not kept or not kept[-1][0].adjusted(-6, 0, 6, 0).intersects(box):
                kept.append((box, text, at_top))
        painter.setPen(QColor(self.tokens.second))
        for index, (box, text, at_top) in enumerate(kept):
            shown = f"{text} {self._unit}" if index == len(kept) - 1 else text
            box.setWidth(text_size(shown, painter.font()).width() + 2)
            if at_top:
                box.moveRight(min(box.right(), float(self._plot.rect().right())))
            painter.drawText(box, LEFT, shown)

    def _end(
        self, painter: QPainter, area: PlotArea, density: float
    ) -> tuple[float, float] | None:
        """Draw one ray and give the pixel where it leaves the view."""
        slope = self._factor / density
        x_start = max(area.x_low, area.y_low / slope, 0.0)
        x_end = min(area.x_high, area.y_high / slope)
        if x_end <= x_start:
            return None
        start, end = (area.point(x, slope * x) for x in (x_start, x_end))
        ink = mix(self.tokens.peer, self.tokens.panel, share=0.6)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(line_pen(ink))
        painter.drawLine(QLineF(start, end))
        if QLineF(start, end).length() < 24:  # a corner, not worth a label
            return None
        return end.x(), end.y()
