"""The joining of two packs beside each other, as a table model."""

from __future__ import annotations

import math

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.model.study import Study
from benchpack.report.joint_text import compared_text
from benchpack.results.joint_comparison import ComparedRow
from benchpack.ui.widgets.controls import plain_tip
from benchpack.units.labels import screen_label

Index = QModelIndex | QPersistentModelIndex
LABEL, SUBJECT, REFERENCE, DIFFERENCE = range(4)
_ROOT = QModelIndex()
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class ComparedModel(QAbstractTableModel):
    """Shows one figure a row: of the pack, of the reference, and the difference."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._rows: tuple[ComparedRow, ...] = ()
        self._texts: list[tuple[str, ...]] = []
        self._heads = ("Figure", "", "", "Difference")

    @property
    def rows(self) -> tuple[ComparedRow, ...]:
        """The rows in the order shown."""
        return self._rows

    def show(
        self, rows: tuple[ComparedRow, ...], packs: tuple[str, str], study: Study
    ) -> None:
        """Show other figures.

        Parameters
        ----------
        rows : tuple of ComparedRow
            The figures.
        packs : tuple of str
            Names of the two packs.
        study : Study
            How numbers are shown.
        """
        self.beginResetModel()
        self._rows = rows
        self._heads = ("Figure", *packs, "Difference")
        self._texts = [_texts(row, study) for row in rows]
        self.endResetModel()

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of figures."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = _ROOT) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(self._heads)

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> object:
        """Give the heads; rows have none."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self._heads[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _LEFT if section == LABEL else _RIGHT
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Give text, note and alignment of a cell."""
        if not index.isValid():
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self._texts[index.row()][index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            row = self._rows[index.row()]
            return plain_tip(f"{row.label}. {row.note}".strip())
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _LEFT if index.column() == LABEL else _RIGHT
        return None


def _texts(row: ComparedRow, study: Study) -> tuple[str, ...]:
    said = row.unit == "%" or row.unit.startswith("1/")
    unit = "" if said else row.unit
    unit = unit.replace("kg", study.mass_unit)
    label = f"{row.label} [{screen_label(unit)}]" if unit else row.label
    difference = compared_text(row, row.difference, study)
    if not math.isnan(row.difference) and row.difference > 0:
        difference = f"+{difference}"
    return (
        f"{label} *" if row.note else label,
        compared_text(row, row.subject, study),
        compared_text(row, row.reference, study),
        difference,
    )
