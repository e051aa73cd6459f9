"""Groups from the greatest down, with the running share of the whole beside them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPolygonF
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import ParetoSpec, no_values
from benchpack.report.chart_text import share_text
from benchpack.ui.charts.ink import RIGHT, line_pen, text_size
from benchpack.ui.charts.overlay import PlotArea, plot_area
from benchpack.ui.charts.plot import Plot
from benchpack.ui.charts.row_chart import RowChart
from benchpack.ui.charts.row_overlay import RowOverlay
from benchpack.ui.palette import mix
from benchpack.ui.theme import font

_GAP = 8.0
_LEAST_LANE, _MOST_LANE = 28.0, 96.0
_LANE_SHARE = 0.14
_DOT = 2.5
_PALE = 0.35


class ParetoRows(RowOverlay):
    """Bars, what of them has to stay in a paler hatch, and a lane for the share.

    The running share has a lane of its own at the right, from nothing to all, so that
    no second scale lies over the bars.
    """

    def __init__(self, plot: Plot) -> None:
        super().__init__(plot)
        self.running = self.staying = no_values()
        self.running_text = ""
        self.role = "peer"
        self._share_width = 0.0

    def lane_room(self, room: float) -> float:
        """Give the pixels right of the bars for lane and shares."""
        self._share_width = text_size("> 99 %", font("note")).width()
        lane = min(max(_LANE_SHARE * room, _LEAST_LANE), _MOST_LANE)
        return lane + self._share_width + 3 * _GAP

    def lane(self, area: PlotArea) -> tuple[float, float]:
        """Give the pixels where the lane begins and ends."""
        right = self.boundingRect().right() - self._share_width - 2 * _GAP
        return area.rect.right() + _GAP, right

    def share_point(self, area: PlotArea, row: int) -> QPointF:
        """Give the place of a row's running share in the lane."""
        left, right = self.lane(area)
        x = left + float(self.running[row]) * (right - left)
        return QPointF(x, area.y_pixel(row + 0.5))

    def fill_bar(self, painter: QPainter, bar: QRectF, row: int) -> None:
        """Fill a bar; what is carry-over is the hatched end of it."""
        ink = {
            "subject": self.tokens.subject,
            "reference": self.tokens.reference,
        }.get(self.role, self.tokens.peer)
        staying = float(self.staying[row])
        painter.fillRect(bar, QColor(ink))
        if not staying > 0:
            return
        area = plot_area(self._plot)
        begin = max(area.x_pixel(float(self.end[row]) - staying), bar.left())
        end = QRectF(begin, bar.top(), bar.right() - begin, bar.height())
        if end.width() <= 0:
            return
        pale = mix(ink, self.tokens.panel, share=_PALE)
        painter.fillRect(end, QColor(pale))
        painter.fillRect(end, QBrush(QColor(ink), Qt.BrushStyle.BDiagPattern))

    def _draw_tint(self, painter: QPainter, row: int, band: QRectF) -> None:
        whole = QRectF(band)
        whole.setRight(self.boundingRect().right())
        super()._draw_tint(painter, row, whole)

    def draw_between(self, painter: QPainter, area: PlotArea) -> None:
        """Draw the lane: its ends, the line of the running share, the shares."""
        rows = [row for row in self.rows_in_view(area) if self.is_shared(row)]
        left, right = self.lane(area)
        painter.setPen(line_pen(self.tokens.hairline))
        for x in (left, right):
            painter.drawLine(
                QPointF(x, area.rect.top()), QPointF(x, area.rect.bottom())
            )
        painter.setPen(QColor(self.tokens.second))
        end = self.boundingRect().right() - _GAP
        head = QRectF(left, 0, end - left, area.rect.top() - 4)
        painter.drawText(head, RIGHT | Qt.TextFlag.TextDontClip, self.running_text)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._draw_line(painter, area, rows)
        painter.restore()
        self._write_shares(painter, area, rows)

    def is_shared(self, row: int) -> bool:
        """Tell whether a row has a running share."""
        return bool(np.isfinite(self.running[row]) and np.isfinite(self.end[row]))

    def _draw_line(self, painter: QPainter, area: PlotArea, rows: list[int]) -> None:
        if not rows:
            return
        points = [self.share_point(area, row) for row in rows]
        first = rows[0]
        before = (
            [QPointF(self.lane(area)[0], area.y_pixel(0.0))]
            if first == 0
            else [self._cut(area, first - 1, first, area.rect.top())]
        )
        after = (
            [self._cut(area, rows[-1], rows[-1] + 1, area.rect.bottom())]
            if rows[-1] + 1 < len(self.names) and self.is_shared(rows[-1] + 1)
            else []
        )
        painter.setPen(line_pen(self.tokens.second, 1.5))
        painter.drawPolyline(QPolygonF([*before, *points, *after]))
        painter.setBrush(QColor(self.tokens.panel))
        for point in points:
            painter.drawEllipse(point, _DOT, _DOT)
        painter.setBrush(Qt.BrushStyle.NoBrush)

    def _cut(self, area: PlotArea, upper: int, lower: int, y: float) -> QPointF:
        """Give where the line between two rows crosses the edge of the plot."""
        begin, end = self.share_point(area, upper), self.share_point(area, lower)
        share = (y - begin.y()) / (end.y() - begin.y())
        share = min(max(share, 0.0), 1.0)
        return begin + (end - begin) * share

    def _write_shares(self, painter: QPainter, area: PlotArea, rows: list[int]) -> None:
        right = self.boundingRect().right() - _GAP
        height = area.rect.height() / (area.y_high - area.y_low)
        painter.setPen(QColor(self.tokens.text))
        for row in rows:
            top = area.y_pixel(float(row))
            box = QRectF(right - self._share_width - _GAP, top, 0, height)
            box.setRight(right)
            painter.drawText(box, RIGHT, share_text(float(self.running[row])))


