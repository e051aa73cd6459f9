"""The one door for messages to the person."""

from __future__ import annotations

import logging
import sys
import threading
import traceback
from types import TracebackType

from PySide6.QtCore import QObject, Qt, Signal

from benchpack.errors import BenchpackError, DataError, Problem

_log = logging.getLogger(__name__)


class Notifier(QObject):
    """Passes messages, problems and unexpected errors on to the window.

    Signals
    -------
    said(str)
        A short remark for the status line.
    problems_found(str, object)
        A heading and a tuple of problems for the problems panel.
    failed_unexpectedly(str, str)
        A sentence and a traceback.
    """

    said = Signal(str)
    problems_found = Signal(str, object)
    failed_unexpectedly = Signal(str, str)
    _raised = Signal(str, str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        queued = Qt.ConnectionType.QueuedConnection
        self._raised.connect(self._on_raised, queued)

    def say(self, text: str) -> None:
        """Show a remark in the status line."""
        self.said.emit(text)

    def show_problems(self, heading: str, problems: tuple[Problem, ...]) -> None:
        """List problems in the panel."""
        self.problems_found.emit(heading, problems)

    def withdraw(self, heading: str) -> None:
        """Close the list of this heading, if it is still the one shown."""
        self.show_problems(heading, ())

    def show_error(self, heading: str, error: BenchpackError) -> None:
        """List the problems of an error that is meant for a person."""
        problems = (
            error.problems if isinstance(error, DataError) else (Problem(str(error)),)
        )
        self.show_problems(heading, problems)

    def report(self, error: BaseException) -> None:
        """Log an unexpected error and show it, from any thread."""
        text = "".join(traceback.format_exception(error))
        _log.error("unexpected error\n%s", text)
        self._raised.emit(f"{type(error).__name__}: {error}", text)

    def watch_exceptions(self) -> None:
        """Route exceptions that nobody caught, in any thread, to `report`."""

        def hook(
            kind: type[BaseException],
            error: BaseException,
            trace: TracebackType | None,
        ) -> None:
            if issubclass(kind, KeyboardInterrupt):
                sys.__excepthook__(kind, error, trace)
                return
            self.report(error)

        def thread_hook(args: threading.ExceptHookArgs) -> None:
            if args.exc_value is not None:
                self.report(args.exc_value)

        sys.excepthook = hook
        threading.excepthook = thread_hook

    def _on_raised(self, sentence: str, trace: str) -> None:
        self.failed_unexpectedly.emit(sentence, trace)
