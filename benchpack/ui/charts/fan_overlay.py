"""What the fan consists of: band, likely line, cross-hair, marked points."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from benchpack.report.chart_specs import FanPoint, FanSpec, FanTarget, FloatArray
from benchpack.ui.charts.ink import LEFT, draw_on_patch, line_pen, text_size
from benchpack.ui.charts.labels import Box, place_labels
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.trend_band import draw_band, draw_line
from benchpack.ui.theme import colour, font

_RADIUS = 5.5
_SAMPLES = 60
_LINE_WEIGHT = 6.0
_WORST = 250.0  # better told by the read-out than written across other marks


class FanBand(Overlay):
    """The band from low to high with the likely line, named at their ends."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=-200)
        self.spec = FanSpec()

    def label_room(self) -> float:
        """Give the pixels that the names of the lines take at the right."""
        used = font("note")
        spec = self.spec
        texts = (spec.low_text, spec.likely_text, spec.high_text)
        return max(text_size(text, used).width() for text in texts) + 10

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the band, its edges, the likely line and their names."""
        spec, tokens = self.spec, self.tokens
        if spec.is_empty:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        fill = colour(tokens.subject, alpha=0.12)
        draw_band(painter, area, spec.saved, spec.low, spec.high, fill=fill)
        edge = line_pen(tokens.subject)
        edge.setColor(colour(tokens.subject, alpha=0.55))
        draw_line(painter, area, spec.saved, spec.low, pen=edge)
        draw_line(painter, area, spec.saved, spec.high, pen=edge)
        likely = line_pen(tokens.subject, 2)
        draw_line(painter, area, spec.saved, spec.likely, pen=likely)
        self._name_lines(painter, area)

    def _name_lines(self, painter: QPainter, area: PlotArea) -> None:
        spec = self.spec
        ends = []
        for line, text in (
            (spec.high, spec.high_text),
            (spec.likely, spec.likely_text),
            (spec.low, spec.low_text),
        ):
            x = min(area.x_high, float(spec.saved[-1]))
            y = float(np.interp(x, spec.saved, line))
            if text and area.y_low <= y <= area.y_high:
                ends.append((area.y_pixel(y), area.x_pixel(x), text))
        height = painter.fontMetrics().height()
        painter.setPen(QColor(self.tokens.second))
        lowest = area.rect.top() - height
        for y, x, text in sorted(ends):
            lowest = max(y, lowest + height)
            width = text_size(text, painter.font()).width() + 2
            box = QRectF(x + 6, lowest - height / 2, width, height)
            painter.drawText(box, LEFT, text)


class FanMarks(Overlay):
    """Points with their names, and the target as a cross-hair."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=50)
        self.spec = FanSpec()
        self.selected = ""
        self.current = -1
        self.boxes: list[Box | None] = []

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the cross-hair first, then names, the points over them."""
        if self.spec.is_empty:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        taken = self._draw_target(painter, area) if self.spec.target else []
        taken += _whisker_boxes(self.spec, area)
        shown = [one for one in self.spec.points if _is_in_view(one, area)]
        self._name_points(painter, area, shown, taken)
        for point in shown:
            self._draw_point(painter, area, point)

    def _draw_target(self, painter: QPainter, area: PlotArea) -> list[Box]:
        target = self.spec.target
        if target is None or not _is_in_view(target, area):
            return []
        place, rect, ink = (
            area.point(target.saved, target.value),
            area.rect,
            self.tokens,
        )
        painter.setPen(line_pen(ink.text, 1.25, Qt.PenStyle.DashLine))
        painter.drawLine(QLineF(place.x(), rect.bottom(), place.x(), rect.top()))
        painter.drawLine(QLineF(rect.left(), place.y(), rect.right(), place.y()))
        painter.setBrush(QColor(ink.panel))
        painter.setPen(line_pen(ink.text, 1.5))
        painter.drawEllipse(place, 4.5, 4.5)
        painter.setFont(font("strong"))
        down = text_size(target.saved_text, painter.font())
        across = text_size(target.value_text, painter.font())
        left = min(max(place.x() + 6, rect.left()), rect.right() - down.width())
        below = QRectF(
            left, rect.bottom() - down.height() - 4, down.width(), down.height()
        )
        beside = QRectF(
            rect.left() + 6,
            place.y() - across.height() - 2,
            across.width(),
            across.height(),
        )
        if beside.top() < rect.top():
            beside.moveTop(place.y() + 2)
        for box, text in ((below, target.saved_text), (beside, target.value_text)):
            draw_on_patch(painter, box, text, ink.text, ink.panel)
        boxes = (below, beside, QRectF(place.x() - 6, place.y() - 6, 12, 12))
        return [Box(one.left(), one.top(), one.width(), one.height()) for one in boxes]

    def _draw_point(self, painter: QPainter, area: PlotArea, point: FanPoint) -> None:
        tokens = self.tokens
        ink = tokens.subject if point.kind == "subject" else tokens.text
        place = area.point(point.saved, point.value)
        if point.low is not None and point.high is not None:
            painter.setPen(line_pen(ink, 1.5))
            top, bottom = area.y_pixel(point.high), area.y_pixel(point.low)
            painter.drawLine(QLineF(place.x(), top, place.x(), bottom))
            for y in (top, bottom):
                painter.drawLine(QLineF(place.x() - 4, y, place.x() + 4, y))
        filled = point.kind == "subject"
        painter.setBrush(QColor(ink if filled else tokens.panel))
        painter.setPen(line_pen(tokens.panel if filled else ink, 1.5))
        painter.drawEllipse(place, _RADIUS, _RADIUS)
        names = [one.name for one in self.spec.points]
        looked_at = 0 <= self.current < len(names) and names[self.current] == point.name
        if looked_at or point.name == self.selected:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(line_pen(tokens.text if looked_at else tokens.subject, 1.5))
            painter.drawEllipse(place, _RADIUS + 4, _RADIUS + 4)

    def _name_points(
        self,
        painter: QPainter,
        area: PlotArea,
        shown: list[FanPoint],
        taken: list[Box],
    ) -> None:
        painter.setFont(font("note"))
        places = [area.point(one.saved, one.value) for one in shown]
        anchors = []
        for point, place in zip(shown, places, strict=True):
            size = text_size(point.name, painter.font())
            anchors.append((place.x(), place.y(), size.width(), size.height()))
        x, y = _drawn_pixels(self.spec, area)
        rect = area.rect
        bounds = Box(rect.left(), rect.top(), rect.width(), rect.height())
        self.boxes = place_labels(
            anchors,
            bounds=bounds,
            x=x,
            y=y,
            taken=taken,
            weight=_LINE_WEIGHT,
            worst=_WORST,
        )
        for point, box in zip(shown, self.boxes, strict=True):
            if box is None:
                continue
            ink = self.tokens.subject if point.kind == "subject" else self.tokens.text
            room = QRectF(box.left, box.top, box.width, box.height)
            draw_on_patch(painter, room, point.name, ink, self.tokens.panel)


def _whisker_boxes(spec: FanSpec, area: PlotArea) -> list[Box]:
    """Give the places of the whiskers, where no name may stand."""
    boxes = []
    for point in spec.points:
        if point.low is not None and point.high is not None:
            x, top = area.x_pixel(point.saved), area.y_pixel(point.high)
            boxes.append(Box(x - 5, top, 10, area.y_pixel(point.low) - top))
    return boxes


def _drawn_pixels(spec: FanSpec, area: PlotArea) -> tuple[FloatArray, FloatArray]:
    """Give pixels along what is drawn, so that names keep off it."""
    x = np.linspace(area.x_low, area.x_high, _SAMPLES)
    across, down = [area.x(x)], [area.y(np.interp(x, spec.saved, spec.likely))]
    if spec.target is not None:
        across.append(area.x(x))
        down.append(np.full(_SAMPLES, area.y_pixel(spec.target.value)))
        y = np.linspace(area.y_low, area.y_high, _SAMPLES)
        across.append(np.full(_SAMPLES, area.x_pixel(spec.target.saved)))
        down.append(area.y(y))
    return np.concatenate(across), np.concatenate(down)


def _is_in_view(one: FanPoint | FanTarget, area: PlotArea) -> bool:
    place = QPointF(one.saved, one.value)
    across = area.x_low <= place.x() <= area.x_high
    return across and area.y_low <= place.y() <= area.y_high
