"""The progress strip: appears late, says what is done, and can stop it."""

from __future__ import annotations

import threading

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QProgressBar, QPushButton
from pytestqt.qtbot import QtBot

from benchpack.ui.tasks import BackgroundRunner, Token
from benchpack.ui.widgets.progress_strip import ProgressStrip


@pytest.fixture
def strip(qtbot: QtBot) -> ProgressStrip:
    made = ProgressStrip()
    qtbot.addWidget(made)
    return made


def words(strip: ProgressStrip) -> str:
    return strip.findChildren(QLabel)[0].text()


def test_short_work_is_not_shown(qtbot: QtBot, strip: ProgressStrip) -> None:
    strip.on_started("import", "Reading packs.csv")
    assert not strip.isVisible()
    strip.on_ended("import")
    qtbot.wait(300)
    assert not strip.isVisible()


def test_long_work_is_shown_with_its_progress(
    qtbot: QtBot, strip: ProgressStrip
) -> None:
    strip.on_started("import", "Reading packs.csv")
    qtbot.waitUntil(strip.isVisible, timeout=2000)
    bar = strip.findChildren(QProgressBar)[0]
    assert bar.maximum() == 0
    strip.on_progressed("import", 5_000_000_000, 10_000_000_000, "")
    assert words(strip) == "Reading packs.csv"
    assert bar.value() * 2 == bar.maximum()
    strip.on_ended("import")
    assert not strip.isVisible()


def test_later_work_follows_and_strays_are_ignored(
    qtbot: QtBot, strip: ProgressStrip
) -> None:
    strip.on_started("import", "Reading packs.csv")
    strip.on_started("brief", "Setting the brief")
    strip.on_progressed("gone", 1, 2, "Nothing")
    strip.on_progressed("brief", 1, 2, "")
    assert words(strip) == "Reading packs.csv"
    strip.on_ended("import")
    assert words(strip) == "Setting the brief"


def test_cancel_stops_the_work_of_a_runner(qtbot: QtBot, strip: ProgressStrip) -> None:
    runner = BackgroundRunner()
    strip.watch(runner)
    stopped = threading.Event()

    def work(token: Token) -> None:
        while not token.cancelled():
            stopped.wait(0.01)
        stopped.set()

    outcome: list[object] = []
    runner.start("import", work, done=outcome.append, failed=outcome.append)
    qtbot.waitUntil(strip.isVisible, timeout=2000)
    assert words(strip) == "Working"
    button = strip.findChildren(QPushButton)[0]
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    assert stopped.wait(2)
    assert not strip.isVisible()
    runner.shut_down()
    assert outcome == []
