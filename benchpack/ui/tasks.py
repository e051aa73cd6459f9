"""Work off the window's thread: one pool, newest wins, progress and cancel."""

from __future__ import annotations

import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from typing import Any, Protocol

from PySide6.QtCore import QObject, Qt, Signal

from benchpack.errors import CancelledError


class Token:
    """Tells a piece of work that it should stop, and passes its progress on."""

    def __init__(self, progressed: Callable[[int, int, str], None]) -> None:
        self._stop = threading.Event()
        self._progressed = progressed

    def cancel(self) -> None:
        """Ask the work to stop."""
        self._stop.set()

    def cancelled(self) -> bool:
        """Tell whether the work should stop."""
        return self._stop.is_set()

    def progress(self, done: int, total: int, words: str) -> None:
        """Pass on how far the work is."""
        self._progressed(done, total, words)


Work = Callable[[Token], Any]


@dataclass(slots=True)
class _Run:
    key: str
    token: Token | None = None
    done: Callable[[Any], None] | None = None
    failed: Callable[[BaseException], None] | None = None
    dropped: Callable[[Any], None] | None = None
    result: Any = field(default=None)


class Runner(Protocol):
    """What pages need of a runner."""

    def start(
        self,
        key: str,
        work: Work,
        *,
        done: Callable[[Any], None],
        failed: Callable[[BaseException], None],
        words: str = "",
        dropped: Callable[[Any], None] | None = None,
    ) -> None:
        """Run work; a newer start with the same key makes an older one void.

        Parameters
        ----------
        key : str
            Name of the work.
        work : callable
            The work; gives its result.
        done, failed : callable
            Told of the result, or of what was raised.
        words : str
            What the work is, for the person.
        dropped : callable, optional
            Told in place of both when the work was stopped: the result that came too
            late, None where there is none. Lets go of what nobody waits for.
        """

    def cancel(self, key: str) -> None:
        """Stop the work of a key."""


class BackgroundRunner(QObject):
    """Runs work in a thread pool and hands results back to the window's thread.

    Signals
    -------
    started(str, str)
        Key and words of work that began.
    progressed(str, int, int, str)
        Key, done, total and words.
    ended(str)
        Key of work that is over.
    """

    started = Signal(str, str)
    progressed = Signal(str, int, int, str)
    ended = Signal(str)
    _finished = Signal(object, object, object)
    _progress_made = Signal(object, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = ThreadPoolExecutor(max_workers=2, thread_name_prefix="benchpack")
        self._runs: dict[str, _Run] = {}
        queued = Qt.ConnectionType.QueuedConnection
        self._finished.connect(self._on_finished, queued)
        self._progress_made.connect(self._on_progress_made, queued)

    def start(
        self,
        key: str,
        work: Work,
        *,
        done: Callable[[Any], None],
        failed: Callable[[BaseException], None],
        words: str = "",
        dropped: Callable[[Any], None] | None = None,
    ) -> None:
        """Run work in the pool; an older run of the same key is stopped and void."""
        self.cancel(key)
        run = _Run(key, done=done, failed=failed, dropped=dropped)

        def progressed(done_now: int, total: int, said: str) -> None:
            self._progress_made.emit(run, (done_now, total, said))

        token = run.token = Token(progressed)
        self._runs[key] = run
        self.started.emit(key, words)

        def execute() -> None:
            result: Any = None
            error: BaseException | None = None
            try:
                result = work(token)
            except BaseException as caught:  # noqa: BLE001 - handed to `failed`
                error = caught
            self._finished.emit(run, result, error)

        self._pool.submit(execute)

    def cancel(self, key: str) -> None:
        """Stop the work of a key; only `dropped` will be called."""
        run = self._runs.pop(key, None)
        if run is not None and run.token is not None:
            run.token.cancel()
            self.ended.emit(key)

    def shut_down(self) -> None:
        """Stop all work and wait for it."""
        for key in tuple(self._runs):
            self.cancel(key)
        self._pool.shutdown(wait=True, cancel_futures=True)

    def _on_progress_made(self, run: _Run, progress: tuple[int, int, str]) -> None:
        if self._runs.get(run.key) is run:
            self.progressed.emit(run.key, *progress)

    def _on_finished(self, run: _Run, result: Any, error: BaseException | None) -> None:
        if self._runs.get(run.key) is not run:
            if run.dropped is not None:
                run.dropped(result)
            return
        del self._runs[run.key]
        self.ended.emit(run.key)
        if error is None and run.done is not None:
            run.done(result)
        elif isinstance(error, CancelledError):
            if run.dropped is not None:
                run.dropped(None)
        elif error is not None and run.failed is not None:
            run.failed(error)


class DirectRunner:
    """Runs work at once in the caller's thread; for tests and pictures."""

    def start(
        self,
        key: str,
        work: Work,
        *,
        done: Callable[[Any], None],
        failed: Callable[[BaseException], None],
        words: str = "",
        dropped: Callable[[Any], None] | None = None,
    ) -> None:
        """Run work and call back before returning."""
        del key, words
        try:
            result = work(Token(_ignore_progress))
        except CancelledError:
            if dropped is not None:
                dropped(None)
            return
        except Exception as error:  # noqa: BLE001 - handed to `failed`
            failed(error)
            return
        done(result)

    def cancel(self, key: str) -> None:
        """Do nothing: work is over when start returns."""


def _ignore_progress(done: int, total: int, words: str) -> None:
    """Take no notice of progress."""
