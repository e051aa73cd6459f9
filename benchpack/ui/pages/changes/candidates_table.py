"""The view of the comparison of candidate materials."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from benchpack.model.study import Study
from benchpack.results.candidate_record import Candidates
from benchpack.ui.pages.changes.candidates_model import CandidatesModel
from benchpack.ui.tables.ordering import Direction

_ROW = 26
_NAME_WIDTH = 180
_CHECKS_WIDTH = 130


class CandidatesTable(QTableView):
    """Shows candidates; Enter makes a change of the current one.

    Signals
    -------
    candidate_chosen(str)
        Another row is the current one: name of the material, empty for today's.
    change_requested(str)
        Enter was pressed on a candidate.
    asked(int, int)
        F1 was pressed: row and column.
    """

    candidate_chosen = Signal(str)
    change_requested = Signal(str)
    asked = Signal(int, int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.candidates = CandidatesModel(self)
        self._wanted = ""
        self.setModel(self.candidates)
        self.setAccessibleName("Candidates")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        rows = self.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(_ROW)
        heads = self.horizontalHeader()
        heads.setAccessibleName("Columns of the candidates")
        heads.setHighlightSections(False)
        heads.sectionPressed.disconnect()  # a click on a head sorts, it selects nothing
        heads.setSectionsClickable(True)
        heads.sectionClicked.connect(self._on_head_clicked)
        self.selectionModel().currentRowChanged.connect(self._on_row_changed)

    def show_candidates(self, compared: Candidates | None, study: Study) -> None:
        """Show a comparison; the candidate of the same name stays the current one."""
        self._wanted = self.current or self._wanted
        anew = self.candidates.columnCount()
        self.candidates.show(compared, study)
        count = self.candidates.columnCount()
        if count != anew:
            metrics = self.horizontalHeader().fontMetrics()
            for column in range(count):
                text = self.candidates.head(column)
                width = metrics.horizontalAdvance(text) + 24
                if column in (0, count - 1):
                    width = _CHECKS_WIDTH if column else _NAME_WIDTH
                self.setColumnWidth(column, width)
        self._show_sorting()
        self.go_to(self._wanted)

    def _on_head_clicked(self, place: int) -> None:
        key, sorting = self.candidates.key(place), self.candidates.sorting
        if sorting is None or sorting[0] != key:
            self.sort_by(key, Direction.RISING)
        else:
            falls = sorting[1] is Direction.RISING
            self.sort_by(key, Direction.FALLING if falls else None)

    def sort_by(self, key: str, direction: Direction | None) -> None:
        """Sort by a column and show so in its head; None from the lightest up."""
        self.candidates.sort_by(key, direction)
        self._show_sorting()
        if self.currentIndex().isValid():
            self.scrollTo(self.currentIndex())

    def _show_sorting(self) -> None:
        heads = self.horizontalHeader()
        key, direction = self.candidates.sorting or ("", Direction.RISING)
        place = self.candidates.place_of(key)
        heads.setSortIndicatorShown(place >= 0)
        if place >= 0:
            order = Qt.SortOrder
            rises = direction is Direction.RISING
            heads.setSortIndicator(
                place, order.AscendingOrder if rises else order.DescendingOrder
            )

    @property
    def current(self) -> str:
        """Name of the current candidate, empty for none or for today's."""
        row = self.currentIndex().row()
        return self.candidates.rows[row].name if row > 0 else ""

    def go_to(self, name: str) -> None:
        """Make a candidate the current one, where it is there."""
        row = self.candidates.row_of(name)
        if row > 0 and row != self.currentIndex().row():
            column = max(self.currentIndex().column(), 0)
            self.setCurrentIndex(self.candidates.index(row, column))

    def _on_row_changed(self, current: QModelIndex, previous: QModelIndex) -> None:
        del current, previous
        self.candidate_chosen.emit(self.current)

    def event(self, event: QEvent) -> bool:
        """Claim F1 before the window sees it."""
        override = event.type() == QEvent.Type.ShortcutOverride
        if override and isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_F1:
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Explain with F1, make a change with Enter."""
        index = self.currentIndex()
        if event.key() == Qt.Key.Key_F1 and index.isValid():
            self.asked.emit(index.row(), index.column())
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.current:
            self.change_requested.emit(self.current)
        else:
            super().keyPressEvent(event)
