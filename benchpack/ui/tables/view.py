"""The table view: keyboard, clipboard, sorting by the head, columns by choice."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from PySide6.QtCore import (
    QEvent,
    QItemSelectionModel,
    QModelIndex,
    QPoint,
    Qt,
    Signal,
)
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QMenu, QTableView, QWidget

from benchpack.model.fields import Kind
from benchpack.ui.tables.cell_actions import CellActions
from benchpack.ui.tables.clipboard import CellRange
from benchpack.ui.tables.delegate import RecordDelegate
from benchpack.ui.tables.kept_selection import (
    NOTHING_KEPT,
    keep_selection,
    restore_selection,
    selected_ranges,
)
from benchpack.ui.tables.ordering import Direction
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tables.widths import initial_width
from benchpack.ui.tasks import Runner

ROW_HEIGHT = 28
_SHIFT, _CTRL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


class RecordTableView(QTableView):
    """A table of records for mouse and keyboard.

    Signals
    -------
    record_selected(int)
        Row among all records of the current cell.
    dialog_requested(object)
        A persistent index whose value has a dialog of its own.
    problems_found(str, object)
        A heading and the problems of an edit that was not made.
    said(str)
        A remark.
    columns_chosen(object)
        Keys of the hidden columns.

    Parameters
    ----------
    model : RecordTableModel
        The table.
    name : str
        What screen readers call it.
    runner : Runner
        Runs what would hold the window up.
    widths : mapping of str to int
        Widths that columns start with, by key; the others follow from their head.
    """

    record_selected = Signal(int)
    dialog_requested = Signal(object)
    problems_found = Signal(str, object)
    said = Signal(str)
    columns_chosen = Signal(object)

    def __init__(
        self,
        model: RecordTableModel,
        name: str,
        *,
        runner: Runner,
        widths: Mapping[str, int] | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.table = model
        self._widths = widths or {}
        self.cells = CellActions(self, model, runner=runner)
        self.cells.problems_found.connect(self.problems_found)
        self.cells.said.connect(self.said)
        self._kept = NOTHING_KEPT
        self._hidden: frozenset[str] = frozenset()
        self._sized: tuple[str, ...] = ()
        self.setAccessibleName(name)
        self._set_look()
        self.setModel(model)
        # With the table's own selection the heads ask every row after each change.
        for head in (self.horizontalHeader(), self.verticalHeader()):
            head.setSelectionModel(QItemSelectionModel(model, head))
        delegate = RecordDelegate(self, model)
        self.setItemDelegate(delegate)
        delegate.moved.connect(self.step)
        delegate.dialog_requested.connect(self.dialog_requested)
        delegate.refused.connect(self._on_entry_refused)
        model.modelAboutToBeReset.connect(self._on_model_about_to_reset)
        model.modelReset.connect(self._on_model_reset)
        self.selectionModel().currentChanged.connect(self._on_current_changed)

    def _set_look(self) -> None:
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)  # Tab goes on to what follows the table
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed
            | QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.EditKeyPressed
        )
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        rows = self.verticalHeader()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(ROW_HEIGHT)
        rows.hide()
        heads = self.horizontalHeader()
        heads.setAccessibleName("Columns")
        heads.setHighlightSections(False)
        heads.setSectionsMovable(True)
        heads.setMinimumSectionSize(40)
        heads.sectionPressed.disconnect()  # a click on a head sorts, it selects nothing
        heads.setSectionsClickable(True)
        heads.sectionClicked.connect(self._on_head_clicked)
        heads.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        heads.customContextMenuRequested.connect(self._on_head_menu_requested)

    # Columns

    def show_columns(self, hidden: Collection[str]) -> None:
        """Hide some columns by key, all but the first."""
        self._hidden = frozenset(hidden)
        for place, column in enumerate(self.table.columns):
            self.setColumnHidden(place, place > 0 and column.key in self._hidden)

    def visible_columns(self) -> list[int]:
        """Give the columns that are shown, from left to right."""
        return self.cells.visible_columns()

    def column_menu(self) -> QMenu:
        """Give a menu in which columns are shown and hidden."""
        menu = QMenu("Columns", self)
        for place, column in enumerate(self.table.columns):
            if place == 0:
                continue
            action = QAction(column.head, menu, checkable=True)
            action.setChecked(column.key not in self._hidden)
            action.setData(column.key)
            action.setToolTip(column.help)
            action.triggered.connect(self._on_column_toggled)
            menu.addAction(action)
        return menu

    def _on_column_toggled(self) -> None:
        action = self.sender()
        if isinstance(action, QAction):
            hidden = self._hidden ^ {str(action.data())}
            self.show_columns(hidden)
            self.columns_chosen.emit(tuple(sorted(hidden)))

    def _on_head_menu_requested(self, point: QPoint) -> None:
        menu = self.column_menu()
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.popup(self.horizontalHeader().mapToGlobal(point))

    # Sorting, and what stays selected through it

    def _on_head_clicked(self, place: int) -> None:
        key = self.table.columns[place].key
        sorting = self.table.sorting
        if sorting is None or sorting[0] != key:
            self.sort_by(key, Direction.RISING)
        else:
            falls = sorting[1] is Direction.RISING
            self.sort_by(key, Direction.FALLING if falls else None)

    def sort_by(self, key: str, direction: Direction | None) -> None:
        """Sort by a column and show so in its head; None gives the records' order."""
        self.table.sort_by(key, direction)
        heads = self.horizontalHeader()
        heads.setSortIndicatorShown(direction is not None)
        place = self.table.column_place(key)
        if direction is not None and place is not None:
            order = Qt.SortOrder
            rises = direction is Direction.RISING
            heads.setSortIndicator(
                place, order.AscendingOrder if rises else order.DescendingOrder
            )

    def _on_model_about_to_reset(self) -> None:
        self._kept = keep_selection(self, self.table)

    def _on_model_reset(self) -> None:
        keys = tuple(column.key for column in self.table.columns)
        if keys != self._sized:
            self._sized = keys
            for place, column in enumerate(self.table.columns):
                metrics = self.horizontalHeader().fontMetrics()
                width = self._widths.get(column.key) or initial_width(column, metrics)
                self.setColumnWidth(place, width)
            self.show_columns(self._hidden)
        restore_selection(self, self.table, self._kept)

    # Moving about

    def step(self, rows: int, columns: int) -> None:
        """Go on by some rows or some visible columns, wrapping at a row's end."""
        index = self.currentIndex()
        if not index.isValid():
            return
        places = self.visible_columns()
        at = places.index(index.column()) + columns
        row = index.row() + rows + at // len(places)
        row = max(0, min(row, self.table.rowCount() - 1))
        self.setCurrentIndex(self.table.index(row, places[at % len(places)]))

    def go_to(self, record_row: int, key: str = "") -> bool:
        """Make a record's cell the current one; False when it is filtered out."""
        row = self.table.view_row(record_row)
        if row is None:
            return False
        place = self.table.column_place(key)
        if place is None or self.isColumnHidden(place):
            index = self.currentIndex()
            place = max(index.column(), 0) if not key else 0
        self.setCurrentIndex(self.table.index(row, place))
        return True

    def _on_current_changed(self, current: QModelIndex, previous: QModelIndex) -> None:
        if current.row() != previous.row():
            self.viewport().update()
            if current.isValid():
                self.record_selected.emit(self.table.record_row(current))

    def selected_ranges(self) -> list[CellRange]:
        """Give what is selected as rectangles, never cell by cell."""
        return selected_ranges(self)

    def _on_entry_refused(self, text: str, problems: object) -> None:
        self.problems_found.emit(f"Not taken: {text}", problems)

    def event(self, event: QEvent) -> bool:
        """Claim the table's own keys before the window's shortcuts see them."""
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and self.cells.call_for(event)
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Copy, paste, fill, clear, go to the next row, select rows and columns."""
        call = self.cells.call_for(event)
        if call is not None:
            call()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.step(-1 if event.modifiers() & _SHIFT else 1, 0)
        elif event.key() == Qt.Key.Key_Space and event.modifiers() == _SHIFT:
            self.selectRow(self.currentIndex().row())
        elif event.key() == Qt.Key.Key_Space and event.modifiers() == _CTRL:
            self.selectColumn(self.currentIndex().column())
        elif event.key() == Qt.Key.Key_Space and self._kind() is Kind.BOUNDARY:
            self.edit(self.currentIndex())
        else:
            super().keyPressEvent(event)

    def _kind(self) -> Kind | None:
        index = self.currentIndex()
        return self.table.columns[index.column()].kind if index.isValid() else None
