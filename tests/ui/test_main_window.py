"""The assembled window, driven with keys and clicks as a person would."""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QAccessible, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QFileDialog,
    QLineEdit,
    QTabBar,
    QTableView,
    QWidget,
)
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.session.opening import new_library, open_library
from benchpack.ui.catalogue import PAGES
from benchpack.ui.main_window import MainWindow
from benchpack.ui.palette import Scheme
from benchpack.ui.theme import theme
from benchpack.ui.workspace import Workspace

INNER = (QAbstractSpinBox, QComboBox, QLineEdit, QTabBar)
"""Widgets whose own small parts belong to them."""

MakeWorkspace = Callable[[Library], Workspace]


@pytest.fixture
def window(qtbot: QtBot, workspace: Workspace) -> MainWindow:
    made = MainWindow(workspace, PAGES)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    return made


def settle() -> None:
    for _ in range(4):
        QApplication.processEvents()


def test_the_window_opens_on_the_packs_with_the_sentence(window: MainWindow) -> None:
    assert window.stack.currentWidget() is window.page(0)
    assert "Avocet 81 is 50.9" in window.headline.text()
    assert "5 packs, 4 parts, 2 joint rows" in window.status.holds.text()


@pytest.mark.parametrize("place", range(len(PAGES)))
def test_every_page_has_a_key(window: MainWindow, place: int) -> None:
    window.activateWindow()
    QTest.keyClick(
        window, Qt.Key(Qt.Key.Key_1 + place), Qt.KeyboardModifier.ControlModifier
    )
    settle()
    assert window.stack.currentWidget() is window.page(place)
    assert window.page(place).title == PAGES[place].title


def test_pages_that_were_never_shown_are_not_made(window: MainWindow) -> None:
    assert set(window._pages) == {0}


def test_the_side_list_chooses_a_page(window: MainWindow) -> None:
    buttons = window.side.findChildren(QAbstractButton)
    (gap,) = [button for button in buttons if button.text() == "Gap"]
    QTest.mouseClick(gap, Qt.MouseButton.LeftButton)
    assert window.stack.currentWidget() is window.page(1)
    assert gap.isChecked()


def test_undo_and_redo_are_named_in_the_menu(window: MainWindow) -> None:
    undo, redo = window.menu_actions["undo"], window.menu_actions["redo"]
    assert not undo.isEnabled()
    window.headline.worth.setValue(5)
    assert "worth of a kilogram" in undo.text()
    undo.trigger()
    assert window.headline.worth.value() == 3
    assert "worth of a kilogram" in redo.text()
    redo.trigger()
    assert window.headline.worth.value() == 5
    assert "Undo “worth of a kilogram”" in window.status.undo.text()


def test_redo_has_the_keys_of_every_system(window: MainWindow) -> None:
    keys = [key.toString() for key in window.menu_actions["redo"].shortcuts()]
    assert keys == ["Ctrl+Shift+Z", "Ctrl+Y"]


def test_selecting_a_pack_selects_it_on_every_page(window: MainWindow) -> None:
    for place in range(len(PAGES)):
        window.show_page(place)
        settle()
    window.workspace.select("Knot 42")
    gap = window.page(1)
    assert gap.energy_mass.selected == "Knot 42"  # type: ignore[attr-defined]  # the Gap page
    assert gap.bars.selected == "Knot 42"  # type: ignore[attr-defined]  # the Gap page


def test_the_gaps_are_exported(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "gaps.csv"
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_: (str(target), "CSV (*.csv)")
    )
    window.menu_actions["export_gaps"].trigger()
    with target.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [row["reference"] for row in rows] == [
        "Dunlin 74",
        "Turnstone 68",
        "Knot 42",
        "Ruff 12",
    ]
    assert target.with_name("gaps.schema.json").exists()
    assert "Written" in window.status.remark.text()


def test_an_export_that_fails_says_why(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "no such folder" / "gaps.csv"
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_: (str(target), "CSV (*.csv)")
    )
    window.menu_actions["export_gaps"].trigger()
    assert window.problems.isVisible()
    assert len(window.problems.problems) == 1


def test_warnings_open_and_lead_to_their_record(
    window: MainWindow, qtbot: QtBot
) -> None:
    QTest.mouseClick(window.headline.warnings, Qt.MouseButton.LeftButton)
    assert window.problems.isVisible()
    (view,) = window.problems.findChildren(QTableView)
    problem = window.problems.problems[0]
    with qtbot.waitSignal(window.workspace.place_requested) as asked:
        view.setFocus()
        QTest.keyClick(view, Qt.Key.Key_Return)
    assert asked.args == [problem.record, problem.column]


def test_a_library_that_is_dropped_is_opened(
    window: MainWindow, tmp_path: Path, library: Library
) -> None:
    path = tmp_path / "dropped.benchpack"
    new_library(library, path).close()
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    event = QDropEvent(
        QPointF(QPoint(400, 300)),
        Qt.DropAction.CopyAction,
        mime,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    window.dropEvent(event)
    settle()
    assert window.workspace.document.path == path
    assert str(path) in window.workspace.settings.recent_files
    window.workspace.document.close()


def test_an_edit_in_the_window_is_on_disk_at_once(
    qtbot: QtBot, tmp_path: Path, library: Library, workspace: Workspace
) -> None:
    path = tmp_path / "mine.benchpack"
    workspace.open_document(new_library(library, path))
    window = MainWindow(workspace, PAGES)
    qtbot.addWidget(window)
    window.headline.worth.setValue(4.5)
    again = open_library(path)
    assert again.state.study.worth_likely_per_kg == 4.5
    again.close()
    window.close()


def test_the_look_is_changed_and_kept(window: MainWindow) -> None:
    window.menu_actions["dark"].trigger()
    assert theme().scheme is Scheme.DARK
    assert window.workspace.settings.look == "dark"
    window.menu_actions["light"].trigger()
    assert theme().scheme is Scheme.LIGHT


def test_an_empty_library_says_what_to_do(
    qtbot: QtBot, make_workspace: MakeWorkspace
) -> None:
    window = MainWindow(make_workspace(Library()), PAGES)
    qtbot.addWidget(window)
    window.show()
    for place in range(len(PAGES)):
        window.show_page(place)
        settle()
    assert "Add packs or open a table first." in window.headline.text()
    for chart in window.page(1).charts():  # type: ignore[attr-defined]  # the Gap page
        assert chart.spec.is_empty
        assert chart.spec.empty_sentence


@pytest.mark.parametrize("place", range(len(PAGES)))
def test_every_control_has_a_name_for_screen_readers(
    window: MainWindow, place: int
) -> None:
    window.show_page(place)
    settle()
    kinds = (QAbstractButton, QComboBox, QLineEdit, QAbstractSpinBox)
    nameless = []
    for widget in window.findChildren(QWidget):
        if not isinstance(widget, kinds) or not widget.isVisible():
            continue
        name = QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)
        if not name and not isinstance(widget.parent(), INNER):
            nameless.append(f"{type(widget).__name__} in {widget.parent()!r}")
    assert nameless == []


def test_it_fits_a_small_screen(window: MainWindow) -> None:
    window.resize(1024, 700)
    for place in range(len(PAGES)):
        window.show_page(place)
        settle()
    assert (window.width(), window.height()) == (1024, 700)
