"""The share of the variance that each input makes, alone and with others."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import FloatArray, FormatValue, no_values
from benchpack.report.chart_text import share_text
from benchpack.report.worth_specs import SharesSpec
from benchpack.ui.charts.ink import LEFT, line_pen, text_size
from benchpack.ui.charts.overlay import PlotArea, plot_area
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.row_chart import RowChart
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.theme import font

_COVERAGE = 2.0
_SWATCH, _GAP = 10.0, 6.0
_ALL = 100.0


class ShareRows(RowOverlay):
    """Hatched bars of the total share, what an input makes alone solid in them."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot)
        self.first = no_values()
        self.first_spread: FloatArray | None = None
        self.first_text = self.total_text = ""
        self.format_share: FormatValue = share_text

    def figures_left(self) -> NDArray[np.bool_]:
        """Give no figure (n,) a place at the left: shares have one side only."""
        return np.zeros(len(self.value), dtype=np.bool_)

    def figure_text(self, row: int) -> str:
        """Write the total share."""
        return self.format_share(float(self.value[row]) / _ALL)

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Hatch the whole bar, then fill what the input makes alone."""
        self._hatch(painter, bar)
        area = plot_area(self._plot)
        first = float(self.first[row])
        if not first > 0:
            return
        begin = max(area.x_pixel(0.0), area.rect.left())
        end = min(area.x_pixel(first), area.rect.right())
        if end > begin:
            solid = QRectF(begin, bar.top(), end - begin, bar.height())
            painter.fillRect(solid, QColor(self.tokens.subject))

    def _hatch(self, painter: QPainter, box: QRectF) -> None:
        ink = QColor(self.tokens.subject)
        painter.fillRect(box, QColor(self.tokens.panel))
        painter.fillRect(box, QBrush(ink, Qt.BrushStyle.BDiagPattern))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(line_pen(self.tokens.subject))
        painter.drawRect(box)

    def _draw_whisker(
        self, painter: QPainter, area: PlotArea, row: int, bar: QRectF
    ) -> tuple[float, float]:
        """Draw the whisker of the total above that of the first-order share."""
        reach = bar.right()
        for values, spread, share in (
            (self.end, self.spread, 0.3),
            (self.first, self.first_spread, 0.7),
        ):
            if spread is None or not np.isfinite(spread[row] + values[row]):
                continue
            low = area.x_pixel(float(values[row] - spread[row]))
            high = area.x_pixel(float(values[row] + spread[row]))
            y = bar.top() + share * bar.height()
            self._draw_ends(painter, area, low=low, high=high, y=y)
            reach = max(reach, high)
        return bar.left(), reach

    def _draw_ends(
        self, painter: QPainter, area: PlotArea, *, low: float, high: float, y: float
    ) -> None:
        left, right = area.rect.left(), area.rect.right()
        painter.setPen(line_pen(self.tokens.text))
        if max(low, left) < min(high, right):
            painter.drawLine(QLineF(max(low, left), y, min(high, right), y))
        for x in (low, high):
            if left <= x <= right:
                painter.drawLine(QLineF(x, y - 2, x, y + 2))

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Say above the rows what is solid and what is hatched, then draw them."""
        height = area.rect.top() - 6
        x, used = area.rect.left(), font("note")
        for text, is_solid in ((self.first_text, True), (self.total_text, False)):
            box = QRectF(x, (height - _SWATCH) / 2, _SWATCH, _SWATCH)
            if is_solid:
                painter.fillRect(box, QColor(self.tokens.subject))
            else:
                self._hatch(painter, box)
            width = text_size(text, used).width()
            words = QRectF(box.right() + _GAP, 0, width + 1, height)
            painter.setPen(QColor(self.tokens.second))
            painter.drawText(words, LEFT | Qt.TextFlag.TextDontClip, text)
            x = words.right() + 3 * _GAP
        super().draw(painter, area)


class SharesChart(RowChart):
    """Inputs from the greatest total share down, unknown ones last."""

    margin_top = 24
    rows: ShareRows

    def __init__(self, parent: QWidget | None = None) -> None:
        self._spec = SharesSpec()
        self._order: NDArray[np.intp] = np.empty(0, dtype=np.intp)
        self._row_of = self._order
        super().__init__("Shares of the variance", parent=parent)
        self.frame.x_most = _ALL

    def make_rows(self) -> ShareRows:
        """Give the overlay of the bars."""
        return ShareRows(self.plot)

    @property
    def spec(self) -> SharesSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: SharesSpec) -> None:
        """Show shares; the scroll position stays while the names stay."""
        same_names = spec.names == self._spec.names
        self._spec = spec
        self.begin(spec)
        order = np.argsort(-spec.total, kind="stable")
        self._order, self._row_of = order, np.argsort(order)
        rows = self.rows
        names = [spec.names[index] for index in order.tolist()]
        if names != rows.names:
            rows.names = rows.all_names = names
        rows.start = np.zeros(len(order))
        rows.value = rows.end = _ALL * spec.total[order]
        rows.first = _ALL * spec.first[order]
        rows.spread = _spread(spec.total_error, order)
        rows.first_spread = _spread(spec.first_error, order)
        rows.first_text, rows.total_text = spec.first_text, spec.total_text
        rows.format_share = spec.format_share
        self.frame.x_label = spec.axis_label
        self.fix_range((0.0, _ALL))
        self.finish()
        if not same_names:
            self.reset_view()

    def row_of(self, index: int) -> int:
        """Give the row of an input."""
        return int(self._row_of[index])

    def index_of_row(self, row: int) -> int:
        """Give the input of a row."""
        return int(self._order[row])

    def value_extent(self) -> tuple[float, float]:
        """Give nothing and all."""
        return 0.0, _ALL

    def item_names(self) -> Sequence[str]:
        """Give the inputs, as the spec lists them."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give an input's name, both shares and their standard errors."""
        spec = self._spec
        lines = [spec.names[index]]
        for words, shares, errors in (
            (spec.first_text, spec.first, spec.first_error),
            (spec.total_text, spec.total, spec.total_error),
        ):
            text = f"{spec.format_share(float(shares[index]))} {words}"
            if errors is not None and np.isfinite(errors[index]):
                text += f", standard error {spec.format_share(float(errors[index]))}"
            lines.append(text)
        lines += filter(None, spec.details[index : index + 1])
        return "\n".join(lines)


def _spread(errors: FloatArray | None, order: NDArray[np.intp]) -> FloatArray | None:
    """Give half the length of the whiskers in per cent, in the order shown."""
    return None if errors is None else _COVERAGE * _ALL * errors[order]
