"""What the menus do."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QFileDialog

from benchpack.errors import BenchpackError, CancelledError, Problem
from benchpack.model.library import Library
from benchpack.session.document import Document
from benchpack.session.opening import (
    LIBRARY_ENDING,
    file_stem,
    free_path,
    new_library,
    open_demo,
)
from benchpack.ui.export.endings import with_ending
from benchpack.ui.handover_commands import HandoverCommands
from benchpack.ui.tasks import Token
from benchpack.ui.theme import Scheme, apply_theme, scheme_for

_OPEN_FILTER = (
    "Everything Benchpack reads "
    "(*.benchpack *.csv *.tsv *.txt *.xlsx *.ods *.json *.zip);;"
    "All files (*)"
)
_LIBRARY = f"Library (*{LIBRARY_ENDING})"
_COPY_FILTER = (
    f"{_LIBRARY};;Workbook (*.xlsx);;Packs as CSV (*.csv);;Data Package, a folder (*)"
)


class Commands(HandoverCommands):
    """The slots behind the actions.

    Signals
    -------
    search_requested(), shortcuts_requested(), warnings_requested()
        Something of the window itself is to be shown.
    quit_requested()
        The window is to be closed.
    """

    search_requested = Signal()
    shortcuts_requested = Signal()
    warnings_requested = Signal()
    quit_requested = Signal()

    def open_path(self, path: Path) -> None:
        """Open whatever a file is."""
        from benchpack.ui.dialogs.opening import open_any

        open_any(self.workspace, path, self._window)

    def on_open(self) -> None:
        """Ask for a file and open it."""
        name, _ = QFileDialog.getOpenFileName(
            self._window, "Open", self.handing_over.folder(), _OPEN_FILTER
        )
        if name:
            self.open_path(Path(name))

    def on_open_folder(self) -> None:
        """Ask for the folder of a Data Package and open it."""
        name = QFileDialog.getExistingDirectory(
            self._window, "Open a Data Package", self.handing_over.folder()
        )
        if name:
            self.open_path(Path(name))

    def on_open_demo(self) -> None:
        """Open the person's copy of the demo."""
        self._open("Demo not opened", open_demo)

    def on_new_library(self) -> None:
        """Ask for a name and open an empty library there."""
        suggestion = str(free_path("Library"))
        name, _ = QFileDialog.getSaveFileName(
            self._window, "New library", suggestion, _LIBRARY
        )
        if not name:
            return
        path = with_ending(Path(name), _LIBRARY)

        def make() -> Document:
            return new_library(Library(title=path.stem), path)

        self._open("Library not made", make)

    def on_save_copy(self) -> None:
        """Ask where, and write everything in another form."""
        state = self.workspace.state
        title = state.library.title or "Library"
        # Without an ending, so that the kind of file that is chosen gives it.
        suggestion = self.handing_over.suggestion(file_stem(f"{title} copy"))
        name, chosen = QFileDialog.getSaveFileName(
            self._window, "Save a copy", suggestion, _COPY_FILTER
        )
        if not name:
            return
        path = with_ending(Path(name), chosen)
        opened = self.workspace.document.path
        if opened is not None and opened.resolve() == path.resolve():
            what = "This is the open library itself, and it is saved already."
            problem = Problem(what, "Choose another name.", source=str(path))
            self.workspace.notifier.show_problems("Not written", (problem,))
            return

        def work(token: Token) -> Path:
            from benchpack.session.handover import write_copy

            if token.cancelled():
                raise CancelledError(str(path))
            write_copy(state, path)
            return path

        self.handing_over.write(path, "Writing a copy", work)

    def on_undo(self) -> None:
        """Take back the last edit."""
        self.workspace.undo()

    def on_redo(self) -> None:
        """Bring back the edit last taken back."""
        self.workspace.redo()

    def on_study(self) -> None:
        """Open all choices of the study."""
        from benchpack.ui.dialogs.study import StudyDialog

        StudyDialog(self.workspace, self._window).exec()

    def on_studies(self) -> None:
        """Choose another study, or begin one."""
        from benchpack.ui.dialogs.studies import StudiesDialog

        StudiesDialog(self.workspace, self._window).exec()

    def on_preferences(self) -> None:
        """Open the preferences."""
        from benchpack.ui.dialogs.preferences import PreferencesDialog

        PreferencesDialog(self.workspace, self._window).exec()
        self.apply_look()

    def on_search(self) -> None:
        """Find a command by its words."""
        self.search_requested.emit()

    def on_warnings(self) -> None:
        """List what to know before the figures are trusted."""
        self.warnings_requested.emit()

    def on_explain(self) -> None:
        """Say where the figure in focus, or else the counted gap, comes from."""
        focused = QApplication.focusWidget()
        workspace = self.workspace
        key = getattr(focused, "explain_key", "") or "gap"
        record = getattr(focused, "explain_record", "")
        if record:
            workspace.explain_requested.emit(key, record)
            return
        selected = workspace.selection
        comparison = workspace.results.comparison
        known = comparison is not None and comparison.place(selected) is not None
        workspace.explain_requested.emit(key, selected if known else "")

    def on_busbar(self) -> None:
        """Open the busbar calculator for the conductors of the selected pack."""
        from benchpack.ui.dialogs.busbar import open_busbar

        open_busbar(self.workspace, self._window)

    def on_shortcuts(self) -> None:
        """Show the sheet of shortcuts."""
        self.shortcuts_requested.emit()

    def on_about(self) -> None:
        """Show what the program is, and the cautions."""
        from benchpack.ui.dialogs.about import AboutDialog

        AboutDialog(self._window).exec()

    def on_light(self) -> None:
        """Take the light look."""
        self._set_look("light")

    def on_dark(self) -> None:
        """Take the dark look."""
        self._set_look("dark")

    def on_system(self) -> None:
        """Follow the system's look."""
        self._set_look("system")

    def on_quit(self) -> None:
        """Close the window."""
        self.quit_requested.emit()

    def _set_look(self, look: str) -> None:
        self.workspace.change_settings(look=look)
        self.apply_look()

    def apply_look(self) -> None:
        """Dress the program as the settings say."""
        app = QApplication.instance()
        if isinstance(app, QApplication):
            apply_theme(app, chosen_scheme(self.workspace.settings.look))

    def _open(self, heading: str, make: Callable[[], Document]) -> None:
        try:
            document = make()
        except BenchpackError as error:
            self.workspace.notifier.show_error(heading, error)
            return
        self.workspace.open_document(document)


def chosen_scheme(look: str) -> Scheme:
    """Give the scheme that a setting asks for."""
    if look == "system":
        return scheme_for(QGuiApplication.styleHints().colorScheme())
    return Scheme(look)
