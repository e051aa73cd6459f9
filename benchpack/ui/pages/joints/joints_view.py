"""How the Joints page is laid out: table and entry left, what explains it right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QPushButton,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.pages.joints.count_in import CountIn
from benchpack.ui.pages.joints.inventory_shelf import InventoryShelf
from benchpack.ui.pages.joints.joint_table import JointTable
from benchpack.ui.pages.joints.joints_bar import JointsBar
from benchpack.ui.pages.joints.pack_joints import PackJoints
from benchpack.ui.pages.joints.side_tabs import SideTabs
from benchpack.ui.pages.joints.totals_strip import TotalsStrip
from benchpack.ui.tables.layout_memory import (
    keep_column_order,
    keep_hidden_columns,
    keep_splitter,
    restore_column_order,
    restore_hidden_columns,
    restore_splitter,
)
from benchpack.ui.widgets.empty_note import EmptyNote
from benchpack.ui.workspace import Workspace

_MEMORY = "joints"


class JointsView(QWidget):
    """Bar, table, entry bar, totals and side tabs of one pack.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    joints : PackJoints
        Where edits go.
    shelf : InventoryShelf
        Gives inventories.
    parent : QWidget
        Owner.
    """

    def __init__(
        self,
        workspace: Workspace,
        joints: PackJoints,
        shelf: InventoryShelf,
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        # Built from the outside in: each later change of parent is styled anew.
        self.bar = JointsBar(self)
        self.stack = QStackedWidget(self)
        self.splitter = QSplitter(Qt.Orientation.Horizontal, self.stack)
        left = QWidget(self.splitter)
        self.table = JointTable(joints, runner=workspace.runner, parent=left)
        self.count_in = CountIn(left)
        self.count_in.hide()
        self.totals = TotalsStrip(left)
        self.tabs = SideTabs(workspace, shelf, self.splitter)
        self.empty_count_in = QPushButton("Count in")
        self.empty_add = QPushButton("Add joint")
        self.empty_paste = QPushButton("Paste rows")
        self.empty = EmptyNote(
            "Pack without joints",
            "",
            buttons=(self.empty_count_in, self.empty_add, self.empty_paste),
            parent=self.stack,
        )
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.table, 1)
        column.addWidget(self.count_in)
        column.addWidget(self.totals)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(left)
        self.splitter.addWidget(self.tabs)
        self.splitter.setStretchFactor(0, 3)
        self.splitter.setStretchFactor(1, 2)
        self.splitter.setSizes([680, 424])
        self.stack.addWidget(self.splitter)
        self.stack.addWidget(self.empty)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(12)
        rows.addWidget(self.bar)
        rows.addWidget(self.stack, 1)

        self.bar.columns.clicked.connect(self._on_columns_clicked)
        self.splitter.splitterMoved.connect(self._on_splitter_moved)
        self.table.columns_chosen.connect(self._on_columns_chosen)
        self.table.horizontalHeader().sectionMoved.connect(self._on_section_moved)

    def restore_layout(self) -> None:
        """Put splitter and columns where they were left."""
        restore_splitter(self.splitter, _MEMORY)
        restore_hidden_columns(self.table, _MEMORY, default=())
        restore_column_order(self.table, _MEMORY)

    def show_empty(self, sentence: str) -> None:
        """Show a sentence in place of the table, or the table for an empty one."""
        self.empty.sentence.setText(sentence)
        self.stack.setCurrentWidget(self.empty if sentence else self.splitter)
        for button in (self.bar.edit, self.bar.remove, self.bar.export):
            button.setEnabled(not sentence)
        self.bar.columns.setEnabled(not sentence)

    def _on_columns_clicked(self) -> None:
        menu = self.table.column_menu()
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        below = self.bar.columns.rect().bottomLeft()
        menu.popup(self.bar.columns.mapToGlobal(below))

    def _on_columns_chosen(self, hidden: tuple[str, ...]) -> None:
        keep_hidden_columns(self.table, _MEMORY, hidden)

    def _on_splitter_moved(self) -> None:
        keep_splitter(self.splitter, _MEMORY)

    def _on_section_moved(self) -> None:
        keep_column_order(self.table, _MEMORY)
