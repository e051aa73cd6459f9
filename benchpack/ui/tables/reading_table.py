"""What small tables share that are read and copied from."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

Index = QModelIndex | QPersistentModelIndex
Role = Qt.ItemDataRole
ROOT = QModelIndex()
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_AIR = 8
"""Pixels by which a row is higher than its text."""


class ReadingTableModel(QAbstractTableModel):
    """Base: heads over columns, of which those of numbers stand at the right."""

    def heads(self) -> Sequence[str]:
        """Give the heads of the columns."""
        raise NotImplementedError

    def count(self) -> int:
        """Give the number of rows."""
        raise NotImplementedError

    def is_number(self, column: int) -> bool:
        """Tell whether a column holds numbers; all but the first, unless told."""
        return column > 0

    def head_tip(self, column: int) -> str:
        """Give what is said on hover of a head."""
        del column
        return ""

    def alignment(self, column: int) -> Qt.AlignmentFlag:
        """Give how the cells and the head of a column are aligned."""
        return _RIGHT if self.is_number(column) else _LEFT

    def tell_of_cells(self) -> None:
        """Tell the views that all cells may have changed."""
        if self.count():
            last = self.index(self.count() - 1, len(self.heads()) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def rowCount(self, parent: Index = ROOT) -> int:
        """Give the number of rows below the heads."""
        return 0 if parent.isValid() else self.count()

    def columnCount(self, parent: Index = ROOT) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(self.heads())

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Role.DisplayRole
    ) -> object:
        """Give the heads; rows have none."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Role.TextAlignmentRole:
            return self.alignment(section)
        if role == Role.ToolTipRole:
            return self.head_tip(section) or None
        return self.heads()[section] if role == Role.DisplayRole else None


def dress_for_reading(view: QTableView, *, padding: int) -> None:
    """Give a table rows without lines and heads; Tab goes on to what follows it.

    Parameters
    ----------
    view : QTableView
        The table.
    padding : int
        Pixels left and right of a cell's text.
    """
    view.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
    view.setShowGrid(False)
    view.setWordWrap(False)
    view.setTabKeyNavigation(False)
    view.setStyleSheet(f"QTableView::item {{ padding: 0 {padding}px; }}")
    rows, heads = view.verticalHeader(), view.horizontalHeader()
    rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
    rows.setDefaultSectionSize(view.fontMetrics().height() + _AIR)
    rows.hide()
    heads.setAccessibleName("Columns")
    heads.setHighlightSections(False)
