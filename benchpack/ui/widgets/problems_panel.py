"""The panel at the foot of the window that lists what is wrong with some data."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QItemSelectionModel, QModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError, Problem
from benchpack.ui.widgets.controls import named, plain_button, text_label
from benchpack.ui.widgets.problems_model import (
    KIND,
    REMEDY,
    TEXT_HEADS,
    WHAT,
    WHERE,
    ProblemsTableModel,
    count_text,
    problem_rows,
    problems_text,
)


class ProblemsView(QTableView):
    """The list itself.

    Signals
    -------
    row_chosen(int)
        A row was clicked, or Enter was pressed on it.
    """

    row_chosen = Signal(int)

    def __init__(self, model: ProblemsTableModel) -> None:
        super().__init__()
        self._problems = model
        self.setModel(model)
        named(self, "Problems")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        # The heads are inset by the style sheet, the cells are not.
        self.setStyleSheet("QTableView::item { padding: 0 4px; }")
        rows = self.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(self.fontMetrics().height() + 10)
        heads = self.horizontalHeader()
        # A head that follows the selection asks for every selected cell when painted.
        heads.setSelectionModel(QItemSelectionModel(model, heads))
        heads.setSectionResizeMode(WHAT, QHeaderView.ResizeMode.Stretch)
        heads.setSectionResizeMode(REMEDY, QHeaderView.ResizeMode.Stretch)
        width = self.fontMetrics().averageCharWidth()
        self.setColumnWidth(KIND, 11 * width)
        self.setColumnWidth(WHERE, 30 * width)
        self.clicked.connect(self._on_clicked)

    def _on_clicked(self, index: QModelIndex) -> None:
        self.row_chosen.emit(index.row())

    def selected_problems(self) -> tuple[Problem, ...]:
        """Give the problems of the selected rows, in order."""
        selection = self.selectionModel().selection()
        blocks = [selection.at(i) for i in range(selection.count())]
        ranges = sorted((block.top(), block.bottom()) for block in blocks)
        shown = self._problems.problems
        return tuple(p for top, bottom in ranges for p in shown[top : bottom + 1])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to a row's place with Enter, copy the selected rows with Ctrl+C."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.currentIndex().isValid():
                self.row_chosen.emit(self.currentIndex().row())
            return
        if event.matches(QKeySequence.StandardKey.Copy):
            text = problems_text(self.selected_problems())
            QGuiApplication.clipboard().setText(text)
            return
        super().keyPressEvent(event)


class ProblemsPanel(QWidget):
    """Lists problems with their place and their remedy; hidden while there are none.

    Signals
    -------
    place_requested(str, str)
        Record and column of the problem that was chosen.
    said(str)
        A remark for the status line.
    """

    place_requested = Signal(str, str)
    said = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        named(self, "Problems panel")
        self._model = ProblemsTableModel(self)
        self.table = ProblemsView(self._model)
        self._heading = text_label(role="section")
        self._count = text_label(role="note")
        self._detail = text_label(role="note")
        self._copy = plain_button("Copy all")
        self._save = plain_button("Save as CSV…")
        self._close = plain_button("Close", "Close (Esc)")
        self._lay_out()
        self._connect()
        self.hide()

    def _lay_out(self) -> None:
        self._heading.setWordWrap(False)
        top = QHBoxLayout()
        top.setSpacing(8)
        top.addWidget(self._heading)
        top.addWidget(self._count, 1)
        for button in (self._copy, self._save, self._close):
            top.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 8, 16, 8)
        column.setSpacing(8)
        column.addLayout(top)
        column.addWidget(self.table, 1)
        column.addWidget(self._detail)

    def _connect(self) -> None:
        self._copy.clicked.connect(self.copy_all)
        self._save.clicked.connect(self._on_save_clicked)
        self._close.clicked.connect(self.close_panel)
        self.table.row_chosen.connect(self._on_row_chosen)
        self.table.selectionModel().currentRowChanged.connect(self._on_row_changed)

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The problems listed."""
        return self._model.problems

    def show_problems(self, heading: str, problems: tuple[Problem, ...]) -> None:
        """List problems in place of those before; none at all closes the panel.

        Parameters
        ----------
        heading : str
            What they are about. No problems under a heading that is not shown leave
            the panel as it is.
        problems : tuple of Problem
            The problems, most important first.
        """
        if not problems and heading and heading != self._heading.text():
            return
        self._model.set_problems(tuple(problems))
        self._heading.setText(heading)
        self._count.setText(count_text(self._model.problems))
        self._detail.clear()
        self._detail.hide()
        if not problems:
            self.close_panel()
            return
        self.show()
        self.table.scrollToTop()
        self.table.setCurrentIndex(self._model.index(0, 0))

    def close_panel(self) -> None:
        """Hide the panel."""
        if not self.isHidden():
            self.hide()

    def copy_all(self) -> None:
        """Put all problems on the clipboard as tab-separated text."""
        QGuiApplication.clipboard().setText(problems_text(self.problems))
        self.said.emit(f"Copied: {count_text(self.problems)}")

    def save_csv(self, path: Path) -> None:
        """Write all problems to a CSV with its Table Schema beside it.

        Parameters
        ----------
        path : Path
            Where to.
        """
        from benchpack.files.gap_csv import TableColumn, write_rows

        schema = [
            TableColumn(name=head, type="string", unit="", description="")
            for head in TEXT_HEADS
        ]
        try:
            write_rows(
                path, list(TEXT_HEADS), problem_rows(self.problems), schema=schema
            )
        except DataError as error:
            self.show_problems(f"Not saved: {path.name}", error.problems)
            return
        self.said.emit(f"Saved: {path}")

    def _on_save_clicked(self) -> None:
        text, _ = QFileDialog.getSaveFileName(
            self, "Save problems", "problems.csv", "CSV (*.csv)"
        )
        if text:
            self.save_csv(Path(text))

    def _on_row_chosen(self, row: int) -> None:
        problem = self.problems[row]
        if problem.record:
            self.place_requested.emit(problem.record, problem.column)

    def _on_row_changed(self, current: QModelIndex, _previous: QModelIndex) -> None:
        if not current.isValid():
            return
        self._detail.setText(str(self.problems[current.row()]))
        self._detail.setVisible(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Close with Esc, wherever in the panel the focus is."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_panel()
            return
        super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """Ask for room for about five rows."""
        return QSize(800, 220)
