"""The group of the study's dialog that joints are reckoned with."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QLineEdit
from pytestqt.qtbot import QtBot

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


def test_the_starting_figures_are_shown(dialog: StudyDialog) -> None:
    shown = [field.text() for field in dialog.joining.fields]
    assert shown == ["45", "60", "60", "0.12", "0.12"]


def test_the_figures_are_kept_as_one_step(
    dialog: StudyDialog, workspace: Workspace
) -> None:
    texts = ("38.5", "0", "240", "0.1", "0.14")
    for field, text in zip(dialog.joining.fields, texts, strict=True):
        type_into(field, text)
    keep(dialog)
    study = workspace.state.study
    assert (study.labour_rate_per_h, study.station_rate_per_h) == (38.5, 0.0)
    assert study.takt_time_s == 240.0
    assert (study.thread_friction, study.head_friction) == (0.1, 0.14)
    workspace.undo()
    assert workspace.state.study.takt_time_s == Study().takt_time_s


@pytest.mark.parametrize(
    ("place", "row", "text", "words"),
    [
        (0, "rates", "-1", "The labour rate is -1 EUR/h. Give 0 to 10000."),
        (1, "rates", "", "missing"),
        (2, "takt", "0", "The takt time is 0 s. Give more than 0, up to 86400."),
        (3, "friction", "1.2", "The thread friction is 1.2."),
        (4, "friction", "b", "not a number"),
    ],
)
def test_what_is_wrong_is_said_in_the_group(
    dialog: StudyDialog,
    workspace: Workspace,
    place: int,
    row: str,
    text: str,
    words: str,
) -> None:
    type_into(dialog.joining.fields[place], text)
    assert words in dialog.rows.errors[row].text()
    keep(dialog)
    assert dialog.isVisible()
    assert workspace.document.undo_label == ""


def test_the_rates_follow_currency_and_decimal_mark(dialog: StudyDialog) -> None:
    dialog.units.currency_box.setCurrentText("CHF")
    dialog.units.mark_box.setCurrentText("comma")
    assert dialog.joining.thread.text() == "0,12"
    labels = [label.text() for label in dialog.rows.findChildren(QLabel)]
    assert "CHF/h" in labels
    assert labels.count("Joining") == 1


def test_the_dialog_fits_the_smallest_window(dialog: StudyDialog) -> None:
    for field in dialog.joining.fields:
        type_into(field, "b")
    assert dialog.minimumSizeHint().width() <= 1024
    assert dialog.minimumSizeHint().height() <= 700
