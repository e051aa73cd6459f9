"""What is drawn of a programme: bars of the years, the running value, the payback."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter

from benchpack.report.worth_specs import ProgrammeSpec
from benchpack.ui.charts.ink import LEFT, RIGHT, draw_on_patch, line_pen, text_size
from benchpack.ui.charts.labels import Box, place_labels
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.trend_band import draw_line
from benchpack.ui.palette import mix
from benchpack.ui.theme import colour, font

BAR_SHARE = 0.62
_CAP, _DOT, _MARK = 3.0, 2.5, 5.5
_LEAST_FOR_NAMES = 460.0
_PALE = 0.55


class ProgrammeBars(Overlay):
    """A bar from zero for each year, with its whisker from low to high."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=-200)
        self.spec = ProgrammeSpec()
        self.selected = -1
        self.current = -1

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw tints, then bars and whiskers of the years in view."""
        spec = self.spec
        if spec.is_empty:
            return
        width = area.rect.width() / (area.x_high - area.x_low)
        whole, half = 0.5 * width, 0.5 * BAR_SHARE * width
        for year in range(len(spec.years)):
            x = area.x_pixel(float(year))
            self._draw_tint(painter, year, _column(area, x, whole))
            column = _column(area, x, half)
            if column.width() > 0 and np.isfinite(spec.likely[year]):
                self._draw_bar(painter, area, float(spec.likely[year]), column)
                if area.rect.left() <= x <= area.rect.right():
                    self._draw_whisker(painter, area, year, x)

    def _draw_tint(self, painter: QPainter, year: int, column: QRectF) -> None:
        if column.width() <= 0:
            return
        if year == self.selected:
            painter.fillRect(column, colour(self.tokens.subject, alpha=0.12))
        if year == self.current:
            painter.fillRect(column, colour(self.tokens.text, alpha=0.06))

    def _draw_bar(
        self, painter: QPainter, area: PlotArea, value: float, column: QRectF
    ) -> None:
        ends = (_inside(area, 0.0), _inside(area, value))
        bar = QRectF(column.left(), min(ends), column.width(), abs(ends[0] - ends[1]))
        share = _PALE if value >= 0 else 1.0
        ink = mix(self.tokens.peer, self.tokens.panel, share=share)
        painter.fillRect(bar, QColor(ink))

    def _draw_whisker(
        self, painter: QPainter, area: PlotArea, year: int, x: float
    ) -> None:
        low, high = float(self.spec.low[year]), float(self.spec.high[year])
        if not np.isfinite(low + high) or low == high:
            return
        ends = (_inside(area, low), _inside(area, high))
        painter.setPen(line_pen(self.tokens.text))
        painter.drawLine(QLineF(x, ends[0], x, ends[1]))
        for end, y in zip((low, high), ends, strict=True):
            if area.y_low <= end <= area.y_high:
                painter.drawLine(QLineF(x - _CAP, y, x + _CAP, y))


class ProgrammeLine(Overlay):
    """The present value year by year, named at its end, and where it is paid back."""

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=50)
        self.spec = ProgrammeSpec()
        self.payback_is_current = False
        self.payback_is_selected = False

    def has_names_beside(self) -> bool:
        """Whether there is room for the names right of the plot."""
        return self.boundingRect().width() >= _LEAST_FOR_NAMES

    def end_texts(
        self, last_year: float = math.inf
    ) -> list[tuple[float, tuple[str, ...]]]:
        """Give the values of the last year in view with the lines that name them."""
        spec = self.spec
        texts: list[tuple[float, tuple[str, ...]]] = []
        for values, words in (
            (spec.cumulative, spec.cumulative_text),
            (spec.likely, spec.year_text),
        ):
            known = np.flatnonzero(np.isfinite(values))
            known = known[known <= last_year]
            if len(known) and words:
                last = float(values[known[-1]])
                texts.append((last, (words, spec.format_value(last))))
        return texts

    def label_room(self) -> float:
        """Give the pixels that the names take right of the plot."""
        if not self.has_names_beside():
            return 12.0
        used = font("note")
        texts = [text for _, lines in self.end_texts() for text in lines]
        return max((text_size(text, used).width() for text in texts), default=0) + 16

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the line with its points, the payback, the names."""
        spec, tokens = self.spec, self.tokens
        if spec.is_empty:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        years = np.arange(len(spec.years), dtype=np.float64)
        line = line_pen(tokens.subject, 2)
        draw_line(painter, area, years, spec.cumulative, pen=line)
        points = _points(spec, area)
        painter.setPen(line_pen(tokens.subject, 1.5))
        painter.setBrush(QColor(tokens.panel))
        for point in points:
            painter.drawEllipse(point, _DOT, _DOT)
        self._draw_payback(painter, area, points)
        if self.has_names_beside():
            self._name_ends(painter, area)
        else:
            self._name_above(painter, area)

    def payback_point(self, area: PlotArea) -> QPointF | None:
        """Give the pixel of the payback, None where there is none in view."""
        payback = self.spec.payback
        if not (area.x_low <= payback <= area.x_high):
            return None
        if not area.y_low <= 0 <= area.y_high:
            return None
        return area.point(payback, 0.0)

    def _draw_payback(
        self, painter: QPainter, area: PlotArea, points: list[QPointF]
    ) -> None:
        place = self.payback_point(area)
        if place is None:
            return
        tokens = self.tokens
        painter.setBrush(QColor(tokens.subject))
        painter.setPen(line_pen(tokens.panel, 1.5))
        painter.drawEllipse(place, _MARK, _MARK)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for is_marked, ink in (
            (self.payback_is_selected, tokens.subject),
            (self.payback_is_current, tokens.text),
        ):
            if is_marked:
                painter.setPen(line_pen(ink, 1.5))
                painter.drawEllipse(place, _MARK + 4, _MARK + 4)
        text = self.spec.payback_text
        if text:
            box, used = _payback_room(text, place, area.rect, points)
            painter.setFont(used)
            draw_on_patch(painter, box, text, tokens.text, tokens.panel)
            painter.setFont(font("note"))

    def _name_ends(self, painter: QPainter, area: PlotArea) -> None:
        height = painter.fontMetrics().height()
        x, lowest = area.rect.right() + 8, area.rect.top() - 2 * height
        inks = (self.tokens.subject, self.tokens.second)
        named = [
            (area.y_pixel(value), ink, lines)
            for (value, lines), ink in zip(
                self.end_texts(area.x_high), inks, strict=False
            )
            if area.y_low <= value <= area.y_high
        ]
        for y, ink, lines in sorted(named):
            top = max(y - height, lowest + 2 * height)
            lowest = top
            for place, text in enumerate(lines):
                painter.setPen(QColor(ink if place == 0 else self.tokens.text))
                width = text_size(text, painter.font()).width() + 2
                box = QRectF(x, top + place * height, width, height)
                painter.drawText(box, LEFT, text)

    def _name_above(self, painter: QPainter, area: PlotArea) -> None:
        """Name the line in the margin above, where there is no room beside it."""
        height = painter.fontMetrics().height()
        painter.setPen(QColor(self.tokens.subject))
        box = QRectF(0, 0, area.rect.right(), height)
        painter.drawText(box, RIGHT, f"line: {self.spec.cumulative_text}")


