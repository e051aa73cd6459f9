"""Drawing of the table of changes: two lines a cell, a sign where one is due."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from benchpack.results.closure import Grade
from benchpack.ui.assets import draw_icon
from benchpack.ui.pages.changes.changes_model import CHANGE, ON, ChangesModel
from benchpack.ui.tables.cell_painting import INSET, paint_ground, paint_text
from benchpack.ui.theme import font, theme

Index = QModelIndex | QPersistentModelIndex
_LINE, _SIGN = 20, 12
_LEFT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_RIGHT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
_SIGNS = {Grade.FAIL: ("fail", "fail"), Grade.LOOK: ("warning", "look")}


class ChangesDelegate(QStyledItemDelegate):
    """Draws name and figures with a second line below each."""

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index
    ) -> None:
        """Draw a cell; a sign stands before why a change does not count."""
        model = index.model()
        if not isinstance(model, ChangesModel):
            return
        paint_ground(painter, option, row_is_current=False)
        if index.column() == ON:
            super().paint(painter, option, index)
            return
        line, roles = model.lines[index.row()], theme().roles
        upper, lower = model.texts(index)
        rect = option.rect.adjusted(INSET, 2, -INSET, -2)
        first = QRect(rect.left(), rect.top(), rect.width(), _LINE)
        second = QRect(rect.left(), rect.top() + _LINE, rect.width(), _LINE - 1)
        flags = _LEFT if index.column() == CHANGE else _RIGHT
        painter.save()
        counts = line.effect is not None
        painter.setFont(font("body"))
        ink = QColor(roles.text if counts else roles.second)
        # Names of changes begin alike more often than they end alike.
        cut = Qt.TextElideMode.ElideMiddle
        paint_text(painter, first, upper, ink, flags, cut=cut)
        below = QColor(roles.second)
        if index.column() == CHANGE and line.grade in _SIGNS:
            sign, role = _SIGNS[line.grade]
            below = QColor(getattr(roles, role))
            box = QRect(second.left(), second.center().y() - _SIGN // 2, _SIGN, _SIGN)
            draw_icon(painter, sign, below.name(), box)
            second.setLeft(second.left() + _SIGN + 4)
        painter.setFont(font("note"))
        paint_text(painter, second, lower, below, flags)
        painter.restore()
