"""Every page as a picture, without a display."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop
from PySide6.QtWidgets import QApplication

from benchpack.errors import DataError, Problem
from benchpack.files.reading import read_any
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.app import make_application
from benchpack.ui.catalogue import PAGES
from benchpack.ui.main_window import MainWindow
from benchpack.ui.notify import Notifier
from benchpack.ui.tasks import DirectRunner
from benchpack.ui.theme import Scheme, apply_theme
from benchpack.ui.workspace import Workspace


def write_pictures(
    source: Path, folder: Path, *, size: tuple[int, int]
) -> tuple[tuple[Problem, ...], list[Path]]:
    """Write every page of the window as PNG, light and dark.

    Parameters
    ----------
    source : Path
        Anything that `read_any` reads and that holds packs.
    folder : Path
        Where the pictures go; made when it is missing.
    size : tuple of int
        Width and height of the window.

    Returns
    -------
    tuple
        The problems of the source, and the paths of the pictures.

    Raises
    ------
    DataError
        When the source cannot be read, holds no packs, or the folder cannot be
        written.
    """
    reading = read_any(source, needs="packs")
    app = make_application()
    apply_theme(app, Scheme.LIGHT)
    state = State(reading.library, reading.library.first_study().name)
    window = _window(Document(state))
    window.resize(*size)
    paths = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for scheme in Scheme:
            apply_theme(app, scheme)
            paths += _pages(window, folder, scheme)
    except OSError as error:
        raise DataError(
            Problem(
                f"The pictures could not be written: {error.strerror}.",
                "Choose a folder that can be written.",
                source=str(folder),
            )
        ) from error
    finally:
        window.close()
        window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    return reading.problems, paths


def _window(document: Document) -> MainWindow:
    workspace = Workspace(
        document, runner=DirectRunner(), notifier=Notifier(), settings=Settings()
    )
    return MainWindow(workspace, PAGES)


def _pages(window: MainWindow, folder: Path, scheme: Scheme) -> list[Path]:
    paths = []
    window.show()
    study = window.workspace.results.study
    window.workspace.select(study.subject)
    for place, entry in enumerate(PAGES):
        window.show_page(place)
        for _ in range(3):
            QApplication.processEvents(
                QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents
            )
        path = folder / f"{entry.title.lower()}-{scheme.value}.png"
        if not window.grab().save(str(path)):
            raise OSError(0, f"{path} could not be written")
        paths.append(path)
    return paths
