"""Work in the background that has something done where widgets live."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from benchpack.errors import CancelledError
from benchpack.ui.handover.window_thread import WindowThread
from benchpack.ui.tasks import BackgroundRunner, Token


@pytest.fixture
def runner() -> Iterator[BackgroundRunner]:
    made = BackgroundRunner()
    yield made
    made.shut_down()


def never() -> bool:
    return False


def test_a_call_from_the_window_itself_is_made_at_once() -> None:
    assert WindowThread().call(threading.get_ident, cancelled=never) == (
        threading.get_ident()
    )


def test_a_call_from_the_background_is_made_on_the_window_thread(
    qtbot: QtBot, runner: BackgroundRunner
) -> None:
    window = WindowThread()
    found: list[tuple[int, tuple[int, str]]] = []
    failed: list[BaseException] = []

    def make() -> tuple[int, str]:
        return threading.get_ident(), QLabel("made").text()

    def work(token: Token) -> tuple[int, tuple[int, str]]:
        made = window.call(make, cancelled=token.cancelled)
        return threading.get_ident(), made

    runner.start("call", work, done=found.append, failed=failed.append)
    qtbot.waitUntil(lambda: bool(found))
    ((worker, (caller, text)),) = found
    assert (caller, text) == (threading.get_ident(), "made")
    assert worker != caller


def test_what_the_call_raises_is_raised_in_the_background(
    qtbot: QtBot, runner: BackgroundRunner
) -> None:
    window = WindowThread()
    done: list[object] = []
    failed: list[BaseException] = []

    def make() -> None:
        raise TimeoutError("the call's own")

    def work(token: Token) -> None:
        window.call(make, cancelled=token.cancelled)

    runner.start("call", work, done=done.append, failed=failed.append)
    qtbot.waitUntil(lambda: bool(failed))
    assert done == []
    assert isinstance(failed[0], TimeoutError)


def test_a_window_that_closes_does_not_wait_for_its_own_call(
    runner: BackgroundRunner,
) -> None:
    window = WindowThread()
    begun = threading.Event()
    called: list[int] = []
    ended: list[object] = []

    def work(token: Token) -> None:
        begun.set()
        try:
            window.call(lambda: called.append(1), cancelled=token.cancelled)
        except CancelledError:
            ended.append("stopped")
            raise

    runner.start("call", work, done=ended.append, failed=ended.append)
    begun.wait(5)
    runner.shut_down()  # no event is handled in between
    assert ended == ["stopped"]
    assert called == []
