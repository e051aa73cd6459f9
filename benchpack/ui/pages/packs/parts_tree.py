"""The tree view of parts: keyboard, widths, what stays open and selected."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QTreeView, QWidget

from benchpack.model.part import Part
from benchpack.ui.pages.packs.part_groups import Group
from benchpack.ui.pages.packs.parts_delegate import PartsDelegate
from benchpack.ui.pages.packs.parts_model import PartsModel
from benchpack.ui.tables.widths import initial_width
from benchpack.units.formatting import NumberStyle

_WIDTHS = {"name": 176, "count": 64, "material": 150, "carry_over": 200}


class PartsTree(QTreeView):
    """Shows a `PartsModel`.

    Signals
    -------
    part_dialog_requested()
        All fields of the current part are to be edited.
    refused(str, object)
        A text that could not be taken, and problems.
    """

    part_dialog_requested = Signal()
    refused = Signal(str, object)

    def __init__(self, model: PartsModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.parts = model
        self.setAccessibleName("Parts by subsystem")
        self.setModel(model)
        self.setUniformRowHeights(True)
        self.setAllColumnsShowFocus(False)
        self.setIndentation(14)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.EditKeyPressed
        )
        heads = self.header()
        heads.setAccessibleName("Columns of the parts")
        heads.setStretchLastSection(False)
        heads.setMinimumSectionSize(40)
        for place, column in enumerate(model.columns):
            width = _WIDTHS.get(column.key) or initial_width(
                column, heads.fontMetrics()
            )
            self.setColumnWidth(place, width)
        delegate = PartsDelegate(self)
        self.setItemDelegate(delegate)
        delegate.moved.connect(self._on_entry_taken)
        delegate.refused.connect(self.refused)
        delegate.dialog_requested.connect(self._on_dialog_requested)
        self._closed: set[str] = set()
        self.collapsed.connect(self._on_group_collapsed)
        self.expanded.connect(self._on_group_expanded)

    def show_groups(
        self,
        pack: str,
        groups: tuple[Group, ...],
        *,
        pack_mass_kg: float,
        style: NumberStyle,
    ) -> None:
        """Show the parts of a pack; the current part stays the current one."""
        current = self.current_part()
        column = self.currentIndex().column()
        if self.parts.show(pack, groups, pack_mass_kg=pack_mass_kg, style=style):
            for row, group in enumerate(groups):
                is_open = group.name not in self._closed
                self.setExpanded(self.parts.index(row, 0), is_open)
            if current is not None:
                key = self.parts.columns[max(column, 0)].key
                self.go_to(current.name, key)

    def current_part(self) -> Part | None:
        """Give the part of the current row, None on sums and joints."""
        return self.parts.part_at(self.currentIndex())

    def selected_parts(self) -> list[str]:
        """Give the names of the selected parts."""
        rows = self.selectionModel().selectedRows()
        found = [self.parts.part_at(index) for index in rows]
        return [part.name for part in found if part is not None]

    def go_to(self, part: str, key: str = "name") -> bool:
        """Make a part's cell the current one; False when there is no such part."""
        index = self.parts.index_of(part, key)
        if not index.isValid():
            return False
        self.expand(index.parent())
        self.setCurrentIndex(index)
        self.scrollTo(index)
        return True

    def _on_entry_taken(self, rows: int, columns: int) -> None:
        index = self.currentIndex()
        if rows:
            below = self.indexBelow(index) if rows > 0 else self.indexAbove(index)
            target = below.siblingAtColumn(index.column())
        else:
            target = index.siblingAtColumn(index.column() + columns)
        if target.isValid():
            self.setCurrentIndex(target)

    def _on_dialog_requested(self, index: object) -> None:
        del index
        self.part_dialog_requested.emit()

    def _on_group_collapsed(self, index: QModelIndex) -> None:
        self._closed.add(self.parts.groups[index.row()].name)

    def _on_group_expanded(self, index: QModelIndex) -> None:
        self._closed.discard(self.parts.groups[index.row()].name)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move with Tab and Enter from cell to cell, as in the table."""
        steps = {
            Qt.Key.Key_Return: (1, 0),
            Qt.Key.Key_Enter: (1, 0),
        }
        step = steps.get(Qt.Key(event.key()))
        if step is not None:
            self._on_entry_taken(*step)
            return
        super().keyPressEvent(event)
