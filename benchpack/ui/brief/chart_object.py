"""Charts within a text: each stands on a line like a letter of its size."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QPainter,
    QPyTextObject,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
)

from benchpack.ui.brief.chart_pictures import ChartPicture

CHART_TYPE = int(QTextFormat.ObjectTypes.UserObject) + 1
_PLACE = int(QTextFormat.Property.UserProperty) + 1
_LETTER = "\ufffc"


class ChartObjects(QPyTextObject):
    """Draws the charts of one document.

    Parameters
    ----------
    document : QTextDocument
        The document; it owns this object.
    scale : float
        Units of the layout per pixel of a chart.
    """

    def __init__(self, document: QTextDocument, *, scale: float) -> None:
        super().__init__(document)
        self._scale = scale
        self._drawn: list[tuple[ChartPicture, QSizeF, float]] = []
        document.documentLayout().registerHandler(CHART_TYPE, self)

    def insert(
        self,
        cursor: QTextCursor,
        chart: ChartPicture,
        size: QSizeF,
        *,
        shifted_by: float,
    ) -> None:
        """Put a chart into the text.

        Parameters
        ----------
        cursor : QTextCursor
            Where.
        chart : ChartPicture
            The chart.
        size : QSizeF
            Room that it takes on the line.
        shifted_by : float
            Units of the layout by which it is drawn to the right within that room.
        """
        shape = QTextCharFormat()
        shape.setObjectType(CHART_TYPE)
        shape.setProperty(_PLACE, len(self._drawn))
        self._drawn.append((chart, size, shifted_by))
        cursor.insertText(_LETTER, shape)

    def intrinsicSize(
        self, document: QTextDocument, place: int, shape: QTextFormat
    ) -> QSizeF:
        """Give the room that a chart takes on the line."""
        del document, place
        return self._drawn[shape.intProperty(_PLACE)][1]

    def drawObject(
        self,
        painter: QPainter,
        rect: QRectF | QRect,
        document: QTextDocument,
        place: int,
        shape: QTextFormat,
    ) -> None:
        """Replay a chart."""
        del document, place
        chart, _, shifted_by = self._drawn[shape.intProperty(_PLACE)]
        painter.save()
        # A chart that goes on the next page must not show in the margin of this one.
        painter.setClipRect(rect, Qt.ClipOperation.IntersectClip)
        painter.translate(rect.left() + shifted_by, rect.top())
        painter.scale(self._scale, self._scale)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawPicture(QPoint(0, 0), chart.picture)
        painter.restore()
