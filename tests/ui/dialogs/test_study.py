"""The dialog of a study's assumptions: what it checks, converts and keeps."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QRadioButton, QWidget
from pytestqt.qtbot import QtBot

from benchpack.ui.dialogs.number_field import NumberField, typed_number
from benchpack.ui.dialogs.studies import StudiesDialog
from benchpack.ui.dialogs.study import StudyDialog
from benchpack.ui.workspace import Workspace

LB = 0.45359237


@pytest.fixture
def dialog(qtbot: QtBot, workspace: Workspace) -> StudyDialog:
    made = StudyDialog(workspace)
    qtbot.addWidget(made)
    made.show()
    return made


def type_into(field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)


def keep(dialog: StudyDialog) -> None:
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)


def complaint(dialog: StudyDialog, row: str) -> str:
    return dialog.rows.errors[row].text()


def test_all_changes_are_one_step_of_undo(
    dialog: StudyDialog, workspace: Workspace
) -> None:
    type_into(dialog.name, "Lid study")
    type_into(dialog.worth[1], "3.5")
    type_into(dialog.share, "80")
    type_into(dialog.target, "25")
    type_into(dialog.exponent, "0.6")
    dialog.reason.setPlainText("agreed in spring")
    dialog.trend.setCurrentText("Theil-Sen")
    keep(dialog)
    study = workspace.state.study
    assert study.name == "Lid study"
    assert study.worth_per_kg == (1.0, 3.5, 6.0)
    assert study.share_captured == pytest.approx(0.8, rel=1e-15)
    assert (study.target_kg, study.exponent) == (25, 0.6)
    assert study.worth_reason == "agreed in spring"
    assert str(study.trend) == "Theil-Sen"
    assert len(workspace.state.library.studies) == 1
    workspace.undo()
    assert workspace.state.study.name == "Tray study"


def test_nothing_changed_is_no_edit(dialog: StudyDialog, workspace: Workspace) -> None:
    keep(dialog)
    assert not dialog.isVisible()
    assert workspace.document.undo_label == ""


@pytest.mark.parametrize(
    ("row", "text", "words"),
    [
        ("name", "", "no name"),
        ("exponent", "2", "between 0 and 1"),
        ("share", "120", "between 0 and 100"),
        ("share", "", "missing"),
        ("target", "-3", "zero or more"),
        ("exponent", "b", "not a number"),
    ],
)
def test_what_is_wrong_is_said_under_its_field(
    dialog: StudyDialog, workspace: Workspace, row: str, text: str, words: str
) -> None:
    field = dialog.rows.fields[row]
    assert isinstance(field, QLineEdit)
    type_into(field, text)
    assert words in complaint(dialog, row)
    keep(dialog)
    assert dialog.isVisible()
    assert dialog.focusWidget() is field
    assert workspace.document.undo_label == ""


def test_worth_has_to_rise(dialog: StudyDialog) -> None:
    type_into(dialog.worth[0], "4")
    assert "low, likely, high" in complaint(dialog, "worth")
    type_into(dialog.worth[0], "2")
    assert complaint(dialog, "worth") == ""


def test_pounds_show_the_same_study(dialog: StudyDialog, workspace: Workspace) -> None:
    """3 per kg is 3 x 0.45359237 per lb; the stored value does not move."""
    type_into(dialog.target, "10")
    dialog.units.mass_box.setCurrentText("lb")
    assert dialog.worth[1].text() == "1.36078"
    assert dialog.target.text() == "22.0462"
    keep(dialog)
    study = workspace.state.study
    assert (study.worth_likely_per_kg, study.target_kg) == (3.0, 10.0)
    assert study.mass_unit == "lb"


def test_what_is_typed_in_pounds_is_kept_in_kilograms(
    dialog: StudyDialog, workspace: Workspace
) -> None:
    dialog.units.mass_box.setCurrentText("lb")
    type_into(dialog.target, "22")
    type_into(dialog.worth[2], "5")
    keep(dialog)
    study = workspace.state.study
    assert study.target_kg == pytest.approx(22 * LB, rel=1e-15)
    assert study.worth_high_per_kg == pytest.approx(5 / LB, rel=1e-15)


def test_a_comma_is_shown_and_understood(dialog: StudyDialog) -> None:
    comma = dialog.units.mark_box.findData(",")
    dialog.units.mark_box.setCurrentIndex(comma)
    assert dialog.exponent.text() == "0,5"
    type_into(dialog.exponent, "0,4")
    tried = dialog.attempt()
    assert tried.study is not None
    assert tried.study.exponent == 0.4
    assert tried.study.decimal_mark == ","


def test_a_currency_code_is_checked(dialog: StudyDialog) -> None:
    dialog.units.currency_box.setEditText("euro")
    assert "three capital letters" in complaint(dialog, "currency")
    dialog.units.currency_box.setEditText("sek")
    assert complaint(dialog, "currency") == ""
    assert dialog.units.currency() == "SEK"


def test_peers_are_ticked_filtered_and_kept(
    dialog: StudyDialog, workspace: Workspace
) -> None:
    some = next(
        b for b in dialog.findChildren(QRadioButton) if b.text().startswith("Only")
    )
    QTest.mouseClick(some, Qt.MouseButton.LeftButton)
    listed = dialog.peers.list
    box = next(
        f
        for f in dialog.findChildren(QLineEdit)
        if f.accessibleName() == "Filter the peers"
    )
    QTest.keyClicks(box, "CURL")
    assert listed.model().rowCount() == 1
    listed.setCurrentIndex(listed.model().index(0, 0))
    QTest.keyClick(listed, Qt.Key.Key_Space)
    box.clear()
    keep(dialog)
    assert workspace.state.study.peers == ("Dunlin 74", "Plover 92")


def test_no_peer_at_all_is_refused(dialog: StudyDialog) -> None:
    some = next(
        b for b in dialog.findChildren(QRadioButton) if b.text().startswith("Only")
    )
    QTest.mouseClick(some, Qt.MouseButton.LeftButton)
    untick = next(
        b
        for b in dialog.peers.findChildren(type(dialog.accept_button))
        if b.text() == "Untick listed"
    )
    QTest.mouseClick(untick, Qt.MouseButton.LeftButton)
    assert "No pack is ticked" in complaint(dialog, "peers")


def test_tab_begins_at_the_name_and_ends_at_the_buttons(dialog: StudyDialog) -> None:
    assert dialog.focusWidget() is dialog.name
    seen: list[QWidget] = []
    focus = dialog.focusWidget()
    while focus not in seen:
        seen.append(focus)
        QTest.keyClick(dialog, Qt.Key.Key_Tab)
        focus = dialog.focusWidget()
    assert seen[:4] == [dialog.name, *dialog.worth]
    assert seen[-2:] == [dialog.cancel_button, dialog.accept_button]


def test_a_new_study_starts_from_the_one_on_screen(
    qtbot: QtBot, workspace: Workspace
) -> None:
    made = StudyDialog(workspace, as_new=True)
    qtbot.addWidget(made)
    made.show()
    assert made.name.text() == "Study 2"
    type_into(made.name, "Tray study")
    keep(made)
    assert "already called" in complaint(made, "name")
    type_into(made.name, "Winter")
    keep(made)
    names = [study.name for study in workspace.state.library.studies]
    assert names == ["Tray study", "Winter"]
    assert workspace.state.study.name == "Winter"
    assert workspace.state.study.subject == "Avocet 81"
    assert workspace.document.undo_label == "new study Winter"


def test_studies_can_be_shown_and_removed(qtbot: QtBot, workspace: Workspace) -> None:
    made = StudyDialog(workspace, as_new=True)
    qtbot.addWidget(made)
    keep(made)
    studies = StudiesDialog(workspace)
    qtbot.addWidget(studies)
    studies.show()
    assert studies.chosen() == "Study 2"
    QTest.keyClick(studies.list, Qt.Key.Key_Up)
    QTest.keyClick(studies.list, Qt.Key.Key_Return)
    assert workspace.state.study.name == "Tray study"
    again = StudiesDialog(workspace)
    qtbot.addWidget(again)
    again.show()
    QTest.mouseClick(again.remove_button, Qt.MouseButton.LeftButton)
    assert [study.name for study in workspace.state.library.studies] == ["Study 2"]
    assert workspace.state.study.name == "Study 2"
    assert not again.remove_button.isEnabled()


def test_rounding_for_the_screen_changes_nothing(qtbot: QtBot) -> None:
    field = NumberField("Worth")
    qtbot.addWidget(field)
    field.show_number(1 / 3, decimal_mark=",", factor=100)
    assert field.text() == "33,3333"
    assert field.number(decimal_mark=",") == 1 / 3
    field.setText("33")
    assert field.number(decimal_mark=",") == pytest.approx(0.33, rel=1e-15)
    field.setText("")
    assert field.number(decimal_mark=",") is None


def test_the_mark_of_the_study_decides_where_both_could_be() -> None:
    assert typed_number("1.234", decimal_mark=",") == 1234
    assert typed_number("1.234", decimal_mark=".") == 1.234
    assert typed_number("1,5", decimal_mark=".") == 1.5
