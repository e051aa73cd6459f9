"""The list of checks: sign and word, joint, and the reason below."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from benchpack.results.check import Grade
from benchpack.ui.assets import draw_icon
from benchpack.ui.checks.checks_model import WORDS, ChecksModel
from benchpack.ui.tables.cell_painting import paint_ground, paint_text
from benchpack.ui.theme import font, theme

Index = QModelIndex | QPersistentModelIndex
_HEIGHT, _INSET, _ICON, _GAP = 46, 8, 14, 6
_LINE = 19
_SIGNS = {
    Grade.FAIL: ("fail", "fail"),
    Grade.LOOK: ("warning", "look"),
    Grade.GOOD: ("good", "good"),
    Grade.NONE: ("info", "second"),
}
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class CheckDelegate(QStyledItemDelegate):
    """Draws one check on two lines."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Give all checks one height."""
        del option, index
        return QSize(120, _HEIGHT)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index
    ) -> None:
        """Draw joint and word with its sign, and below them the reason."""
        model = index.model()
        if not isinstance(model, ChecksModel):
            return
        check, roles = model.checks[index.row()], theme().roles
        paint_ground(painter, option, row_is_current=False)
        painter.save()
        rect = option.rect.adjusted(_INSET, 4, -_INSET, -4)
        first = QRect(rect.left(), rect.top(), rect.width(), _LINE)
        sign, role = _SIGNS[check.grade]
        ink = getattr(roles, role)
        box = QRect(first.left(), first.center().y() - _ICON // 2, _ICON, _ICON)
        draw_icon(painter, sign, ink, box)
        first.setLeft(first.left() + _ICON + _GAP)
        painter.setFont(font("note"))
        word = WORDS[check.grade]
        width = painter.fontMetrics().horizontalAdvance(word)
        paint_text(painter, first, word, QColor(ink), _RIGHT)
        first.setRight(first.right() - width - _GAP)
        painter.setFont(font("body"))
        paint_text(painter, first, model.heading(check), QColor(roles.text), _LEFT)
        second = QRect(first.left(), first.bottom(), rect.right() - first.left(), _LINE)
        painter.setFont(font("note"))
        paint_text(painter, second, check.words, QColor(roles.second), _LEFT)
        painter.restore()


class ChecksView(QListView):
    """The list of checks.

    Signals
    -------
    check_chosen(int)
        A row was clicked, or Enter was pressed on it.
    """

    check_chosen = Signal(int)

    def __init__(self, model: ChecksModel, parent: QWidget) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setAccessibleName("Checks")
        self.setItemDelegate(CheckDelegate(self))
        self.setUniformItemSizes(True)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.clicked.connect(self._on_clicked)

    def _on_clicked(self, index: QModelIndex) -> None:
        self.check_chosen.emit(index.row())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to the joint with Enter."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.currentIndex().isValid():
                self.check_chosen.emit(self.currentIndex().row())
            return
        super().keyPressEvent(event)
