"""The data of a chart as a table to read and to copy from."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QItemSelection,
    QObject,
    Qt,
    Signal,
)
from PySide6.QtGui import QAction, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QTableView, QWidget

from benchpack.report.chart_specs import ChartSpec
from benchpack.ui.tables.clipboard import CellRange, to_mime, to_text
from benchpack.ui.tables.reading_table import (
    Index,
    ReadingTableModel,
    Role,
    dress_for_reading,
)
from benchpack.ui.widgets.controls import plain_tip

_MOST_WIDTH, _ROOM = 280, 16
_MEASURED_ROWS = 50


def copied_part(
    table: Sequence[Sequence[str]], ranges: Sequence[CellRange]
) -> list[list[str]]:
    """Give the selected cells of a table.

    Parameters
    ----------
    table : sequence of rows
        Texts, the heads first.
    ranges : sequence of CellRange
        What is selected, row 0 being the first below the heads.

    Returns
    -------
    list of list of str
        The smallest rectangle that holds them, empty text where nothing is selected;
        the heads come first where whole rows or whole columns are selected.
    """
    heads, *body = table
    rows = [
        row
        for row in range(len(body))
        if any(one.top <= row <= one.bottom for one in ranges)
    ]
    columns = [
        place
        for place in range(len(heads))
        if any(one.left <= place <= one.right for one in ranges)
    ]
    cells = [
        [
            body[row][place] if any(one.holds(row, place) for one in ranges) else ""
            for place in columns
        ]
        for row in rows
    ]
    if cells and (len(columns) == len(heads) or len(rows) == len(body)):
        cells.insert(0, [heads[place] for place in columns])
    return cells


class ChartTableModel(ReadingTableModel):
    """The table of a spec: rounded for the eye, exact for the clipboard.

    Attributes
    ----------
    exact : list of list of str
        The table in full precision, the heads first.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.exact: list[list[str]] = [[]]
        self._shown: list[list[str]] = [[]]
        self._is_number: list[bool] = []

    def show_spec(self, spec: ChartSpec) -> None:
        """Show the data of another spec; the selection stays while the shape does."""
        from benchpack.report.chart_table import (
            chart_table,
            number_columns,
            shown_table,
        )

        shown = shown_table(spec)
        keeps = len(shown) == len(self._shown) and shown[0] == self._shown[0]
        if not keeps:
            self.beginResetModel()
        self.exact, self._shown = chart_table(spec), shown
        self._is_number = number_columns(spec)
        if not keeps:
            self.endResetModel()
        else:
            self.tell_of_cells()

    def count(self) -> int:
        """Give the number of rows below the heads."""
        return len(self._shown) - 1

    def heads(self) -> Sequence[str]:
        """Give the heads with their units."""
        return self._shown[0]

    def is_number(self, column: int) -> bool:
        """Tell whether a column holds numbers."""
        return self._is_number[column]

    def head_tip(self, column: int) -> str:
        """Give the whole head."""
        return plain_tip(self._shown[0][column])

    def data(self, index: Index, role: int = Role.DisplayRole) -> object:
        """Give the text of a cell as the screen shows it."""
        if not index.isValid():
            return None
        if role == Role.DisplayRole:
            return self._shown[index.row() + 1][index.column()]
        if role == Role.TextAlignmentRole:
            return self.alignment(index.column())
        return None


class ChartTableView(QTableView):
    """The table of a chart, for reading and copying.

    Signals
    -------
    said(str)
        A remark for the status line.
    """

    said = Signal(str)

    def __init__(self, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.table = ChartTableModel(self)
        self.setModel(self.table)
        self.setAccessibleName(name)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        dress_for_reading(self, padding=5)
        self.horizontalHeader().setResizeContentsPrecision(_MEASURED_ROWS)
        copying = QAction("Copy", self)
        copying.triggered.connect(self.copy_selected)
        self.addAction(copying)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        self.table.modelReset.connect(self._on_model_reset)

    def copy_selected(self) -> None:
        """Put the selected cells onto the clipboard, all where none is selected."""
        selection: QItemSelection = self.selectionModel().selection()
        ranges = [
            CellRange(one.top(), one.bottom(), one.left(), one.right())
            for one in map(selection.at, range(selection.count()))
        ]
        cells = copied_part(self.table.exact, ranges) if ranges else self.table.exact
        QGuiApplication.clipboard().setMimeData(to_mime(to_text(cells)))
        self.said.emit("Copied the cells")

    def _on_model_reset(self) -> None:
        self.resizeColumnsToContents()
        for column in range(self.table.columnCount()):
            self.setColumnWidth(
                column, min(_MOST_WIDTH, self.columnWidth(column) + _ROOM)
            )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy cells exactly; the view's own copy would take one rounded text."""
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy_selected()
        else:
            super().keyPressEvent(event)
