"""The table of changes: order by drag and keys, a box to switch each."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import (
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QFontMetrics,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QTableView,
    QWidget,
)

from benchpack.ui.pages.changes.changes_delegate import ChangesDelegate
from benchpack.ui.pages.changes.changes_model import (
    CHANGE,
    ON,
    SAVED,
    WORTH,
    ChangesModel,
    change_of,
)
from benchpack.ui.tables.cell_painting import INSET
from benchpack.ui.theme import font, theme

Index = QModelIndex | QPersistentModelIndex
_ROW = 44
_LEAST_WIDTHS, _ROOM = {SAVED: 92, WORTH: 86}, 2 * INSET + 4
_KEYS = {SAVED: "change saved", WORTH: "change net worth"}


class ChangesTable(QTableView):
    """Shows the changes in their order.

    Signals
    -------
    change_chosen(str)
        Another change is the current one, empty for none.
    moved(object)
        Names in the order that is wanted.
    removal_requested(), form_requested()
        Del, or Enter, was pressed on a change.

    Parameters
    ----------
    switch : callable
        Takes the name of a change that is to be switched on or off.
    parent : QWidget
        Owner.
    """

    change_chosen = Signal(str)
    moved = Signal(object)
    removal_requested = Signal()
    form_requested = Signal()

    def __init__(self, switch: Callable[[str], bool], parent: QWidget) -> None:
        super().__init__(parent)
        self.changes = ChangesModel(switch, self)
        self._drop_row = -1
        self.setModel(self.changes)
        self.setItemDelegate(ChangesDelegate(self))
        self.setAccessibleName("Changes of the proposal")
        self._set_look()
        self.selectionModel().currentRowChanged.connect(self._on_row_changed)

    def _set_look(self) -> None:
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setDragEnabled(True)
        self.setAcceptDrops(True)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragDrop)
        self.setDragDropOverwriteMode(False)
        rows = self.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(_ROW)
        heads = self.horizontalHeader()
        heads.setAccessibleName("Columns of the changes")
        heads.setHighlightSections(False)
        heads.setMinimumSectionSize(30)
        heads.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        heads.setSectionResizeMode(CHANGE, QHeaderView.ResizeMode.Stretch)
        heads.resizeSection(ON, 40)
        self._fit_figures()
        self.changes.modelReset.connect(self._fit_figures)
        self.changes.dataChanged.connect(self._fit_figures)

    def _fit_figures(self) -> None:
        """Make the columns of figures as wide as the widest of them."""
        upper, lower = QFontMetrics(font("body")), QFontMetrics(font("note"))
        for column, least in _LEAST_WIDTHS.items():
            wanted = least
            for row in range(self.changes.rowCount()):
                first, second = self.changes.texts(self.changes.index(row, column))
                wanted = max(
                    wanted,
                    upper.horizontalAdvance(first) + _ROOM,
                    lower.horizontalAdvance(second) + _ROOM,
                )
            if self.horizontalHeader().sectionSize(column) != wanted:
                self.horizontalHeader().resizeSection(column, wanted)

    @property
    def current(self) -> str:
        """Name of the current change, empty for none."""
        return self.changes.name_at(self.currentIndex().row())

    @property
    def explain_key(self) -> str:
        """Key of the figure in the current cell, for F1."""
        row = self.currentIndex().row()
        counts = row >= 0 and self.changes.lines[row].effect is not None
        key = _KEYS.get(self.currentIndex().column(), "change saved")
        return key if counts else "proposal saved"

    @property
    def explain_record(self) -> str:
        """The change that the figure of `explain_key` belongs to."""
        return self.current

    def go_to(self, name: str) -> bool:
        """Make a change the current one; False when it is not there."""
        row = self.changes.row_of(name)
        if row >= 0:
            column = max(CHANGE, self.currentIndex().column())
            self.setCurrentIndex(self.changes.index(row, column))
        return row >= 0

    def _on_row_changed(self, current: QModelIndex, previous: QModelIndex) -> None:
        del previous
        self.change_chosen.emit(self.changes.name_at(current.row()))

    def move_current(self, by: int) -> None:
        """Move the current change up or down by one."""
        row, name = self.currentIndex().row(), self.current
        target = row + by
        if name and 0 <= target < self.changes.rowCount():
            at = target + 1 if by > 0 else target
            self.moved.emit(self.changes.order_with(name, at=at))

    def switch_current(self) -> None:
        """Switch the current change on or off."""
        index = self.changes.index(self.currentIndex().row(), ON)
        if index.isValid():
            role = int(Qt.ItemDataRole.CheckStateRole)
            is_on = index.data(role) == Qt.CheckState.Checked
            state = Qt.CheckState.Unchecked if is_on else Qt.CheckState.Checked
            self.changes.setData(index, state, role)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move with Alt and arrows, switch with Space, remove with Del, edit Enter."""
        key = Qt.Key(event.key())
        alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        if alt and key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.move_current(-1 if key == Qt.Key.Key_Up else 1)
        elif key == Qt.Key.Key_Space:
            self.switch_current()
        elif key == Qt.Key.Key_Delete:
            self.removal_requested.emit()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2):
            self.form_requested.emit()
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a change of this table."""
        if change_of(event.mimeData()):
            event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show where the change would go."""
        if change_of(event.mimeData()):
            self._drop_row = self._row_for(event.position().toPoint().y())
            self.viewport().update()
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Put the change where it is dropped."""
        name = change_of(event.mimeData())
        row = self._row_for(event.position().toPoint().y())
        self._drop_row = -1
        self.viewport().update()
        if not name:
            return
        # Said to be a copy, so that the view takes nothing away by itself.
        event.setDropAction(Qt.DropAction.CopyAction)
        event.accept()
        wanted = self.changes.order_with(name, at=row)
        if wanted != tuple(line.change.name for line in self.changes.lines):
            self.moved.emit(wanted)

    def _row_for(self, y: int) -> int:
        row = self.rowAt(y)
        if row < 0:
            return self.changes.rowCount()
        middle = self.rowViewportPosition(row) + _ROW // 2
        return row if y < middle else row + 1

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Show no place any more."""
        self._drop_row = -1
        self.viewport().update()
        super().dragLeaveEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the rows, and a line where a dragged change would go."""
        super().paintEvent(event)
        if self._drop_row < 0:
            return
        last = self._drop_row >= self.changes.rowCount()
        above = self._drop_row - 1 if last else self._drop_row
        y = self.rowViewportPosition(above) + (_ROW if last else 0)
        painter = QPainter(self.viewport())
        painter.setPen(QPen(QColor(theme().roles.subject), 2))
        painter.drawLine(0, max(y, 1), self.viewport().width(), max(y, 1))
