"""The packs page: the library as a table, and the selected pack beside it."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import (
    QApplication,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError
from benchpack.session.state import Changed
from benchpack.ui.page import Page
from benchpack.ui.pages.packs.empty import EmptyLibrary
from benchpack.ui.pages.packs.library_bar import LibraryBar
from benchpack.ui.pages.packs.pack_actions import PackActions
from benchpack.ui.pages.packs.pack_columns import PackBook, table_columns
from benchpack.ui.pages.packs.pack_edits import PackEdits
from benchpack.ui.pages.packs.place import column_key, go_to_cell, pack_with_part
from benchpack.ui.pages.packs.record_panel import RecordPanel
from benchpack.ui.pages.packs.shortcuts import SHORTCUTS
from benchpack.ui.tables.filtering import parse_filter
from benchpack.ui.tables.layout_memory import (
    keep_column_order,
    keep_splitter,
    restore_column_order,
    restore_splitter,
)
from benchpack.ui.tables.marks import Mark
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.widgets.context_menu import open_menu
from benchpack.ui.widgets.page_keys import bind_keys
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle

__all__ = ["SHORTCUTS", "PacksPage"]
_RECORDS = Changed.PACKS | Changed.PARTS | Changed.JOINTS


class PacksPage(Page):
    """Shows the library."""

    title = "Packs"
    shortcuts = SHORTCUTS

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self._style: NumberStyle | None = None
        # Built from the outside in: each later change of parent is styled anew.
        self._stack = QStackedWidget(self)
        library = QWidget(self._stack)
        self.bar = LibraryBar(library)
        self.splitter = QSplitter(Qt.Orientation.Horizontal, library)
        self.model = RecordTableModel(PackEdits(workspace), self)
        self.table = RecordTableView(
            self.model,
            "Packs of the library",
            runner=workspace.runner,
            parent=self.splitter,
        )
        self.panel = RecordPanel(workspace, self.model, self.splitter)
        self.filter = self.bar.filter
        self.empty = EmptyLibrary(self._stack)
        self.actions_of_pack = PackActions(workspace, self.table, self)
        self.entry = self.table
        self._arrange(library)
        self._connect()

    def _arrange(self, library: QWidget) -> None:
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.table)
        self.splitter.addWidget(self.panel)
        self.splitter.setStretchFactor(0, 3)
        self.splitter.setStretchFactor(1, 2)
        self.splitter.setSizes([640, 440])
        rows = QVBoxLayout(library)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(12)
        rows.addWidget(self.bar)
        rows.addWidget(self.splitter, 1)
        self._stack.addWidget(library)
        self._stack.addWidget(self.empty)
        page = QVBoxLayout(self)
        page.setContentsMargins(24, 16, 24, 8)
        page.addWidget(self._stack)

    def _connect(self) -> None:
        actions, table = self.actions_of_pack, self.table
        self.bar.add.clicked.connect(actions.add_pack)
        self.bar.remove.clicked.connect(actions.remove_packs)
        self.bar.columns.clicked.connect(self._on_columns_clicked)
        self.bar.weigh_in.clicked.connect(self._on_weigh_in_requested)
        self.panel.subject_requested.connect(actions.use_as_subject)
        self.panel.reference_requested.connect(actions.use_as_reference)
        self.empty.open_requested.connect(self.open_requested)
        self.empty.demo_requested.connect(self.demo_requested)
        self.empty.add_requested.connect(actions.add_pack)
        self.filter.filter_changed.connect(self._on_filter_changed)
        self.filter.left.connect(self._on_filter_left)
        self.splitter.splitterMoved.connect(self._on_splitter_moved)
        table.record_selected.connect(self._on_record_selected)
        table.columns_chosen.connect(self._on_columns_chosen)
        table.dialog_requested.connect(self._on_dialog_requested)
        table.problems_found.connect(self.workspace.notifier.show_problems)
        table.said.connect(self.workspace.notifier.say)
        table.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        table.customContextMenuRequested.connect(self._on_menu_requested)
        table.horizontalHeader().sectionMoved.connect(self._on_section_moved)
        self.workspace.selected.connect(self._on_pack_selected)
        self.workspace.place_requested.connect(self._on_place_requested)
        bind_keys(
            self,
            {
                "Ctrl+F": self._on_filter_requested,
                "Ctrl+Shift+N": actions.add_pack,
                "Ctrl+Shift+Del": actions.remove_packs,
                "Ctrl+Shift+S": actions.use_as_subject,
                "Ctrl+Shift+R": actions.use_as_reference,
                "Ctrl+Shift+W": self._on_weigh_in_requested,
                "F6": self._on_side_requested,
            },
        )

    def refresh(self, changed: Changed) -> None:
        """Show the library; the table keeps its order, selection and filter."""
        state = self.workspace.state
        library, study = state.library, state.study
        style = NumberStyle(study.decimal_mark, study.mass_unit)
        anew = bool(changed & _RECORDS) or style != self._style
        self._stack.setCurrentIndex(0 if len(library.packs) else 1)
        if anew:
            first = self._style is None
            self._style = style
            self._show_table(study.currency)
            if first:
                self.table.show_columns(self.workspace.settings.hidden_columns)
                restore_splitter(self.splitter, "packs")
                restore_column_order(self.table, "packs")
        self.model.set_marks(self._marks())
        self._choose_pack()
        self._show_panel(anew=anew or bool(changed & Changed.SOURCES))

    def _show_table(self, currency: str) -> None:
        assert self._style is not None
        book = PackBook(self.workspace.state.library)
        self.model.show(
            book.records,
            table_columns(self._style),
            style=self._style,
            currency=currency,
            warn=book.warnings,
        )
        self.filter.show_count(self.model.rowCount(), len(book.records))

    def _marks(self) -> dict[int, Mark]:
        study, packs = self.workspace.state.study, self.workspace.state.library.packs
        names = ((study.reference, Mark.REFERENCE), (study.subject, Mark.SUBJECT))
        return {packs.position(name): mark for name, mark in names if packs.has(name)}

    def _choose_pack(self) -> None:
        """See that a pack is selected wherever there is one."""
        packs = self.workspace.state.library.packs
        index = self.table.currentIndex()
        if packs.has(self.workspace.selection):
            self._go_to_selection()
        elif index.isValid():
            self.workspace.select(self.model.name_at(index))
        elif self.model.rowCount():
            subject = self.workspace.state.study.subject
            name = subject if packs.has(subject) else str(packs.names[0])
            self.workspace.select(name)

    def _go_to_selection(self) -> None:
        packs = self.workspace.state.library.packs
        if packs.has(self.workspace.selection):
            row = packs.position(self.workspace.selection)
            index = self.table.currentIndex()
            if not index.isValid() or self.model.record_row(index) != row:
                self.table.go_to(row)

    def _show_panel(self, *, anew: bool) -> None:
        library = self.workspace.state.library
        name = self.workspace.selection
        is_known = library.packs.has(name)
        self.panel.setEnabled(is_known)
        if not is_known or self._style is None:
            return
        row = library.packs.position(name)
        mark = self._marks().get(row)
        if anew or self.panel.name.text() != name:
            self.panel.show_pack(library, row, style=self._style, mark=mark)
        else:
            self.panel.show_mark(mark)

    def _on_workspace_opened(self) -> None:
        # Keys of packs mean nothing in another library: keep no order, no entry.
        self.model.clear()
        super()._on_workspace_opened()

    def _on_record_selected(self, row: int) -> None:
        self.workspace.select(self.model.name(row))

    def _on_pack_selected(self, name: str) -> None:
        del name
        if self.isVisible():
            self._go_to_selection()
            self._show_panel(anew=False)
        else:
            self._stale |= Changed.STUDY

    def _on_place_requested(self, record: str, column: str) -> None:
        key = column_key(column, self.model.columns)
        packs = self.workspace.state.library.packs
        if packs.has(record):
            self.bring_up_to_date()
            self.workspace.select(record)
            self._show_panel(anew=False)
            if self.model.view_row(packs.position(record)) is None:
                self.filter.line.clear()
            go_to_cell(self.table, self.panel, row=packs.position(record), key=key)
            return
        library, first = self.workspace.state.library, self.workspace.selection
        pack = pack_with_part(library, record, first=first)
        if pack:
            self.bring_up_to_date()
            self.workspace.select(pack)
            self._show_panel(anew=False)
            self.panel.go_to_part(record, key)

    def _on_filter_changed(self, text: str) -> None:
        style = self._style or NumberStyle()
        try:
            wanted = parse_filter(text, self.model.columns, decimal=style.decimal_mark)
        except DataError as error:
            self.filter.show_error(str(error.problems[0].at(column="")))
            return
        self.filter.show_error("")
        self.model.set_filter(wanted)
        self.filter.show_count(self.model.rowCount(), len(self.model.records))

    def _on_filter_left(self) -> None:
        self.table.setFocus()
        if not self.table.currentIndex().isValid() and self.model.rowCount():
            self.table.setCurrentIndex(self.model.index(0, 0))

    def _on_filter_requested(self) -> None:
        self.filter.line.setFocus()
        self.filter.line.selectAll()

    def _on_weigh_in_requested(self) -> None:
        if self.panel.isEnabled():
            self.panel.begin_weigh_in()

    def _on_side_requested(self) -> None:
        focused = QApplication.focusWidget()
        if focused is not None and self.panel.isAncestorOf(focused):
            self.table.setFocus()
        else:
            self.panel.tabs.setFocus()

    def _on_columns_clicked(self) -> None:
        menu = self.table.column_menu()
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        below = self.bar.columns.rect().bottomLeft()
        menu.popup(self.bar.columns.mapToGlobal(below))

    def _on_columns_chosen(self, hidden: tuple[str, ...]) -> None:
        self.workspace.change_settings(hidden_columns=hidden)

    def _on_dialog_requested(self, index: Any) -> None:
        del index
        self.panel.record.edit_boundary()

    def _on_splitter_moved(self) -> None:
        keep_splitter(self.splitter, "packs")

    def _on_section_moved(self) -> None:
        keep_column_order(self.table, "packs")

    def _on_menu_requested(self, point: QPoint) -> None:
        place = self.table.viewport().mapToGlobal(point)
        open_menu(
            self, place, (self.actions_of_pack.entries(), self.table.cells.entries())
        )
