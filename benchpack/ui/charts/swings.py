"""What matters: a figure when one input at a time goes to its ends."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QWidget

from benchpack.report.change_charts import SwingsSpec
from benchpack.report.chart_specs import no_values
from benchpack.ui.charts.overlay import PlotArea, plot_area
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.row_chart import RowChart
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.palette import mix


class SwingRows(RowOverlay):
    """Bars from the low to the high end; the side of the high end is the darker."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot)
        self.at_low = self.at_high = no_values()

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Fill the two sides of the zero line."""
        area: PlotArea = plot_area(self._plot)
        zero = min(max(area.x_pixel(0.0), bar.left()), bar.right())
        dark = QColor(self.tokens.peer)
        pale = QColor(mix(self.tokens.peer, self.tokens.panel, share=0.5))
        high_is_right = self.at_high[row] >= self.at_low[row]
        left = QRectF(bar.left(), bar.top(), zero - bar.left(), bar.height())
        right = QRectF(zero, bar.top(), bar.right() - zero, bar.height())
        painter.fillRect(left, pale if high_is_right else dark)
        painter.fillRect(right, dark if high_is_right else pale)

    def figures_left(self) -> NDArray[np.bool_]:
        """Give which figures (n,) stand left: where the greater swing goes down."""
        return np.asarray(self.value < 0)


class SwingsChart(RowChart):
    """Inputs from the widest swing down."""

    rows: SwingRows

    def __init__(self, parent: QWidget | None = None) -> None:
        self._spec = SwingsSpec()
        super().__init__("What matters", parent=parent)

    def make_rows(self) -> SwingRows:
        """Give the overlay of the bars."""
        return SwingRows(self.plot)

    @property
    def spec(self) -> SwingsSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: SwingsSpec) -> None:
        """Show swings; the scroll position stays while the names stay."""
        same_names = spec.names == self._spec.names
        self._spec = spec
        self.begin(spec)
        rows = self.rows
        rows.names = rows.all_names = spec.names
        rows.at_low, rows.at_high = spec.at_low, spec.at_high
        rows.start = np.minimum(np.minimum(spec.at_low, spec.at_high), 0.0)
        rows.end = np.maximum(np.maximum(spec.at_low, spec.at_high), 0.0)
        down = np.abs(rows.start) > rows.end
        rows.value = np.where(down, rows.start, rows.end)
        rows.format_value = spec.format_value
        self.frame.x_label = spec.axis_label
        self.finish()
        if not same_names:
            self.reset_view()

    def value_extent(self) -> tuple[float, float]:
        """Give the least and greatest end."""
        rows = self.rows
        if not len(rows.names):
            return -1.0, 1.0
        return float(rows.start.min()), float(rows.end.max())

    def item_names(self) -> Sequence[str]:
        """Give the inputs."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give an input's name, both ends, and its share of the variance."""
        spec = self._spec
        low, high = float(spec.at_low[index]), float(spec.at_high[index])
        lines = [
            spec.names[index],
            f"low: {spec.format_full(low)}, high: {spec.format_full(high)}",
        ]
        lines += filter(None, spec.details[index : index + 1])
        return "\n".join(lines)
