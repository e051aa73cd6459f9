"""The changes of a proposal as a table model, in their order."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.model.study import Study
from benchpack.ui.pages.changes.change_lines import ChangeLine, worth_texts
from benchpack.ui.widgets.controls import plain_tip
from benchpack.units.labels import screen_label

Index = QModelIndex | QPersistentModelIndex
ON, CHANGE, SAVED, WORTH = range(4)
CHANGE_FORMAT = "application/x-benchpack-change"
"""What is dragged in the table: the name of a change."""
_ROOT = QModelIndex()
_ROLE = Qt.ItemDataRole
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_HEADS = ("On", "Change", "Saved", "Net worth")
_TIPS = (
    "Off: it counts for nothing. Space switches the current change.",
    "Changes act in this order. Drag, or Alt with the arrows, moves one.",
    "Mass saved per pack, add-backs taken off, with its range.",
    "Worth of the mass per pack less all costs, with its range.",
)


class ChangesModel(QAbstractTableModel):
    """Shows changes; the box of each switches it.

    Parameters
    ----------
    switch : callable
        Takes the name of a change that is to be switched on or off.
    parent : QObject
        Owner.
    """

    def __init__(self, switch: Callable[[str], bool], parent: QObject) -> None:
        super().__init__(parent)
        self._switch = switch
        self._study = Study()
        self.lines: tuple[ChangeLine, ...] = ()
        self._worths: list[tuple[str, str]] = []

    def show(self, lines: tuple[ChangeLine, ...], study: Study) -> bool:
        """Show changes; True when there are others than before, or in another order."""
        names = [line.change.name for line in lines]
        anew = names != [line.change.name for line in self.lines]
        if anew:
            self.beginResetModel()
        self.lines, self._study = lines, study
        self._worths = [worth_texts(line.effect, study) for line in lines]
        if anew:
            self.endResetModel()
        elif lines:
            last = self.index(len(lines) - 1, WORTH)
            self.dataChanged.emit(self.index(0, 0), last)
        return anew

    def show_worth(self, study: Study) -> None:
        """Show the net worth at a worth that passes by; nothing else changes."""
        self._study = study
        self._worths = [worth_texts(line.effect, study) for line in self.lines]
        if self.lines:
            last = self.index(len(self.lines) - 1, WORTH)
            self.dataChanged.emit(self.index(0, WORTH), last)

    def name_at(self, row: int) -> str:
        """Give the name of the change in a row, empty where there is none."""
        return self.lines[row].change.name if 0 <= row < len(self.lines) else ""

    def row_of(self, name: str) -> int:
        """Give the row of a change, -1 where it is not there."""
        names = [line.change.name for line in self.lines]
        return names.index(name) if name in names else -1

    def order_with(self, name: str, *, at: int) -> tuple[str, ...]:
        """Give the names with one moved to stand before a row of the present order."""
        names = [line.change.name for line in self.lines]
        before = [one for one in names[:at] if one != name]
        after = [one for one in names[at:] if one != name]
        return (*before, name, *after)

    def texts(self, index: Index) -> tuple[str, str]:
        """Give the two lines of a cell."""
        line = self.lines[index.row()]
        if index.column() == CHANGE:
            return line.change.name, line.words
        if index.column() == SAVED:
            return line.saved, line.saved_range
        if index.column() == WORTH:
            return self._worths[index.row()]
        return "", ""

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of changes."""
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = _ROOT) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(_HEADS)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say that a change can be dragged and switched."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = (
            Qt.ItemFlag.ItemIsEnabled
            | Qt.ItemFlag.ItemIsSelectable
            | Qt.ItemFlag.ItemIsDragEnabled
        )
        return flags | Qt.ItemFlag.ItemIsUserCheckable if not index.column() else flags

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """Give the change that is dragged."""
        data = QMimeData()
        if indexes:
            name = json.dumps(self.name_at(indexes[0].row()))
            data.setData(CHANGE_FORMAT, name.encode())
        return data

    def data(self, index: Index, role: int = _ROLE.DisplayRole) -> Any:
        """Give texts, box, what is said on hover, alignment."""
        if not index.isValid():
            return None
        line = self.lines[index.row()]
        if role == _ROLE.CheckStateRole and index.column() == ON:
            on = line.change.is_on
            return Qt.CheckState.Checked if on else Qt.CheckState.Unchecked
        if role == _ROLE.DisplayRole:
            return self.texts(index)[0]
        if role == _ROLE.AccessibleTextRole:
            return self._spoken(index, line)
        if role == _ROLE.ToolTipRole:
            return plain_tip(self._tip(index, line))
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if index.column() in (SAVED, WORTH) else _LEFT
        return None

    def _spoken(self, index: Index, line: ChangeLine) -> str:
        if index.column() == ON:
            return f"{line.change.name}, {'on' if line.change.is_on else 'off'}"
        return " ".join(filter(None, self.texts(index)))

    def _tip(self, index: Index, line: ChangeLine) -> str:
        if index.column() in (SAVED, WORTH) and line.effect is None:
            why = line.words if line.change.is_on else "It is switched off."
            return f"Not counted. {why}"
        if index.column() == WORTH and line.effect is not None and line.effect.unknown:
            return f"Counts as nothing: {' '.join(line.effect.unknown)}"
        return ". ".join(filter(None, self.texts(index)))

    def setData(
        self, index: Index, value: Any, role: int = int(_ROLE.EditRole)
    ) -> bool:
        """Switch a change."""
        if role != _ROLE.CheckStateRole or not index.isValid():
            return False
        on = Qt.CheckState(value) is Qt.CheckState.Checked
        change = self.lines[index.row()].change
        return on == change.is_on or self._switch(change.name)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> Any:
        """Give the heads."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == _ROLE.DisplayRole:
            return screen_label(_HEADS[section])
        if role == _ROLE.ToolTipRole:
            return _TIPS[section]
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if section in (SAVED, WORTH) else _LEFT
        return None


def change_of(data: QMimeData) -> str:
    """Give the name of the change that is dragged, empty where it is none."""
    if not data.hasFormat(CHANGE_FORMAT):
        return ""
    return str(json.loads(bytes(data.data(CHANGE_FORMAT).data()).decode()))
