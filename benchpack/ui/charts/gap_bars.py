"""The gap of the subject to each peer, as sorted bars around zero."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import FloatArray, GapBarsSpec
from benchpack.ui.charts.ink import LEFT, RIGHT
from benchpack.ui.charts.overlay import PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.row_chart import RowChart
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.palette import mix

_COVERAGE = 2.0


class GapRows(RowOverlay):
    """Grey bars, the reference in its colour, the direction in words on top."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot)
        self.reference_row = -1
        self.lighter_text = ""
        self.heavier_text = ""

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Fill a bar; a lighter subject gives a paler one."""
        tokens = self.tokens
        ink = tokens.reference if row == self.reference_row else tokens.peer
        if self.value[row] < 0:
            ink = mix(ink, tokens.panel, share=0.75)
        painter.fillRect(bar, QColor(ink))

    def name_ink(self, row: int) -> str:
        """Give the reference its colour, the others the colour of text."""
        return self.tokens.reference if row == self.reference_row else self.tokens.text

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Say above the rows which side is which, then draw the rows."""
        painter.setPen(QColor(self.tokens.second))
        rect = area.rect
        box = QRectF(rect.left(), 0, rect.width(), rect.top() - 4)
        if self.lighter_text:
            painter.drawText(box, LEFT, f"← {self.lighter_text}")
        if self.heavier_text:
            painter.drawText(box, RIGHT, f"{self.heavier_text} →")
        super().draw(painter, area)


class GapBarsChart(RowChart):
    """Bars of the gap to every peer, the greatest on top, unknown ones last."""

    margin_top = 24
    rows: GapRows

    def __init__(self, parent: QWidget | None = None) -> None:
        self._spec = GapBarsSpec()
        self._order: NDArray[np.intp] = np.empty(0, dtype=np.intp)
        self._row_of = self._order
        self._sorted_names: list[str] = []
        super().__init__("Gap to each peer", parent=parent)

    def make_rows(self) -> GapRows:
        """Give the overlay of the bars."""
        return GapRows(self.plot)

    @property
    def spec(self) -> GapBarsSpec:
        """What is shown."""
        return self._spec

    @property
    def order(self) -> NDArray[np.intp]:
        """Items of the spec from the top row down (n,)."""
        return self._order

    def show_spec(self, spec: GapBarsSpec) -> None:
        """Show gaps; rows keep their place while names and order stay."""
        same_names = spec.names is self._spec.names
        same_order = same_names and _falls(spec.gap[self._order])
        order = self._order if same_order else np.argsort(-spec.gap, kind="stable")
        self._spec = spec
        self.begin(spec)
        if not same_order:
            self._order = order
            self._row_of = np.empty_like(order)
            self._row_of[order] = np.arange(len(order))
            self._sorted_names = [spec.names[index] for index in order.tolist()]
        self.rows.names, self.rows.all_names = self._sorted_names, spec.names
        self.rows.value = self.rows.end = spec.gap[order]
        self.rows.start = np.zeros(len(order))
        spread = spec.uncertainty
        self.rows.spread = None if spread is None else _COVERAGE * spread[order]
        self.rows.format_value = spec.format_value
        self.rows.lighter_text, self.rows.heavier_text = (
            spec.lighter_text,
            spec.heavier_text,
        )
        self.rows.reference_row = self.row_of_name(spec.reference)
        self.frame.x_label = spec.axis_label
        self.fix_range(spec.value_range)
        self.finish()
        if not same_names:
            self.reset_view()

    def row_of(self, index: int) -> int:
        """Give the row of an item."""
        return int(self._row_of[index])

    def index_of_row(self, row: int) -> int:
        """Give the item of a row."""
        return int(self._order[row])

    def value_extent(self) -> tuple[float, float]:
        """Give the least and greatest gap, whiskers included."""
        spread: FloatArray | float = 0.0
        if self.rows.spread is not None:
            spread = np.nan_to_num(self.rows.spread)
        low, high = self.rows.value - spread, self.rows.value + spread
        known = np.isfinite(low) & np.isfinite(high)
        if not known.any():
            return -1.0, 1.0
        return float(low[known].min()), float(high[known].max())

    def item_names(self) -> Sequence[str]:
        """Give the peers, as the spec lists them."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give a peer's name and gap, with +-2 u where it is known."""
        spec = self._spec
        name, gap = spec.names[index], float(spec.gap[index])
        name += ", reference" if name == spec.reference else ""
        if not np.isfinite(gap):
            return f"{name}\nno gap known"
        word = spec.heavier_text if gap > 0 else spec.lighter_text
        text = f"{name}\n{spec.format_full(gap)}" + (f", {word}" if word else "")
        if spec.uncertainty is not None and np.isfinite(spec.uncertainty[index]):
            spread = _COVERAGE * float(spec.uncertainty[index])
            low, high = spec.format_full(gap - spread), spec.format_full(gap + spread)
            text += f"\n{low} to {high} (±2 u)"
        return text

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the peers from the top row down."""
        return self._order


def _falls(values: FloatArray) -> bool:
    """Whether values are sorted from the greatest down, nan last."""
    known = np.isfinite(values)
    count = int(np.count_nonzero(known))
    return bool(known[:count].all() and np.all(values[1:count] <= values[: count - 1]))
