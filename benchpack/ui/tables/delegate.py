"""Drawing of the cells of a record table."""

from __future__ import annotations

from PySide6.QtCore import (
    QEvent,
    QModelIndex,
    QPersistentModelIndex,
    QPointF,
    QRect,
    Qt,
)
from PySide6.QtGui import QColor, QHelpEvent, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QStyleOptionViewItem,
    QTableView,
    QToolTip,
)

from benchpack.model.fields import Kind
from benchpack.ui.tables.cell_painting import INSET, paint_ground, paint_text
from benchpack.ui.tables.cell_text import UNKNOWN
from benchpack.ui.tables.entry_delegate import EntryDelegate
from benchpack.ui.tables.marks import Mark, draw_mark, draw_warning, mark_colour
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.theme import font, theme
from benchpack.ui.widgets.controls import plain_tip

Index = QModelIndex | QPersistentModelIndex
ABOUT = "≈"
"""Stands before a figure that is not recorded but computed."""
_SHAPE, _GAP = 9, 7
_MIDDLE = Qt.AlignmentFlag.AlignVCenter
_LEFT = _MIDDLE | Qt.AlignmentFlag.AlignLeft
_RIGHT = _MIDDLE | Qt.AlignmentFlag.AlignRight


class RecordDelegate(EntryDelegate):
    """Draws names with their marks and tints the current row.

    Cells are drawn by hand: going through the style costs a frame at 100 cells.

    Parameters
    ----------
    view : QTableView
        The view.
    table : RecordTableModel
        Its model.
    """

    def __init__(self, view: QTableView, table: RecordTableModel) -> None:
        super().__init__(view)
        self._table = table

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index
    ) -> None:
        """Draw a cell; the first column with shape, name, word and warning sign."""
        table = self._table
        column = table.columns[index.column()]
        is_current_row = index.row() == self._view.currentIndex().row()
        paint_ground(painter, option, row_is_current=is_current_row)
        if column.kind is Kind.FLAG:
            super().paint(painter, option, index)
            return
        text = table.shown(index)
        roles = theme().roles
        rect = option.rect.adjusted(INSET, 0, -INSET, 0)
        found = column.key != table.columns[0].key and bool(table.remark(index))
        ink = QColor(roles.second if found or text == UNKNOWN else roles.text)
        if found and column.is_numeric and text != UNKNOWN:
            text = f"{ABOUT} {text}"
        if index.column() == 0:
            self._paint_name(painter, rect, index, text)
            return
        if table.refused(index) is not None:
            place = QPointF(rect.left() + _SHAPE / 2, rect.center().y() + 0.5)
            draw_warning(painter, place, _SHAPE + 1)
        paint_text(painter, rect, text, ink, _RIGHT if column.is_numeric else _LEFT)

    def helpEvent(
        self,
        event: QHelpEvent,
        view: QAbstractItemView,
        option: QStyleOptionViewItem,
        index: Index,
    ) -> bool:
        """Show on hover what a cell has no room for, then what it has to say."""
        text = index.data(Qt.ItemDataRole.DisplayRole)
        if event.type() == QEvent.Type.ToolTip and isinstance(text, str):
            room = option.rect.width() - 2 * INSET
            if index.column() == 0:
                room -= _SHAPE + _GAP
            if view.fontMetrics().horizontalAdvance(text) > room:
                tip = index.data(Qt.ItemDataRole.ToolTipRole)
                lines = plain_tip(f"{text}\n{tip}" if tip else text)
                said = lines.replace("\n", "<br>")
                QToolTip.showText(event.globalPos(), said, view)
                return True
        return super().helpEvent(event, view, option, index)

    def _paint_name(
        self, painter: QPainter, rect: QRect, index: Index, name: str
    ) -> None:
        """Draw a name with its shape before it, word and warning sign behind it."""
        row = self._table.record_row(index)
        mark = self._table.mark(row)
        painter.save()
        painter.setFont(font("note"))
        if self._table.warnings(row):
            rect = self._paint_word(painter, rect, "look", QColor(theme().roles.look))
            place = QPointF(rect.right() - 2, rect.center().y() + 0.5)
            draw_warning(painter, place, _SHAPE)
            rect.setRight(rect.right() - _SHAPE - _GAP)
        if mark is Mark.CARRY_OVER:
            place = QPointF(rect.left() + _SHAPE / 2, rect.center().y() + 0.5)
            draw_mark(painter, mark, place, _SHAPE)
        elif mark is not None:
            rect = self._paint_word(painter, rect, str(mark), mark_colour(mark))
            place = QPointF(rect.left() + _SHAPE / 2, rect.center().y() + 0.5)
            draw_mark(painter, mark, place, _SHAPE)
        rect.setLeft(rect.left() + _SHAPE + _GAP)
        is_strong = mark in (Mark.SUBJECT, Mark.REFERENCE)
        painter.setFont(font("strong" if is_strong else "body"))
        # Names of one group begin alike: their last word tells them apart.
        ink, cut = QColor(theme().roles.text), Qt.TextElideMode.ElideMiddle
        paint_text(painter, rect, name, ink, _LEFT, cut=cut)
        painter.restore()

    def _paint_word(
        self, painter: QPainter, rect: QRect, word: str, ink: QColor
    ) -> QRect:
        painter.setPen(ink)
        painter.drawText(rect, _RIGHT, word)
        width = painter.fontMetrics().horizontalAdvance(word) + _GAP
        return rect.adjusted(0, 0, -width, 0)
