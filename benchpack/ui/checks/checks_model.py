"""Checks as a list model, the worst first."""

from __future__ import annotations

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.results.check import Check, Grade
from benchpack.ui.widgets.controls import plain_tip

Index = QModelIndex | QPersistentModelIndex
WORDS = {
    Grade.FAIL: "fail",
    Grade.LOOK: "look",
    Grade.GOOD: "good",
    Grade.NONE: "not judged",
}
"""Words of the grades, the worst first."""
_RANKS = {grade: rank for rank, grade in enumerate(WORDS)}
_ROOT = QModelIndex()


class ChecksModel(QAbstractListModel):
    """Shows checks, the worst first."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._checks: tuple[Check, ...] = ()

    @property
    def checks(self) -> tuple[Check, ...]:
        """The checks in the order shown."""
        return self._checks

    def show(self, checks: tuple[Check, ...]) -> None:
        """Show other checks; those of one grade keep their order."""
        self.beginResetModel()
        self._checks = tuple(sorted(checks, key=_rank))
        self.endResetModel()

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of checks."""
        return 0 if parent.isValid() else len(self._checks)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Give a check in words."""
        if not index.isValid():
            return None
        check = self._checks[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{WORDS[check.grade]}, {self.heading(check)}: {check.words}"
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{check.words} {check.remedy}".strip())
        return None

    def heading(self, check: Check) -> str:
        """Give what stands first of a check; the record, unless a page says more."""
        return check.record


def _rank(check: Check) -> int:
    return _RANKS[check.grade]
