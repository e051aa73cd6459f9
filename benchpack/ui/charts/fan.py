"""Worth per pack over the kilograms saved, between low and high."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import FanSpec
from benchpack.ui.charts.fan_overlay import FanBand, FanMarks
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.ticks import rounded_range
from benchpack.ui.charts.zoom_chart import ZoomChart
from benchpack.ui.palette import Roles

_REACH = 12.0


class FanChart(ZoomChart):
    """The fan with the target and the points that matter.

    Its items are the points of the spec and, last, the target.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Worth over mass saved", parent)
        self._spec = FanSpec()
        self._names: list[str] = []
        self.band = FanBand(self.plot)
        self.marks = FanMarks(self.plot)
        self.frame.zero_x = self.frame.zero_y = True
        for overlay in (self.band, self.marks):
            self.add_overlay(overlay)
        self.recolour(self.tokens)

    @property
    def spec(self) -> FanSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: FanSpec) -> None:
        """Show a fan; the view moves only when the rounded range does."""
        before = self.home()
        self._spec = self.band.spec = self.marks.spec = spec
        self._names = [point.name for point in spec.points]
        if spec.target is not None:
            self._names.append("target")
        self.begin(spec)
        self.frame.x_label, self.frame.y_label = spec.x_label, spec.y_label
        if self.home() != before:
            self.reset_view()
        self.finish()

    def home(self) -> tuple[float, ...]:
        """Give the rounded range of lines, points and target."""
        spec = self._spec
        if spec.is_empty:
            return ()
        marks = [(one.saved, one.value) for one in spec.points]
        if spec.target is not None:
            marks.append((spec.target.saved, spec.target.value))
        across = np.array([one for one, _ in marks] + [0.0])
        upwards = np.array([one for _, one in marks] + [0.0])
        x = spec.saved_range or rounded_range(np.concatenate((spec.saved, across)))
        lines = np.concatenate((spec.low, spec.likely, spec.high, upwards))
        y = spec.value_range or rounded_range(lines)
        return (*x, *y)

    def right_room(self) -> float:
        """Give the names of the lines their room."""
        return float(np.ceil(self.band.label_room()))

    def take_colours(self, tokens: Roles) -> None:
        """Need nothing: the overlays ask for their colours when painted."""

    def mark_items(self) -> None:
        """Ring the selected and the current point."""
        if hasattr(self, "marks"):
            self.marks.selected, self.marks.current = self.selected, self.current
        super().mark_items()

    def item_names(self) -> Sequence[str]:
        """Give the names of the points, then "target"."""
        return self._names

    def _place_of(self, index: int) -> tuple[float, float]:
        spec = self._spec
        if index < len(spec.points):
            return spec.points[index].saved, spec.points[index].value
        if spec.target is None:
            return float("nan"), float("nan")
        return spec.target.saved, spec.target.value

    def readout_at(self, index: int) -> str:
        """Give a point's name, mass saved and worth."""
        spec = self._spec
        saved, value = self._place_of(index)
        text = f"{self._names[index]}\n{spec.format_saved(saved)} saved, "
        text += spec.format_value(value)
        point = spec.points[index] if index < len(spec.points) else None
        if point is not None and point.low is not None and point.high is not None:
            low, high = spec.format_value(point.low), spec.format_value(point.high)
            text += f" ({low} to {high})"
        return text

    def readout_over(self, saved: float) -> str:
        """Give the worth at any mass saved, with its range."""
        spec = self._spec
        low, likely, high = (
            spec.format_value(float(np.interp(saved, spec.saved, line)))
            for line in (spec.low, spec.likely, spec.high)
        )
        return f"{spec.format_saved(saved)} saved\n{likely} ({low} to {high})"

    def item_position(self, index: int) -> QPointF:
        """Give the pixel of a point on the canvas."""
        return plot_area(self.plot).point(*self._place_of(index))

    def nearest(self, place: QPointF) -> int:
        """Give the point within 12 pixels of a place, -1 for none."""
        best, best_away = -1, _REACH
        for index in range(len(self._names)):
            at = self.item_position(index)
            away = float(np.hypot(at.x() - place.x(), at.y() - place.y()))
            if away <= best_away:
                best, best_away = index, away
        return best

    def hover_text(self, place: QPointF) -> str:
        """Give the worth at the mass under the pointer, "" outside the plot."""
        area = plot_area(self.plot)
        if self._spec.is_empty or not area.rect.contains(place):
            return ""
        share = (place.x() - area.rect.left()) / area.rect.width()
        saved = area.x_low + share * (area.x_high - area.x_low)
        first, last = float(self._spec.saved[0]), float(self._spec.saved[-1])
        return self.readout_over(saved) if first <= saved <= last else ""

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the points by rising mass saved."""
        saved = [self._place_of(index)[0] for index in range(len(self._names))]
        return np.argsort(np.array(saved), kind="stable")
