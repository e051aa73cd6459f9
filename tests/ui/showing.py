"""Pages and windows on the screen of the tests, and how one reads them."""

from __future__ import annotations

from typing import TypeVar

from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from benchpack.ui.catalogue import PAGES
from benchpack.ui.main_window import MainWindow
from benchpack.ui.workspace import Workspace

Shown = TypeVar("Shown", bound=QWidget)

PAGE_SIZE = (1120, 640)
"""What a page has in a window of usual size."""
SMALL_WINDOW = (1024, 700)
"""The smallest window in which nothing may be cut."""


def settle() -> None:
    """Let the window come to rest."""
    for _ in range(4):
        QApplication.processEvents()


def focused() -> QWidget:
    """Give the widget that has the focus."""
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


def plain(text: str) -> str:
    """Give a text with blanks in place of those that do not break."""
    for blank in ("\u00a0", "\u2009", "\u202f"):
        text = text.replace(blank, " ")
    return text.replace("\u2212", "-")


def shown(qtbot: QtBot, widget: Shown, *, size: tuple[int, int] = PAGE_SIZE) -> Shown:
    """Show a widget as the active window, and give it back."""
    qtbot.addWidget(widget)
    widget.resize(*size)
    widget.show()
    qtbot.waitExposed(widget)
    widget.activateWindow()
    settle()
    return widget


def shown_window(
    qtbot: QtBot, workspace: Workspace, *, size: tuple[int, int] = SMALL_WINDOW
) -> MainWindow:
    """Show the whole window on a workspace."""
    return shown(qtbot, MainWindow(workspace, PAGES), size=size)
