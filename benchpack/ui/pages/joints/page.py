"""The Joints page: what holds a pack together, as a table, a pareto and checks."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import (
    QApplication,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
)

from benchpack.model.joint import JOINT_FIELDS
from benchpack.report.display import number_style
from benchpack.results.inventory import Inventory
from benchpack.session.document import Change
from benchpack.session.state import Changed
from benchpack.ui.finding import JOINTS_COLUMN, RecordKind, column_key, found_record
from benchpack.ui.page import Page
from benchpack.ui.pages.joints.counting import Counting
from benchpack.ui.pages.joints.inventory_shelf import InventoryShelf
from benchpack.ui.pages.joints.joint_actions import JointActions
from benchpack.ui.pages.joints.joints_view import JointsView
from benchpack.ui.pages.joints.pack_joints import PackJoints
from benchpack.ui.pages.joints.row_filter import TableFilter
from benchpack.ui.pages.joints.shortcuts import SHORTCUTS
from benchpack.ui.pages.joints.totals_strip import ALL, SELECTED
from benchpack.ui.widgets.context_menu import open_menu
from benchpack.ui.widgets.empty_note import EmptyNote
from benchpack.ui.widgets.page_keys import bind_keys
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle


class JointsPage(Page):
    """Shows the joints of the selected pack, else of the subject."""

    title = "Joints"
    shortcuts = SHORTCUTS

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self._shelf = InventoryShelf()
        self._shown: Inventory | None = None
        self._look: tuple[NumberStyle, str] | None = None
        self.joints = PackJoints(workspace)
        self._stack = QStackedWidget(self)
        self.view = JointsView(workspace, self.joints, self._shelf, self._stack)
        self.bar, self.table = self.view.bar, self.view.table
        self.tabs, self.totals = self.view.tabs, self.view.totals
        self.count_in = self.view.count_in
        self.filter = TableFilter(self.bar.filter, self.table)
        self.counting = Counting(workspace, self.count_in, self.joints)
        self.open_button = QPushButton("Open a table")
        self.demo_button = QPushButton("Open the demo")
        self.empty = EmptyNote(
            "Empty library",
            "This library holds no packs yet.",
            buttons=(self.open_button, self.demo_button),
            parent=self._stack,
        )
        self.actions_of_joint = JointActions(workspace, self.table, self.joints, self)
        self._stack.addWidget(self.view)
        self._stack.addWidget(self.empty)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 16, 24, 8)
        layout.addWidget(self._stack)
        self.entry = self.table
        self._connect()
        self._connect_workspace()

    def _connect(self) -> None:
        actions, bar, table = self.actions_of_joint, self.bar, self.table
        bar.count_in.clicked.connect(self._on_count_in_requested)
        bar.add.clicked.connect(actions.add_joint)
        bar.edit.clicked.connect(actions.edit_joint)
        bar.remove.clicked.connect(actions.remove_joints)
        bar.export.clicked.connect(actions.export_joints)
        self.filter.filtered.connect(self._show_totals)
        self.view.empty_count_in.clicked.connect(self._on_count_in_requested)
        self.view.empty_add.clicked.connect(actions.add_joint)
        self.view.empty_paste.clicked.connect(table.cells.paste_as_new)
        self.open_button.clicked.connect(self.open_requested)
        self.demo_button.clicked.connect(self.demo_requested)
        table.selection_changed.connect(self._show_totals)
        table.record_selected.connect(self._on_record_selected)
        table.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        table.customContextMenuRequested.connect(self._on_menu_requested)
        self.counting.added.connect(table.go_to_joint)
        self.count_in.left.connect(self._on_count_in_left)
        self.tabs.group_picked.connect(self._on_group_picked)
        self.tabs.joint_requested.connect(self._on_joint_requested)
        bind_keys(
            self,
            {
                "Ctrl+F": self.filter.ask,
                "Ctrl+Shift+W": self._on_count_in_requested,
                "Ctrl+Shift+N": actions.add_joint,
                "Ctrl+Return": actions.edit_joint,
                "Ctrl+Shift+Del": actions.remove_joints,
                "Ctrl+Shift+P": actions.show_part,
                "Ctrl+Shift+J": actions.export_joints,
                "F6": self._on_side_requested,
            },
        )

    def _connect_workspace(self) -> None:
        workspace = self.workspace
        self.bar.picker.picked.connect(workspace.select)
        self.table.problems_found.connect(workspace.notifier.show_problems)
        self.table.said.connect(workspace.notifier.say)
        self.tabs.explain_requested.connect(workspace.explain_requested)
        self.totals.explain_requested.connect(workspace.explain_requested)
        workspace.selected.connect(self._on_pack_selected)
        workspace.place_requested.connect(self.go_to_place)

    # What is shown

    def refresh(self, changed: Changed) -> None:
        """Show the joints; the table keeps its order, selection and filter."""
        state = self.workspace.state
        packs = state.library.packs
        self._stack.setCurrentWidget(self.view if len(packs) else self.empty)
        if not len(packs):
            self._shown = None
            return
        if changed & Changed.PACKS:
            self.bar.picker.show_names([str(name) for name in packs.names])
        pack = self.workspace.shown_pack()
        self.bar.picker.show_name(pack)
        self.joints.pack = pack
        inventory = self._shelf.of(state, pack)
        look = (number_style(state.study), state.study.currency)
        anew = inventory is not self._shown or bool(changed & Changed.PARTS)
        if anew or look != self._look:
            first = self._look is None
            self._shown, self._look = inventory, look
            self._show_table(inventory, look[0])
            if first:
                self.view.restore_layout()
        self._show_totals()
        self.tabs.show_inventory(inventory)

    def _show_table(self, inventory: Inventory, style: NumberStyle) -> None:
        library = self.workspace.state.library
        self.table.show_inventory(inventory, library, style=style)
        self.filter.show_count()
        parts = tuple(part.name for part in library.parts_of(inventory.pack))
        joints = library.joints_of(inventory.pack)
        self.count_in.show_pack(inventory.pack, joints, parts, style)
        self._show_emptiness()

    def _show_emptiness(self) -> None:
        joints, pack = self.joints.joints(), self.joints.pack
        is_empty = not joints and self.count_in.isHidden()
        sentence = f"No joints of {pack} are recorded yet." if is_empty else ""
        self.view.show_empty(sentence)

    def _show_totals(self) -> None:
        if self._shown is None:
            return
        study, selected = self.workspace.state.study, self.table.selected_facts()
        if selected:
            self.totals.show_joints(SELECTED, selected, study)
        elif self.table.is_filtered:
            self.totals.show_joints("Shown", self.table.shown_facts(), study)
        else:
            inventory = self._shown
            totals = inventory.totals
            self.totals.show_joints(ALL, inventory.facts, study, totals=totals)

    def _on_workspace_changed(self, change: Change) -> None:
        if not change.passing:
            super()._on_workspace_changed(change)
        elif self.isVisible():
            # Only what is said about the worth of the fasteners passes by.
            self.tabs.show_worth()

    def _on_workspace_opened(self) -> None:
        self.table.table.clear()
        self._shelf.clear()
        self._shown = None
        super()._on_workspace_opened()

    def _on_pack_selected(self, name: str) -> None:
        del name
        self._stale |= Changed.STUDY
        if self.isVisible():
            self.bring_up_to_date()

    # Going somewhere

    def go_to_place(self, record: str, column: str) -> None:
        """Go to the cell of a joint that a problem names; other records pass by."""
        library = self.workspace.state.library
        kind, pack = found_record(
            library, record, column=column, first=self.workspace.selection
        )
        if kind is RecordKind.PACK and column == JOINTS_COLUMN:
            self.workspace.select(pack)
        if kind is not RecordKind.JOINT:
            return
        self.workspace.select(pack)
        self.bring_up_to_date()
        self._on_joint_requested(record, column_key(column, JOINT_FIELDS))

    def _on_joint_requested(self, name: str, key: str = "") -> None:
        if not self.table.go_to_joint(name, key):
            self.filter.clear()
            self.table.go_to_joint(name, key)
        self.table.setFocus()

    def _on_group_picked(self, members: tuple[int, ...]) -> None:
        order = set(self.table.table.order.tolist())
        if not order.issuperset(members):
            self.filter.clear()
        self.table.select_rows(members)

    def _on_record_selected(self, row: int) -> None:
        self.tabs.show_joint(self.table.table.name(row))

    def _on_side_requested(self) -> None:
        focused = QApplication.focusWidget()
        if focused is not None and self.tabs.isAncestorOf(focused):
            self.table.setFocus()
        else:
            self.tabs.currentWidget().setFocus(Qt.FocusReason.TabFocusReason)

    # Entry and menu

    def _on_count_in_requested(self) -> None:
        if self._shown is not None:
            self.count_in.begin()
            self._show_emptiness()
            self.count_in.family.setFocus()

    def _on_count_in_left(self) -> None:
        self._show_emptiness()
        self.table.setFocus()

    def _on_menu_requested(self, point: QPoint) -> None:
        place = self.table.viewport().mapToGlobal(point)
        entries = self.actions_of_joint.entries()
        open_menu(self, place, (entries, self.table.cells.entries()))
