"""Candidate materials: mass against cost, both less today's, with the line of worth."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QWidget

from benchpack.report.candidates_charts import CandidatesSpec
from benchpack.report.chart_specs import FloatArray
from benchpack.ui.charts.candidates_overlay import CandidateMarks
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.zoom_chart import ZoomChart
from benchpack.ui.palette import Roles

_REACH = 12.0
_ROOM = 0.12


class CandidatesChart(ZoomChart):
    """Each candidate as a mark by its checks; today's part lies at the origin."""

    top_margin = 22

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Candidates, mass against cost", parent)
        self._spec = CandidatesSpec()
        self.marks = CandidateMarks(self.plot)
        self.add_overlay(self.marks)
        self.frame.zero_x = self.frame.zero_y = True
        self.recolour(self.tokens)

    @property
    def spec(self) -> CandidatesSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: CandidatesSpec) -> None:
        """Show candidates; the view stays while their range stays."""
        before = self.home()
        self._spec = spec
        self.begin(spec)
        self.frame.x_label, self.frame.y_label = spec.x_label, spec.y_label
        self.marks.spec = spec
        if self.home() and self.home() != before:
            self.reset_view()
        self.finish()

    def home(self) -> tuple[float, ...]:
        """Give what lies around all candidates and today's part."""
        spec = self._spec
        if spec.is_empty:
            return ()
        known = np.isfinite(spec.mass) & np.isfinite(spec.cost)
        return (*_around(spec.mass[known]), *_around(spec.cost[known]))

    def right_room(self) -> float:
        """Need little: nothing is written right of the plot."""
        return 12.0

    def take_colours(self, tokens: Roles) -> None:
        """Need nothing: the marks ask for their colours when painted."""

    def mark_items(self) -> None:
        """Ring the selected and the current candidate."""
        if hasattr(self, "marks"):
            names = self._spec.names
            chosen = names.index(self.selected) if self.selected in names else -1
            self.marks.selected, self.marks.current = chosen, self.current
        super().mark_items()

    def item_names(self) -> Sequence[str]:
        """Give the candidates."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give name, both differences and the details of a candidate."""
        spec = self._spec
        mass = spec.format_mass(float(spec.mass[index]))
        cost = spec.format_cost(float(spec.cost[index]))
        lines = [spec.names[index], f"{mass}, {cost}"]
        lines += filter(None, spec.details[index : index + 1])
        return "\n".join(lines)

    def item_position(self, index: int) -> QPointF:
        """Give the pixel of a candidate on the canvas."""
        spec = self._spec
        area = plot_area(self.plot)
        return area.point(float(spec.mass[index]), float(spec.cost[index]))

    def nearest(self, place: QPointF) -> int:
        """Give the candidate within 12 pixels of a place, -1 for none."""
        spec = self._spec
        if spec.is_empty:
            return -1
        area = plot_area(self.plot)
        away = np.hypot(area.x(spec.mass) - place.x(), area.y(spec.cost) - place.y())
        away[~np.isfinite(away)] = np.inf
        index = int(np.argmin(away))
        return index if away[index] <= _REACH else -1

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the candidates from the lightest up."""
        spec = self._spec
        known = np.flatnonzero(np.isfinite(spec.mass) & np.isfinite(spec.cost))
        return known[np.argsort(spec.mass[known], kind="stable")]


def _around(values: FloatArray) -> tuple[float, float]:
    """Give a range that holds zero and most values; a few outliers are zoomed to."""
    low, high = min(float(values.min()), 0.0), max(float(values.max()), 0.0)
    if len(values) > 4:  # one copper bar must not squeeze all others together
        middle = np.sort(np.abs(values))[int(0.8 * (len(values) - 1))]
        high = min(high, 2.5 * float(middle) or high)
        low = max(low, -2.5 * float(middle) or low)
    room = _ROOM * (high - low) or 1.0
    return low - room, high + room
