"""The group of the study's dialog that the proposal is reckoned with."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QLineEdit, QRadioButton, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.study import Study
from benchpack.ui.dialogs.study import StudyDialog
from benchpack.ui.workspace import Workspace


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


def fill(dialog: StudyDialog) -> None:
    dialog.programme.kind.setCurrentText("facelift")
    texts = ("18000", "5.5", "6", "250000")
    for field, text in zip(dialog.programme.fields, texts, strict=True):
        type_into(field, text)


def test_the_starting_figures_are_shown(dialog: StudyDialog) -> None:
    assert [field.text() for field in dialog.programme.fields] == ["", "7", "8", ""]
    assert dialog.programme.kind.currentText() == "not stated"
    words = [label.text() for label in dialog.findChildren(QLabel)]
    assert "Interest a year" in words
    assert dialog.programme.discount.accessibleName() == "Interest a year"


def test_the_figures_are_kept_as_one_step_and_read_back(
    qtbot: QtBot, dialog: StudyDialog, workspace: Workspace
) -> None:
    fill(dialog)
    keep(dialog)
    study = workspace.state.study
    assert study.programme is ProgrammeKind.FACELIFT
    assert study.yearly_volume == 18000
    assert isinstance(study.yearly_volume, int)
    assert (study.programme_years, study.tooling_budget) == (5.5, 250000.0)
    assert study.discount_rate == pytest.approx(0.06, rel=1e-15)
    again = StudyDialog(workspace)
    qtbot.addWidget(again)
    shown = [field.text() for field in again.programme.fields]
    assert shown == ["18000", "5.5", "6", "250000"]
    assert again.programme.kind.currentText() == "facelift"
    workspace.undo()
    assert workspace.state.study.programme is ProgrammeKind.UNSTATED
    assert workspace.state.study.programme_years == Study().programme_years


def test_empty_means_the_own_volume_and_no_limit(
    qtbot: QtBot, dialog: StudyDialog, workspace: Workspace
) -> None:
    fill(dialog)
    keep(dialog)
    again = StudyDialog(workspace)
    qtbot.addWidget(again)
    again.show()
    type_into(again.programme.volume, "")
    type_into(again.programme.budget, "")
    keep(again)
    study = workspace.state.study
    assert (study.yearly_volume, study.tooling_budget) == (None, None)
    assert study.programme is ProgrammeKind.FACELIFT


@pytest.mark.parametrize(
    ("row", "text", "words"),
    [
        ("volume", "12.5", "Give a whole number above 0"),
        ("volume", "0", "Give a whole number above 0"),
        ("years", "0", "The programme runs 0 years. Give 0.1 to 100."),
        ("years", "", "missing"),
        ("discount", "120", "It has to lie between 0 and 100 %."),
        ("discount", "-1", "It has to lie between 0 and 100 %."),
        ("discount", "", "missing"),
        ("budget", "-5", "Give 0 or more"),
        ("budget", "b", "not a number"),
    ],
)
def test_what_is_wrong_is_said_in_the_group(
    dialog: StudyDialog, workspace: Workspace, row: str, text: str, words: str
) -> None:
    field = dialog.rows.fields[row]
    assert isinstance(field, QLineEdit)
    type_into(field, text)
    assert words in dialog.rows.errors[row].text()
    keep(dialog)
    assert dialog.isVisible()
    assert dialog.focusWidget() is field
    assert workspace.document.undo_label == ""


def test_the_group_follows_currency_and_decimal_mark(dialog: StudyDialog) -> None:
    type_into(dialog.programme.years, "5.5")
    dialog.units.currency_box.setCurrentText("CHF")
    dialog.units.mark_box.setCurrentText("comma")
    assert dialog.programme.years.text() == "5,5"
    assert "CHF" in [label.text() for label in dialog.findChildren(QLabel)]


def test_tab_goes_from_the_peers_down_the_group(dialog: StudyDialog) -> None:
    dialog.programme.kind.setFocus()
    seen: list[QWidget] = []
    for _ in range(5):
        QTest.keyClick(dialog, Qt.Key.Key_Tab)
        seen.append(dialog.focusWidget())
    assert seen == [*dialog.programme.fields, dialog.cancel_button]


def test_complaints_are_whole_beside_the_list_of_peers(dialog: StudyDialog) -> None:
    some = next(
        b for b in dialog.findChildren(QRadioButton) if b.text().startswith("Only")
    )
    QTest.mouseClick(some, Qt.MouseButton.LeftButton)
    for field, text in zip(
        dialog.programme.fields, ("12.5", "7", "130", ""), strict=True
    ):
        type_into(field, text)
    QTest.qWait(20)
    for row in ("volume", "discount"):
        label = dialog.rows.errors[row]
        assert label.height() >= label.heightForWidth(label.width())


def test_the_dialog_fits_the_smallest_window_with_all_wrong(
    dialog: StudyDialog,
) -> None:
    some = next(
        b for b in dialog.findChildren(QRadioButton) if b.text().startswith("Only")
    )
    QTest.mouseClick(some, Qt.MouseButton.LeftButton)
    for field in (*dialog.joining.fields, *dialog.programme.fields):
        type_into(field, "b")
    assert dialog.minimumSizeHint().width() <= 1024
    assert dialog.minimumSizeHint().height() <= 700
