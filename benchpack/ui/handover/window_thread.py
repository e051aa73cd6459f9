"""What work in the background asks of the window's thread, where widgets live."""

from __future__ import annotations

import threading
from collections.abc import Callable
from concurrent.futures import Future, wait
from typing import Any, TypeVar

from PySide6.QtCore import QObject, Qt, Signal

from benchpack.errors import CancelledError

ResultT = TypeVar("ResultT")

_LOOKS_EVERY_S = 0.05


class WindowThread(QObject):
    """Has calls made on the thread on which it was made itself.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    """

    _wanted = Signal(object, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._thread = threading.get_ident()
        self._wanted.connect(self._on_wanted, Qt.ConnectionType.QueuedConnection)

    def call(
        self, function: Callable[[], ResultT], *, cancelled: Callable[[], bool]
    ) -> ResultT:
        """Have a call made, and give its result; other events come in between.

        Parameters
        ----------
        function : callable
            What is to be done; short, as the window waits for it.
        cancelled : callable
            Tells whether nobody waits for the work any longer.

        Raises
        ------
        CancelledError
            When the work was stopped before the call was over.
        """
        if cancelled():
            raise CancelledError
        if threading.get_ident() == self._thread:
            return function()
        future: Future[ResultT] = Future()
        self._wanted.emit(future, function)
        # The window may be closing: it waits for the work then, and makes no calls.
        while not wait([future], timeout=_LOOKS_EVERY_S).done:
            if cancelled():
                future.cancel()
                raise CancelledError
        return future.result()

    def _on_wanted(self, future: Future[Any], function: Callable[[], Any]) -> None:
        if not future.set_running_or_notify_cancel():
            return
        try:
            future.set_result(function())
        except BaseException as error:  # noqa: BLE001 - raised where it was asked for
            future.set_exception(error)
