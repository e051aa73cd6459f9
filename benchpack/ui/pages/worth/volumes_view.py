"""The table of volumes by year with its keys."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from benchpack.ui.pages.worth.volumes_model import VolumesModel
from benchpack.ui.tables.entry_delegate import EntryDelegate
from benchpack.ui.widgets.controls import named

_ROWS = 4
_YEAR_WIDTH = 84


class VolumesView(QTableView):
    """The table with its keys.

    Signals
    -------
    paste_requested(), copy_requested(), add_requested(), remove_requested()
        Ctrl+V, Ctrl+C, plus or Insert, and Del.
    refused(str, object)
        A text that could not be taken, and why.
    """

    paste_requested = Signal()
    copy_requested = Signal()
    add_requested = Signal()
    remove_requested = Signal()
    refused = Signal(str, object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.volumes = VolumesModel(self)
        self.setModel(self.volumes)
        named(self, "Volumes by year")
        self.setToolTip(
            "Packs by year. Type, or paste a column or a row; + adds a year, Del "
            "removes the selected ones."
        )
        self._delegate = EntryDelegate(self)
        self._delegate.moved.connect(self._on_entry_taken)
        self._delegate.refused.connect(self.refused)
        self.setItemDelegate(self._delegate)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        rows, heads = self.verticalHeader(), self.horizontalHeader()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        size = self.fontMetrics().height() + 8
        rows.setDefaultSectionSize(size)
        rows.hide()
        heads.setAccessibleName("Columns")
        heads.setHighlightSections(False)
        heads.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        heads.setSectionResizeMode(0, QHeaderView.ResizeMode.Fixed)
        heads.resizeSection(0, _YEAR_WIDTH)
        self.setFixedHeight(heads.sizeHint().height() + _ROWS * size + 4)

    def _on_entry_taken(self, down: int, across: int) -> None:
        """Go on to the next year after Enter."""
        del across
        row = self.currentIndex().row() + down
        if 0 <= row < self.volumes.rowCount():
            self.setCurrentIndex(self.volumes.index(row, 1))
        self.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Paste, copy, add and remove years; Enter edits the packs."""
        key = Qt.Key(event.key())
        is_editing = self.state() is QAbstractItemView.State.EditingState
        current = self.currentIndex()
        if is_editing:
            super().keyPressEvent(event)
        elif event.matches(QKeySequence.StandardKey.Paste):
            self.paste_requested.emit()
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy_requested.emit()
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Insert):
            self.add_requested.emit()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.remove_requested.emit()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and current.isValid():
            self.edit(self.volumes.index(current.row(), 1))
        elif event.text().isdigit() and current.isValid() and current.column() == 0:
            # A figure that is typed on the year is meant for its packs.
            self.setCurrentIndex(self.volumes.index(current.row(), 1))
            super().keyPressEvent(event)
        else:
            super().keyPressEvent(event)
