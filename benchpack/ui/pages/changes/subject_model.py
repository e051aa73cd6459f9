"""The tree of what changes can act on, as an item model."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import (
    QAbstractItemModel,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.report.display import Display
from benchpack.ui.pages.changes.subject_rows import Row, RowKind, shape_of
from benchpack.ui.widgets.controls import plain_tip

Index = QModelIndex | QPersistentModelIndex
NAME, MASS = range(2)
ITEMS_FORMAT = "application/x-benchpack-items"
"""What is dragged from the tree: the parts and joints of a selection."""
_ROOT = QModelIndex()
_ROLE = Qt.ItemDataRole
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


@dataclass(frozen=True, slots=True)
class Selection:
    """Parts and joints that a change is to act on, by name.

    Parameters
    ----------
    parts, joints : tuple of str
        Their names, each once.
    """

    parts: tuple[str, ...] = ()
    joints: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Node:
    row: Row
    parent: int
    place: int
    below: tuple[int, ...]


class SubjectModel(QAbstractItemModel):
    """Shows subsystems, below them parts, and below these their joints."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._nodes: list[_Node] = []
        self._top: tuple[int, ...] = ()
        self._shape: tuple[object, ...] = ()
        self._display: Display | None = None

    def show(self, rows: tuple[Row, ...], display: Display) -> bool:
        """Show other rows; True when there are others than before.

        Parameters
        ----------
        rows : tuple of Row
            The subsystems.
        display : Display
            How masses are shown.
        """
        shape = shape_of(rows)
        anew = shape != self._shape
        if anew:
            self.beginResetModel()
        self._display, self._shape = display, shape
        self._nodes = []
        self._top = self._put(rows, -1)
        if anew:
            self.endResetModel()
        else:
            self._tell(_ROOT)
        return anew

    def _put(self, rows: Sequence[Row], parent: int) -> tuple[int, ...]:
        numbers = []
        for place, row in enumerate(rows):
            number = len(self._nodes)
            self._nodes.append(_Node(row, parent, place, ()))
            below = self._put(row.rows, number)
            self._nodes[number] = _Node(row, parent, place, below)
            numbers.append(number)
        return tuple(numbers)

    def _tell(self, parent: QModelIndex) -> None:
        count = self.rowCount(parent)
        if not count:
            return
        first, last = self.index(0, 0, parent), self.index(count - 1, MASS, parent)
        self.dataChanged.emit(first, last)
        for row in range(count):
            self._tell(self.index(row, 0, parent))

    def row_at(self, index: Index) -> Row:
        """Give the row that an index shows."""
        return self._nodes[index.internalId()].row

    def indexes_of(self, kind: RowKind, name: str) -> list[QModelIndex]:
        """Give every index of a part or joint."""
        return [
            self.createIndex(node.place, NAME, number)
            for number, node in enumerate(self._nodes)
            if node.row.kind is kind and node.row.name == name
        ]

    def selection_of(self, indexes: Iterable[Index]) -> Selection:
        """Give the parts and joints of some indexes, in the order of the tree."""
        rows = [self.row_at(one) for one in sorted(indexes, key=_number)]
        found = {
            kind: tuple(dict.fromkeys(row.name for row in rows if row.kind is kind))
            for kind in (RowKind.PART, RowKind.JOINT)
        }
        return Selection(found[RowKind.PART], found[RowKind.JOINT])

    def locked(self, selection: Selection) -> list[Row]:
        """Give what of a selection has to stay."""
        found: dict[tuple[RowKind, str], Row] = {}
        named = {
            RowKind.PART: frozenset(selection.parts),
            RowKind.JOINT: frozenset(selection.joints),
        }
        for node in self._nodes:
            row = node.row
            if row.locked and row.name in named.get(row.kind, ()):
                found.setdefault((row.kind, row.name), row)
        return list(found.values())

    def index(self, row: int, column: int, parent: Index = _ROOT) -> QModelIndex:
        """Give an index; its id is the number of its node."""
        if not (0 <= row < self.rowCount(parent) and 0 <= column <= MASS):
            return QModelIndex()
        below = (
            self._nodes[parent.internalId()].below if parent.isValid() else self._top
        )
        return self.createIndex(row, column, below[row])

    def parent(self, index: Index = _ROOT) -> Any:
        """Give the row above."""
        if not index.isValid():
            return QModelIndex()
        number = self._nodes[index.internalId()].parent
        if number < 0:
            return QModelIndex()
        return self.createIndex(self._nodes[number].place, NAME, number)

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of rows below."""
        if not parent.isValid():
            return len(self._top)
        if parent.column() > 0:
            return 0
        return len(self._nodes[parent.internalId()].below)

    def columnCount(self, parent: Index = _ROOT) -> int:
        """Give the number of columns."""
        del parent
        return MASS + 1

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say that what need not stay can be dragged onto a kind of change."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        row = self.row_at(index)
        if row.kind is RowKind.GROUP or row.locked:
            return flags
        return flags | Qt.ItemFlag.ItemIsDragEnabled

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """Give the parts and joints that are dragged."""
        data = QMimeData()
        found = self.selection_of([one for one in indexes if one.column() == NAME])
        said = json.dumps({"parts": found.parts, "joints": found.joints})
        data.setData(ITEMS_FORMAT, said.encode())
        return data

    def data(self, index: Index, role: int = _ROLE.DisplayRole) -> Any:
        """Give name or mass, what is said on hover, and alignment."""
        if not index.isValid():
            return None
        row = self.row_at(index)
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if index.column() == MASS else _LEFT
        if role == _ROLE.DisplayRole:
            return row.name if index.column() == NAME else self._mass(row)
        if role == _ROLE.AccessibleTextRole:
            said = row.name if index.column() == NAME else self._mass(row)
            return ", ".join(filter(None, (said, row.fate)))
        if role == _ROLE.ToolTipRole:
            return plain_tip(". ".join(filter(None, (row.name, row.words, row.fate))))
        return None

    def _mass(self, row: Row) -> str:
        if math.isnan(row.mass_kg) or self._display is None:
            return "–"
        return self._display.mass_text(row.mass_kg)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> Any:
        """Give the heads."""
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == _ROLE.DisplayRole:
            return ("Parts and joints", "Mass")[section]
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if section == MASS else _LEFT
        if role == _ROLE.ToolTipRole and section == MASS:
            return "Of all pieces; of a subsystem without the joints below its parts."
        return None


def items_of(data: QMimeData) -> Selection | None:
    """Give the parts and joints that are dragged, None where it is something else."""
    if not data.hasFormat(ITEMS_FORMAT):
        return None
    found = json.loads(bytes(data.data(ITEMS_FORMAT).data()).decode())
    return Selection(tuple(found["parts"]), tuple(found["joints"]))


def _number(index: Index) -> int:
    return index.internalId()
