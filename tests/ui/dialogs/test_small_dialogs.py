"""Preferences, keys, command search, about, and the box for the unexpected."""

from __future__ import annotations

from dataclasses import fields

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QDialog, QLabel, QMainWindow, QMenu, QWidget
from pytestqt.qtbot import QtBot

from benchpack.places import log_file
from benchpack.report.cautions_text import CAUTIONS, DEMO_CAUTION
from benchpack.session.settings import Settings, load_settings
from benchpack.ui.dialogs.about import AboutDialog
from benchpack.ui.dialogs.command_search import CommandSearch, commands_of, matching
from benchpack.ui.dialogs.preferences import ClearableList, PreferencesDialog
from benchpack.ui.dialogs.shortcuts import ShortcutsDialog, action_pairs
from benchpack.ui.dialogs.unexpected import UnexpectedDialog, show_unexpected
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.workspace import Workspace


def texts(widget: QWidget) -> list[str]:
    return [w.text() for w in widget.findChildren(QLabel) if not w.isHidden()]


@pytest.fixture
def preferences(qtbot: QtBot, workspace: Workspace) -> PreferencesDialog:
    made = PreferencesDialog(workspace)
    qtbot.addWidget(made)
    made.show()
    return made


def test_every_setting_has_a_row(preferences: PreferencesDialog) -> None:
    shown = texts(preferences)
    for setting in fields(Settings):
        assert setting.metadata["label"] in shown


def test_settings_and_units_are_kept_apart(
    preferences: PreferencesDialog, workspace: Workspace
) -> None:
    look = preferences.widgets["look"]
    assert isinstance(look, QComboBox)
    look.setFocus()
    QTest.keyClick(look, Qt.Key.Key_Down)
    preferences.units.mass_box.setCurrentText("lb")
    QTest.mouseClick(preferences.accept_button, Qt.MouseButton.LeftButton)
    assert workspace.settings.look == "light"
    assert load_settings().look == "light"
    assert workspace.state.study.mass_unit == "lb"
    assert workspace.document.undo_label == "units of Tray study"
    workspace.undo()
    assert workspace.state.study.mass_unit == "kg"
    assert workspace.settings.look == "light"


def test_a_list_can_be_cleared(
    preferences: PreferencesDialog, workspace: Workspace
) -> None:
    hidden = preferences.widgets["hidden_columns"]
    assert isinstance(hidden, ClearableList)
    QTest.mouseClick(hidden.clear_button, Qt.MouseButton.LeftButton)
    assert workspace.settings.hidden_columns
    QTest.mouseClick(preferences.accept_button, Qt.MouseButton.LeftButton)
    assert workspace.settings.hidden_columns == ()
    assert workspace.document.undo_label == ""


def test_a_bad_currency_keeps_the_preferences_open(
    preferences: PreferencesDialog, workspace: Workspace
) -> None:
    preferences.units.currency_box.setEditText("E")
    QTest.mouseClick(preferences.accept_button, Qt.MouseButton.LeftButton)
    assert preferences.isVisible()
    assert any("three capital letters" in text for text in texts(preferences))


def test_keys_are_listed_by_group(qtbot: QtBot) -> None:
    sheet = ShortcutsDialog(
        [
            ("Everywhere", [("Ctrl+Z", "Undo")]),
            ("Empty", []),
            ("Tables", [("click on a head", "Sort")]),
        ]
    )
    qtbot.addWidget(sheet)
    sheet.show()
    shown = texts(sheet)
    assert {"Everywhere", "Undo", "Tables", "click on a head", "Sort"} <= set(shown)
    assert key_text("Ctrl+Z") in shown
    assert "Empty" not in shown
    QTest.keyClick(sheet, Qt.Key.Key_Escape)
    assert not sheet.isVisible()


class Commands:
    """A window with some actions, and what ran."""

    def __init__(self, window: QMainWindow) -> None:
        self.window = window
        self.ran: list[str] = []
        menu = QMenu("&Edit", window)
        window.menuBar().addMenu(menu)
        for text, key in (
            ("&Undo mass of tray", "Ctrl+Z"),
            ("Re&do", "Ctrl+Y"),
            ("Open…", "Ctrl+O"),
            ("Save gaps && schema", ""),
        ):
            action = QAction(text, window)
            action.setShortcut(key)
            menu.addAction(action)
        menu.addSeparator()
        menu.triggered.connect(self._on_triggered)

    def _on_triggered(self, action: QAction) -> None:
        self.ran.append(action.text())

    def action(self, text: str) -> QAction:
        found = (a for a in self.window.findChildren(QAction) if a.text() == text)
        return next(found)


