"""Drawing of the parts tree: sums stand out, carry-over carries a lock."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyleOptionViewItem

from benchpack.ui.pages.packs.parts_model import PartsModel
from benchpack.ui.tables.cell_painting import INSET, paint_ground, paint_text
from benchpack.ui.tables.cell_text import UNKNOWN
from benchpack.ui.tables.entry_delegate import EntryDelegate
from benchpack.ui.tables.marks import draw_lock
from benchpack.ui.theme import font, theme

Index = QModelIndex | QPersistentModelIndex
_RIGHT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
_LEFT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_ROW_HEIGHT = 26
_LOCK, _ROOM = 12, 18


class PartsDelegate(EntryDelegate):
    """Draws the cells of the parts tree."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Give rows the height of the table's."""
        size = super().sizeHint(option, index)
        return QSize(size.width(), _ROW_HEIGHT)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index
    ) -> None:
        """Draw a cell, with a lock before the reason of a part that stays."""
        model = index.model()
        if not isinstance(model, PartsModel):
            return
        is_current = index.row() == self._view.currentIndex().row()
        is_current &= index.parent() == self._view.currentIndex().parent()
        paint_ground(painter, option, row_is_current=is_current)
        roles = theme().roles
        text = str(index.data())
        rect = option.rect.adjusted(INSET, 0, -INSET, 0)
        second = text == UNKNOWN
        if not index.parent().isValid():
            painter.setFont(font("strong"))
        elif model.part_at(index) is None:
            second = True
        if self._stays(model, index):
            place = QPointF(rect.left() + 5, rect.center().y() + 0.5)
            draw_lock(painter, place, _LOCK, QColor(roles.second))
            rect = rect.adjusted(_ROOM, 0, 0, 0)
        elif index.column() == 0:
            rect = rect.adjusted(-INSET, 0, 0, 0)
        numeric = model.columns[index.column()].is_numeric
        ink = QColor(roles.second if second else roles.text)
        paint_text(painter, rect, text, ink, _RIGHT if numeric else _LEFT)
        painter.setFont(font("body"))

    def _stays(self, model: PartsModel, index: Index) -> bool:
        part = model.part_at(index)
        key = model.columns[index.column()].key
        return part is not None and part.carry_over and key == "carry_over"
