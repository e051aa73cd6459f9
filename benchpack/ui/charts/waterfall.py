"""A gap, or a saving, step by step."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import FloatArray, StepKind, WaterfallSpec
from benchpack.ui.charts.ink import MIDDLE, line_pen, text_size
from benchpack.ui.charts.overlay import PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.row_chart import RowChart
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.palette import mix
from benchpack.ui.theme import font

_COVERAGE = 2.0


def running_totals(
    kinds: Sequence[StepKind], values: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Give where each bar of a waterfall begins and ends.

    Parameters
    ----------
    kinds : sequence of str
        "energy" and "step" add up, "sum" starts at zero (n,).
    values : FloatArray
        Length of each bar with its sign (n,).

    Returns
    -------
    tuple
        Starts (n,) and ends (n,).
    """
    start, end = np.zeros(len(values)), np.zeros(len(values))
    total = 0.0
    for row, kind in enumerate(kinds):
        begin = 0.0 if kind == "sum" else total
        total = begin + float(values[row])
        start[row], end[row] = begin, total
    return start, end


class WaterfallRows(RowOverlay):
    """Floating bars with connectors; sums solid, the energy share hatched."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot)
        self.kinds: Sequence[StepKind] = ()
        self.target: float | None = None
        self.target_text = ""

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Fill a bar by its kind and direction."""
        tokens, kind = self.tokens, self.kinds[row]
        if kind == "sum":
            painter.fillRect(bar, QColor(tokens.subject))
        elif kind == "energy":
            hatch = QBrush(QColor(tokens.peer), Qt.BrushStyle.BDiagPattern)
            painter.fillRect(bar, QColor(tokens.panel))
            painter.fillRect(bar, hatch)
            painter.setPen(line_pen(tokens.peer))
            painter.drawRect(bar)
        else:
            share = 1.0 if self.value[row] >= 0 else 0.55
            painter.fillRect(bar, QColor(mix(tokens.peer, tokens.panel, share=share)))

    def figures_left(self) -> NDArray[np.bool_]:
        """Give which figures (n,) stand left: those of bars below zero."""
        return (self.start <= 0) & (self.end < 0)

    def draw_between(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the connectors."""
        painter.setPen(line_pen(self.tokens.second))
        rows = self.rows_in_view(area)
        for row in rows:
            x = area.x_pixel(float(self.end[row]))
            inside = area.rect.left() <= x <= area.rect.right()
            if row + 1 in rows and inside:
                top = self.bar_rect(area, row).bottom()
                bottom = self.bar_rect(area, row + 1).top()
                painter.drawLine(QLineF(x, top, x, bottom))

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the target line with its words above the rows, then the rows."""
        if self.target is not None and area.x_low <= self.target <= area.x_high:
            x, rect = area.x_pixel(self.target), area.rect
            painter.setPen(line_pen(self.tokens.text, 1.5, Qt.PenStyle.DashLine))
            painter.drawLine(QLineF(x, rect.top() - 2, x, rect.bottom()))
            size = text_size(self.target_text, font("note"))
            left = min(x - size.width() / 2, rect.right() - size.width())
            top = rect.top() - size.height() - 3
            painter.setPen(QColor(self.tokens.text))
            box = QRectF(max(left, 0.0), top, size.width(), size.height())
            painter.drawText(box, MIDDLE, self.target_text)
        super().draw(painter, area)


class WaterfallChart(RowChart):
    """Steps from the top down that add up to the sum at the bottom.

    Parameters
    ----------
    kind : str
        What the chart is, for the screen reader.
    """

    margin_top = 24
    rows: WaterfallRows

    def __init__(
        self, parent: QWidget | None = None, *, kind: str = "Gap step by step"
    ) -> None:
        self._spec = WaterfallSpec()
        super().__init__(kind, parent=parent)

    def make_rows(self) -> WaterfallRows:
        """Give the overlay of the bars."""
        return WaterfallRows(self.plot)

    @property
    def spec(self) -> WaterfallSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: WaterfallSpec) -> None:
        """Show steps; the scroll position stays while the names stay."""
        same_names = spec.names == self._spec.names
        self._spec = spec
        self.begin(spec)
        rows = self.rows
        rows.names = rows.all_names = spec.names
        rows.kinds, rows.value = spec.kinds, spec.values
        rows.start, rows.end = running_totals(spec.kinds, spec.values)
        spread = spec.uncertainty
        rows.spread = None if spread is None else _COVERAGE * spread
        rows.format_value = spec.format_value
        rows.target, rows.target_text = spec.target, spec.target_text
        self.margin_top = 24 if spec.target is not None else 4
        self.frame.x_label = spec.axis_label
        self.fix_range(spec.value_range)
        self.finish()
        if not same_names:
            self.reset_view()

    def value_extent(self) -> tuple[float, float]:
        """Give the least and greatest total, whiskers and target included."""
        rows = self.rows
        spread: FloatArray | float = 0.0
        if rows.spread is not None:
            spread = np.nan_to_num(rows.spread)
        ends = [rows.start, rows.end - spread, rows.end + spread]
        if rows.target is not None:
            ends.append(np.array([rows.target]))
        reached = np.concatenate(ends) if len(rows.names) else np.zeros(1)
        reached = reached[np.isfinite(reached)]
        return float(reached.min()), float(reached.max())

    def item_names(self) -> Sequence[str]:
        """Give the steps."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give a step's name, its value and the total after it."""
        spec = self._spec
        value, total = float(spec.values[index]), float(self.rows.end[index])
        text = f"{spec.names[index]}\n{spec.format_full(value)}"
        if spec.uncertainty is not None and np.isfinite(spec.uncertainty[index]):
            spread = _COVERAGE * float(spec.uncertainty[index])
            low, high = value - spread, value + spread
            text += f" ({spec.format_full(low)} to {spec.format_full(high)})"
        if spec.kinds[index] == "energy":
            text += "\ncarries energy, no saving"
        if spec.kinds[index] != "sum":
            text += f"\n{spec.format_full(total)} so far"
        return text