class ParetoChart(RowChart):
    """Bars of groups with the running share of all that has been named so far.

    Attributes
    ----------
    explain_record : str
        The pack that its figures belong to.
    """

    margin_top = 24
    rows: ParetoRows

    def __init__(self, parent: QWidget | None = None) -> None:
        self._spec = ParetoSpec()
        self.explain_record = ""
        super().__init__("Pareto of the joints", parent=parent)

    def make_rows(self) -> ParetoRows:
        """Give the overlay of the bars."""
        return ParetoRows(self.plot)

    @property
    def spec(self) -> ParetoSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: ParetoSpec) -> None:
        """Show groups; the scroll position stays while the names stay."""
        same_names = spec.names == self._spec.names
        self._spec = spec
        self.begin(spec)
        rows = self.rows
        rows.names = rows.all_names = spec.names
        rows.value = rows.end = spec.values
        rows.start = np.zeros(len(spec.values))
        rows.staying, rows.running = spec.staying, spec.running
        rows.running_text, rows.role = spec.running_text, spec.role
        rows.format_value = spec.format_value
        self.frame.x_label = spec.axis_label
        self.finish()
        if not same_names:
            self.reset_view()

    def fit_margins(self) -> None:
        """Leave room for the lane of the running share, then as every row chart."""
        if hasattr(self, "rows"):
            self.margin_right = self.rows.lane_room(float(self.plot.rect().width()))
        super().fit_margins()

    def nearest(self, place: QPointF) -> int:
        """Give the group whose row is under a place, the lane included."""
        right = plot_area(self.plot).rect.right()
        return super().nearest(QPointF(min(place.x(), right), place.y()))

    def value_extent(self) -> tuple[float, float]:
        """Give nothing and the greatest value."""
        known = self._spec.values[np.isfinite(self._spec.values)]
        return 0.0, float(known.max()) if len(known) else 1.0

    def item_names(self) -> Sequence[str]:
        """Give the groups."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give a group's name, its value, what of it stays, and the shares."""
        spec = self._spec
        value, running = float(spec.values[index]), float(spec.running[index])
        lines = [spec.names[index], spec.format_full(value)]
        if np.isfinite(value) and np.isfinite(running):
            total = float(np.nansum(spec.values))
            lines[1] += f", {share_text(value / total)} of all"
            staying = float(spec.staying[index])
            if staying > 0:
                lines.append(f"{spec.format_full(staying)} of it has to stay")
            lines.append(f"{share_text(running)} down to here")
        lines += filter(None, spec.details[index : index + 1])
        return "\n".join(lines)
