"""Where splitter and columns were left, kept with the window's geometry."""

from __future__ import annotations

from PySide6.QtCore import QByteArray
from PySide6.QtWidgets import QHeaderView, QSplitter

from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.window_memory import remember, remembered


def keep_splitter(splitter: QSplitter, page: str) -> None:
    """Remember where the splitter of a page stands."""
    remember(splitter, f"{page}/splitter", splitter.saveState())


def restore_splitter(splitter: QSplitter, page: str) -> None:
    """Put the splitter of a page where it was left, if that is remembered."""
    state = remembered(splitter, f"{page}/splitter")
    if isinstance(state, QByteArray):
        splitter.restoreState(state)


def keep_column_order(view: RecordTableView, page: str) -> None:
    """Remember the order of the columns of a page's table by their keys."""
    heads = view.horizontalHeader()
    places = [heads.logicalIndex(i) for i in range(heads.count())]
    keys = [view.table.columns[place].key for place in places]
    remember(view, f"{page}/columns", ",".join(keys))


def restore_column_order(view: RecordTableView, page: str) -> None:
    """Put the columns in the order they were left in."""
    heads: QHeaderView = view.horizontalHeader()
    kept = str(remembered(view, f"{page}/columns") or "").split(",")
    target = 0
    for key in kept:
        place = view.table.column_place(key)
        if place is not None:
            heads.moveSection(heads.visualIndex(place), target)
            target += 1


def keep_hidden_columns(
    view: RecordTableView, page: str, hidden: tuple[str, ...]
) -> None:
    """Remember which columns of a page's table are hidden, by their keys."""
    remember(view, f"{page}/hidden", ",".join(hidden))


def restore_hidden_columns(
    view: RecordTableView, page: str, *, default: tuple[str, ...]
) -> None:
    """Hide the columns that were hidden, those of `default` where none is kept."""
    kept = remembered(view, f"{page}/hidden")
    view.show_columns(default if kept is None else str(kept).split(","))
