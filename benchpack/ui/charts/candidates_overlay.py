"""What is drawn of candidate materials: marks, ranges, names, the line of worth."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from benchpack.report.candidates_charts import CandidatesSpec
from benchpack.report.chart_specs import Verdict
from benchpack.ui.charts.ink import LEFT, RIGHT, draw_on_patch, line_pen, text_size
from benchpack.ui.charts.labels import Box, place_labels
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.theme import colour, font

_MARK, _RING = 4.5, 8.5
_WORST = 260.0


class CandidateMarks(Overlay):
    """Marks by how the checks stand: circle good, triangle look, cross fail."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=20)
        self.spec = CandidatesSpec()
        self.selected = -1
        self.current = -1

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the worth first, then ranges, marks and names."""
        spec = self.spec
        if spec.is_empty:
            return
        self._write_sides(painter, area)
        painter.save()
        painter.setClipRect(area.rect)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_worth(painter, area)
        shown = self._in_view(area)
        for index in shown:
            if index in (self.selected, self.current):
                self._draw_ranges(painter, area, index)
        self._draw_today(painter, area)
        for index in shown:
            self._draw_mark(painter, self._place(area, index), spec.verdicts[index])
        painter.restore()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_rings(painter, area)
        self._write_names(painter, area, shown)

    def _place(self, area: PlotArea, index: int) -> QPointF:
        return area.point(float(self.spec.mass[index]), float(self.spec.cost[index]))

    def _in_view(self, area: PlotArea) -> list[int]:
        mass, cost = self.spec.mass, self.spec.cost
        inside = (mass >= area.x_low) & (mass <= area.x_high)
        inside &= (cost >= area.y_low) & (cost <= area.y_high)
        return [int(index) for index in np.flatnonzero(inside)]

    def _write_sides(self, painter: QPainter, area: PlotArea) -> None:
        """Name the sides of the zero lines, in the margin above and in the corners."""
        spec, rect = self.spec, area.rect
        painter.setPen(QColor(self.tokens.second))
        height = painter.fontMetrics().height()
        zero = min(max(area.x_pixel(0.0), rect.left()), rect.right())
        top = rect.top() + 2
        left = QRectF(rect.left(), top, max(zero - rect.left() - 6, 0), height)
        right = QRectF(zero + 6, top, max(rect.right() - zero - 6, 0), height)
        if left.width() > 60:
            painter.drawText(left, RIGHT, f"← {spec.lighter_text}")
        if right.width() > 60:
            painter.drawText(right, LEFT, f"{spec.heavier_text} →")

    def _draw_worth(self, painter: QPainter, area: PlotArea) -> None:
        spec = self.spec
        low, likely, high = spec.worth_slopes
        if not np.isfinite((low, likely, high)).all():
            return
        left, right = area.x_low, area.x_high
        band = QPolygonF(
            [
                area.point(0.0, 0.0),
                area.point(left, -low * left),
                area.point(left, -high * left),
                area.point(0.0, 0.0),
                area.point(right, -low * right),
                area.point(right, -high * right),
            ]
        )
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour(self.tokens.subject, alpha=0.08))
        painter.drawPolygon(band)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(line_pen(self.tokens.subject, 1.5))
        ends = area.point(left, -likely * left), area.point(right, -likely * right)
        painter.drawLine(QLineF(*ends))
        self._name_worth(painter, area, likely)

    def _name_worth(self, painter: QPainter, area: PlotArea, slope: float) -> None:
        """Write the worth on its line, where the line leaves the lighter side."""
        x = area.x_low * 0.97
        if slope > 0:
            x = max(x, -0.92 * area.y_high / slope)
        if not area.x_low <= x < 0:
            return
        text = f"worth {self.spec.worth_text}"
        size = text_size(text, font("note"))
        at = area.point(x, -slope * x)
        top = min(at.y() + 4, area.rect.bottom() - size.height())
        left = max(at.x() + 6, area.rect.left() + 4)
        box = QRectF(left, top, size.width(), size.height())
        ink, panel = self.tokens.subject, self.tokens.panel
        draw_on_patch(painter, box, text, ink, panel)

    def _draw_ranges(self, painter: QPainter, area: PlotArea, index: int) -> None:
        spec = self.spec
        mass, cost = float(spec.mass[index]), float(spec.cost[index])
        painter.setPen(line_pen(self.tokens.second))
        ends = (spec.mass_low[index], spec.mass_high[index])
        if np.isfinite(ends).all():
            painter.drawLine(QLineF(*(area.point(float(end), cost) for end in ends)))
        ends = (spec.cost_low[index], spec.cost_high[index])
        if np.isfinite(ends).all():
            painter.drawLine(QLineF(*(area.point(mass, float(end)) for end in ends)))
        sheet = float(spec.sheet_mass[index])
        if np.isfinite(sheet) and sheet != mass:
            painter.setBrush(QColor(self.tokens.panel))
            painter.drawEllipse(area.point(sheet, cost), _MARK, _MARK)

    def _draw_today(self, painter: QPainter, area: PlotArea) -> None:
        painter.setPen(line_pen(self.tokens.panel, 1.5))
        painter.setBrush(QColor(self.tokens.subject))
        painter.drawEllipse(area.point(0.0, 0.0), 6.5, 6.5)

    def _draw_mark(self, painter: QPainter, at: QPointF, verdict: Verdict) -> None:
        tokens = self.tokens
        ink = {"good": tokens.good, "look": tokens.look, "fail": tokens.fail}
        pen = line_pen(ink.get(verdict, tokens.peer), 1.8)
        painter.setPen(pen)
        painter.setBrush(QColor(tokens.panel))
        x, y, half = at.x(), at.y(), _MARK
        if verdict == "fail":
            painter.drawLine(QLineF(x - half, y - half, x + half, y + half))
            painter.drawLine(QLineF(x - half, y + half, x + half, y - half))
        elif verdict == "look":
            corners = ((x, y - half), (x + half, y + half), (x - half, y + half))
            painter.drawPolygon(QPolygonF([QPointF(*one) for one in corners]))
        else:
            painter.drawEllipse(at, half, half)

    def _draw_rings(self, painter: QPainter, area: PlotArea) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        rings = ((self.selected, self.tokens.subject), (self.current, self.tokens.text))
        for index, ink in rings:
            if index in self._in_view(area):
                painter.setPen(line_pen(ink, 1.5))
                painter.drawEllipse(self._place(area, index), _RING, _RING)

    def _write_names(self, painter: QPainter, area: PlotArea, shown: list[int]) -> None:
        """Write today's and the chosen name, of the others as many as have room."""
        spec, tokens = self.spec, self.tokens
        order = sorted(shown, key=lambda index: float(spec.mass[index]))
        chosen = [index for index in order if index == self.selected]
        first = [(spec.subject_text, area.point(0.0, 0.0), tokens.subject)]
        first += [(spec.names[i], self._place(area, i), tokens.text) for i in chosen]
        others = [
            (spec.names[index], self._place(area, index), tokens.text)
            for index in order
            if index != self.selected
        ]
        taken = self._write(painter, area, first, shown=shown)
        self._write(painter, area, others, shown=shown, taken=taken, worst=_WORST)

    def _write(
        self,
        painter: QPainter,
        area: PlotArea,
        texts: list[tuple[str, QPointF, str]],
        *,
        shown: list[int],
        taken: Sequence[Box] = (),
        worst: float = np.inf,
    ) -> list[Box]:
        spec, rect, used = self.spec, area.rect, font("note")
        anchors = []
        for text, at, _ in texts:
            size = text_size(text, used)
            anchors.append((at.x(), at.y(), size.width(), size.height()))
        known = np.array(shown, dtype=np.intp)
        boxes = place_labels(
            anchors,
            bounds=Box(
                rect.left() + 2, rect.top() + 18, rect.width() - 4, rect.height() - 20
            ),
            x=area.x(spec.mass[known]),
            y=area.y(spec.cost[known]),
            taken=taken,
            worst=worst,
        )
        painter.setFont(used)
        for (text, _, ink), box in zip(texts, boxes, strict=True):
            if box is not None:
                room = QRectF(box.left, box.top, box.width, box.height)
                draw_on_patch(painter, room, text, ink, self.tokens.panel)
        return [box for box in boxes if box is not None]
