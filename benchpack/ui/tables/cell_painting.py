"""How a cell is drawn: ground, focus and text with the same inset as in the heads."""

from __future__ import annotations

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyleOptionViewItem

from benchpack.ui.palette import mix
from benchpack.ui.theme import theme

INSET = 8
"""Room left and right of a text, as the stylesheet gives it to heads, in pixels."""
_SELECTED = QStyle.StateFlag.State_Selected
_FOCUS = QStyle.StateFlag.State_HasFocus
_WIDE = 1.3


def paint_ground(
    painter: QPainter, option: QStyleOptionViewItem, *, row_is_current: bool
) -> None:
    """Tint a selected cell, the current row more lightly, and ring the current cell."""
    roles = theme().roles
    state = option.state
    if state & _SELECTED:
        painter.fillRect(option.rect, QColor(roles.selected))
    elif row_is_current:
        tint = mix(roles.selected, roles.panel, share=0.6)
        painter.fillRect(option.rect, QColor(tint))
    if state & _FOCUS:
        painter.setPen(QColor(roles.subject))
        painter.drawRect(option.rect.adjusted(0, 0, -1, -1))


def paint_text(
    painter: QPainter,
    rect: QRect,
    text: str,
    ink: QColor,
    flags: Qt.AlignmentFlag,
    *,
    cut: Qt.TextElideMode = Qt.TextElideMode.ElideRight,
) -> None:
    """Draw a text in the painter's font, cut with dots where it is too long."""
    painter.setPen(ink)
    metrics = painter.fontMetrics()
    if len(text) * metrics.averageCharWidth() * _WIDE > rect.width():
        text = metrics.elidedText(text, cut, rect.width())
    painter.drawText(rect, flags, text)
