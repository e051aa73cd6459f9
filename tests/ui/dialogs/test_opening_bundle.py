"""A study bundle in the window: opened as a library, doubted where it was changed."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from benchpack.files.bundle import write_bundle
from benchpack.results.fingerprint import fingerprint_of
from benchpack.ui.dialogs.opening import open_any
from benchpack.ui.dialogs.whole_library import WholeLibraryDialog
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said, small_state


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> QWidget:
    monkeypatch.setenv("BENCHPACK_HOME", str(tmp_path / "home"))
    made = QWidget()
    qtbot.addWidget(made)
    made.show()
    return made


def opened(workspace: Workspace, window: QWidget, path: Path) -> None:
    open_any(workspace, path, window)
    dialog = window.findChild(WholeLibraryDialog)
    assert dialog is not None
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)


def test_a_bundle_opens_with_its_study_and_fingerprint(
    workspace: Workspace, window: QWidget, tmp_path: Path, said: Said
) -> None:
    state = small_state()
    path = tmp_path / "tray.bundle.zip"
    fingerprint = write_bundle(state.library, state.study, path)
    opened(workspace, window, path)
    assert workspace.document.path is not None
    assert workspace.state.study == state.study
    found = fingerprint_of(workspace.state.library, workspace.state.study)
    assert found == fingerprint
    assert [problems for _, problems in said.lists if problems] == []


def test_a_changed_bundle_opens_with_a_warning(
    workspace: Workspace, window: QWidget, tmp_path: Path, said: Said
) -> None:
    state = small_state()
    path = tmp_path / "tray.bundle.zip"
    write_bundle(state.library, state.study, path)
    with zipfile.ZipFile(path) as archive:
        held = {name: archive.read(name) for name in archive.namelist()}
    held["packs.csv"] = held["packs.csv"].replace(b"500.0", b"480.0")
    with zipfile.ZipFile(path, "w") as archive:
        for name, data in held.items():
            archive.writestr(name, data)
    opened(workspace, window, path)
    assert workspace.state.library.packs[0].mass_kg == 480
    (problems,) = [problems for _, problems in said.lists if problems]
    assert "it was changed" in problems[0].what


def test_a_damaged_bundle_is_listed(
    workspace: Workspace, window: QWidget, tmp_path: Path, said: Said
) -> None:
    state = small_state()
    path = tmp_path / "tray.bundle.zip"
    write_bundle(state.library, state.study, path)
    path.write_bytes(path.read_bytes()[:-40])
    open_any(workspace, path, window)
    ((heading, problems),) = said.lists
    assert "tray.bundle.zip" in heading
    assert "damaged or cut off" in problems[0].what
