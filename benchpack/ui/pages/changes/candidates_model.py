"""Candidate materials as a table model: today's part, then the others in an order."""

from __future__ import annotations

import math
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.model.study import Study
from benchpack.report.candidates_table import (
    CandidateColumn,
    candidate_cells,
    candidate_columns,
    candidate_order,
)
from benchpack.report.candidates_text import candidate_detail, failing_text
from benchpack.results.candidate_record import Candidate, Candidates
from benchpack.ui.tables.ordering import Direction, sorted_rows
from benchpack.ui.widgets.controls import plain_tip

Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_ROLE = Qt.ItemDataRole
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


class CandidatesModel(QAbstractTableModel):
    """Shows candidates below the part as it is, from the lightest up or sorted.

    Attributes
    ----------
    rows : tuple of Candidate
        What is shown, the part as it is first whatever the order.
    sorting : tuple of (str, Direction) or None
        Key of the column that is sorted by; None from the lightest up.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.rows: tuple[Candidate, ...] = ()
        self.sorting: tuple[str, Direction] | None = None
        self._compared: Candidates | None = None
        self._study = Study()
        self._columns: tuple[CandidateColumn, ...] = ()
        self._cells: list[tuple[str, ...]] = []

    def show(self, compared: Candidates | None, study: Study) -> None:
        """Show a comparison, or nothing with None."""
        self.beginResetModel()
        self._study, self._compared = study, compared
        self._columns = () if compared is None else candidate_columns(compared, study)
        self._fill()
        self.endResetModel()

    def sort_by(self, key: str, direction: Direction | None) -> None:
        """Sort by a column; None gives the order from the lightest up.

        Parameters
        ----------
        key : str
            Key of the column.
        direction : Direction or None
            Rising or falling.
        """
        self.layoutAboutToBeChanged.emit()
        kept = self.persistentIndexList()
        names = [self.rows[index.row()].name for index in kept]
        self.sorting = None if direction is None else (key, direction)
        self._fill()
        # Today's row stays at the top, so that the others alone have moved.
        moved = [
            index if index.row() == 0 else self.index(self.row_of(name), index.column())
            for index, name in zip(kept, names, strict=True)
        ]
        self.changePersistentIndexList(kept, moved)
        self.layoutChanged.emit()

    def _fill(self) -> None:
        compared = self._compared
        self.rows, self._cells = (), []
        if compared is None:
            return
        found = sorted(compared.rows, key=_by_mass)
        key, direction = self.sorting or ("", Direction.RISING)
        if key in [column.key for column in self._columns]:
            order = sorted_rows(candidate_order(found, key), direction)
            found = [found[place] for place in order.tolist()]
        self.rows = (compared.today, *found)
        self._cells = [candidate_cells(row, compared, self._study) for row in self.rows]

    def row_of(self, name: str) -> int:
        """Give the row of a candidate, -1 where it is not there."""
        names = [row.name for row in self.rows[1:]]
        return names.index(name) + 1 if name in names else -1

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _ROOT) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(self._columns)

    def head(self, column: int) -> str:
        """Give the head of a column."""
        return self._columns[column].head

    def key(self, column: int) -> str:
        """Give the key of a column, by which it is sorted."""
        return self._columns[column].key

    def place_of(self, key: str) -> int:
        """Give the place of a column, -1 where it is not shown."""
        keys = [column.key for column in self._columns]
        return keys.index(key) if key in keys else -1

    def data(self, index: Index, role: int = _ROLE.DisplayRole) -> Any:
        """Give texts, what is said on hover, alignment."""
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == _ROLE.DisplayRole:
            return self._cells[index.row()][index.column()]
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if self._columns[index.column()].is_number else _LEFT
        if role == _ROLE.ToolTipRole:
            said = [candidate_detail(row, self._study), failing_text(row)]
            return plain_tip("\n".join(filter(None, said)))
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> Any:
        """Give the heads."""
        if orientation is not Qt.Orientation.Horizontal or section >= len(
            self._columns
        ):
            return None
        column = self._columns[section]
        if role == _ROLE.DisplayRole:
            return column.head
        if role == _ROLE.ToolTipRole:
            return f"{column.help_text} A click sorts; the part as it is stays first."
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if column.is_number else _LEFT
        return None


def _by_mass(row: Candidate) -> float:
    return math.inf if math.isnan(row.mass_kg) else row.mass_kg
