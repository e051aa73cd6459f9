"""Shapes that stand beside a name, the same as in the charts."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from benchpack.ui.theme import theme


class Mark(StrEnum):
    """What a pack is in the study, or that a joint has to stay."""

    SUBJECT = "subject"
    REFERENCE = "reference"
    CARRY_OVER = "carry-over"


def mark_colour(mark: Mark) -> QColor:
    """Give the colour of a mark in the present scheme."""
    roles = theme().roles
    ink = {Mark.SUBJECT: roles.subject, Mark.REFERENCE: roles.reference}
    return QColor(ink.get(mark, roles.second))


def draw_mark(painter: QPainter, mark: Mark, centre: QPointF, size: float) -> None:
    """Draw a circle for the subject, a diamond for the reference, else a lock."""
    if mark is Mark.CARRY_OVER:
        draw_lock(painter, centre, size + 2, mark_colour(mark))
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(mark_colour(mark))
    half = size / 2
    if mark is Mark.SUBJECT:
        painter.drawEllipse(centre, half, half)
    else:
        reach = half * 1.2
        painter.drawPolygon(
            [
                centre + QPointF(0, -reach),
                centre + QPointF(reach, 0),
                centre + QPointF(0, reach),
                centre + QPointF(-reach, 0),
            ]
        )
    painter.restore()


def draw_warning(painter: QPainter, centre: QPointF, size: float) -> None:
    """Draw an open triangle with a stroke in it."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(_stroke(QColor(theme().roles.look)))
    half = size / 2
    triangle = QPainterPath(centre + QPointF(0, -half))
    triangle.lineTo(centre + QPointF(half * 1.1, half * 0.9))
    triangle.lineTo(centre + QPointF(-half * 1.1, half * 0.9))
    triangle.closeSubpath()
    painter.drawPath(triangle)
    painter.drawLine(centre + QPointF(0, -half * 0.25), centre + QPointF(0, half * 0.4))
    painter.restore()


def draw_lock(painter: QPainter, centre: QPointF, size: float, colour: QColor) -> None:
    """Draw a closed lock, the sign of carry-over."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(_stroke(colour))
    half = size / 2
    body = QRectF(centre.x() - half * 0.8, centre.y() - half * 0.1, half * 1.6, half)
    painter.drawRoundedRect(body, 1.5, 1.5)
    bow = QRectF(centre.x() - half * 0.45, centre.y() - half, half * 0.9, half * 1.2)
    path = QPainterPath()
    path.moveTo(bow.left(), body.top())
    path.lineTo(bow.left(), bow.center().y())
    path.arcTo(bow.left(), bow.top(), bow.width(), bow.width(), 180, -180)
    path.lineTo(bow.right(), body.top())
    painter.drawPath(path)
    painter.restore()


def _stroke(colour: QColor) -> QPen:
    pen = QPen(colour, 1.5)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    return pen
