"""Work that is stopped."""

from __future__ import annotations

import threading
from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from benchpack.ui.tasks import BackgroundRunner, Token


@pytest.fixture
def runner() -> Iterator[BackgroundRunner]:
    made = BackgroundRunner()
    yield made
    made.shut_down()


def test_stopped_work_is_dropped_and_tells_no_progress(
    qtbot: QtBot, runner: BackgroundRunner
) -> None:
    go_on = threading.Event()
    told: list[str] = []
    dropped: list[object] = []
    ended: list[object] = []

    def note(key: str, done: int, total: int, words: str) -> None:
        told.append(f"{key} {done}/{total} {words}")

    def slow(token: Token) -> str:
        go_on.wait(5)
        token.progress(1, 2, "old")
        return "late"

    def quick(token: Token) -> str:
        token.progress(1, 1, "new")
        return "in time"

    runner.progressed.connect(note)
    runner.start(
        "read", slow, done=ended.append, failed=ended.append, dropped=dropped.append
    )
    runner.start("read", quick, done=ended.append, failed=ended.append)
    qtbot.waitUntil(lambda: bool(ended))
    go_on.set()
    qtbot.waitUntil(lambda: bool(dropped))
    assert ended == ["in time"]
    assert dropped == ["late"]
    assert told == ["read 1/1 new"]
