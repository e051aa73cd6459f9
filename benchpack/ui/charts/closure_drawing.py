"""Where the pieces of the closure bar stand and how they are drawn."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QLineF, QRect, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter

from benchpack.report.chart_specs import ClosureSpec
from benchpack.ui.assets import draw_icon
from benchpack.ui.charts.ink import LEFT, MIDDLE, RIGHT, line_pen, text_size
from benchpack.ui.palette import Roles, mix
from benchpack.ui.theme import font

_BAR = 14.0
_WORDS = 20.0
_BETWEEN = 6.0
_EDGE = 8.0
_SIGNS = {"good": "good", "look": "warning", "fail": "fail", "unknown": "info"}
_SHADES = (1.0, 0.62)


def height_of() -> int:
    """Give the pixels that words, bar and names take."""
    return int(_EDGE + _WORDS + _BETWEEN + _BAR + _BETWEEN + _WORDS + _EDGE)


def bar_rect(width: float) -> QRectF:
    """Give the pixels of the bar in a widget of a width."""
    return QRectF(_EDGE, _EDGE + _WORDS + _BETWEEN, max(width - 2 * _EDGE, 1.0), _BAR)


def _full_scale(spec: ClosureSpec) -> float:
    total = float(np.nansum(spec.masses))
    return max(total, spec.pack_mass) if np.isfinite(spec.pack_mass) else total


def segments(spec: ClosureSpec, bar: QRectF) -> list[QRectF]:
    """Give the pixels of each segment, in the order of the spec."""
    masses = np.nan_to_num(spec.masses)
    scale = bar.width() / _full_scale(spec)
    ends = bar.left() + np.cumsum(masses) * scale
    lefts = ends - masses * scale
    return [
        QRectF(left, bar.top(), end - left, bar.height())
        for left, end in zip(lefts.tolist(), ends.tolist(), strict=True)
    ]


def draw_closure(
    painter: QPainter,
    spec: ClosureSpec,
    tokens: Roles,
    *,
    width: int,
    marked: int,
    free: int = 0,
) -> None:
    """Draw sign, words, segments, the pack's mass and the names that fit.

    Parameters
    ----------
    painter : QPainter
        Open on the widget or on a picture.
    spec : ClosureSpec
        What to draw.
    tokens : Roles
        Colours.
    width : int
        Width in pixels.
    marked : int
        Segment to outline, -1 for none.
    free : int
        Pixels at the right end of the words that are left to a button.
    """
    bar = bar_rect(width)
    painter.setFont(font("note"))
    if spec.is_empty:
        painter.setPen(QColor(tokens.second))
        painter.drawText(bar.adjusted(0, -_WORDS, 0, _WORDS), LEFT, spec.empty_sentence)
        return
    _draw_words(painter, spec, tokens, bar.adjusted(0, 0, -free, 0))
    boxes = segments(spec, bar)
    for index, box in enumerate(boxes):
        ink = mix(tokens.peer, tokens.panel, share=_SHADES[index % 2])
        inner = box.adjusted(0, 0, -1 if box.width() > 3 else 0, 0)
        painter.fillRect(inner, QColor(ink))
    _draw_rest(painter, spec, tokens, bar)
    _draw_names(painter, spec, tokens, boxes)
    if 0 <= marked < len(boxes):
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(line_pen(tokens.subject, 2))
        painter.drawRect(boxes[marked].adjusted(0, -1, 0, 1))


def _draw_words(
    painter: QPainter, spec: ClosureSpec, tokens: Roles, bar: QRectF
) -> None:
    row = QRectF(bar.left(), _EDGE, bar.width(), _WORDS)
    ink = {
        "good": tokens.good,
        "look": tokens.look,
        "fail": tokens.fail,
        "unknown": tokens.second,
    }[spec.verdict]
    draw_icon(painter, _SIGNS[spec.verdict], ink, QRect(int(row.left()), 10, 16, 16))
    total = spec.format_value(float(np.nansum(spec.masses)))
    right = f"sum {total}, {spec.pack_text}"
    room = row.width() - 22 - text_size(right, painter.font()).width() - 12
    left = QFontMetricsF(painter.font()).elidedText(
        spec.verdict_text, Qt.TextElideMode.ElideRight, max(room, 60.0)
    )
    painter.setPen(QColor(ink))
    painter.drawText(row.adjusted(22, 0, 0, 0), LEFT, left)
    if room > 0:
        painter.setPen(QColor(tokens.second))
        painter.drawText(row, RIGHT, right)


def _draw_rest(
    painter: QPainter, spec: ClosureSpec, tokens: Roles, bar: QRectF
) -> None:
    """Draw what is missing hatched, and a mark at the pack's mass."""
    if not np.isfinite(spec.pack_mass):
        return
    scale = bar.width() / _full_scale(spec)
    end = bar.left() + float(np.nansum(spec.masses)) * scale
    mark = bar.left() + spec.pack_mass * scale
    if mark > end + 1:
        rest = QRectF(end, bar.top(), mark - end, bar.height())
        painter.fillRect(rest, QBrush(QColor(tokens.peer), Qt.BrushStyle.BDiagPattern))
    painter.setPen(line_pen(tokens.text, 2))
    painter.drawLine(QLineF(mark, bar.top() - 4, mark, bar.bottom() + 4))


def _draw_names(
    painter: QPainter, spec: ClosureSpec, tokens: Roles, boxes: list[QRectF]
) -> None:
    """Write the names that fit under their segments."""
    painter.setPen(QColor(tokens.second))
    for name, box in zip(spec.names, boxes, strict=True):
        if text_size(name, painter.font()).width() + 8 <= box.width():
            place = QRectF(box.left(), box.bottom() + _BETWEEN, box.width(), _WORDS)
            painter.drawText(place, MIDDLE, name)
