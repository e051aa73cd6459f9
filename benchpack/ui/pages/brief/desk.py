"""The brief on screen: worked out away from the window, newest wins."""

from __future__ import annotations

import time
from dataclasses import dataclass

from PySide6.QtCore import QObject, QTimer, Signal

from benchpack.errors import DataError
from benchpack.report.brief.blocks import Brief
from benchpack.session.brief_request import BriefChoices, brief_choices, brief_of
from benchpack.session.handover_request import hand_over, today
from benchpack.session.state import Changed, State, difference
from benchpack.ui.brief.pages import BriefPages
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace

PREVIEW_KEY = "brief preview"
"""Name of the work that sets the preview."""
DELAY_MS = 300
"""A change that follows sooner is taken together with the one before. A brief that
takes longer to set waits as long."""


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """A brief that is set, and what it was made from.

    Parameters
    ----------
    state : State
        The state of the document.
    choices : BriefChoices
        What the person had chosen.
    pages : BriefPages
        Its pages.
    """

    state: State
    choices: BriefChoices
    pages: BriefPages


class BriefDesk(QObject):
    """Has the brief set anew after a change, and holds the last one that was.

    Signals
    -------
    found()
        `shown` is another one.
    failed(object)
        A `DataError` that says why there is none.
    stopped()
        The person or a fault of ours stopped it, and nothing newer is under way.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QObject
        Owner.

    Attributes
    ----------
    shown : Shown or None
        What was set last.
    """

    found = Signal()
    failed = Signal(object)
    stopped = Signal()

    def __init__(self, workspace: Workspace, parent: QObject) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._on_time_up)
        self._run = 0
        self._delay_ms = DELAY_MS
        self.shown: Shown | None = None

    @property
    def is_current(self) -> bool:
        """True where what is shown is the present state, as the person chose it."""
        shown, workspace = self.shown, self._workspace
        if shown is None:
            return False
        changed = difference(shown.state, workspace.state)
        return changed is Changed.NOTHING and shown.choices == self.choices()

    def choices(self) -> BriefChoices:
        """Give what the person chose."""
        return brief_choices(self._workspace.settings)

    def want(self) -> None:
        """Have it set for the present state, in a moment; the first one at once."""
        self._timer.start(self._delay_ms if self.shown is not None else 0)

    def hold(self) -> None:
        """Begin nothing while a control is held; `want` goes on."""
        self._timer.stop()

    def clear(self) -> None:
        """Forget what is shown and stop what is under way."""
        self._timer.stop()
        self._run += 1
        self._workspace.runner.cancel(PREVIEW_KEY)
        self.shown = None

    def _on_time_up(self) -> None:
        if self.is_current:
            self.found.emit()
            return
        state, choices = self._workspace.state, self.choices()
        self._run += 1
        run, begun = self._run, time.perf_counter()

        def work(token: Token) -> Brief:
            del token
            given = hand_over(state.library, state.study)
            return brief_of(given, choices, made_on=today())

        def done(brief: Brief) -> None:
            # Charts are widgets, and text is painted on the thread that has set it.
            pages = BriefPages(brief, paper=choices.paper)
            took_ms = round(1000 * (time.perf_counter() - begun))
            self._delay_ms = max(DELAY_MS, took_ms)
            self._take(Shown(state, choices, pages))

        def dropped(brief: Brief | None) -> None:
            del brief
            if run == self._run and not self._timer.isActive():
                self.stopped.emit()

        self._workspace.runner.start(
            PREVIEW_KEY,
            work,
            done=done,
            failed=self._on_failed,
            words="Setting the brief",
            dropped=dropped,
        )

    def _take(self, shown: Shown) -> None:
        self.shown = shown
        self.found.emit()

    def _on_failed(self, error: BaseException) -> None:
        if isinstance(error, DataError):
            self.shown = None
            self.failed.emit(error)
        else:
            self._workspace.notifier.report(error)
            if not self._timer.isActive():
                self.stopped.emit()
