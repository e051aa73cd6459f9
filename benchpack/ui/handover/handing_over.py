"""Asking where something is to go, and writing it there in the background."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QFileDialog, QWidget

from benchpack.errors import BenchpackError, Problem
from benchpack.session.opening import file_stem
from benchpack.ui.export.endings import with_own_ending
from benchpack.ui.handover.everything import Plan, make_plan, write_plan
from benchpack.ui.handover.handed_files import BY_KEY, HandedFile
from benchpack.ui.handover.handing import Handing
from benchpack.ui.handover.window_thread import WindowThread
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace

ResultT = TypeVar("ResultT")

EVERYTHING_KEY = "write everything"
"""Name of the work that writes all files of a study."""


class HandingOver(QObject):
    """Writes what is handed over of the study on screen.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    widget : QWidget
        A widget of the window that dialogs belong to; it owns this object.
    """

    def __init__(self, workspace: Workspace, widget: QWidget) -> None:
        super().__init__(widget)
        self._workspace = workspace
        self._widget = widget
        self._window_thread = WindowThread(self)

    def ask(self, *keys: str) -> None:
        """Ask where, and write one file.

        Parameters
        ----------
        keys : str
            Keys of `handed_files.FILES`; of several the person chooses one by its kind.
        """
        files = [BY_KEY[key] for key in keys]
        if self._is_refused(files[0]):
            return
        title, suggested = files[0].button.rstrip("…"), files[0].names(self._stem())[0]
        if len(files) > 1:
            # Without an ending, so that the kind of file that is chosen gives it.
            title = files[0].name.strip().capitalize()
            suggested = suggested.removesuffix(files[0].ending)
        name, chosen = QFileDialog.getSaveFileName(
            self._widget.window(),
            title,
            self.suggestion(suggested),
            ";;".join(file.kind for file in files),
        )
        if not name:
            return
        file = _chosen_file(files, name, chosen)
        self.write_file(file, with_own_ending(Path(name), file.ending))

    def write_file(self, file: HandedFile, path: Path) -> None:
        """Write one file.

        Parameters
        ----------
        file : HandedFile
            What is written.
        path : Path
            Where to.
        """
        handing = self._handing()

        def work(token: Token) -> Path:
            handing.token = token
            file.write(handing, path)
            return path

        self.write(path, file.words, work)

    def ask_and_write_everything(self) -> None:
        """Ask for a folder and write everything into it."""
        if self._is_refused(BY_KEY["bundle"]):
            return
        name = QFileDialog.getExistingDirectory(
            self._widget.window(), "Everything into a folder", self.folder()
        )
        if not name:
            return
        folder, handing, stem = Path(name), self._handing(), self._stem()

        def work(token: Token) -> Plan:
            handing.token = token
            return make_plan(handing, stem)

        def done(plan: Plan) -> None:
            self._ask_about(plan, folder, handing)

        self._start(EVERYTHING_KEY, "Working out what to write", work, done)

    def write(self, path: Path, words: str, work: Callable[[Token], Path]) -> None:
        """Write a file in the background and say so.

        Parameters
        ----------
        path : Path
            The file.
        words : str
            What is going on.
        work : callable
            Writes it and gives its path.
        """
        # Two files are written side by side, the same one only by the newest.
        self._start(f"write {path}", words, work, self._on_written)

    def folder(self) -> str:
        """Give where the open library lies, as a place to begin with."""
        path = self._workspace.document.path
        return str(path.parent if path else Path.home())

    def suggestion(self, name: str) -> str:
        """Give a name for a file as the path that a dialog begins with."""
        return str(Path(self.folder()) / name)

    def _is_refused(self, file: HandedFile) -> bool:
        """Say why there is nothing to write; False where there is."""
        results = self._workspace.results
        reason = file.lacks(results)
        if not reason:
            return False
        missing = results.missing
        if missing is None or missing.what != reason:
            missing = Problem(reason)
        self._workspace.notifier.show_problems("Nothing to hand over", (missing,))
        return True

    def _stem(self) -> str:
        return file_stem(self._workspace.state.study.name)

    def _handing(self) -> Handing:
        from benchpack.session.brief_request import brief_choices

        workspace = self._workspace
        choices = brief_choices(workspace.settings)
        return Handing(workspace.state, choices, self._window_thread)

    def _ask_about(self, plan: Plan, folder: Path, handing: Handing) -> None:
        """Ask once about all files that are there already."""
        there = plan.there_already(folder)
        if not there:
            self._write_plan(plan, folder, handing)
            return
        from benchpack.ui.dialogs.replace_files import ReplaceDialog

        dialog = ReplaceDialog(folder, there, self._widget.window())
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setWindowModality(Qt.WindowModality.WindowModal)

        def accepted() -> None:
            self._write_plan(plan, folder, handing)

        dialog.accepted.connect(accepted)
        dialog.open()

    def _write_plan(self, plan: Plan, folder: Path, handing: Handing) -> None:
        def work(token: Token) -> str:
            handing.token = token
            write_plan(plan, folder, token)
            left_out = "".join(f" {reason}" for reason in plan.left_out)
            return f"Written: {len(plan.names)} files to {folder}.{left_out}"

        said = self._workspace.notifier.say
        self._start(EVERYTHING_KEY, "Writing everything", work, said)

    def _start(
        self,
        key: str,
        words: str,
        work: Callable[[Token], ResultT],
        done: Callable[[ResultT], None],
    ) -> None:
        self._workspace.runner.start(
            key, work, done=done, failed=self._on_failed, words=words
        )

    def _on_written(self, path: Path) -> None:
        self._workspace.notifier.say(f"Written: {path}")

    def _on_failed(self, error: BaseException) -> None:
        notifier = self._workspace.notifier
        if isinstance(error, BenchpackError):
            notifier.show_error("Not written", error)
        else:
            notifier.report(error)


def _chosen_file(files: list[HandedFile], name: str, chosen: str) -> HandedFile:
    """Give the file that is meant: by the ending that was typed, else by the kind."""
    typed = Path(name).suffix.lower()
    by_ending = [file for file in files if file.ending == typed]
    by_kind = [file for file in files if file.kind == chosen]
    return (*by_ending, *by_kind, files[0])[0]
