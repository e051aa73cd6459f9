"""Candidate materials as a table model: today's part, then from the lightest up."""

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
)
from benchpack.report.candidates_text import candidate_detail, failing_text
from benchpack.results.candidate_record import Candidate, Candidates
from benchpack.ui.widgets.controls import plain_tip

Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_ROLE = Qt.ItemDataRole
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


class CandidatesModel(QAbstractTableModel):
    """Shows candidates from the lightest up, below the part as it is."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.rows: tuple[Candidate, ...] = ()
        self._study = Study()
        self._columns: tuple[CandidateColumn, ...] = ()
        self._cells: list[tuple[str, ...]] = []

    def show(self, compared: Candidates | None, study: Study) -> None:
        """Show a comparison, or nothing with None."""
        self.beginResetModel()
        self._study = study
        self.rows, self._columns, self._cells = (), (), []
        if compared is not None:
            self.rows = (compared.today, *sorted(compared.rows, key=_by_mass))
            self._columns = candidate_columns(compared, study)
            self._cells = [candidate_cells(row, compared, study) for row in self.rows]
        self.endResetModel()

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
            return column.help_text
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if column.is_number else _LEFT
        return None


def _by_mass(row: Candidate) -> float:
    return math.inf if math.isnan(row.mass_kg) else row.mass_kg
