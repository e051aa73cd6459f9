"""Beside the table: pareto, checks, the reference, the seal line."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from benchpack.files.demo import demo_library
from benchpack.results.check import Grade
from benchpack.results.inventory import Grouping, Measure, inventory
from benchpack.session.state import State
from benchpack.ui.checks.checks_model import WORDS
from benchpack.ui.pages.joints.checks_tab import every_check, summary_text
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.palette import Scheme
from benchpack.ui.theme import apply_theme
from benchpack.ui.widgets.controls import named
from tests.ui.joints.conftest import names
from tests.ui.showing import plain

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


def bar_of(page: JointsPage, name: str) -> QPoint:
    chart = page.tabs.pareto.chart
    return chart.item_position(chart.item_names().index(name)).toPoint()


def click_bar(page: JointsPage, name: str) -> None:
    canvas = page.tabs.pareto.chart.parts.canvas.viewport()
    QTest.mouseClick(canvas, LEFT, pos=bar_of(page, name) - QPoint(2, 0))


def selected(page: JointsPage) -> list[str]:
    return [facts.joint.name for facts in page.table.selected_facts()]


def test_a_click_on_a_bar_selects_its_rows(page: JointsPage) -> None:
    click_bar(page, "socket screw")
    assert selected(page) == ["connector plate screws"]
    assert page.tabs.pareto.chart.selected == "socket screw"
    assert page.totals.which.text() == "Selected:"


def test_a_bar_whose_rows_are_filtered_out_brings_them_back(page: JointsPage) -> None:
    page.bar.filter.line.setText("family = clip")
    page.filter._on_filter_changed("family = clip")
    assert names(page) == ["harness clips"]
    click_bar(page, "gasket")
    assert selected(page) == ["lid gasket"]


def test_measure_and_grouping_are_chosen(page: JointsPage) -> None:
    pareto = page.tabs.pareto
    assert pareto.chart.spec.title == "2 of 3 kinds make up 89 % of the mass"
    pareto.measure.setCurrentText(Measure.COUNT)
    assert pareto.chart.item_names() == (
        "flange screw",
        "clip",
        "socket screw",
        "bracket thing",
    )
    pareto.grouping.setCurrentText(Grouping.JOINED_PAIR)
    assert pareto.chart.item_names()[0] == "lid panel and tray floor"
    click_bar(page, "lid panel and tray floor")
    assert selected(page) == ["lid screws", "lid gasket"]


def test_the_pareto_is_walked_and_picked_with_keys(page: JointsPage) -> None:
    QTest.keyClick(page.table, KEY.Key_F6)
    chart = page.tabs.pareto.chart
    QTest.keyClick(chart, KEY.Key_Down)
    QTest.keyClick(chart, KEY.Key_Down)
    QTest.keyClick(chart, KEY.Key_Return)
    assert selected(page) == [names(page)[1]] or len(selected(page)) == 1


def test_the_lane_of_the_share_belongs_to_its_row(page: JointsPage) -> None:
    chart = page.tabs.pareto.chart
    place = chart.item_position(1)
    place.setX(chart.plot.rect().right() - 10)
    assert chart.nearest(place) == 1


def test_checks_are_listed_worst_first_and_lead_to_their_joint(
    page: JointsPage,
) -> None:
    page.tabs.setCurrentWidget(page.tabs.checks)
    tab = page.tabs.checks
    ranks = [list(WORDS).index(check.grade) for check in tab.model.checks]
    assert ranks == sorted(ranks)
    counts = [check.grade for check in tab.model.checks]
    assert tab.summary.text() == summary_text(tab.model.checks)
    assert f"{counts.count(Grade.LOOK)} look" in tab.summary.text()
    records = [check.record for check in tab.model.checks]
    row = records.index("odd fixings")
    rect = tab.view.visualRect(tab.model.index(row, 0))
    QTest.mouseClick(tab.view.viewport(), LEFT, pos=rect.center())
    current = page.table.current_joint()
    assert current is not None
    assert current.name == "odd fixings"
    assert tab.detail.text().startswith("odd fixings: The family")
    assert tab.remedy.text().startswith("Use one of: hex screw")


def test_enter_on_a_check_goes_to_its_joint(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.checks)
    tab = page.tabs.checks
    tab.view.setFocus()
    tab.view.setCurrentIndex(tab.model.index(1, 0))
    QTest.keyClick(tab.view, KEY.Key_Return)
    current = page.table.current_joint()
    assert current is not None
    assert current.name == tab.model.checks[1].record
    assert page.table.hasFocus()


def test_a_check_stays_current_while_joints_change(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.checks)
    tab = page.tabs.checks
    row = [check.record for check in tab.model.checks].index("odd fixings")
    tab.view.setCurrentIndex(tab.model.index(row, 0))
    page.joints.change("count", [(0, {"count": 90})])
    current = tab.model.checks[tab.view.currentIndex().row()]
    assert current.record == "odd fixings"


def test_nothing_to_check_is_said(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.checks)
    page.workspace.select("Knot 42")
    tab = page.tabs.checks
    assert tab.summary.text().startswith("Nothing to check")
    assert tab.detail.text() == ""


@pytest.mark.parametrize("scheme", list(Scheme))
def test_checks_are_drawn_in_both_schemes(page: JointsPage, scheme: Scheme) -> None:
    from PySide6.QtWidgets import QApplication

    app = QApplication.instance()
    assert isinstance(app, QApplication)
    page.tabs.setCurrentWidget(page.tabs.checks)
    apply_theme(app, scheme)
    try:
        colours = page.tabs.checks.view.grab().toImage().pixelColor(2, 2).lightness()
        assert (colours < 128) == (scheme is Scheme.DARK)
    finally:
        apply_theme(app, Scheme.LIGHT)


def test_both_packs_stand_beside_each_other(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.reference)
    tab = page.tabs.reference
    assert not tab.view.isHidden()
    heads = [
        tab.model.headerData(place, Qt.Orientation.Horizontal) for place in range(4)
    ]
    assert heads == ["Figure", "Avocet 81", "Dunlin 74", "Difference"]
    rows = {
        tab.model.index(row, 0).data(): [
            plain(tab.model.index(row, column).data()) for column in (1, 2, 3)
        ]
        for row in range(tab.model.rowCount())
    }
    assert next(v for k, v in rows.items() if k.startswith("Pieces")) == [
        "167",
        "44",
        "+123",
    ]
    assert any("kWh" in label for label in rows)
    assert "fasteners weigh" in plain(tab.worth.text())
    noted = next(row for row, one in enumerate(tab.model.rows) if one.note)
    tab.view.setCurrentIndex(tab.model.index(noted, 0))
    assert tab.note.text() == tab.model.rows[noted].note


def test_the_reference_itself_is_not_compared_with_itself(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.reference)
    page.workspace.select("Dunlin 74")
    tab = page.tabs.reference
    assert tab.view.isHidden()
    said = "Dunlin 74 is the reference itself. Show another pack."
    assert tab.sentence.text() == said


@pytest.mark.parametrize(
    ("reference", "said"),
    [
        ("", "The study has no reference. Choose one in the headline."),
        ("Knot 42", "No joints of Knot 42, the reference, are recorded."),
    ],
)
def test_what_is_missing_of_the_reference_is_said(
    page: JointsPage, reference: str, said: str
) -> None:
    def other(state: State) -> State:
        return state.with_study(reference=reference)

    page.tabs.setCurrentWidget(page.tabs.reference)
    page.workspace.edit("reference", other)
    assert page.tabs.reference.sentence.text() == said


def test_hidden_tabs_are_worked_out_when_they_are_seen(page: JointsPage) -> None:
    checks = page.tabs.checks
    assert checks.model.checks == ()
    page.tabs.setCurrentWidget(checks)
    assert checks.model.checks


def test_many_joints_are_checked_in_the_background(page: JointsPage) -> None:
    joints = page.joints.joints()
    many = tuple(
        replace(joints[row % len(joints)], name=f"joint {row}") for row in range(450)
    )

    def grown(state: State) -> State:
        return state.with_library(joints={"Avocet 81": many})

    page.workspace.edit("joints", grown)
    page.tabs.setCurrentWidget(page.tabs.checks)
    assert len(page.tabs.checks.model.checks) > 200


def test_the_seal_line_is_that_of_the_current_joint(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.seal)
    page.table.go_to_joint("lid gasket")
    assert "lid gasket" in page.tabs.seal.outcome.title.text()


def test_the_tabs_have_names(page: JointsPage) -> None:
    widgets = [page.tabs.widget(place) for place in range(page.tabs.count())]
    assert all(widget is not None and widget.accessibleName() for widget in widgets)
    assert named(page.tabs, page.tabs.accessibleName()) is page.tabs


def test_screws_in_a_plastic_part_are_told_to_keep_their_clamp_load() -> None:
    library = demo_library()
    study = library.first_study()
    shown = inventory(library, study, "Dunlin 74")
    words = {check.record: check for check in every_check(library, shown, study)}
    check = words["service cover screws"]
    assert check.grade is Grade.LOOK
    assert "relaxes" in check.words or "relaxes" in check.remedy
