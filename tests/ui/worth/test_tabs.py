"""What the tabs of the Worth page answer to: years, places on the map, sets."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from benchpack.model.worth_words import ValuedMass
from benchpack.results.worth_programme import Programme
from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.pages.worth.page import WorthPage
from benchpack.ui.pages.worth.sets_table import MOST_LETTERS
from benchpack.ui.pages.worth.taking_over import taken_over
from tests.ui.showing import focused, settle
from tests.ui.worth.conftest import MakePage, MakeWorkspace, open_tab, valued_library

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


def place_of(chart: Chart, x: float, y: float) -> QPoint:
    return plot_area(chart.plot).point(x, y).toPoint()


def click(chart: Chart, place: QPoint) -> None:
    QTest.mouseClick(chart.parts.canvas.viewport(), LEFT, pos=place)
    settle()


def double_click(chart: Chart, place: QPoint) -> None:
    canvas = chart.parts.canvas.viewport()
    QTest.mouseClick(canvas, LEFT, pos=place)
    QTest.mouseDClick(canvas, LEFT, pos=place)
    settle()


# Programme


def test_a_year_that_is_clicked_is_selected_in_the_table(page: WorthPage) -> None:
    open_tab(page, "Programme")
    chart, view = page.programme.chart, page.programme.view
    place = chart.item_position(3).toPoint() - QPoint(0, 3)
    click(chart, place)
    assert chart.selected == "year 3"
    view.show_view("table")
    assert view.table.currentIndex().row() == 3
    rows = {one.row() for one in view.table.selectionModel().selectedRows()}
    assert rows == {3}


def test_a_row_of_the_table_selects_its_year(page: WorthPage) -> None:
    open_tab(page, "Programme")
    chart, view = page.programme.chart, page.programme.view
    QTest.mouseClick(view.button, LEFT)
    view.table.setFocus()
    view.table.selectRow(0)
    QTest.keyClick(view.table, KEY.Key_Down)
    assert chart.selected == "year 1"
    page.workspace.edit("years", lambda s: s.with_study(programme_years=3.0))
    assert chart.selected == "year 1"
    page.workspace.edit("volumes", lambda s: s.with_study(start_year=2030))
    assert chart.selected == ""


# Map


def test_a_double_click_takes_over_worth_and_interest_as_one_step(
    page: WorthPage,
) -> None:
    open_tab(page, "Map")
    tab = page.map
    tab.upwards.setCurrentIndex(tab.upwards.findData("interest"))
    double_click(tab.chart, place_of(tab.chart, 100.0, 12.0))
    study = page.workspace.state.study
    assert study.worth_likely_per_kg == pytest.approx(100.0, abs=0.5)
    assert study.worth_likely_per_kg == round(study.worth_likely_per_kg, 2)
    assert study.worth_high_per_kg == study.worth_likely_per_kg
    assert study.worth_low_per_kg == 40.0
    assert study.discount_rate == pytest.approx(0.12, abs=0.003)
    here = tab.chart.spec.here
    assert here is not None
    assert here[0] == pytest.approx(study.worth_likely_per_kg)
    page.workspace.undo()
    before = page.workspace.state.study
    assert (before.worth_likely_per_kg, before.discount_rate) == (60.0, 0.08)


def test_what_is_no_assumption_of_the_study_is_named(
    page: WorthPage, qtbot: QtBot
) -> None:
    open_tab(page, "Map")
    chart = page.map.chart
    with qtbot.waitSignal(page.workspace.notifier.said) as told:
        double_click(chart, place_of(chart, 10.0, 50.0))
    assert told.args[0].startswith("Share captured: no figure of this study")
    study = page.workspace.state.study
    assert study.worth_likely_per_kg == pytest.approx(10.0, abs=0.6)
    assert study.share_captured == 1.0


def test_the_keyboard_takes_over_a_place(page: WorthPage) -> None:
    open_tab(page, "Map")
    chart = page.map.chart
    chart.setFocus()
    for key in (KEY.Key_Home, KEY.Key_Right, KEY.Key_Return):
        QTest.keyClick(chart, key)
    assert page.workspace.state.study.worth_likely_per_kg > 60.0


def test_two_sides_are_never_the_same(page: WorthPage) -> None:
    open_tab(page, "Map")
    tab = page.map
    tab.across.setFocus()
    tab.across.setCurrentIndex(tab.across.findData("share"))
    assert tab.upwards.currentData() == "worth"
    assert tab.chart.spec.x_label.startswith("Share of the proposal")
    assert tab.chart.spec.y_label.startswith("Worth")


def test_share_and_volume_are_taken_over_where_they_are_assumed(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    page = make_page(make_workspace(valued_library(valued_mass=ValuedMass.SHARE)))
    case = page.desk.case
    assert taken_over(case, "share", 0.456) == {"share_captured": 0.46}
    assert taken_over(case, "volume", 1.5) == {"yearly_volume": 30_000}
    assert taken_over(case, "volume", 0.0) == {"yearly_volume": 1}
    assert taken_over(case, "interest", 0.0834) == {"discount_rate": 0.083}
    assert taken_over(case, "tooling", 1.0) == {}
    by_year = make_page(make_workspace(valued_library(volumes=(5, 6))))
    assert taken_over(by_year.desk.case, "volume", 1.5) == {}
    assert taken_over(by_year.desk.case, "share", 0.5) == {}


def test_a_worth_per_pound_is_rounded_as_it_is_shown(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    page = make_page(make_workspace(valued_library(mass_unit="lb")))
    found = taken_over(page.desk.case, "worth", 10.0)
    assert 0.45359237 * found["worth_likely_per_kg"] == pytest.approx(4.54)


# Sets


def names(page: WorthPage) -> tuple[str, ...]:
    study = page.workspace.state.study
    sets = page.workspace.state.library.sets_of(study.name)
    return tuple(one.name for one in sets)


def test_the_sets_stand_beside_what_is_now(page: WorthPage) -> None:
    open_tab(page, "Sets")
    assert page.sets.chart.item_names() == ("now", "cautious", "dear money")
    model = page.sets.table.sets
    assert model.rowCount() == 3
    texts = [model.data(model.index(row, 1)) for row in range(3)]
    assert len(set(texts)) == 3


def test_the_present_assumptions_are_kept_with_the_keyboard(page: WorthPage) -> None:
    page.figures.worth.main.setFocus()
    both = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    QTest.keyClick(focused(), KEY.Key_K, both)
    assert focused() is page.sets.name
    assert not page.sets.keep.isEnabled()
    QTest.keyClicks(page.sets.name, "agreed")
    QTest.keyClick(page.sets.name, KEY.Key_Return)
    assert names(page) == ("cautious", "dear money", "agreed")
    assert page.sets.chart.spec.in_use == "agreed"
    assert page.sets.current == "agreed"
    assert page.sets.name.text() == ""


def test_a_set_is_used_with_enter_and_with_its_button(page: WorthPage) -> None:
    open_tab(page, "Sets")
    tab = page.sets
    tab.table.setFocus()
    tab.table.selectRow(1)
    QTest.keyClick(tab.table, KEY.Key_Return)
    assert page.workspace.state.study.worth_likely_per_kg == 50.0
    assert tab.chart.spec.in_use == "cautious"
    page.workspace.undo()
    assert page.workspace.state.study.worth_likely_per_kg == 60.0
    click(tab.chart, tab.chart.item_position(2).toPoint())
    assert tab.current == "dear money"
    QTest.mouseClick(tab.use, LEFT)
    assert page.workspace.state.study.discount_rate == 0.2


def test_a_set_is_renamed_in_the_table(page: WorthPage) -> None:
    open_tab(page, "Sets")
    tab = page.sets
    tab.table.setFocus()
    tab.table.selectRow(1)
    QTest.keyClick(tab.table, KEY.Key_F2)
    settle()
    (editor,) = tab.table.findChildren(QLineEdit)
    assert editor.text() == "cautious"
    QTest.keyClick(editor, KEY.Key_A, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(editor, "careful")
    QTest.keyClick(editor, KEY.Key_Return)
    settle()
    assert names(page) == ("careful", "dear money")
    assert tab.current == "careful"


def test_a_name_that_is_taken_is_refused(page: WorthPage, qtbot: QtBot) -> None:
    open_tab(page, "Sets")
    with qtbot.waitSignal(page.workspace.notifier.problems_found):
        page.sets.table.renamed.emit(1, "dear money")
    assert names(page) == ("cautious", "dear money")


def test_a_name_that_stands_for_the_present_is_refused(
    page: WorthPage, qtbot: QtBot
) -> None:
    open_tab(page, "Sets")
    page.sets.name.setText("Now")
    with qtbot.waitSignal(page.workspace.notifier.said) as told:
        page.sets.keep_set()
    assert "Choose another name" in told.args[0]
    with qtbot.waitSignal(page.workspace.notifier.said):
        page.sets.table.renamed.emit(1, " now ")
    assert names(page) == ("cautious", "dear money")


def test_a_set_that_is_kept_again_is_said_to_be_replaced(
    page: WorthPage, qtbot: QtBot
) -> None:
    page.sets.name.setText("cautious")
    with qtbot.waitSignal(page.workspace.notifier.said) as told:
        page.sets.keep_set()
    assert told.args[0] == "Replaced the set cautious."


def test_a_name_is_no_longer_than_there_is_room_for(page: WorthPage) -> None:
    tab = page.sets
    open_tab(page, "Sets")
    QTest.keyClicks(tab.name, "n" * (MOST_LETTERS + 5))
    assert len(tab.name.text()) == MOST_LETTERS
    tab.table.selectRow(1)
    QTest.keyClick(tab.table, KEY.Key_F2)
    editor = tab.table.findChild(QLineEdit)
    assert editor is not None
    editor.selectAll()
    QTest.keyClicks(editor, "n" * (MOST_LETTERS + 5))
    assert len(editor.text()) == MOST_LETTERS


def test_a_figure_of_a_set_is_explained_for_that_set(page: WorthPage) -> None:
    open_tab(page, "Sets")
    tab = page.sets
    row = tab.table.sets.shown.names.index("dear money")
    value = page.desk.outcomes()[row].case
    assert value is not None
    assert isinstance(value.programme, Programme)
    tab.table.setFocus()
    for ask in (tab.table, tab.chart):
        tab.table.setCurrentIndex(tab.table.sets.index(row, 1))
        QTest.keyClick(ask, KEY.Key_F1)
        panel = page.findChild(ExplanationPanel)
        assert panel is not None
        assert panel.isVisible()
        assert panel._figure is not None
        assert panel._figure.label.startswith("dear money: ")
        assert panel._figure.value == value.programme.npv.likely
        panel.close()


def test_what_a_set_assumes_is_no_figure_to_be_explained(
    page: WorthPage, qtbot: QtBot
) -> None:
    open_tab(page, "Sets")
    table = page.sets.table
    place = table.sets.shown.heads.index("interest")
    table.setFocus()
    table.setCurrentIndex(table.sets.index(1, place))
    with qtbot.waitSignal(page.workspace.notifier.said) as told:
        QTest.keyClick(table, KEY.Key_F1)
    assert "as it is assumed" in told.args[0]
    table.setCurrentIndex(table.sets.index(0, 1))
    with qtbot.waitSignal(page.workspace.explain_requested) as asked:
        QTest.keyClick(table, KEY.Key_F1)
    assert asked.args == ["programme value", ""]


def test_the_subject_is_not_taken_for_a_reference(
    page: WorthPage, qtbot: QtBot
) -> None:
    open_tab(page, "Peers")
    page.workspace.select(page.workspace.state.study.subject)
    with qtbot.waitSignal(page.workspace.explain_requested) as asked:
        QTest.keyClick(page.peers.chart, KEY.Key_F1)
    assert asked.args == ["value likely", ""]


def test_a_set_is_removed_with_del_and_comes_back(page: WorthPage) -> None:
    open_tab(page, "Sets")
    tab = page.sets
    tab.table.setFocus()
    tab.table.selectRow(2)
    QTest.keyClick(tab.table, KEY.Key_Delete)
    assert names(page) == ("cautious",)
    page.workspace.undo()
    assert names(page) == ("cautious", "dear money")


def test_what_is_now_is_no_set_to_be_changed(page: WorthPage) -> None:
    open_tab(page, "Sets")
    tab = page.sets
    tab.table.setFocus()
    tab.table.selectRow(0)
    assert not tab.use.isEnabled()
    assert not tab.remove.isEnabled()
    for key in (KEY.Key_Delete, KEY.Key_Return):
        QTest.keyClick(tab.table, key)
    assert names(page) == ("cautious", "dear money")


def test_another_measure_is_compared(page: WorthPage) -> None:
    open_tab(page, "Sets")
    tab = page.sets
    tab.measure.setFocus()
    before = tab.chart.spec.likely
    QTest.keyClick(tab.measure, KEY.Key_Down)
    assert tab.chart.spec.axis_label == "Worth per pack [EUR]"
    assert (tab.chart.spec.likely != before).any()


def test_sets_are_reckoned_once_while_a_worth_passes(
    page: WorthPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    open_tab(page, "Sets")
    before = page.desk.outcomes()

    def refuse(*_: object) -> None:
        raise AssertionError("the sets were reckoned again")

    monkeypatch.setattr("benchpack.ui.pages.worth.desk.set_outcomes", refuse)
    page.workspace.preview("worth", lambda s: s.with_study(worth_likely_per_kg=50.0))
    now, cautious, dear = page.desk.outcomes()
    assert now.case is page.desk.case
    assert (cautious.case, dear.case) == (before[1].case, before[2].case)
    assert (cautious.is_in_use, dear.is_in_use) == (True, False)
    page.workspace.settle("worth")


def test_the_table_of_sets_is_copied(page: WorthPage) -> None:
    open_tab(page, "Sets")
    page.sets.table.setFocus()
    QTest.keyClick(page.sets.table, KEY.Key_C, Qt.KeyboardModifier.ControlModifier)
    lines = QApplication.clipboard().text().splitlines()
    assert [line.split("\t")[0] for line in lines] == [
        "set",
        "now",
        "cautious",
        "dear money",
    ]


# Peers


def test_a_peer_that_is_clicked_is_selected_everywhere(page: WorthPage) -> None:
    open_tab(page, "Peers")
    chart = page.peers.chart
    place = list(chart.item_names()).index("Knot 42")
    click(chart, chart.item_position(place).toPoint())
    assert page.workspace.selection == "Knot 42"
    assert chart.selected == "Knot 42"
