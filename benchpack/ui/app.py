"""Starting the window."""

from __future__ import annotations

import logging
import sys
from logging.handlers import RotatingFileHandler
from pathlib import Path

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication

from benchpack import __version__
from benchpack.places import log_file
from benchpack.session.opening import Opened, is_library_file, open_last
from benchpack.session.settings import load_settings
from benchpack.ui.catalogue import PAGES
from benchpack.ui.commands import chosen_scheme
from benchpack.ui.main_window import MainWindow
from benchpack.ui.notify import Notifier
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.theme import apply_theme
from benchpack.ui.workspace import Workspace


def make_application() -> QApplication:
    """Give the one application object, made on first need."""
    existing = QApplication.instance()
    if isinstance(existing, QApplication):
        return existing
    QApplication.setHighDpiScaleFactorRoundingPolicy(
        Qt.HighDpiScaleFactorRoundingPolicy.PassThrough
    )
    app = QApplication([sys.argv[0]])
    app.setApplicationName("Benchpack")
    app.setApplicationVersion(__version__)
    app.setDesktopFileName("benchpack")
    return app


def make_window(opened: Opened) -> MainWindow:
    """Make the window on an open document.

    Parameters
    ----------
    opened : Opened
        The document, and what was noticed while it was opened.
    """
    notifier = Notifier()
    workspace = Workspace(
        opened.document,
        runner=BackgroundRunner(),
        notifier=notifier,
        settings=load_settings(),
    )
    window = MainWindow(workspace, PAGES)
    if opened.problems:
        notifier.show_problems("Opened with remarks", opened.problems)
    return window


def _start_log() -> None:
    """Send log lines to a file that is turned over at a megabyte."""
    handler = RotatingFileHandler(
        log_file(), maxBytes=1_000_000, backupCount=1, encoding="utf-8"
    )
    line = "%(asctime)s %(levelname)s %(name)s %(message)s"
    logging.basicConfig(handlers=[handler], level=logging.INFO, format=line)


def run_window(path: Path | None) -> int:
    """Open the window and run until it is closed.

    Parameters
    ----------
    path : Path or None
        What to open: a library file at once, anything else as if it were dropped on
        the window. None opens the last library, on a first start the demo.

    Returns
    -------
    int
        The exit code.

    Raises
    ------
    DataError
        When the library file cannot be opened.
    """
    _start_log()
    app = make_application()
    settings = load_settings()
    apply_theme(app, chosen_scheme(settings.look))
    is_library = path is not None and is_library_file(path)
    if path is not None and is_library:
        from benchpack.session.opening import open_library

        opened = Opened(open_library(path))
    else:
        opened = open_last(settings)
    window = make_window(opened)
    window.workspace.notifier.watch_exceptions()
    app.styleHints().colorSchemeChanged.connect(window.commands.apply_look)
    window.restore_geometry()
    window.show()
    QTimer.singleShot(0, window.workspace.get_ready_to_write)
    if path is not None and not is_library:
        target = path

        def open_dropped() -> None:
            window.commands.open_path(target)

        QTimer.singleShot(0, open_dropped)
    return app.exec()
