"""The table model of many records with a row order of its own."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy as np
from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.tables.cell_facts import CellFacts, Refused, cell_tip, spoken_text
from benchpack.ui.tables.cell_text import edited_text, shown_text
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.edits import TableEdits
from benchpack.ui.tables.entries import CellEntries
from benchpack.ui.tables.filtering import RowFilter
from benchpack.ui.tables.marks import Mark
from benchpack.ui.tables.ordering import Direction, Rows
from benchpack.ui.tables.records import RecordColumns
from benchpack.ui.tables.row_order import RowOrder
from benchpack.units.formatting import NumberStyle

Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_DISPLAY, _EDIT = int(Qt.ItemDataRole.DisplayRole), int(Qt.ItemDataRole.EditRole)
_ALIGN = int(Qt.ItemDataRole.TextAlignmentRole)
_TIP, _CHECK = int(Qt.ItemDataRole.ToolTipRole), int(Qt.ItemDataRole.CheckStateRole)
_SPOKEN = int(Qt.ItemDataRole.AccessibleTextRole)
_PLAIN = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
_EDITABLE = _PLAIN | Qt.ItemFlag.ItemIsEditable
_CHECKABLE = _PLAIN | Qt.ItemFlag.ItemIsUserCheckable


def _no_warnings(row: int) -> tuple[Problem, ...]:
    del row
    return ()


def _no_remark(key: str, row: int) -> str:
    del key, row
    return ""


class RecordTableModel(QAbstractTableModel):
    """Shows records, sorted and filtered by an array of row numbers.

    The first column names the record and carries its mark and warnings. After an edit
    rows keep their places until the table is sorted or filtered anew.

    Parameters
    ----------
    edits : TableEdits
        Where edits go.
    parent : QObject, optional
        Owner.
    """

    def __init__(self, edits: TableEdits, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.entries = CellEntries(edits)
        self.columns: tuple[TableColumn, ...] = ()
        self.records = RecordColumns(np.empty(0, dtype=np.int64), {})
        self._rows = RowOrder()
        self._marks: Mapping[int, Mark] = {}
        self._warn: Callable[[int], tuple[Problem, ...]] = _no_warnings
        self._warned: dict[int, tuple[Problem, ...]] = {}
        self._remark: Callable[[str, int], str] = _no_remark

    def show(
        self,
        records: RecordColumns,
        columns: Sequence[TableColumn],
        *,
        style: NumberStyle,
        currency: str = "EUR",
        warn: Callable[[int], tuple[Problem, ...]] | None = None,
        remark: Callable[[str, int], str] | None = None,
    ) -> None:
        """Show records; the same ones with other values keep order and selection.

        Parameters
        ----------
        records : RecordColumns
            The records.
        columns : sequence of TableColumn
            The columns, the first being the record's name.
        style : NumberStyle
            Decimal mark and mass unit.
        currency : str
            Currency of money that is entered without one.
        warn : callable, optional
            Gives the warnings of the record in a row.
        remark : callable, optional
            Says of a column and a row how a figure that is not recorded was found,
            nothing where it is recorded.
        """
        same_rows = np.array_equal(records.keys, self.records.keys)
        same_columns = [c.key for c in columns] == [c.key for c in self.columns]
        if not (same_rows and same_columns):
            self.beginResetModel()
        self.records, self.columns = records, tuple(columns)
        self.entries.style, self.entries.currency = style, currency
        self._warn = warn or _no_warnings
        self._remark = remark or _no_remark
        self._warned.clear()
        if same_rows and same_columns:
            self.refresh_cells()
            last = len(self.columns) - 1
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, last)
        else:
            self.entries.drop_all()
            self._rows.renew(self.records, self.columns)
            self.endResetModel()

    def clear(self) -> None:
        """Show nothing and forget what was refused; sorting and filter stay."""
        self.beginResetModel()
        self.records = RecordColumns(np.empty(0, dtype=np.int64), {})
        self._rows.rows = np.empty(0, dtype=np.int64)
        self._marks = {}
        self.entries.drop_all()
        self.endResetModel()

    def refresh_cells(self) -> None:
        """Have every visible cell drawn again."""
        if len(self._rows.rows) and self.columns:
            last = self.index(len(self._rows.rows) - 1, len(self.columns) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def set_marks(self, marks: Mapping[int, Mark]) -> None:
        """Mark records, the subject for instance, by their row among all records."""
        if marks != self._marks:
            self._marks = marks
            self.refresh_cells()

    def set_filter(self, wanted: RowFilter) -> None:
        """Show only the records that a filter lets through."""
        self._rows.wanted = wanted
        self._reorder()

    def sort_by(self, key: str, direction: Direction | None) -> None:
        """Sort by a column, or go back to the order of the records with None."""
        self._rows.sorting = None if direction is None else (key, direction)
        self._reorder()

    @property
    def sorting(self) -> tuple[str, Direction] | None:
        """Column and direction that are sorted by, None for the records' order."""
        return self._rows.sorting

    def _reorder(self) -> None:
        self.beginResetModel()
        self._rows.renew(self.records, self.columns)
        self.endResetModel()

    @property
    def order(self) -> Rows:
        """The records shown, top to bottom, as rows among all records."""
        return self._rows.rows

    def record_row(self, index: Index) -> int:
        """Give the row among all records of what an index shows."""
        return int(self._rows.rows[index.row()])

    def view_row(self, record_row: int) -> int | None:
        """Give where a record is shown, None when it is filtered out."""
        return self._rows.place(record_row)

    def column_of(self, key: str) -> TableColumn | None:
        """Give the column of a key, None where there is none."""
        return next((column for column in self.columns if column.key == key), None)

    def column_place(self, key: str) -> int | None:
        """Give the number of a column, None where there is none."""
        keys = [column.key for column in self.columns]
        return keys.index(key) if key in keys else None

    def value(self, index: Index) -> Any:
        """Give the stored value an index shows."""
        return self.records.cell(
            self.columns[index.column()].key, int(self._rows.rows[index.row()])
        )

    def stored(self, index: Index) -> Any:
        """Give what is recorded where an index may show something computed."""
        return self.records.stored(
            self.columns[index.column()].key, int(self._rows.rows[index.row()])
        )

    def remark(self, index: Index) -> str:
        """Say how the figure an index shows was found, nothing if it is recorded."""
        return self._remark(
            self.columns[index.column()].key, int(self._rows.rows[index.row()])
        )

    def shown(self, index: Index) -> str:
        """Give the text an index shows on screen."""
        column = self.columns[index.column()]
        value = self.records.cell(column.key, int(self._rows.rows[index.row()]))
        return shown_text(column, value, self.style)

    def mark(self, record_row: int) -> Mark | None:
        """Give what a record is in the study, None for most."""
        return self._marks.get(record_row)

    def name(self, record_row: int) -> str:
        """Give the name of a record."""
        return str(self.records.cell(self.columns[0].key, record_row))

    def name_at(self, index: Index) -> str:
        """Give the name of the record an index shows."""
        return self.name(self.record_row(index))

    def warnings(self, record_row: int) -> tuple[Problem, ...]:
        """Give the warnings of a record."""
        if record_row not in self._warned:
            self._warned[record_row] = self._warn(record_row)
        return self._warned[record_row]

    def enter(self, index: Index, text: str) -> tuple[Problem, ...]:
        """Take what was entered in a cell; gives why it cannot be, empty when it was.

        A text that is refused is kept with its cell until the next try.
        """
        column = self.columns[index.column()]
        row = self.record_row(index)
        key = self.records.keys[row]
        if text == edited_text(column, self.stored(index), self.style):
            self.entries.drop(column, key)
            return ()
        name = self.name(row)
        problems = self.entries.take(column, text, row=row, key=key, name=name)
        self.dataChanged.emit(index, index)
        return problems

    def refused(self, index: Index) -> Refused | None:
        """Give what was last entered in a cell and refused."""
        key = self.records.keys[self.record_row(index)]
        return self.entries.refused(self.columns[index.column()], key)

    @property
    def style(self) -> NumberStyle:
        """Decimal mark and mass unit."""
        return self.entries.style

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of rows shown."""
        return 0 if parent.isValid() else len(self._rows.rows)

    def columnCount(self, parent: Index = _ROOT) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(self.columns)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say that recorded cells can be edited."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        column = self.columns[index.column()]
        if column.kind is Kind.FLAG:
            return _CHECKABLE
        return _PLAIN if column.field is None else _EDITABLE

    def data(self, index: Index, role: int = _DISPLAY) -> Any:
        """Give a cell's text, tooltip, alignment, mark or warnings."""
        if not index.isValid():
            return None
        column = self.columns[index.column()]
        if role == _DISPLAY:
            return self.shown(index)
        if role == _ALIGN:
            return _RIGHT if column.is_numeric else _LEFT
        if role == _EDIT:
            refused = self.refused(index)
            text = edited_text(column, self.stored(index), self.style)
            return refused.text if refused else text
        if role == _CHECK and column.kind is Kind.FLAG:
            yes, no = Qt.CheckState.Checked, Qt.CheckState.Unchecked
            return yes if self.value(index) else no
        if role in (_TIP, _SPOKEN):
            facts = self._facts(index)
            return cell_tip(facts) if role == _TIP else spoken_text(facts)
        return None

    def _facts(self, index: Index) -> CellFacts:
        row, first = self.record_row(index), index.column() == 0
        return CellFacts(
            self.columns[index.column()],
            self.value(index),
            self.style,
            refused=self.refused(index),
            mark=self._marks.get(row) if first else None,
            warnings=self.warnings(row) if first else (),
            remark=self.remark(index),
        )

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _DISPLAY
    ) -> Any:
        """Give the head of a column, or the number of a row."""
        if orientation == Qt.Orientation.Vertical:
            return str(section + 1) if role == _DISPLAY else None
        if not 0 <= section < len(self.columns):
            return None
        column = self.columns[section]
        if role == _DISPLAY:
            return column.head
        if role == _ALIGN:
            return _RIGHT if column.is_numeric else _LEFT
        return column.help or None if role == _TIP else None

    def setData(self, index: Index, value: Any, role: int = _EDIT) -> bool:
        """Take an entered text, or the new state of a flag."""
        if role == _CHECK:
            checked = Qt.CheckState(value) is Qt.CheckState.Checked
            return not self.enter(index, "true" if checked else "false")
        return role == _EDIT and not self.enter(index, str(value))
