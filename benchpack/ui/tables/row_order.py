"""Which records a table shows, and in which order, as integers."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.filtering import EVERY_ROW, RowFilter, matching_rows
from benchpack.ui.tables.ordering import Direction, Rows, sorted_rows
from benchpack.ui.tables.records import RecordColumns


class RowOrder:
    """Holds sorting and filter, and gives the rows that follow from them."""

    def __init__(self) -> None:
        self.rows: Rows = np.empty(0, dtype=np.int64)
        self.sorting: tuple[str, Direction] | None = None
        self.wanted: RowFilter = EVERY_ROW

    def renew(self, records: RecordColumns, columns: Sequence[TableColumn]) -> None:
        """Work out the rows anew.

        Parameters
        ----------
        records : RecordColumns
            All records.
        columns : sequence of TableColumn
            The columns that can be sorted by and searched.
        """
        key, direction = self.sorting or ("", Direction.RISING)
        column = next((column for column in columns if column.key == key), None)
        if column is None:
            rows = np.arange(len(records), dtype=np.int64)
        else:
            rows = sorted_rows(records.sort_keys(column), direction)
        mask = matching_rows(self.wanted, records, columns)
        self.rows = rows if mask is None else rows[mask[rows]]

    def place(self, record_row: int) -> int | None:
        """Give where a record is shown, None when it is filtered out."""
        found = np.flatnonzero(self.rows == record_row)
        return int(found[0]) if len(found) else None
