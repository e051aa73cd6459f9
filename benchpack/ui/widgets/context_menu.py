"""Context menus as pages open them."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

Entry = tuple[str, str, Callable[[], None]]


def open_menu(
    parent: QWidget, place: QPoint, groups: Iterable[Iterable[Entry]]
) -> QMenu:
    """Open a menu of entries in groups.

    Parameters
    ----------
    parent : QWidget
        What it belongs to.
    place : QPoint
        Where on the screen.
    groups : iterable of groups
        Words, key and call of each entry.
    """
    menu = QMenu(parent)
    menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    for group in groups:
        if menu.actions():
            menu.addSeparator()
        for words, key, call in group:
            # The key stands in the text only: as a shortcut it would be bound twice.
            action = QAction(f"{words}\t{key}", menu)
            action.triggered.connect(call)
            menu.addAction(action)
    menu.popup(place)
    return menu
