"""What is drawn over a map of money: break-even lines, words, marks."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from benchpack.report.chart_specs import FloatArray
from benchpack.report.worth_specs import WorthMapSpec
from benchpack.ui.charts.clipping import cut_segments
from benchpack.ui.charts.field import middle_of, region
from benchpack.ui.charts.ink import draw_on_patch, line_pen, text_size
from benchpack.ui.charts.labels import Box, place_labels
from benchpack.ui.charts.map_field import MapField
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.theme import font

_MARK, _CURSOR = 6.0, 7.0


class MapMarks(Overlay):
    """The break-even lines, the words of both sides, the study and the cursor."""

    def __init__(self, plot: Plot, field: MapField) -> None:
        super().__init__(plot, depth=50)
        self._field = field
        self.spec = WorthMapSpec()
        self.spot: tuple[float, float] | None = None
        self.here_is_current = False
        self.here_is_selected = False
        self.boxes: list[Box] = []

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw lines first, then marks, then the words that must not cover them."""
        if self.spec.is_empty:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.boxes = []
        lines = self._draw_break_even(painter, area)
        self._draw_here(painter, area, lines)
        self._name_sides(painter, area)
        self._name_break_even(painter, area, lines)
        self._draw_cursor(painter, area)

    def _draw_break_even(self, painter: QPainter, area: PlotArea) -> FloatArray:
        """Draw the lines and give their pieces in pixels (m, 2, 2)."""
        x, y = (area.x_low, area.x_high), (area.y_low, area.y_high)
        cut = [cut_segments(line, x=x, y=y) for line in self.spec.break_even]
        pieces = np.concatenate([np.empty((0, 2, 2)), *cut])
        pixels = np.stack((area.x(pieces[..., 0]), area.y(pieces[..., 1])), axis=-1)
        drawn = [QLineF(*one) for one in pixels.reshape(-1, 4).tolist()]
        for ink, width in ((self.tokens.panel, 4.5), (self.tokens.text, 2.0)):
            pen = line_pen(ink, width)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            painter.drawLines(drawn)
        return pixels

    def _draw_here(self, painter: QPainter, area: PlotArea, lines: FloatArray) -> None:
        spec, tokens, rect = self.spec, self.tokens, area.rect
        if spec.here is None or not _is_in_view(spec.here, area):
            return
        place = area.point(*spec.here)
        painter.setPen(line_pen(tokens.text, 1.0, Qt.PenStyle.DashLine))
        painter.drawLine(QLineF(place.x(), place.y(), place.x(), rect.bottom()))
        painter.drawLine(QLineF(rect.left(), place.y(), place.x(), place.y()))
        painter.setPen(line_pen(tokens.panel, 2))
        painter.setBrush(QColor(tokens.text))
        painter.drawEllipse(place, _MARK, _MARK)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if self.here_is_current or self.here_is_selected:
            painter.setPen(line_pen(tokens.text, 1.5))
            painter.drawEllipse(place, _MARK + 4, _MARK + 4)
        painter.setFont(font("strong"))
        self._write(painter, area, spec.here_text, at=place, avoid=lines)
        painter.setFont(font("note"))

    def _name_sides(self, painter: QPainter, area: PlotArea) -> None:
        """Write "gain" and "loss" where there is most of them, with their signs."""
        spec, field = self.spec, self._field
        part = field.part_in_view(area)
        if part is None or not field.shown.size:
            return
        box = QRectF(area.point(part[0], part[3]), area.point(part[1], part[2]))
        painter.setFont(font("strong"))
        for words, sign, is_gain in (
            (spec.gain_text, "+", True),
            (spec.loss_text, "−", False),
        ):
            found = middle_of(region(field.shown, is_gain=is_gain))
            if found is None or not words:
                continue
            text = f"{sign} {words}"
            at = QPointF(
                box.left() + found[1] * box.width(), box.top() + found[0] * box.height()
            )
            size = text_size(text, painter.font())
            room = QRectF(0, 0, size.width(), size.height())
            room.moveCenter(at)
            placed = Box(room.left(), room.top(), room.width(), room.height())
            if any(placed.overlap(other) > 0 for other in self.boxes):
                self._write(painter, area, text, at=at)
                continue
            self.boxes.append(placed)
            draw_on_patch(painter, room, text, self.tokens.text, self.tokens.panel)
        painter.setFont(font("note"))

    def _name_break_even(
        self, painter: QPainter, area: PlotArea, lines: FloatArray
    ) -> None:
        if len(lines) and self.spec.break_even_text:
            begin = lines[len(lines) // 4, 0]
            at = QPointF(float(begin[0]), float(begin[1]))
            self._write(painter, area, self.spec.break_even_text, at=at, avoid=lines)

    def _write(
        self,
        painter: QPainter,
        area: PlotArea,
        text: str,
        *,
        at: QPointF,
        avoid: FloatArray | None = None,
    ) -> None:
        """Write a text beside a place, off the lines and the texts there are."""
        size, rect = text_size(text, painter.font()), area.rect
        points = np.empty((0, 2)) if avoid is None else avoid[:, 0]
        (box,) = place_labels(
            [(at.x(), at.y(), size.width(), size.height())],
            bounds=Box(rect.left(), rect.top(), rect.width(), rect.height()),
            x=points[:, 0],
            y=points[:, 1],
            taken=self.boxes,
        )
        if box is not None:
            self.boxes.append(box)
            room = QRectF(box.left, box.top, box.width, box.height)
            draw_on_patch(painter, room, text, self.tokens.text, self.tokens.panel)

    def _draw_cursor(self, painter: QPainter, area: PlotArea) -> None:
        if self.spot is None or not _is_in_view(self.spot, area):
            return
        at, reach = area.point(*self.spot), _CURSOR
        box = QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for ink, width in ((self.tokens.panel, 4.0), (self.tokens.text, 1.5)):
            painter.setPen(line_pen(ink, width))
            painter.drawRect(box)


def _is_in_view(place: tuple[float, float], area: PlotArea) -> bool:
    x, y = place
    return area.x_low <= x <= area.x_high and area.y_low <= y <= area.y_high
