"""Where splitter and columns were left, kept with the window's geometry."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QSettings
from PySide6.QtWidgets import QHeaderView, QSplitter

from benchpack.places import config_folder
from benchpack.ui.tables.view import RecordTableView

_SPLITTER, _ORDER = "packs/splitter", "packs/columns"


def _geometry() -> QSettings:
    path = str(config_folder() / "window.ini")
    return QSettings(path, QSettings.Format.IniFormat)


def keep_splitter(splitter: QSplitter) -> None:
    """Remember where a splitter stands."""
    _geometry().setValue(_SPLITTER, splitter.saveState())


def restore_splitter(splitter: QSplitter) -> bool:
    """Put a splitter where it was left; False when nothing is remembered."""
    state = _geometry().value(_SPLITTER)
    return isinstance(state, QByteArray) and splitter.restoreState(state)


def keep_column_order(view: RecordTableView) -> None:
    """Remember the order of the columns by their keys."""
    heads = view.horizontalHeader()
    places = [heads.logicalIndex(i) for i in range(heads.count())]
    keys = [view.table.columns[place].key for place in places]
    _geometry().setValue(_ORDER, ",".join(keys))


def restore_column_order(view: RecordTableView) -> None:
    """Put the columns in the order they were left in."""
    heads: QHeaderView = view.horizontalHeader()
    kept = str(_geometry().value(_ORDER) or "").split(",")
    target = 0
    for key in kept:
        place = view.table.column_place(key)
        if place is not None:
            heads.moveSection(heads.visualIndex(place), target)
            target += 1