def _inside(area: PlotArea, value: float) -> float:
    """Give the pixel of a value, kept within the plot."""
    return area.y_pixel(min(max(value, area.y_low), area.y_high))


def _column(area: PlotArea, x: float, half: float) -> QRectF:
    """Give a strip around x over the whole height, cut at the plot's edges."""
    left, right = max(x - half, area.rect.left()), min(x + half, area.rect.right())
    return QRectF(left, area.rect.top(), right - left, area.rect.height())


def _points(spec: ProgrammeSpec, area: PlotArea) -> list[QPointF]:
    """Give the pixels of the running value that are in view."""
    return [
        area.point(float(year), value)
        for year, value in enumerate(spec.cumulative.tolist())
        if area.x_low <= year <= area.x_high and area.y_low <= value <= area.y_high
    ]


def _payback_room(
    text: str, place: QPointF, rect: QRectF, points: list[QPointF]
) -> tuple[QRectF, QFont]:
    """Find where the words of the payback stand, and in which font."""
    for used in (font("strong"), font("note")):
        # Right of it and below zero there is neither a bar nor the line.
        below = text_size(text, used).translated(place.x() + _MARK, place.y() + 4)
        if rect.contains(below):
            return below, used
    used = font("note")
    size = text_size(text, used)
    (box,) = place_labels(
        [(place.x(), place.y(), size.width(), size.height())],
        bounds=Box(rect.left(), rect.top(), rect.width(), rect.height()),
        x=np.array([one.x() for one in points]),
        y=np.array([one.y() for one in points]),
    )
    assert box is not None  # no place is too bad without a limit
    return QRectF(box.left, box.top, box.width, box.height), used
