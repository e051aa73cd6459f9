"""Editing in the table, by keyboard."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.words import EnergyBasis
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.workspace import Workspace

KEY = Qt.Key


def go_to(view: RecordTableView, row: int, key: str) -> None:
    place = view.table.column_place(key)
    assert place is not None
    view.setCurrentIndex(view.table.index(row, place))


def editor() -> QWidget:
    widget = QApplication.focusWidget()
    assert isinstance(widget, (QLineEdit, QComboBox))
    return widget


def type_in(view: RecordTableView, qtbot: QtBot, text: str) -> QWidget:
    """Type into the current cell: the first key opens the editor."""
    QTest.keyClicks(view, text[0])
    QTest.keyClicks(editor(), text[1:])
    return editor()


def note(view: RecordTableView) -> QLabel:
    found = view.viewport().findChild(QLabel, "refusal_note")
    assert isinstance(found, QLabel)
    return found


def test_typing_edits_and_enter_goes_to_the_next_row(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 0, "mass_kg")
    QTest.keyClick(type_in(view, qtbot, "501,5"), KEY.Key_Return)
    assert workspace.state.library.packs[0].mass_kg == 501.5
    assert workspace.document.undo_label == "mass of Avocet 81"
    assert view.currentIndex().row() == 1
    assert view.table.columns[view.currentIndex().column()].key == "mass_kg"


def test_tab_takes_the_entry_and_goes_right(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 1, "energy_kwh")
    QTest.keyClick(type_in(view, qtbot, "75"), KEY.Key_Tab)
    assert workspace.state.library.packs[1].energy_kwh == 75.0
    assert view.table.columns[view.currentIndex().column()].key == "mass_kg"
    assert view.currentIndex().row() == 1


def test_entry_with_its_own_unit_is_converted(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 0, "mass_kg")
    QTest.keyClick(type_in(view, qtbot, "0.5 t"), KEY.Key_Return)
    assert workspace.state.library.packs[0].mass_kg == 500.0


def test_refused_entry_stays_open_with_the_reason(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 0, "mass_kg")
    line = type_in(view, qtbot, "5 kWh")
    QTest.keyClick(line, KEY.Key_Return)
    assert editor() is line
    assert isinstance(line, QLineEdit)
    assert line.text() == "5 kWh"
    assert note(view).isVisible()
    assert "kWh" in note(view).text()
    assert workspace.document.undo_label == ""
    line.selectAll()
    QTest.keyClicks(line, "499")
    assert not note(view).isVisible()
    QTest.keyClick(line, KEY.Key_Return)
    assert workspace.state.library.packs[0].mass_kg == 499.0


def test_record_that_cannot_be_is_refused_at_the_cell(
    view: RecordTableView, qtbot: QtBot
) -> None:
    go_to(view, 0, "mass_kg")
    line = type_in(view, qtbot, "300")
    QTest.keyClick(line, KEY.Key_Return)
    assert editor() is line
    assert "more than the pack's mass" in note(view).text()


def test_refused_entry_is_not_lost_when_the_focus_leaves(
    view: RecordTableView, qtbot: QtBot
) -> None:
    go_to(view, 0, "mass_kg")
    line = type_in(view, qtbot, "12x")
    other = QLineEdit(view)
    other.show()
    with qtbot.waitSignal(view.problems_found) as told:
        other.setFocus()
    assert told.args is not None
    assert told.args[0] == "Not taken: 12x"
    index = view.table.index(0, view.table.column_place("mass_kg") or 0)
    assert index.data() == "498.1"
    assert index.data(Qt.ItemDataRole.EditRole) == "12x"
    assert index.data(Qt.ItemDataRole.ToolTipRole).startswith("Not taken: 12x.")
    assert line is not other


def test_escape_leaves_the_value_alone(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 0, "mass_kg")
    QTest.keyClick(type_in(view, qtbot, "1"), KEY.Key_Escape)
    assert workspace.document.undo_label == ""
    assert view.hasFocus()


def test_opening_and_closing_an_editor_is_no_edit(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    workspace.edit("lb", lambda s: s.with_study(mass_unit="lb", decimal_mark=","))
    go_to(view, 0, "mass_kg")
    QTest.keyClick(view, KEY.Key_F2)
    line = editor()
    assert isinstance(line, QLineEdit)
    assert line.text() == "1098,122528"
    QTest.keyClick(line, KEY.Key_Return)
    assert workspace.document.undo_label == "lb"


def test_choice_is_made_from_a_list(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 2, "energy_basis")
    QTest.keyClick(view, KEY.Key_F2)
    box = editor()
    assert isinstance(box, QComboBox)
    QTest.keyClicks(box, "u")
    QTest.keyClicks(box, "usable"[1:])
    QTest.keyClick(box, KEY.Key_Return)
    assert workspace.state.library.packs[2].energy_basis is EnergyBasis.USABLE


def test_derived_cell_cannot_be_edited(view: RecordTableView, qtbot: QtBot) -> None:
    go_to(view, 0, "density_wh_per_kg")
    QTest.keyClicks(view, "5")
    assert view.hasFocus()


@pytest.mark.parametrize("key", [KEY.Key_F2, KEY.Key_Space])
def test_boundary_asks_for_its_dialog(
    view: RecordTableView, qtbot: QtBot, key: Qt.Key
) -> None:
    go_to(view, 1, "boundary")
    with qtbot.waitSignal(view.dialog_requested):
        QTest.keyClick(view, key)


def test_enter_and_tab_move_without_editing(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    go_to(view, 0, "energy_kwh")
    QTest.keyClick(view, KEY.Key_Return)
    QTest.keyClick(view, KEY.Key_Tab)
    assert (view.currentIndex().row(), view.currentIndex().column()) == (1, 2)
    QTest.keyClick(view, KEY.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    assert view.currentIndex().row() == 0
    assert workspace.document.undo_label == ""
