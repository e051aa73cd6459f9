"""The filter of the joints table as it is typed."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from benchpack.errors import DataError
from benchpack.ui.forms.filter_bar import FilterBar
from benchpack.ui.tables.filtering import parse_filter
from benchpack.ui.tables.view import RecordTableView


class TableFilter(QObject):
    """Has a table show the rows that a filter bar asks for.

    Signals
    -------
    filtered()
        Other rows are shown.

    Parameters
    ----------
    bar : FilterBar
        Where the filter is typed.
    table : RecordTableView
        The table.
    """

    filtered = Signal()

    def __init__(self, bar: FilterBar, table: RecordTableView) -> None:
        super().__init__(table)
        self._bar = bar
        self._table = table
        bar.filter_changed.connect(self._on_filter_changed)
        bar.left.connect(self._on_filter_left)

    def ask(self) -> None:
        """Put the focus into the filter."""
        self._bar.line.setFocus()
        self._bar.line.selectAll()

    def clear(self) -> None:
        """Show every row."""
        self._bar.line.clear()

    def show_count(self) -> None:
        """Say how many rows are shown of how many."""
        model = self._table.table
        self._bar.show_count(model.rowCount(), len(model.records))

    def _on_filter_changed(self, text: str) -> None:
        model = self._table.table
        try:
            mark = model.style.decimal_mark
            wanted = parse_filter(text, model.columns, decimal=mark)
        except DataError as error:
            self._bar.show_error(str(error.problems[0].at(column="")))
            return
        self._bar.show_error("")
        model.set_filter(wanted)
        self.show_count()
        self.filtered.emit()

    def _on_filter_left(self) -> None:
        self._table.setFocus()
        model = self._table.table
        if not self._table.currentIndex().isValid() and model.rowCount():
            self._table.setCurrentIndex(model.index(0, 0))
