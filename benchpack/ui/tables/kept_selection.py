"""The selection of a table, kept by record while the rows are ordered anew."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QItemSelection, QItemSelectionModel
from PySide6.QtWidgets import QTableView

from benchpack.ui.tables.clipboard import CellRange
from benchpack.ui.tables.ordering import runs
from benchpack.ui.tables.record_table import RecordTableModel

_MOST_RUNS = 1000


@dataclass(frozen=True, slots=True)
class KeptSelection:
    """What was selected.

    Parameters
    ----------
    current : object
        Key of the current record, None where there was none.
    column : str
        Key of the current column.
    blocks : tuple
        Keys of the records and the first and last column of each selected rectangle.
    """

    current: Any = None
    column: str = ""
    blocks: tuple[tuple[NDArray[Any], int, int], ...] = ()


NOTHING_KEPT = KeptSelection()
"""Nothing was selected."""


def selected_ranges(view: QTableView) -> list[CellRange]:
    """Give what is selected as rectangles, never cell by cell."""
    selection = view.selectionModel().selection()
    ranges = [selection.at(place) for place in range(selection.count())]
    return [CellRange(r.top(), r.bottom(), r.left(), r.right()) for r in ranges]


def keep_selection(view: QTableView, model: RecordTableModel) -> KeptSelection:
    """Give what is selected in a view before its rows are ordered anew."""
    keys = model.records.keys
    blocks = tuple(
        (keys[model.order[one.top : one.bottom + 1]], one.left, one.right)
        for one in selected_ranges(view)
    )
    index = view.currentIndex()
    if not index.isValid():
        return KeptSelection(blocks=blocks)
    current = keys[model.record_row(index)]
    return KeptSelection(current, model.columns[index.column()].key, blocks)


def restore_selection(
    view: QTableView, model: RecordTableModel, kept: KeptSelection
) -> None:
    """Select the same records again, as far as they are shown.

    A selection that falls apart into very many pieces is given up but for its current
    cell: drawing it would take seconds.
    """
    shown = model.records.keys[model.order]
    selection = QItemSelection()
    for keys, left, right in kept.blocks:
        pieces = runs(np.flatnonzero(np.isin(shown, keys)))
        for first, last in pieces if len(pieces) <= _MOST_RUNS else ():
            selection.select(model.index(first, left), model.index(last, right))
    flag = QItemSelectionModel.SelectionFlag
    found = np.flatnonzero(shown == kept.current)
    if len(found):
        index = model.index(int(found[0]), model.column_place(kept.column) or 0)
        view.selectionModel().setCurrentIndex(index, flag.NoUpdate)
        view.scrollTo(index)
    if not selection.isEmpty():
        view.selectionModel().select(selection, flag.ClearAndSelect)