@pytest.fixture
def commands(qtbot: QtBot) -> Commands:
    window = QMainWindow()
    qtbot.addWidget(window)
    window.show()
    return Commands(window)


def searched(commands: Commands, text: str) -> CommandSearch:
    search = CommandSearch(commands.window.findChildren(QAction), commands.window)
    search.show()
    QTest.keyClicks(search.field, text)
    return search


def test_commands_leave_out_menus_and_separators(commands: Commands) -> None:
    found = commands_of(commands.window.findChildren(QAction))
    words = ["Open…", "Redo", "Save gaps & schema", "Undo mass of tray"]
    assert [command.words for command in found] == words


def test_the_sheet_takes_keys_from_actions(commands: Commands) -> None:
    pairs = action_pairs(commands.window.findChildren(QAction))
    assert ("Ctrl+Z", "Undo mass of tray") in pairs
    assert "Save gaps & schema" not in [words for _, words in pairs]


def test_words_in_any_order_find_a_command(commands: Commands) -> None:
    found = commands_of(commands.window.findChildren(QAction))
    assert [c.words for c in matching(found, "TRAY undo")] == ["Undo mass of tray"]
    assert [c.words for c in matching(found, "do")] == ["Redo", "Undo mass of tray"]
    assert [c.words for c in matching(found, "ctrl+o")] == ["Open…"]
    assert matching(found, "weigh") == []


def test_enter_runs_the_command_after_closing(qtbot: QtBot, commands: Commands) -> None:
    search = searched(commands, "gaps")
    QTest.keyClick(search.field, Qt.Key.Key_Return)
    assert not search.isVisible()
    qtbot.waitUntil(lambda: commands.ran == ["Save gaps && schema"], timeout=2000)


def test_arrows_move_while_the_field_keeps_the_focus(
    qtbot: QtBot, commands: Commands
) -> None:
    search = searched(commands, "")
    QTest.keyClick(search.field, Qt.Key.Key_Down)
    QTest.keyClick(search.field, Qt.Key.Key_Down)
    assert search.list.currentIndex().row() == 2
    assert search.focusWidget() is search.field
    QTest.keyClick(search.field, Qt.Key.Key_Up)
    assert search.list.currentIndex().row() == 1


def test_a_disabled_command_says_why_and_does_not_run(commands: Commands) -> None:
    redo = commands.action("Re&do")
    redo.setEnabled(False)
    redo.setProperty("reason", "nothing was undone")
    search = searched(commands, "redo")
    index = search.model.index(0, 0)
    assert index.data() == "Redo (nothing was undone)"
    QTest.keyClick(search.field, Qt.Key.Key_Return)
    assert search.isVisible()
    assert commands.ran == []


def test_no_match_is_said(commands: Commands) -> None:
    search = searched(commands, "zzz")
    assert "No command has these words." in texts(search)


def test_about_carries_all_cautions(qtbot: QtBot) -> None:
    about = AboutDialog()
    qtbot.addWidget(about)
    about.show()
    shown = texts(about)
    assert set(CAUTIONS) <= set(shown)
    assert DEMO_CAUTION in shown
    assert any("MIT" in text and "Open Font" in text for text in shown)
    for word in ("high-voltage", "crush", "thermal propagation", "UN R100"):
        assert any(word in text for text in shown)


def test_one_box_counts_unexpected_errors(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    first = show_unexpected("KeyError: 'mass'", "trace one", window)
    again = show_unexpected("KeyError: 'mass'", "trace one", window)
    other = show_unexpected("ValueError: x", "trace two", window)
    assert first is again is other
    assert len(window.findChildren(QDialog)) == 1
    shown = texts(first)
    assert "KeyError: 'mass'" in shown
    assert "and 1 more error" in shown
    assert any(str(log_file()) in text for text in shown)
    assert not any("trace" in text for text in shown)
    QTest.mouseClick(first.copy_button, Qt.MouseButton.LeftButton)
    copied = QGuiApplication.clipboard().text()
    assert "trace one" in copied
    assert "trace two" in copied


def test_a_closed_box_starts_afresh(qtbot: QtBot) -> None:
    box = UnexpectedDialog()
    qtbot.addWidget(box)
    box.add("KeyError: 'mass'", "trace one")
    box.show()
    QTest.keyClick(box, Qt.Key.Key_Escape)
    box.add("ValueError: x", "trace two")
    assert "ValueError: x" in texts(box)
    assert "KeyError: 'mass'" not in texts(box)
