"""The parts of one pack as a tree by subsystem."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import (
    QAbstractItemModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from benchpack.errors import DataError, Problem
from benchpack.model.entry import parse_value
from benchpack.model.part import Part
from benchpack.session.record_edits import with_part_values
from benchpack.session.state import State
from benchpack.ui.pages.packs.part_groups import Group, group_names, part_columns
from benchpack.ui.tables.cell_text import edited_text, shown_text
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.edits import attempt
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle

Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_GROUP = 0
_RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
_ROLE = Qt.ItemDataRole


class PartsModel(QAbstractItemModel):
    """Shows subsystems with their sums, and below them parts and joints.

    Parameters
    ----------
    workspace : Workspace
        Where edits go.
    parent : QObject, optional
        Owner.
    """

    def __init__(self, workspace: Workspace, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self.pack = ""
        self.style = NumberStyle()
        self.columns = part_columns(self.style)
        self.groups: tuple[Group, ...] = ()
        self._pack_mass_kg = math.nan
        self._refused: dict[tuple[str, str], tuple[str, Problem]] = {}

    def show(
        self,
        pack: str,
        groups: tuple[Group, ...],
        *,
        pack_mass_kg: float,
        style: NumberStyle,
    ) -> bool:
        """Show the parts of a pack; False when only values have changed.

        Parameters
        ----------
        pack : str
            Name of the pack.
        groups : tuple of Group
            Its subsystems.
        pack_mass_kg : float
            Its mass, kg.
        style : NumberStyle
            Decimal mark and mass unit.
        """
        anew = pack != self.pack or group_names(groups) != group_names(self.groups)
        if anew:
            self.beginResetModel()
            self._refused.clear()
        self.pack, self.groups, self._pack_mass_kg = pack, groups, pack_mass_kg
        self.style, self.columns = style, part_columns(style)
        last = len(self.columns) - 1
        if anew:
            self.endResetModel()
            return True
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, last)
        for row, group in enumerate(groups):
            parent = self.index(row, 0)
            self.dataChanged.emit(parent, self.index(row, last))
            end = self.index(group.rows - 1, last, parent)
            self.dataChanged.emit(self.index(0, 0, parent), end)
        return False

    def part_at(self, index: Index) -> Part | None:
        """Give the part an index shows, None for subsystems and joints."""
        if not index.isValid() or index.internalId() == _GROUP:
            return None
        parts = self.groups[index.internalId() - 1].parts
        return parts[index.row()] if index.row() < len(parts) else None

    def index_of(self, part: str, key: str = "name") -> QModelIndex:
        """Give the index of a part's cell, an invalid one where there is none."""
        keys = [column.key for column in self.columns]
        place = keys.index(key) if key in keys else 0
        for row, group in enumerate(self.groups):
            names = [one.name for one in group.parts]
            if part in names:
                return self.index(names.index(part), place, self.index(row, 0))
        return QModelIndex()

    def name_at(self, index: Index) -> str:
        """Give the name of the part at an index."""
        part = self.part_at(index)
        return part.name if part else ""

    def enter(self, index: Index, text: str) -> tuple[Problem, ...]:
        """Take what was entered in a part's cell; gives why it cannot be taken."""
        part, column = self.part_at(index), self.columns[index.column()]
        if part is None or column.field is None:
            return ()
        place = (part.name, column.key)
        value = getattr(part, column.key)
        if text == edited_text(column, value, self.style):
            self._refused.pop(place, None)
            return ()
        try:
            new = parse_value(
                column.field,
                text.strip(),
                unit=column.entry_unit,
                decimal=self.style.decimal_mark,
            )
        except DataError as error:
            problems = error.problems
        else:
            values = {column.key: 1 if column.key == "count" and new is None else new}
            label = f"{column.title} of {part.name}"
            problems = self.change(label, part.name, values)
        if problems:
            self._refused[place] = (text, problems[0])
        else:
            self._refused.pop(place, None)
        return problems

    def change(
        self, label: str, part: str, values: Mapping[str, Any]
    ) -> tuple[Problem, ...]:
        """Change a part as one undo step; gives why it cannot be changed."""
        pack = self.pack

        def make(state: State) -> State:
            return with_part_values(state, pack, part, values)

        return attempt(self._workspace, label, make)

    def value(self, index: Index) -> Any:
        """Give the value an index shows, None where it is not known or empty."""
        key = self.columns[index.column()].key
        if index.internalId() == _GROUP:
            group = self.groups[index.row()]
            return self._of_sum(key, group.name, None, group.mass_kg)
        part = self.part_at(index)
        if part is None:
            joints = self.groups[index.internalId() - 1].joints
            if joints is None:
                return None
            name = f"{joints.rows} joint{'s' if joints.rows > 1 else ''}"
            return self._of_sum(key, name, joints.count, joints.mass_kg)
        mass_kg = math.nan if part.mass_kg is None else part.mass_kg
        if key == "mass":
            return mass_kg
        return mass_kg / self._pack_mass_kg if key == "share" else getattr(part, key)

    def _of_sum(self, key: str, name: str, count: int | None, mass_kg: float) -> Any:
        return {
            "name": name,
            "count": count,
            "mass": mass_kg,
            "share": mass_kg / self._pack_mass_kg,
        }.get(key)

    def index(self, row: int, column: int, parent: Index = _ROOT) -> QModelIndex:
        """Give an index; its id is 0 for subsystems, else 1 + the subsystem's row."""
        if not (0 <= row < self.rowCount(parent) and 0 <= column < len(self.columns)):
            return QModelIndex()
        inner = parent.row() + 1 if parent.isValid() else _GROUP
        return self.createIndex(row, column, inner)

    def parent(self, index: Index = _ROOT) -> Any:
        """Give the subsystem of a part."""
        if not index.isValid() or index.internalId() == _GROUP:
            return QModelIndex()
        return self.createIndex(index.internalId() - 1, 0, _GROUP)

    def rowCount(self, parent: Index = _ROOT) -> int:
        """Give the number of subsystems, or of the rows below one."""
        if not parent.isValid():
            return len(self.groups)
        if parent.internalId() != _GROUP or parent.column() > 0:
            return 0
        return self.groups[parent.row()].rows

    def columnCount(self, parent: Index = _ROOT) -> int:
        """Give the number of columns."""
        del parent
        return len(self.columns)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say that recorded cells of parts can be edited."""
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if self.part_at(index) and self.columns[index.column()].field:
            return flags | Qt.ItemFlag.ItemIsEditable
        return flags

    def data(self, index: Index, role: int = _ROLE.DisplayRole) -> Any:
        """Give a cell's text, tooltip or alignment."""
        if not index.isValid():
            return None
        column = self.columns[index.column()]
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if column.is_numeric else _LEFT
        if role in (_ROLE.DisplayRole, _ROLE.AccessibleTextRole):
            return self._shown(index, column)
        part = self.part_at(index)
        if part is None:
            return None
        refused = self._refused.get((part.name, column.key))
        if role == _ROLE.EditRole:
            value = getattr(part, column.key, None)
            return refused[0] if refused else edited_text(column, value, self.style)
        return _tip(part, column, refused) if role == _ROLE.ToolTipRole else None

    def _shown(self, index: Index, column: TableColumn) -> str:
        value = self.value(index)
        if column.key == "carry_over":
            part = self.part_at(index)
            return (part.reason or "stays") if part and part.carry_over else ""
        if self.part_at(index) is None and value is None:
            return ""
        return shown_text(column, value, self.style)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> Any:
        """Give the head of a column."""
        if orientation != Qt.Orientation.Horizontal:
            return None
        column = self.columns[section]
        if role == _ROLE.DisplayRole:
            return column.head
        if role == _ROLE.TextAlignmentRole:
            return _RIGHT if column.is_numeric else _LEFT
        return column.help if role == _ROLE.ToolTipRole else None


def _tip(
    part: Part, column: TableColumn, refused: tuple[str, Problem] | None
) -> str | None:
    if refused:
        return f"Not taken: {refused[0]}. {refused[1].what} {refused[1].remedy}"
    if part.carry_over and column.key in ("name", "carry_over"):
        return f"Stays as it is: {part.reason or 'no reason is recorded.'}"
    if column.key == "name":
        return part.note or None
    if column.key in ("mass", "share", "mass_each_kg") and part.mass_each_kg is None:
        return f"Not known. {column.reason}"
    return None
