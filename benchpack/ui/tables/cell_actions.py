"""Copying, pasting, filling and clearing the selected cells of a table."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QTableView

from benchpack.ui.tables import gestures
from benchpack.ui.tables.clipboard import (
    CellRange,
    Shown,
    copied_cells,
    from_mime,
    to_mime,
    to_text,
)
from benchpack.ui.tables.kept_selection import selected_ranges
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tasks import DirectRunner, Runner, Token

_AT_ONCE = 50_000
Entry = tuple[str, str, Callable[[], None]]


class CellActions(QObject):
    """What can be done with the selected cells of a view.

    Signals
    -------
    problems_found(str, object)
        A heading and the problems of an edit that was not made.
    said(str)
        A remark.
    rows_added(int)
        So many records were pasted below the others.

    Parameters
    ----------
    view : QTableView
        The view.
    table : RecordTableModel
        Its model.
    runner : Runner
        Runs what would hold the window up.
    """

    problems_found = Signal(str, object)
    said = Signal(str)
    rows_added = Signal(int)

    def __init__(
        self, view: QTableView, table: RecordTableModel, *, runner: Runner
    ) -> None:
        super().__init__(view)
        self._view = view
        self.table = table
        self._runner = runner
        self._refused = ""

    def entries(self) -> list[Entry]:
        """Give words, key and call of each action."""
        return [
            ("Copy", "Ctrl+C", self.copy_cells),
            ("Paste", "Ctrl+V", self.paste_cells),
            ("Paste as new rows", "Ctrl+Shift+V", self.paste_as_new),
            ("Fill down", "Ctrl+D", self.fill_down),
            ("Clear", "Del", self.clear_cells),
        ]

    def call_for(self, event: QKeyEvent) -> Callable[[], None] | None:
        """Give the action of a key, None where it has none."""
        pressed = QKeySequence(event.keyCombination())
        for _, key, call in self.entries():
            if QKeySequence(key) == pressed:
                return call
        return None

    def selected_ranges(self) -> list[CellRange]:
        """Give what is selected as rectangles."""
        return selected_ranges(self._view)

    def visible_columns(self) -> list[int]:
        """Give the columns that are shown, from left to right."""
        heads = self._view.horizontalHeader()
        places = [heads.logicalIndex(i) for i in range(heads.count())]
        return [place for place in places if not self._view.isColumnHidden(place)]

    def copy_cells(self) -> None:
        """Copy the selected cells at full precision; very many in the background."""
        ranges = self.selected_ranges()
        if not ranges:
            return
        shown = self._shown(ranges)

        def work(token: Token) -> str:
            del token
            return to_text(copied_cells(shown, ranges))

        many = sum(one.size for one in ranges) > _AT_ONCE
        runner: Runner = self._runner if many else DirectRunner()
        runner.start(
            "copy cells",
            work,
            done=self._on_cells_copied,
            failed=self._on_copy_failed,
            words="Copying cells",
        )

    def _shown(self, ranges: Sequence[CellRange]) -> Shown:
        """Take what the copy needs, so that the worker reads nothing that changes."""
        table = self.table
        places = tuple(self.visible_columns())
        for place in places:
            if any(one.left <= place <= one.right for one in ranges):
                table.records.column(table.columns[place].key)
        return Shown(table.records, table.columns, table.order.copy(), places)

    def _on_cells_copied(self, text: str) -> None:
        QGuiApplication.clipboard().setMimeData(to_mime(text))

    def _on_copy_failed(self, error: BaseException) -> None:
        self.said.emit(f"The cells could not be copied: {error}")

    def paste_cells(self) -> None:
        """Paste a block of cells from the current one on, as one undo step."""
        index = self._view.currentIndex()
        if index.isValid():
            self._paste(index.row(), index.column())
        else:
            self.paste_as_new()

    def paste_as_new(self) -> None:
        """Paste a block of cells as new records below the others."""
        self._paste(self.table.rowCount(), -1)

    def _paste(self, row: int, column: int) -> None:
        block = from_mime(QGuiApplication.clipboard().mimeData())
        self._tell(gestures.paste(self, block, row=row, column=column))

    def fill_down(self) -> None:
        """Copy the top cells of the selection to the cells below them."""
        self._tell(gestures.fill_down(self))

    def clear_cells(self) -> None:
        """Empty the selected cells, where they may be empty."""
        self._tell(gestures.clear(self))

    def _tell(self, outcome: gestures.Outcome) -> None:
        if outcome.problems:
            self._refused = outcome.heading
            self.problems_found.emit(outcome.heading, outcome.problems)
            return
        if self._refused:  # what was refused before is no longer the last word
            self.problems_found.emit(self._refused, ())
            self._refused = ""
        if outcome.remark:
            self.said.emit(outcome.remark)
        if outcome.added:
            self.rows_added.emit(outcome.added)
