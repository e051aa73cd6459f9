"""The table of the joints of one pack: what is shown, what is selected."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
from PySide6.QtCore import QItemSelection, QItemSelectionModel, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.results.explain_joints import joint_record, joints_record
from benchpack.results.inventory import Inventory
from benchpack.results.joint_facts import JointFacts
from benchpack.ui.pages.joints.joint_book import JointBook, RowKeys
from benchpack.ui.pages.joints.joint_columns import table_columns
from benchpack.ui.tables.edits import TableEdits
from benchpack.ui.tables.marks import Mark
from benchpack.ui.tables.ordering import runs
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.tasks import Runner
from benchpack.units.formatting import NumberStyle

_WIDTHS = {
    "name": 180,
    "designation": 158,
    "count": 60,
    "joins": 150,
    "to": 154,
    "family": 156,
    "tightening": 176,
    "reason": 240,
}
_EXPLAINED = {
    "count": "joints count",
    "length_mm": "joints count",
    "mass_each_g": "joint mass",
    "known_by": "joint mass",
    "mass_all_g": "joint mass",
    "time_each_s": "joint time",
    "time_all_s": "joint time",
    "cost_each": "joint money",
    "money_all": "joint money",
}


class JointTable(RecordTableView):
    """Shows the joints of one inventory.

    Signals
    -------
    selection_changed()
        Other joints are selected, or none.

    Parameters
    ----------
    edits : TableEdits
        Where edits go.
    runner : Runner
        Runs what would hold the window up.
    parent : QWidget
        Owner.
    """

    selection_changed = Signal()

    def __init__(self, edits: TableEdits, *, runner: Runner, parent: QWidget) -> None:
        super().__init__(
            RecordTableModel(edits),
            "Joints of the pack",
            runner=runner,
            widths=_WIDTHS,
            parent=parent,
        )
        self.table.setParent(self)
        self._keys = RowKeys()
        self.inventory: Inventory | None = None
        self.selectionModel().selectionChanged.connect(self.selection_changed)
        self.cells.rows_added.connect(self._on_rows_added)

    def show_inventory(
        self, inventory: Inventory, library: Library, *, style: NumberStyle
    ) -> None:
        """Show the joints of a pack; order, selection and filter stay.

        Parameters
        ----------
        inventory : Inventory
            The joints.
        library : Library
            The records; it gives the parts that joints hold.
        style : NumberStyle
            Decimal mark and mass unit.
        """
        self.inventory = inventory
        names = tuple([facts.joint.name for facts in inventory.facts])
        keys = self._keys.of(inventory.pack, names)
        book = JointBook(inventory, keys, style)
        currency = inventory.rates.currency
        parts = tuple(part.name for part in library.parts_of(inventory.pack))
        self.table.show(
            book.records,
            table_columns(style, currency, parts=parts),
            style=style,
            currency=currency,
            warn=book.warnings,
            remark=book.remark,
        )
        staying = (row for row, f in enumerate(self._facts) if f.joint.carry_over)
        self.table.set_marks(dict.fromkeys(staying, Mark.CARRY_OVER))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Select nothing with Esc, so that the totals are those of all joints."""
        if event.key() == Qt.Key.Key_Escape:
            self.clearSelection()
        else:
            super().keyPressEvent(event)

    def _on_rows_added(self, count: int) -> None:
        """Show what was pasted below the others."""
        rows = len(self._facts)
        self.select_rows(range(rows - count, rows))

    @property
    def _facts(self) -> Sequence[JointFacts]:
        return self.inventory.facts if self.inventory else ()

    @property
    def explain_key(self) -> str:
        """Key of the figure in the current cell, for F1."""
        return _EXPLAINED.get(self.current_key(), "joints mass")

    @property
    def explain_record(self) -> str:
        """The joint, or the pack, that the figure of `explain_key` belongs to."""
        joint = self.current_joint()
        if joint is None:
            return self.inventory.pack if self.inventory else ""
        if self.current_key() not in _EXPLAINED:
            return joint.pack
        if self.explain_key == "joints count":
            return joints_record(joint.pack, (joint.name,))
        return joint_record(joint.pack, joint.name)

    def current_row(self) -> int | None:
        """Give the place of the current joint in its pack, None without one."""
        index = self.currentIndex()
        return self.table.record_row(index) if index.isValid() else None

    def current_joint(self) -> Joint | None:
        """Give the current joint, None without one."""
        row = self.current_row()
        return None if row is None else self._facts[row].joint

    def current_key(self) -> str:
        """Give the key of the current column, empty without one."""
        index = self.currentIndex()
        return self.table.columns[index.column()].key if index.isValid() else ""

    def selected_facts(self) -> list[JointFacts]:
        """Give the joints with a selected cell, in the order of the pack."""
        ranges = self.selected_ranges()
        order = self.table.order
        pieces = [order[one.top : one.bottom + 1] for one in ranges]
        if not pieces:
            return []
        return [self._facts[row] for row in np.unique(np.concatenate(pieces)).tolist()]

    @property
    def is_filtered(self) -> bool:
        """Whether the filter holds some joints back."""
        return len(self.table.order) < len(self._facts)

    def shown_facts(self) -> list[JointFacts]:
        """Give the joints that the filter lets through, in the order shown."""
        return [self._facts[row] for row in self.table.order.tolist()]

    def select_rows(self, rows: Iterable[int]) -> None:
        """Select whole rows by their place in the pack, and go to the first."""
        wanted = np.fromiter(rows, dtype=np.int64)
        places = np.flatnonzero(np.isin(self.table.order, wanted))
        if len(places) == 0:
            return
        flag = QItemSelectionModel.SelectionFlag
        last = self.table.columnCount() - 1
        selection = QItemSelection()
        for first, end in runs(places):
            top, bottom = self.table.index(first, 0), self.table.index(end, last)
            selection.select(top, bottom)
        topmost = self.table.index(int(places[0]), 0)
        self.selectionModel().setCurrentIndex(topmost, flag.NoUpdate)
        self.selectionModel().select(selection, flag.ClearAndSelect)
        self.scrollTo(topmost)

    def go_to_joint(self, name: str, key: str = "") -> bool:
        """Make a joint the current one; False when it is not shown."""
        rows = (row for row, f in enumerate(self._facts) if f.joint.name == name)
        row = next(rows, None)
        return row is not None and self.go_to(row, key)
