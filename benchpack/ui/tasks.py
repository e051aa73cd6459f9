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
    generation: int
    token: Token | None = None
    done: Callable[[Any], None] | None = None
    failed: Callable[[BaseException], None] | None = None
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
    ) -> None:
        """Run work; a newer start with the same key makes an older one void."""

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

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = ThreadPoolExecutor(max_workers=2, thread_name_prefix="benchpack")
        self._runs: dict[str, _Run] = {}
        self._generation = 0
        queued = Qt.ConnectionType.QueuedConnection
        self._finished.connect(self._on_finished, queued)

    def start(
        self,
        key: str,
        work: Work,
        *,
        done: Callable[[Any], None],
        failed: Callable[[BaseException], None],
        words: str = "",
    ) -> None:
        """Run work in the pool; an older run of the same key is stopped and void."""
        self.cancel(key)
        self._generation += 1
        run = _Run(key, self._generation, done=done, failed=failed)

        def progressed(done_now: int, total: int, said: str) -> None:
            self.progressed.emit(key, done_now, total, said)

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
        """Stop the work of a key; its callbacks will not be called."""
        run = self._runs.pop(key, None)
        if run is not None and run.token is not None:
            run.token.cancel()
            self.ended.emit(key)

    def shut_down(self) -> None:
        """Stop all work and wait for it."""
        for key in tuple(self._runs):
            self.cancel(key)
        self._pool.shutdown(wait=True, cancel_futures=True)

    def _on_finished(self, run: _Run, result: Any, error: BaseException | None) -> None:
        if self._runs.get(run.key) is not run:
            return
        del self._runs[run.key]
        self.ended.emit(run.key)
        if error is None and run.done is not None:
            run.done(result)
        elif (
            error is not None
            and not isinstance(error, CancelledError)
            and run.failed is not None
        ):
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
    ) -> None:
        """Run work and call back before returning."""
        del key, words
        try:
            result = work(Token(_ignore_progress))
        except CancelledError:
            return
        except Exception as error:  # noqa: BLE001 - handed to `failed`
            failed(error)
            return
        done(result)

    def cancel(self, key: str) -> None:
        """Do nothing: work is over when start returns."""


def _ignore_progress(done: int, total: int, words: str) -> None:
    """Take no notice of progress."""
