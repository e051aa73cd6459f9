"""Volumes by year are typed, pasted, added and removed."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.session.state import State
from benchpack.ui.pages.worth.assumption_panel import AssumptionPanel
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import small_library
from tests.ui.showing import plain
from tests.ui.worth.panels import ENTER, shown_panel, study_of


@pytest.fixture
def library() -> Library:
    """Give the small library, whose study has no proposal and no volume."""
    return small_library()


@pytest.fixture
def panel(qtbot: QtBot, workspace: Workspace) -> AssumptionPanel:
    """Give the panel over the small library."""
    return shown_panel(qtbot, workspace)


def cell(panel: AssumptionPanel, row: int) -> str:
    return str(panel.volumes.model.index(row, 1).data()).replace("\u2009", "")


def paste(panel: AssumptionPanel, text: str, *, row: int = 0) -> None:
    QGuiApplication.clipboard().setText(text)
    view = panel.volumes.view
    view.setFocus()
    view.setCurrentIndex(panel.volumes.model.index(row, 1))
    QTest.keyClick(view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)


@pytest.fixture
def planned(panel: AssumptionPanel) -> AssumptionPanel:
    """Give the panel with an even plan of three years."""
    panel.workspace.edit(
        "plan",
        lambda state: state.with_study(
            yearly_volume=1000, programme_years=3.0, start_year=2030
        ),
    )
    return panel


def test_an_even_plan_is_shown_and_one_figure_makes_it_volumes_by_year(
    planned: AssumptionPanel,
) -> None:
    table = planned.volumes
    assert [table.model.year_at(row) for row in range(3)] == ["2030", "2031", "2032"]
    assert "evenly" in table.sum.text()
    view = table.view
    view.setFocus()
    view.setCurrentIndex(table.model.index(1, 1))
    QTest.keyClick(view, Qt.Key.Key_F2)
    editor = view.findChild(QLineEdit)
    assert editor is not None
    editor.selectAll()
    QTest.keyClicks(editor, "250")
    QTest.keyClick(editor, ENTER)
    assert study_of(planned).volumes == (1000, 250, 1000)
    assert planned.workspace.document.undo_label == "packs in 2031"
    assert plain(table.sum.text()) == "2 250 packs in 3 years"
    assert not planned.rows["yearly_volume"].isEnabled()
    assert not planned.rows["programme_years"].isEnabled()
    QTest.mouseClick(table.even, Qt.MouseButton.LeftButton)
    assert study_of(planned).volumes == ()
    assert planned.rows["programme_years"].isEnabled()


@pytest.mark.parametrize(
    ("years", "mark", "words"),
    [
        (3.5, ".", "3 500 packs in 3.5 years, evenly"),
        (3.5, ",", "3 500 packs in 3,5 years, evenly"),
        (1.0, ".", "1 000 packs in 1 year, evenly"),
        (4.0, ".", "4 000 packs in 4 years, evenly"),
    ],
)
def test_a_part_of_a_year_is_said_as_such(
    planned: AssumptionPanel, years: float, mark: str, words: str
) -> None:
    def change(state: State) -> State:
        return state.with_study(programme_years=years, decimal_mark=mark)

    planned.workspace.edit("years", change)
    assert plain(planned.volumes.sum.text()) == words


def test_a_bad_figure_keeps_its_editor_open(planned: AssumptionPanel) -> None:
    view = planned.volumes.view
    view.setFocus()
    view.setCurrentIndex(planned.volumes.model.index(0, 1))
    QTest.keyClick(view, Qt.Key.Key_F2)
    editor = view.findChild(QLineEdit)
    assert editor is not None
    editor.selectAll()
    QTest.keyClicks(editor, "many")
    QTest.keyClick(editor, ENTER)
    assert editor.isVisible()
    assert editor.text() == "many"
    assert study_of(planned).volumes == ()


@pytest.mark.parametrize(
    ("text", "volumes", "first"),
    [
        ("500\n600\n700\n800\n", (500, 600, 700, 800), 2030),
        ("500\t600\t700", (500, 600, 700), 2030),
        ("packs\n1,200\n1,300\n", (1200, 1300), 2030),
        ("2027\t10\n2028\t20\n", (10, 20), 2027),
        ("2027\t2028\t2029\n10\t20\t30\n", (10, 20, 30), 2027),
        ("year\tpacks\n2027\t10\n2028\t20\n2029\t5\n", (10, 20, 5), 2027),
    ],
)
def test_a_column_or_a_row_is_pasted_in_one_step(
    planned: AssumptionPanel, text: str, volumes: tuple[int, ...], first: int
) -> None:
    before = study_of(planned)
    paste(planned, text)
    assert study_of(planned).volumes == volumes
    assert study_of(planned).start_year == first
    assert planned.workspace.document.undo_label == "paste volumes"
    planned.workspace.undo()
    assert study_of(planned) == before


def test_a_block_goes_in_from_the_current_year_on(planned: AssumptionPanel) -> None:
    paste(planned, "1\n2\n3\n4\n5\n")
    paste(planned, "70\n80\n", row=3)
    assert study_of(planned).volumes == (1, 2, 3, 70, 80)
    paste(planned, "9\n9\n9\n", row=4)
    assert study_of(planned).volumes == (1, 2, 3, 70, 9, 9, 9)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("10\nmany\n", "Row 2 of the block"),
        ("10\n2.5\n", "whole number"),
        ("10\n-4\n", "zero or more"),
        ("1\t2\t3\n4\t5\t6\n7\t8\t9\n", "no row and no column"),
        ("1\n" * 101, "101 years"),
    ],
)
def test_a_block_that_cannot_be_taken_changes_nothing_and_says_why(
    planned: AssumptionPanel, text: str, said: str
) -> None:
    before = study_of(planned)
    paste(planned, text)
    assert said in planned.volumes.error_text
    assert study_of(planned) is before
    paste(planned, "10\n")
    assert planned.volumes.error_text == ""


def test_years_are_added_and_removed_with_keys_and_buttons(
    planned: AssumptionPanel,
) -> None:
    paste(planned, "10\n20\n30\n")
    view, model = planned.volumes.view, planned.volumes.model
    QTest.keyClick(view, Qt.Key.Key_Plus)
    assert study_of(planned).volumes == (10, 20, 30, 30)
    view.setCurrentIndex(model.index(1, 1))
    QTest.keyClick(view, Qt.Key.Key_Delete)
    assert study_of(planned).volumes == (10, 30, 30)
    QTest.mouseClick(planned.volumes.add, Qt.MouseButton.LeftButton)
    assert len(study_of(planned).volumes) == 4
    view.selectAll()
    QTest.keyClick(view, Qt.Key.Key_Delete)
    assert len(study_of(planned).volumes) == 4
    view.setCurrentIndex(model.index(3, 1))
    QTest.mouseClick(planned.volumes.remove, Qt.MouseButton.LeftButton)
    assert study_of(planned).volumes == (10, 30, 30)


def test_years_and_packs_are_copied_and_come_back(planned: AssumptionPanel) -> None:
    paste(planned, "10\n20\n30\n")
    view = planned.volumes.view
    QTest.keyClick(view, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == "2030\t10\n2031\t20\n2032\t30\n"
    before = study_of(planned)
    QTest.keyClick(view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert study_of(planned) == before


def test_without_a_volume_it_says_what_to_do(panel: AssumptionPanel) -> None:
    assert "No yearly volume is known" in panel.volumes.sum.text()
    paste(panel, "500\n600\n")
    assert study_of(panel).volumes == (500, 600)
    assert panel.volumes.model.year_at(1) == "year 2"
    assert cell(panel, 1) == "600"
