"""Where splitter and columns were left, kept with the window's geometry."""

from __future__ import annotations

from PySide6.QtCore import QByteArray
from PySide6.QtWidgets import QHeaderView, QSplitter

from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.window_memory import remember, remembered

_SPLITTER, _ORDER = "packs/splitter", "packs/columns"


def keep_splitter(splitter: QSplitter) -> None:
    """Remember where a splitter stands."""
    remember(splitter, _SPLITTER, splitter.saveState())


def restore_splitter(splitter: QSplitter) -> None:
    """Put a splitter where it was left, if that is remembered."""
    state = remembered(splitter, _SPLITTER)
    if isinstance(state, QByteArray):
        splitter.restoreState(state)


def keep_column_order(view: RecordTableView) -> None:
    """Remember the order of the columns by their keys."""
    heads = view.horizontalHeader()
    places = [heads.logicalIndex(i) for i in range(heads.count())]
    keys = [view.table.columns[place].key for place in places]
    remember(view, _ORDER, ",".join(keys))


def restore_column_order(view: RecordTableView) -> None:
    """Put the columns in the order they were left in."""
    heads: QHeaderView = view.horizontalHeader()
    kept = str(remembered(view, _ORDER) or "").split(",")
    target = 0
    for key in kept:
        place = view.table.column_place(key)
        if place is not None:
            heads.moveSection(heads.visualIndex(place), target)
            target += 1
