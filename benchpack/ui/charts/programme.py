"""Money of a programme by year, and when what was spent is paid back."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QWidget

from benchpack.report.worth_specs import ProgrammeSpec
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.programme_overlay import ProgrammeBars, ProgrammeLine
from benchpack.ui.charts.ticks import rounded_range
from benchpack.ui.charts.zoom_chart import ZoomChart, in_steps
from benchpack.ui.palette import Roles

PAYBACK = "payback"
_REACH = 10.0
_EDGE = 0.6


class ProgrammeChart(ZoomChart):
    """Bars by year with whiskers, the present value so far as a line over them.

    Its items are the years of the spec and, last, the payback where there is one.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Value by year", parent)
        self._spec = ProgrammeSpec()
        self._names: list[str] = []
        self.bars = ProgrammeBars(self.plot)
        self.line = ProgrammeLine(self.plot)
        self.frame.zero_y = True
        for overlay in (self.bars, self.line):
            self.add_overlay(overlay)
        self.recolour(self.tokens)

    @property
    def spec(self) -> ProgrammeSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: ProgrammeSpec) -> None:
        """Show a programme; the view moves only when the rounded range does."""
        before = self.home()
        self._spec = self.bars.spec = self.line.spec = spec
        self._names = list(spec.years)
        if np.isfinite(spec.payback):
            self._names.append(PAYBACK)
        self.begin(spec)
        self.frame.x_label, self.frame.y_label = spec.x_label, spec.y_label
        self.frame.x_names = spec.years
        if self.home() != before:
            self.reset_view()
        self.finish()

    def home(self) -> tuple[float, ...]:
        """Give all years, and the rounded range of their money."""
        spec = self._spec
        if spec.is_empty:
            return ()
        columns = (spec.low, spec.likely, spec.high, spec.cumulative)
        reached = np.concatenate((*columns, np.zeros(1)))
        y = spec.value_range or rounded_range(reached)
        return (-_EDGE, len(spec.years) - 1 + _EDGE, *y)

    def right_room(self) -> float:
        """Give the names at the right their room."""
        return in_steps(self.line.label_room())

    def take_colours(self, tokens: Roles) -> None:
        """Need nothing: the overlays ask for their colours when painted."""

    def mark_items(self) -> None:
        """Tint the selected and the current year, ring the payback."""
        if hasattr(self, "line"):
            names = self._names
            chosen = names.index(self.selected) if self.selected in names else -1
            self.bars.selected, self.bars.current = chosen, self.current
            payback = len(self._spec.years)
            self.line.payback_is_selected = chosen == payback
            self.line.payback_is_current = self.current == payback
        super().mark_items()

    def item_names(self) -> Sequence[str]:
        """Give the words of the years, then "payback"."""
        return self._names

    def readout_at(self, index: int) -> str:
        """Give the money of a year with its range, and the present value so far."""
        spec = self._spec
        if index >= len(spec.years):
            return f"{PAYBACK}\n{spec.payback_text}"
        low, likely, high, so_far = (
            float(column[index])
            for column in (spec.low, spec.likely, spec.high, spec.cumulative)
        )
        text = f"{spec.years[index]}\n{spec.format_full(likely)}"
        if np.isfinite(low + high) and low != high:
            text += f" ({spec.format_full(low)} to {spec.format_full(high)})"
        text += f" {spec.year_text}"
        if np.isfinite(so_far):
            text += f"\n{spec.format_full(so_far)} {spec.cumulative_text}"
        return text

    def item_position(self, index: int) -> QPointF:
        """Give the pixel at the end of a year's bar, or that of the payback."""
        area = plot_area(self.plot)
        if index >= len(self._spec.years):
            return area.point(self._spec.payback, 0.0)
        value = float(np.nan_to_num(self._spec.likely[index]))
        return area.point(float(index), min(max(value, area.y_low), area.y_high))

    def nearest(self, place: QPointF) -> int:
        """Give the payback within 10 pixels, else the year whose strip is there."""
        spec = self._spec
        area = plot_area(self.plot)
        if spec.is_empty or not area.rect.contains(place):
            return -1
        mark = self.line.payback_point(area)
        if mark is not None:
            away = np.hypot(mark.x() - place.x(), mark.y() - place.y())
            if away <= _REACH:
                return len(spec.years)
        share = (place.x() - area.rect.left()) / area.rect.width()
        year = round(area.x_low + share * (area.x_high - area.x_low))
        return year if 0 <= year < len(spec.years) else -1

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the years and the payback from the left."""
        places = [float(year) for year in range(len(self._spec.years))]
        if len(self._names) > len(places):
            places.append(self._spec.payback)
        return np.argsort(np.array(places), kind="stable")
