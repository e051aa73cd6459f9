"""Taking records of a file in: into the open library, or as a library of their own."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from benchpack.errors import BenchpackError, Problem
from benchpack.files.sheet import Sheet
from benchpack.model.library import Library
from benchpack.session.document import Document
from benchpack.session.edits import with_records_joined, with_taken_in
from benchpack.session.opening import free_path, new_library
from benchpack.session.state import State
from benchpack.ui.dialogs.import_plan import (
    PACKS,
    Plan,
    TakenIn,
    read_plan,
    record_names,
)
from benchpack.ui.dialogs.import_words import result_sentence
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace

IMPORT_KEY = "import"
"""Key of the runner under which files are read."""


def fail(workspace: Workspace, heading: str, error: BaseException) -> None:
    """Say why work did not end well: in the panel, or in the box for the unexpected."""
    if isinstance(error, BenchpackError):
        workspace.notifier.show_error(heading, error)
    else:
        workspace.notifier.report(error)


def show_document(workspace: Workspace, document: Document) -> None:
    """Open a document and remember its file among the recent ones."""
    workspace.open_document(document)
    if document.path is not None:
        recent = workspace.settings.with_recent(document.path).recent_files
        if recent != workspace.settings.recent_files:
            workspace.change_settings(recent_files=recent)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What the background hands back."""

    library: Library
    problems: tuple[Problem, ...]
    sentence: str
    accepted: int
    document: Document | None = None


class Intake:
    """Puts what was read where the person wants it.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        The file it comes from.
    as_new : bool
        True to open it as a new library.
    """

    def __init__(self, workspace: Workspace, path: Path, *, as_new: bool) -> None:
        self.workspace = workspace
        self.path = path
        self.as_new = as_new
        self._library = Library()
        self._document = workspace.document

    def made(
        self,
        library: Library,
        problems: tuple[Problem, ...],
        *,
        sentence: str,
        accepted: int,
    ) -> Outcome:
        """Give the outcome; a new library is written here, off the window's thread."""
        document = None
        if self.as_new and accepted:
            title = library.title or self.path.stem
            named = replace(library, title=title)
            document = new_library(named, free_path(title))
        return Outcome(library, problems, sentence, accepted, document)

    def finish(self, outcome: Outcome) -> None:
        """Show a new library or add to the open one, and say how it went."""
        notifier = self.workspace.notifier
        self._library = outcome.library
        label = f"import of {self.path.name}"
        if outcome.document is not None:
            show_document(self.workspace, outcome.document)
        elif self.workspace.document is not self._document:
            notifier.say(f"{self.path.name} was not added: its library is closed")
            return
        elif outcome.accepted and not self._add(label):
            return
        notifier.say(outcome.sentence)
        if outcome.problems:
            notifier.show_problems(outcome.sentence, outcome.problems)

    def dropped(self, outcome: Outcome | None) -> None:
        """Take away a new library that nobody waits for any more."""
        if outcome is not None and outcome.document is not None:
            outcome.document.close()
            if outcome.document.path is not None:
                outcome.document.path.unlink(missing_ok=True)

    def failed(self, error: BaseException) -> None:
        """Say why the file could not be read."""
        fail(self.workspace, f"Not read: {self.path.name}", error)

    def _add(self, label: str) -> bool:
        # The store belongs to the document: no edit may slip in while it is written.
        QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
        try:
            return self.workspace.edit(label, self._added)
        finally:
            QGuiApplication.restoreOverrideCursor()

    def _added(self, state: State) -> State:
        return with_taken_in(state, self._library)


class TableIntake(Intake):
    """Reads a whole table in the background and takes its records in.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        The file.
    sheet : Sheet
        Its table.
    plan : Plan
        How it is read.
    """

    def __init__(
        self, workspace: Workspace, path: Path, *, sheet: Sheet, plan: Plan
    ) -> None:
        super().__init__(workspace, path, as_new=plan.as_new)
        self._sheet = sheet
        self._plan = plan
        study = workspace.state.study
        self._currency = None if plan.as_new else study.currency
        library = workspace.state.library
        self._packs = frozenset(library.packs.names.tolist())
        self._held = record_names(library, plan.kind)

    def start(self) -> None:
        """Begin to read."""
        self.workspace.runner.start(
            IMPORT_KEY,
            self._read,
            done=self.finish,
            failed=self.failed,
            words=f"Reading {self.path.name}",
            dropped=self.dropped,
        )

    def _read(self, token: Token) -> Outcome:
        taken: TakenIn = read_plan(
            self._sheet,
            self._plan,
            packs=self._packs,
            held=self._held,
            currency=self._currency,
            progress=token.progress,
            cancelled=token.cancelled,
        )
        return self.made(
            taken.library,
            taken.problems,
            sentence=result_sentence(taken, self._plan, self.path.name),
            accepted=taken.accepted,
        )

    def _added(self, state: State) -> State:
        if self._plan.kind == PACKS:
            return super()._added(state)
        return with_records_joined(state, self._library)
