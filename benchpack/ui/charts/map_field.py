"""What is drawn of a map of money: the coloured area and its scale."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPicture

from benchpack.report.chart_specs import FloatArray
from benchpack.report.worth_specs import WorthMapSpec
from benchpack.ui.charts.field import between, coloured, pixel, sampled, two_sided
from benchpack.ui.charts.ink import LEFT, line_pen, text_size
from benchpack.ui.charts.overlay import Overlay, PlotArea
from benchpack.ui.charts.plot import Plot
from benchpack.ui.palette import Roles, mix
from benchpack.ui.theme import font

_STRONGEST = 0.82
_PIXELS_PER_SAMPLE = 5.0
_MOST_SAMPLES = 320
_STRIPES = 4
_BAR, _BAR_GAP = 10.0, 12.0


class MapField(Overlay):
    """The area coloured from loss over nothing to gain, and the scale beside it.

    Attributes
    ----------
    shown : FloatArray
        The values as drawn, from the upper left corner of the part in view.
    """

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot, depth=-200)
        self.spec = WorthMapSpec()
        self.limit = 1.0
        self.shown: FloatArray = np.empty((0, 0))
        self._image = QImage()
        self._made_of: tuple[object, ...] = ()
        self._colours: tuple[Roles | None, NDArray[np.uint32] | None] = (None, None)
        self._scale_image = QImage()

    def scale_texts(self) -> tuple[str, str, str]:
        """Give the words beside the scale, from the top down."""
        spec = self.spec
        ends = spec.format_value(self.limit), spec.format_value(-self.limit)
        return ends[0], spec.format_value(0.0), ends[1]

    def label_room(self) -> float:
        """Give the pixels that the scale takes right of the plot."""
        used = font("note")
        widest = max(text_size(text, used).width() for text in self.scale_texts())
        return _BAR_GAP + _BAR + 6 + widest + 4

    def part_in_view(self, area: PlotArea) -> tuple[float, float, float, float] | None:
        """Give the part of the grid that is in view: x low, high, y low, high."""
        x, y = self.spec.x, self.spec.y
        left, right = max(area.x_low, float(x[0])), min(area.x_high, float(x[-1]))
        low, high = max(area.y_low, float(y[0])), min(area.y_high, float(y[-1]))
        return (left, right, low, high) if left < right and low < high else None

    def draw(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the part of the area that is in view, then the scale."""
        if self.spec.is_empty:
            return
        part = self.part_in_view(area)
        if part is not None:
            self._make(area, part)
            left, right, low, high = part
            box = QRectF(area.point(left, high), area.point(right, low))
            is_picture = isinstance(painter.device(), QPicture)
            smooth = QPainter.RenderHint.SmoothPixmapTransform
            painter.setRenderHint(smooth, on=is_picture)
            painter.drawImage(box, self._image)
        self._draw_scale(painter, area)

    def _make(self, area: PlotArea, part: tuple[float, float, float, float]) -> None:
        made_of = (self.spec, self.tokens, part, area.rect.size())
        if made_of == self._made_of:
            return
        self._made_of = made_of
        spec, (left, right, low, high) = self.spec, part
        width = _samples(area.x_pixel(right) - area.x_pixel(left), len(spec.x))
        height = _samples(area.y_pixel(low) - area.y_pixel(high), len(spec.y))
        across = between(spec.x, _middles(left, right, width))
        down = between(spec.y, _middles(high, low, height))
        self.shown = sampled(spec.values, down=down, across=across)
        pixels = coloured(self.shown, limit=self.limit, colours=self._scale_colours())
        unknown = ~np.isfinite(self.shown)
        if unknown.any():
            # Striped in the image itself: laid over it, stripes would cost more time.
            rows, columns = np.nonzero(unknown)
            ink, panel = (
                pixel(one) for one in (self.tokens.hairline, self.tokens.panel)
            )
            pixels[unknown] = np.where((rows + columns) % _STRIPES == 0, ink, panel)
        data = np.ascontiguousarray(pixels)
        kind = QImage.Format.Format_RGB32
        self._image = QImage(data.data, width, height, 4 * width, kind).copy()

    def _scale_colours(self) -> NDArray[np.uint32]:
        """Give the colours of the scheme, made once; the scale's bar with them."""
        made_for, colours = self._colours
        if colours is None or made_for is not self.tokens:
            tokens = self.tokens
            loss = mix(tokens.reference, tokens.panel, share=_STRONGEST)
            gain = mix(tokens.subject, tokens.panel, share=_STRONGEST)
            colours = two_sided(loss, tokens.panel, gain)
            self._colours = (tokens, colours)
            column = np.ascontiguousarray(colours[::-1])
            kind = QImage.Format.Format_RGB32
            self._scale_image = QImage(column.data, 1, len(column), 4, kind).copy()
        return colours

    def _draw_scale(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the small scale in the margin at the right."""
        self._scale_colours()
        rect = area.rect
        bar = QRectF(rect.right() + _BAR_GAP, rect.top(), _BAR, rect.height())
        painter.drawImage(bar, self._scale_image)
        painter.setPen(line_pen(self.tokens.peer))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(bar)
        painter.drawRect(rect)
        height = painter.fontMetrics().height()
        painter.setPen(QColor(self.tokens.second))
        places = (bar.top(), bar.center().y() - height / 2, bar.bottom() - height)
        for text, top in zip(self.scale_texts(), places, strict=True):
            box = QRectF(bar.right() + 6, top, 0, height)
            painter.drawText(box, LEFT | Qt.TextFlag.TextDontClip, text)


def _samples(pixels: float, least: int) -> int:
    """Give how many samples are drawn over a length, of the grid's places at least."""
    return min(max(int(pixels / _PIXELS_PER_SAMPLE), least, 2), _MOST_SAMPLES)


def _middles(first: float, last: float, count: int) -> FloatArray:
    """Give the middles of equal pieces from one place to another."""
    return first + (np.arange(count) + 0.5) / count * (last - first)
