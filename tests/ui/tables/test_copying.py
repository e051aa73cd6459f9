"""Copying while the table goes on being sorted and filtered."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from benchpack.ui.tables import cell_actions
from benchpack.ui.tables.filtering import parse_filter
from benchpack.ui.tables.ordering import Direction
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.tasks import Token, Work


class LateRunner:
    """Keeps the work until it is told to do it."""

    def __init__(self) -> None:
        self._later: list[tuple[Work, Callable[[Any], None]]] = []

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
        """Keep the work."""
        del key, failed, words, dropped
        self._later.append((work, done))

    def cancel(self, key: str) -> None:
        """Let the work stand."""

    def run(self) -> None:
        """Do the work that was kept."""
        for work, done in self._later:
            done(work(Token(_ignore)))


def _ignore(done: int, total: int, words: str) -> None:
    """Take no notice of progress."""


def test_a_late_copy_gives_the_rows_that_were_selected(
    view: RecordTableView, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    runner = LateRunner()
    monkeypatch.setattr(cell_actions, "_AT_ONCE", 0)
    monkeypatch.setattr(view.cells, "_runner", runner)
    view.selectAll()
    view.cells.copy_cells()
    view.table.sort_by("energy_kwh", Direction.RISING)
    view.table.set_filter(parse_filter("energy > 80", view.table.columns, decimal="."))
    assert view.table.rowCount() == 1
    runner.run()
    rows = QGuiApplication.clipboard().text().splitlines()
    assert [row.split("\t")[0] for row in rows] == [
        "pack",
        "Avocet 81",
        "Dunlin 74",
        "Turnstone 68",
        "Knot 42",
        "Ruff 12",
    ]
