"""The table of sets: to read, to copy from, and to rename in."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QEvent,
    QModelIndex,
    QObject,
    Qt,
    Signal,
)
from PySide6.QtGui import QFont, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from benchpack.report.worth_sets import SetsTable
from benchpack.ui.tables.clipboard import to_mime, to_text
from benchpack.ui.tables.reading_table import (
    Index,
    ReadingTableModel,
    Role,
    dress_for_reading,
)
from benchpack.ui.theme import font
from benchpack.ui.widgets.controls import plain_tip

_ROOM, _MOST_NAME = 20, 200

MOST_LETTERS = 60
"""Letters of the name of a set; longer ones leave no room for what they stand for."""


class SetsTableModel(ReadingTableModel):
    """Texts of sets by row; a name can be entered anew.

    Signals
    -------
    renamed(int, str)
        Row, and the name that was entered.
    """

    renamed = Signal(int, str)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.shown = SetsTable((), (), ())
        self._in_use: list[bool] = []

    def show_table(self, shown: SetsTable, *, in_use: Sequence[bool]) -> bool:
        """Show other sets; gives whether all is new and the selection is gone."""
        is_new = shown.names != self.shown.names or shown.heads != self.shown.heads
        if is_new:
            self.beginResetModel()
        self.shown, self._in_use = shown, list(in_use)
        if is_new:
            self.endResetModel()
        else:
            self.tell_of_cells()
        return is_new

    def count(self) -> int:
        """Give the number of sets."""
        return len(self.shown.rows)

    def heads(self) -> Sequence[str]:
        """Give the heads of the columns."""
        return self.shown.heads

    def data(self, index: Index, role: int = Role.DisplayRole) -> object:
        """Give the text of a cell, and why it is not known on hover."""
        if not index.isValid():
            return None
        cell = self.shown.rows[index.row()][index.column()]
        if role == Role.DisplayRole:
            return cell.whole
        if role == Role.EditRole:
            return self.shown.names[index.row()]
        if role == Role.ToolTipRole:
            return plain_tip(cell.why)
        if role == Role.TextAlignmentRole:
            return self.alignment(index.column())
        if role == Role.FontRole and self._in_use[index.row()]:
            strong: QFont = font("strong")
            return strong
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let the names of sets be edited."""
        flags = super().flags(index)
        is_name = index.column() == 0 and bool(self.shown.names[index.row()])
        return flags | Qt.ItemFlag.ItemIsEditable if is_name else flags

    def setData(self, index: Index, value: object, role: int = Role.EditRole) -> bool:
        """Tell of another name; the edit itself shows it."""
        if role != Role.EditRole or not index.isValid():
            return False
        self.renamed.emit(index.row(), str(value))
        return True


class _NameDelegate(QStyledItemDelegate):
    """Opens a line that takes no more letters than a name has."""

    def createEditor(
        self, parent: QWidget, option: QStyleOptionViewItem, index: Index
    ) -> QWidget:
        """Give the line of a name."""
        editor = super().createEditor(parent, option, index)
        if isinstance(editor, QLineEdit):
            editor.setMaxLength(MOST_LETTERS)
        return editor


class SetsTableView(QTableView):
    """The table of sets with its keys: Enter uses, F2 renames, Del removes.

    Signals
    -------
    row_chosen(int)
        Another row is the current one, -1 for none.
    used(), removed()
        Enter, and Del, on the current set.
    renamed(int, str)
        Row, and the name that was entered.
    asked(object)
        F1 on a figure: its `Shown`.
    said(str)
        A remark for the status line.
    """

    row_chosen = Signal(int)
    used = Signal()
    removed = Signal()
    renamed = Signal(int, str)
    asked = Signal(object)
    said = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.sets = SetsTableModel(self)
        self.setModel(self.sets)
        self.setItemDelegateForColumn(0, _NameDelegate(self))
        self.setAccessibleName("Sets of assumptions")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.EditKeyPressed)
        self.setMinimumHeight(96)
        dress_for_reading(self, padding=8)
        self.sets.renamed.connect(self.renamed)
        self.selectionModel().currentRowChanged.connect(self._on_row_changed)

    def show_table(self, shown: SetsTable, *, in_use: Sequence[bool]) -> None:
        """Show other sets; columns become wider where they have to."""
        is_new = self.sets.show_table(shown, in_use=in_use)
        for column in range(self.sets.columnCount()):
            wanted = max(
                self.sizeHintForColumn(column),
                self.horizontalHeader().sectionSizeHint(column),
            )
            wanted += _ROOM
            wanted = min(wanted, _MOST_NAME) if column == 0 else wanted
            if is_new or wanted > self.columnWidth(column):
                self.setColumnWidth(column, wanted)
        if is_new:
            self.row_chosen.emit(-1)

    def edit_name(self) -> None:
        """Enter another name for the current set."""
        row = self.currentIndex().row()
        if row >= 0:
            self.setFocus()
            self.edit(self.sets.index(row, 0))

    def copy_table(self) -> None:
        """Put the table onto the clipboard as it is shown."""
        shown = self.sets.shown
        rows = [[cell.whole for cell in row] for row in shown.rows]
        mime = to_mime(to_text([list(shown.heads), *rows]))
        QGuiApplication.clipboard().setMimeData(mime)
        self.said.emit("Copied the table")

    def _on_row_changed(self, current: QModelIndex) -> None:
        self.row_chosen.emit(current.row() if current.isValid() else -1)

    def event(self, event: QEvent) -> bool:
        """Claim F1 before the window sees it."""
        override = event.type() == QEvent.Type.ShortcutOverride
        if override and isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_F1:
            event.accept()
            return True
        return super().event(event)

    def _ask(self) -> None:
        index = self.currentIndex()
        if index.isValid():
            self.asked.emit(self.sets.shown.rows[index.row()][index.column()])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Use with Enter, rename with F2, remove with Del, ask with F1, copy."""
        key = Qt.Key(event.key())
        is_editing = self.state() is QAbstractItemView.State.EditingState
        if is_editing:
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.used.emit()
        elif key == Qt.Key.Key_Delete:
            self.removed.emit()
        elif key == Qt.Key.Key_F2:
            self.edit_name()
        elif key == Qt.Key.Key_F1:
            self._ask()
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy_table()
        else:
            super().keyPressEvent(event)
