"""The slots behind the menus, where the file dialog is the person's answer."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from benchpack.errors import Problem
from benchpack.session.opening import new_library
from benchpack.ui.commands import Commands
from benchpack.ui.workspace import Workspace


@pytest.fixture
def commands(qtbot: QtBot, workspace: Workspace, tmp_path: Path) -> Commands:
    window = QWidget()
    qtbot.addWidget(window)
    library = workspace.state.library
    workspace.open_document(new_library(library, tmp_path / "own.benchpack"))
    return Commands(window, workspace)


def answer(monkeypatch: pytest.MonkeyPatch, path: Path, chosen: str) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), chosen))


def test_a_copy_takes_the_kind_that_was_chosen(
    commands: Commands, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer(monkeypatch, tmp_path / "copy", "Workbook (*.xlsx)")
    commands.on_save_copy()
    assert (tmp_path / "copy.xlsx").read_bytes()[:2] == b"PK"
    assert not (tmp_path / "copy").exists()


def test_a_copy_onto_the_open_library_is_refused(
    commands: Commands, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[tuple[Problem, ...]] = []

    def keep(_heading: str, problems: tuple[Problem, ...]) -> None:
        seen.append(problems)

    commands.workspace.notifier.problems_found.connect(keep)
    before = (tmp_path / "own.benchpack").stat().st_ino
    answer(monkeypatch, tmp_path / "own.benchpack", "Library (*.benchpack)")
    commands.on_save_copy()
    assert "the open library itself" in seen[0][0].what
    assert (tmp_path / "own.benchpack").stat().st_ino == before
    state = commands.workspace.state
    assert commands.workspace.edit("worth", lambda _: state.with_study(target_kg=3.0))


def test_the_suggested_name_takes_the_chosen_kind(
    commands: Commands, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def accept(
        _parent: QWidget, _title: str, name: str, _kinds: str
    ) -> tuple[str, str]:
        return name, "Workbook (*.xlsx)"

    monkeypatch.setattr(QFileDialog, "getSaveFileName", accept)
    commands.on_save_copy()
    assert [path.name for path in tmp_path.glob("*.xlsx")] == ["Library copy.xlsx"]
