"""Names beside the packs that matter, and rings around those being looked at."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QPainter

from benchpack.report.chart_specs import EnergyMassSpec
from benchpack.ui.charts.ink import draw_on_patch, line_pen, text_size
from benchpack.ui.charts.labels import Box, place_labels
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.theme import font

_RING = 9.0
_ROOM_FOR_TREND = 400


class _Label(NamedTuple):
    place: QPointF
    text: str
    ink: str
    font: QFont


class PackLabels(Overlay):
    """Labels the subject, the reference and the selected pack."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=50)
        self._spec = EnergyMassSpec()
        self._names: tuple[str, ...] = ()
        self._rows: dict[str, int] = {}
        self._selected = -1
        self._current = -1
        self.boxes: list[Box | None] = []

    def learn_names(self, names: tuple[str, ...]) -> None:
        """Take the names in, unless they are the same ones."""
        if names is not self._names:
            self._names = names
            self._rows = {name: index for index, name in enumerate(names)}

    def index_of(self, name: str) -> int:
        """Give the index of a pack, -1 for none."""
        return self._rows.get(name, -1)

    def show_packs(self, spec: EnergyMassSpec) -> None:
        """Label the packs of a spec."""
        self._spec = spec
        self.update()

    def mark(self, selected: int, current: int) -> None:
        """Take which packs are selected and current."""
        self._selected, self._current = selected, current

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw rings, then labels on patches."""
        spec, tokens = self._spec, self.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for index, ink in (
            (self._selected, tokens.subject),
            (self._current, tokens.text),
        ):
            if 0 <= index < len(spec.names) and self._is_in_view(index, area):
                self._draw_ring(painter, area, index, ink)
        wanted = [
            (self.index_of(spec.subject), tokens.subject),
            (self.index_of(spec.reference), tokens.reference),
            (self._selected, tokens.text),
        ]
        seen: set[int] = set()
        labels: list[_Label] = []
        for index, ink in wanted:
            fits = 0 <= index < len(spec.names) and index not in seen
            if fits and self._is_in_view(index, area):
                seen.add(index)
                x, y = float(spec.energy[index]), float(spec.mass[index])
                place = area.point(x, y)
                labels.append(_Label(place, spec.names[index], ink, font("body")))
        labels += self._trend_label(area)
        self._draw_labels(painter, area, labels)

    def _trend_label(self, area: PlotArea) -> list[_Label]:
        trend = self._spec.trend
        if trend is None or area.rect.width() < _ROOM_FOR_TREND:
            return []
        x = area.x_low + 0.85 * (area.x_high - area.x_low)
        y = float(np.interp(x, trend.x, trend.mid))
        if not area.y_low <= y <= area.y_high:
            return []
        return [_Label(area.point(x, y), "trend", self.tokens.second, font("note"))]

    def _draw_labels(
        self, painter: QPainter, area: PlotArea, labels: list[_Label]
    ) -> None:
        spec, rect = self._spec, area.rect
        anchors = []
        for one in labels:
            size = text_size(one.text, one.font)
            place = one.place
            anchors.append((place.x(), place.y(), size.width(), size.height()))
        bounds = Box(
            rect.left() + 2, rect.top() + 2, rect.width() - 4, rect.height() - 4
        )
        with np.errstate(invalid="ignore"):
            self.boxes = place_labels(
                anchors, bounds=bounds, x=area.x(spec.energy), y=area.y(spec.mass)
            )
        for one, box in zip(labels, self.boxes, strict=True):
            if box is None:
                continue
            painter.setFont(one.font)
            room = QRectF(box.left, box.top, box.width, box.height)
            draw_on_patch(painter, room, one.text, one.ink, self.tokens.panel)

    def _draw_ring(
        self, painter: QPainter, area: PlotArea, index: int, ink: str
    ) -> None:
        spec = self._spec
        place = area.point(float(spec.energy[index]), float(spec.mass[index]))
        painter.setBrush(QColor(0, 0, 0, 0))
        painter.setPen(line_pen(ink, 1.5))
        painter.drawEllipse(place, _RING, _RING)

    def _is_in_view(self, index: int, area: PlotArea) -> bool:
        x, y = float(self._spec.energy[index]), float(self._spec.mass[index])
        return area.x_low <= x <= area.x_high and area.y_low <= y <= area.y_high
