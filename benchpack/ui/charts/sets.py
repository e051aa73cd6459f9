"""One figure under each of several sets of assumptions, side by side."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import FloatArray, no_values
from benchpack.report.worth_specs import SetsSpec
from benchpack.ui.charts.ink import RIGHT, line_pen, text_size
from benchpack.ui.charts.overlay import PlotArea, plot_area
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.row_chart import RowChart
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.theme import font

_RADIUS, _RADIUS_IN_USE, _CAP = 4.5, 6.0, 4.0
_GAP = 6.0
_MOST_OF_WIDTH = 0.3
_IN_USE = ", in use"
_NO_CLIP = Qt.TextFlag.TextDontClip


class SetRows(RowOverlay):
    """A point with a whisker in each row; that of the set in use is filled."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot)
        self.low = self.high = no_values()
        self.row_in_use = -1
        self.writes_ranges = True

    def name_ink(self, row: int) -> str:
        """Give the set in use the colour of its mark."""
        return self.tokens.subject if row == self.row_in_use else self.tokens.text

    def figure_text(self, row: int) -> str:
        """Write the figure, with its range where there is room for it."""
        text = self.format_value(float(self.value[row]))
        low, high = float(self.low[row]), float(self.high[row])
        if low == high or not self.writes_ranges or not np.isfinite(low + high):
            return text
        return f"{text} ({self.format_value(low)} to {self.format_value(high)})"

    def fit_column(self, width: float) -> float:
        """Give the pixels for the figures at the right; ranges only where they fit."""
        used = font("note")
        room = 0.0
        for self.writes_ranges in (True, False):
            texts = map(self.figure_text, range(len(self.value)))
            widths = (text_size(one, used).width() for one in texts)
            room = max(widths, default=0.0) + 2 * _GAP
            if room <= _MOST_OF_WIDTH * width:
                break
        return room

    def figure_room(self, *, left: bool) -> float:
        """Give the pixels beyond the whiskers: figures stand in a column."""
        del left
        return 2 * _GAP

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Paint nothing: a point and a whisker say all."""

    def _draw_row(self, painter: QPainter, area: PlotArea, row: int) -> None:
        bar = self.bar_rect(area, row)
        y, is_in_use = bar.center().y(), row == self.row_in_use
        ink = self.tokens.subject if is_in_use else self.tokens.second
        left, right = area.rect.left(), area.rect.right()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(line_pen(ink, 2.0 if is_in_use else 1.25))
        begin, end = max(bar.left(), left), min(bar.right(), right)
        if self.low[row] < self.high[row] and begin < end:
            painter.drawLine(QLineF(begin, y, end, y))
            for x in (bar.left(), bar.right()):
                if left <= x <= right:
                    painter.drawLine(QLineF(x, y - _CAP, x, y + _CAP))
        x = area.x_pixel(float(self.value[row]))
        if left <= x <= right:
            radius = _RADIUS_IN_USE if is_in_use else _RADIUS
            painter.setPen(line_pen(ink, 1.5))
            painter.setBrush(QColor(ink if is_in_use else self.tokens.panel))
            painter.drawEllipse(QPointF(x, y), radius, radius)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        end = self.boundingRect().right() - _GAP
        column = QRectF(right, bar.top(), end - right, bar.height())
        painter.setPen(QColor(ink if is_in_use else self.tokens.text))
        painter.drawText(column, RIGHT | _NO_CLIP, self.figure_text(row))

    def _draw_tint(self, painter: QPainter, row: int, band: QRectF) -> None:
        whole = QRectF(band)
        whole.setRight(self.boundingRect().right())
        super()._draw_tint(painter, row, whole)


class SetsChart(RowChart):
    """Sets of assumptions from the top down, in the order of the spec."""

    rows: SetRows

    def __init__(self, parent: QWidget | None = None) -> None:
        self._spec = SetsSpec()
        super().__init__("Sets of assumptions", parent=parent)

    def make_rows(self) -> SetRows:
        """Give the overlay of the points."""
        return SetRows(self.plot)

    @property
    def spec(self) -> SetsSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: SetsSpec) -> None:
        """Show sets; the scroll position stays while the names stay."""
        same_names = spec.names == self._spec.names
        self._spec = spec
        self.begin(spec)
        rows = self.rows
        names = [f"{one}{_IN_USE}" if one == spec.in_use else one for one in spec.names]
        if names != rows.names:
            rows.names = rows.all_names = names
        rows.value = spec.likely
        rows.low = rows.start = _or_likely(spec.low, spec.likely)
        rows.high = rows.end = _or_likely(spec.high, spec.likely)
        rows.format_value = spec.format_value
        rows.row_in_use = self.row_of_name(spec.in_use)
        self.frame.x_label = spec.axis_label
        self.fix_range(spec.value_range)
        self.finish()
        if not same_names:
            self.reset_view()

    def fit_margins(self) -> None:
        """Leave room for the column of figures, then as every row chart."""
        if hasattr(self, "rows"):
            width = float(self.plot.rect().width())
            self.margin_right = float(np.ceil(self.rows.fit_column(width)))
        super().fit_margins()

    def nearest(self, place: QPointF) -> int:
        """Give the set whose row is under a place, the figures included."""
        right = plot_area(self.plot).rect.right()
        return super().nearest(QPointF(min(place.x(), right), place.y()))

    def value_extent(self) -> tuple[float, float]:
        """Give the least and greatest end of a whisker."""
        ends = np.concatenate((self.rows.low, self.rows.high))
        ends = ends[np.isfinite(ends)]
        return (float(ends.min()), float(ends.max())) if len(ends) else (-1.0, 1.0)

    def item_names(self) -> Sequence[str]:
        """Give the sets."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give a set's name and its figure with the range."""
        spec = self._spec
        name = spec.names[index]
        name += _IN_USE if name == spec.in_use else ""
        text = spec.format_full(float(spec.likely[index]))
        low, high = float(spec.low[index]), float(spec.high[index])
        if np.isfinite(low + high) and low != high:
            text += f" ({spec.format_full(low)} to {spec.format_full(high)})"
        return "\n".join([name, text, *filter(None, spec.details[index : index + 1])])


def _or_likely(end: FloatArray, likely: FloatArray) -> FloatArray:
    """Give the ends of the whiskers; without one the whisker ends at the point."""
    return np.where(np.isnan(end), likely, end)
