"""Base of the charts made of rows: scrolling, zooming and margins."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QWidget

from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.charts.view import RowView
from benchpack.ui.palette import Roles

_LEAST_ROW, _MOST_ROW = 17.0, 40.0
_BELOW = 42
_LEAST_ZOOM = 0.02
_ROUNDING = 1e-6


class RowChart(Chart):
    """Horizontal bars in rows; more rows than fit are scrolled.

    Parameters
    ----------
    kind : str
        What the chart is, for the screen reader.
    """

    margin_top = 4
    margin_right = 8.0

    def __init__(self, kind: str, *, parent: QWidget | None = None) -> None:
        self.row_view = RowView()
        super().__init__(kind, view=self.row_view, parent=parent)
        self.frame.has_y_ticks = False
        self.frame.zero_x = True
        self.rows = self.make_rows()
        self.add_overlay(self.rows)
        self._range: tuple[float, float] | None = None
        self._zoom: tuple[float, float] | None = None
        self._learned: Sequence[str] = ()
        self._indexes: dict[str, int] = {}
        self.row_view.scrolled.connect(self._on_view_scrolled)
        self.row_view.shifted.connect(self._on_view_shifted)
        self.row_view.zoomed.connect(self._on_view_zoomed)
        self.parts.scroll_bar.valueChanged.connect(self._on_scroll_bar_moved)
        self.recolour(self.tokens)

    # For subclasses -----------------------------------------------------------

    def make_rows(self) -> RowOverlay:
        """Give the overlay that draws the rows."""
        raise NotImplementedError

    def row_of(self, index: int) -> int:
        """Give the row in which an item of the spec is shown."""
        return index

    def row_of_name(self, name: str) -> int:
        """Give the row of an item by its name, -1 for none."""
        if not name:
            return -1
        if self._learned is not self.item_names():
            self._learned = self.item_names()
            self._indexes = {one: index for index, one in enumerate(self._learned)}
        index = self._indexes.get(name, -1)
        return self.row_of(index) if index >= 0 else -1

    def index_of_row(self, row: int) -> int:
        """Give the item of the spec that is shown in a row."""
        return row

    def value_extent(self) -> tuple[float, float]:
        """Give the least and greatest value that a bar or whisker reaches."""
        raise NotImplementedError

    # Layout ---------------------------------------------------------------------

    def after_zoom(self) -> None:
        """Need nothing: names and figures keep their room."""

    def _pixels_down(self) -> float:
        height = float(self.plot.rect().height()) - self.margin_top - _BELOW
        return max(height, 1.0)

    def _rows_in_view(self) -> float:
        pixels = self._pixels_down()
        count = max(len(self.rows.names), 1)
        return pixels / min(max(pixels / count, _LEAST_ROW), _MOST_ROW)

    def fit_margins(self) -> None:
        """Give the names at the left their room and fit rows and values."""
        if not hasattr(self, "rows"):
            return
        width = float(self.plot.rect().width())
        left = float(np.ceil(self.rows.names_width(width)))
        right = self.margin_right
        self.plot.set_margins(left, self.margin_top, right=right, bottom=_BELOW)
        self._fit_rows()
        self._fit_values()

    def _fit_rows(self) -> None:
        count, visible = len(self.rows.names), self._rows_in_view()
        overflow = max(0, int(np.ceil(count - visible - _ROUNDING)))
        bar = self.parts.scroll_bar
        self.row_view.scrolls = overflow > 0
        if bar.maximum() != overflow or bar.isHidden() == (overflow > 0):
            bar.setRange(0, overflow)
            bar.setPageStep(max(1, int(visible)))
            bar.setVisible(overflow > 0)
        top = min(float(bar.value()), max(0.0, count - visible))
        self._set_view(y=(top, top + visible))

    def _fit_values(self) -> None:
        if self._zoom is not None:
            self._set_view(x=self._zoom)
            return
        low, high = self._range or self.value_extent()
        low, high = min(low, 0.0), max(high, 0.0)
        if high <= low:
            low, high = -1.0, 1.0
        pixels = max(float(self.view.rect().width()), 60.0)
        before = self.rows.figure_room(left=True)
        after = self.rows.figure_room(left=False)
        scale = (high - low) / max(pixels - before - after, 0.3 * pixels)
        self._set_view(x=(low - before * scale, high + after * scale))

    def _set_view(
        self,
        *,
        x: tuple[float, float] | None = None,
        y: tuple[float, float] | None = None,
    ) -> None:
        now_x, now_y = self.view.viewRange()
        if x is not None and tuple(now_x) != x:
            self.view.setXRange(*x, padding=0)
        if y is not None and tuple(now_y) != y:
            self.view.setYRange(*y, padding=0)

    def fix_range(self, value_range: tuple[float, float] | None) -> None:
        """Take the value range that the spec fixes, or none."""
        self._range = value_range

    def reset_view(self) -> None:
        """Show all values and the first rows again."""
        self._zoom = None
        self.parts.scroll_bar.setValue(0)
        self.fit_margins()

    def is_zoomed(self) -> bool:
        """Whether the value axis is another than the first one."""
        return self._zoom is not None

    def take_colours(self, tokens: Roles) -> None:
        """Need nothing: the rows ask for their colours when painted."""

    def mark_items(self) -> None:
        """Tint the selected and the current row."""
        if hasattr(self, "rows"):
            self.rows.selected = self.row_of_name(self.selected)
            self.rows.current = self.row_of(self.current) if self.current >= 0 else -1
        super().mark_items()

    # Items ------------------------------------------------------------------------

    def item_names(self) -> Sequence[str]:
        """Give the names of the items, as the spec lists them."""
        raise NotImplementedError

    def item_position(self, index: int) -> QPointF:
        """Give the end of an item's bar, brought into view first."""
        row = self.row_of(index)
        self._show_row(row)
        area = plot_area(self.plot)
        bar = self.rows.bar_rect(area, row)
        known = bool(np.isfinite(self.rows.end[row]))
        x = bar.right() if known else area.x_pixel(0.0)
        x = min(max(x, area.rect.left()), area.rect.right())
        return QPointF(x, bar.center().y())

    def _show_row(self, row: int) -> None:
        bar, visible = self.parts.scroll_bar, self._rows_in_view()
        if row < bar.value():
            bar.setValue(row)
        elif row + 1 > bar.value() + visible:
            bar.setValue(int(np.ceil(row + 1 - visible)))

    def nearest(self, place: QPointF) -> int:
        """Give the item whose row is under a place, -1 for none."""
        area = plot_area(self.plot)
        inside = area.rect.top() <= place.y() <= area.rect.bottom()
        if not inside or not 0 <= place.x() <= area.rect.right():
            return -1
        share = (place.y() - area.rect.top()) / area.rect.height()
        row = int(np.floor(area.y_low + share * (area.y_high - area.y_low)))
        return self.index_of_row(row) if 0 <= row < len(self.rows.names) else -1

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the items from the top row down."""
        rows = range(len(self.rows.names))
        return np.array([self.index_of_row(row) for row in rows], dtype=np.intp)

    def _on_view_scrolled(self, pixels: float) -> None:
        bar = self.parts.scroll_bar
        rows = pixels * self._rows_in_view() / self._pixels_down()
        step = int(np.sign(rows) * np.ceil(abs(rows))) if abs(rows) > 0 else 0
        bar.setValue(bar.value() + step)

    def _on_scroll_bar_moved(self) -> None:
        self._fit_rows()
        self.mark_items()

    def _on_view_shifted(self, pixels: float) -> None:
        if self._zoom is None:
            return
        low, high = self._zoom
        by = pixels * (high - low) / max(float(self.view.rect().width()), 1.0)
        self._take_zoom(low + by, high + by)

    def _on_view_zoomed(self, factor: float, about: float) -> None:
        low, high = self.view.viewRange()[0]
        home = self._range or self.value_extent()
        span = (high - low) * factor
        if span < _LEAST_ZOOM * max(home[1] - home[0], 1e-9):
            return
        self._take_zoom(about + (low - about) * factor, about + (high - about) * factor)

    def _take_zoom(self, low: float, high: float) -> None:
        self._zoom = (low, high)
        self._set_view(x=self._zoom)
