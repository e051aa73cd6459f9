"""What every page is given: the open document, its results, what is selected."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from importlib import import_module

from PySide6.QtCore import QObject, Signal

from benchpack.errors import BenchpackError
from benchpack.results.results import Results, compute
from benchpack.session.document import Change, Document
from benchpack.session.settings import Settings, save_settings
from benchpack.session.state import Changed, State
from benchpack.ui.notify import Notifier
from benchpack.ui.tasks import Runner


class Workspace(QObject):
    """The open document as Qt sees it.

    Signals
    -------
    opened()
        Another document is open; everything is new.
    changed(object)
        A `Change` of the document; `results` are already those of the new state.
    selected(str)
        Name of the pack that is selected everywhere.
    explain_requested(str, str)
        Key of a figure and name of its reference: say where it comes from.
    place_requested(str, str)
        Record and column that a problem belongs to: go there.
    settings_changed()
        The person's settings are others.
    """

    opened = Signal()
    changed = Signal(object)
    selected = Signal(str)
    explain_requested = Signal(str, str)
    place_requested = Signal(str, str)
    settings_changed = Signal()

    def __init__(
        self,
        document: Document,
        *,
        runner: Runner,
        notifier: Notifier,
        settings: Settings,
    ) -> None:
        super().__init__()
        self.runner = runner
        self.notifier = notifier
        self.settings = settings
        self.document = document
        self.selection = ""
        self.results: Results = compute(document.state.library, document.state.study)
        self._refused = ""
        self._unsubscribe = document.subscribe(self._on_document_changed)

    @property
    def state(self) -> State:
        """The state of the open document."""
        return self.document.state

    def open_document(self, document: Document) -> None:
        """Close the open document and show another."""
        self._unsubscribe()
        self.document.close()
        self.document = document
        self._unsubscribe = document.subscribe(self._on_document_changed)
        self.selection = ""
        self.results = compute(document.state.library, document.state.study)
        # What was wrong with another library, or with an edit of it, is past.
        self.notifier.show_problems("", ())
        self.opened.emit()

    def edit(
        self, label: str, make: Callable[[State], State], *, merge: str = ""
    ) -> bool:
        """Apply an edit; what is wrong with it goes to the problems panel.

        Parameters
        ----------
        label : str
            The edit in words.
        make : callable
            Gives the next state of the present one.
        merge : str
            As for `Document.apply`.

        Returns
        -------
        bool
            True when the edit was made.
        """
        try:
            self.document.apply(label, make(self.state), merge=merge)
        except BenchpackError as error:
            self._refused = f"Not changed: {label}"
            self.notifier.show_error(self._refused, error)
            return False
        if self._refused:
            self.notifier.withdraw(self._refused)
            self._refused = ""
        return True

    def preview(self, label: str, make: Callable[[State], State]) -> bool:
        """Show a passing state while a control is held, see `Document.preview`."""
        try:
            self.document.preview(label, make(self.state))
        except BenchpackError as error:
            self.notifier.say(str(error))
            return False
        return True

    def settle(self, label: str) -> None:
        """Keep what a preview shows as one edit."""
        try:
            self.document.settle(label)
        except BenchpackError as error:
            self.notifier.show_error(f"Not changed: {label}", error)

    def undo(self) -> None:
        """Take back the last edit."""
        try:
            label = self.document.undo()
        except BenchpackError as error:
            self.notifier.show_error("Not undone", error)
            return
        if label:
            self.notifier.say(f"Undone: {label}")

    def redo(self) -> None:
        """Bring back the edit last taken back."""
        try:
            label = self.document.redo()
        except BenchpackError as error:
            self.notifier.show_error("Not redone", error)
            return
        if label:
            self.notifier.say(f"Redone: {label}")

    def get_ready_to_write(self) -> None:
        """Load what the first edit needs, so that it is stored without a wait."""
        self.runner.start(
            "what writes", load_what_writes, done=_do_nothing, failed=_do_nothing
        )

    def select(self, name: str) -> None:
        """Select a pack everywhere."""
        if name != self.selection:
            self.selection = name
            self.selected.emit(name)

    def shown_pack(self) -> str:
        """Give the pack that pages of one pack show, empty where there is none.

        It is the selected one, else the subject, else the first.
        """
        packs = self.state.library.packs
        for name in (self.selection, self.state.study.subject):
            if packs.has(name):
                return name
        return str(packs.names[0]) if len(packs) else ""

    def change_settings(self, **changes: object) -> None:
        """Change settings and keep them."""
        self.settings = replace(self.settings, **changes)  # type: ignore[arg-type]  # names are checked by the dataclass
        try:
            save_settings(self.settings)
        except OSError as error:
            self.notifier.say(f"The settings could not be kept: {error}")
        self.settings_changed.emit()

    def _on_document_changed(self, change: Change) -> None:
        state = self.state
        self.results = compute(state.library, state.study, previous=self.results)
        if change.changed & Changed.PACKS and not state.library.packs.has(
            self.selection
        ):
            self.selection = ""
        self.changed.emit(change)


def load_what_writes(task: object) -> None:
    """Load the modules that write a library file."""
    del task
    import_module("benchpack.files.library_engine")
    import_module("benchpack.files.library_changes")


def _do_nothing(outcome: object) -> None:
    del outcome
