"""Keys that hold on one page."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget


def bind_keys(page: QWidget, calls: Mapping[str, Callable[[], None]]) -> None:
    """Bind keys that hold while the focus is on the page.

    Parameters
    ----------
    page : QWidget
        The page.
    calls : mapping of str to callable
        Bound methods by key.
    """
    for key, call in calls.items():
        shortcut = QShortcut(QKeySequence(key), page)
        shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.activated.connect(call)
