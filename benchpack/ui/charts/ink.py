"""Pens and single lines of text, as everything that is drawn by hand uses them."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from benchpack.ui.theme import colour

LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
MIDDLE = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter


def line_pen(
    text: str, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine
) -> QPen:
    """Make a pen with flat ends in a colour given as ``#rrggbb``."""
    return QPen(QColor(text), width, style, Qt.PenCapStyle.FlatCap)


def text_size(text: str, used: QFont) -> QRectF:
    """Measure one line of text, from (0, 0)."""
    metrics = QFontMetricsF(used)
    return QRectF(0, 0, metrics.horizontalAdvance(text), metrics.height())


def elided(text: str, used: QFont, width: float) -> str:
    """Shorten a text in its middle until it fits a width in pixels."""
    mode = Qt.TextElideMode.ElideMiddle
    return QFontMetricsF(used).elidedText(text, mode, width)


def draw_on_patch(
    painter: QPainter, rect: QRectF, text: str, ink: str, panel: str
) -> None:
    """Write a text on a patch of the panel's colour so that lines do not cross it."""
    painter.fillRect(rect.adjusted(-2, 0, 2, 0), colour(panel, alpha=0.85))
    painter.setPen(QColor(ink))
    painter.drawText(rect, MIDDLE | Qt.TextFlag.TextDontClip, text)
