"""Tab goes through the window as one reads it: headline, side list, page, the rest."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractItemView,
    QRadioButton,
    QTabBar,
    QTabWidget,
    QWidget,
)
from pytestqt.qtbot import QtBot

from benchpack.files.demo import demo_library
from benchpack.model.library import Library
from benchpack.ui.catalogue import PAGES
from benchpack.ui.main_window import MainWindow
from benchpack.ui.page import Page
from benchpack.ui.workspace import Workspace
from tests.ui.showing import focused, settle, shown_window

KEY, MOD = Qt.Key, Qt.KeyboardModifier
SIZES = [(1280, 800), (1024, 700)]
TITLES = [entry.title for entry in PAGES]
LINKS = 12
"""Presses after which Tab has left the links of one label."""
Landmarks = Callable[[MainWindow, Page], list[QWidget]]


@pytest.fixture(scope="module")
def demo() -> Library:
    return demo_library()


@pytest.fixture(params=SIZES, ids=["wide", "small"])
def window(
    request: pytest.FixtureRequest,
    qtbot: QtBot,
    make_workspace: Callable[[Library], Workspace],
    demo: Library,
) -> MainWindow:
    return shown_window(qtbot, make_workspace(demo), size=request.param)


def press_tab(*, back: bool = False) -> QWidget:
    """Press Tab until another widget has the focus, and give that."""
    before = focused()
    for _ in range(LINKS):
        if back:
            QTest.keyClick(focused(), KEY.Key_Backtab, MOD.ShiftModifier)
        else:
            QTest.keyClick(focused(), KEY.Key_Tab)
        if focused() is not before:
            return focused()
    raise AssertionError(f"Tab does not leave {before!r}")


def round_of(window: MainWindow) -> list[QWidget]:
    """Give where Tab stops from the first control of the headline round to it."""
    window.headline.subject.setFocus()
    stops = [focused()]
    while (stop := press_tab()) is not stops[0]:
        assert stop not in stops, f"Tab comes back to {stop!r}"
        stops.append(stop)
    return stops


def missed(window: MainWindow, stops: list[QWidget]) -> list[QWidget]:
    """Give what can be seen and takes the focus, but not from Tab."""
    views = [one for one in stops if isinstance(one, QAbstractItemView)]
    return [
        one
        for one in window.findChildren(QWidget)
        if one.isVisible()
        and one.isEnabled()
        and one.focusPolicy() & Qt.FocusPolicy.TabFocus
        and one.focusProxy() is None
        and not one.visibleRegion().isEmpty()
        and one not in stops
        and not isinstance(one, QRadioButton)  # the arrow keys go on to the others
        and not any(view.isAncestorOf(one) for view in views)
    ]


def go_to(window: MainWindow, title: str) -> Page:
    place = TITLES.index(title)
    QTest.keyClick(window, KEY(KEY.Key_1 + place), MOD.ControlModifier)
    settle()
    return window.page(place)


def packs_marks(window: MainWindow, page: Page) -> list[QWidget]:
    bar, panel = page.bar, page.panel  # type: ignore[attr-defined]  # PacksPage
    buttons = [bar.filter.line, bar.add, bar.remove, bar.columns, bar.weigh_in]
    return [*buttons, page.table, panel.tabs.tabBar()]  # type: ignore[attr-defined]  # PacksPage


def gap_marks(window: MainWindow, page: Page) -> list[QWidget]:
    return list(page.charts())  # type: ignore[attr-defined]  # GapPage


def joints_marks(window: MainWindow, page: Page) -> list[QWidget]:
    view = page.view  # type: ignore[attr-defined]  # JointsPage
    bar, pareto = view.bar, view.tabs.pareto
    above = [bar.picker, bar.filter.line, bar.count_in, bar.add, bar.export]
    beside = [view.tabs.tabBar(), pareto.measure, pareto.grouping, pareto.chart]
    return [*above, view.table, *beside]


def changes_marks(window: MainWindow, page: Page) -> list[QWidget]:
    view = page.view  # type: ignore[attr-defined]  # ChangesPage
    kinds = list(page.kinds.buttons.values())  # type: ignore[attr-defined]  # ChangesPage
    marks = [page.tabs, *kinds, view.tree, view.table, view.panel.tabBar()]  # type: ignore[attr-defined]  # ChangesPage
    if view.panel.indexOf(view.outcome) >= 0:
        return [*marks, view.panel.form]
    chance = list(view.outcome.chance.figures.values())
    known = [one for one in chance if one.isEnabled()]
    assert known
    return [*marks, view.panel.form, *known, view.outcome.tabs.tabBar()]


def brief_marks(window: MainWindow, page: Page) -> list[QWidget]:
    side, view = page.side, page.view  # type: ignore[attr-defined]  # BriefPage
    boxes = [box for box in side.choices.sections.values() if box.isEnabled()]
    files = [one for one in side.exports.buttons.values() if one.isEnabled()]
    last = [side.everything_button, view.on_button, view.preview]
    return [*boxes, *files, *last]


def worth_marks(window: MainWindow, page: Page) -> list[QWidget]:
    figures = [group.main for group in page.figures.groups]  # type: ignore[attr-defined]  # WorthPage
    row = page.assumptions.rows["programme_years"]  # type: ignore[attr-defined]  # WorthPage
    return [*figures, row.editor, page.tabs.tabBar()]  # type: ignore[attr-defined]  # WorthPage


MARKS: dict[str, Landmarks] = {
    "Packs": packs_marks,
    "Gap": gap_marks,
    "Joints": joints_marks,
    "Changes": changes_marks,
    "Worth": worth_marks,
    "Brief": brief_marks,
}


@pytest.mark.parametrize("title", TITLES)
def test_tab_goes_from_the_headline_over_the_side_list_through_the_page(
    window: MainWindow, title: str
) -> None:
    page = go_to(window, title)
    stops = round_of(window)
    assert missed(window, stops) == []
    button = window.side.findChild(QWidget, f"{title} page") or next(
        one
        for one in stops
        if window.side.isAncestorOf(one) and one.accessibleName() == f"{title} page"
    )
    assert len([one for one in stops if window.side.isAncestorOf(one)]) == 2
    head = [one for one in window.headline.focus_order() if one.isVisible()]
    marks = [*head, button, window.side.target, *MARKS[title](window, page)]
    assert set(marks) <= set(stops), [one for one in marks if one not in stops]
    places = [stops.index(one) for one in marks]
    assert places == sorted(places)
    assert places[: len(head)] == list(range(len(head)))
    assert page.isAncestorOf(stops[len(head) + 2])


@pytest.mark.parametrize("title", ["Packs", "Joints", "Changes", "Worth"])
def test_tab_misses_nothing_on_any_tab_of_a_page(
    window: MainWindow, title: str
) -> None:
    page = go_to(window, title)
    for tabs in page.findChildren(QTabWidget):
        for place in range(tabs.count()):
            if tabs.isVisible() and tabs.isTabVisible(place):
                tabs.setCurrentIndex(place)
                settle()
                assert missed(window, round_of(window)) == [], tabs.tabText(place)
        tabs.setCurrentIndex(0)


@pytest.mark.parametrize("place", [1, 2])
def test_tab_misses_nothing_of_materials_and_candidates(
    window: MainWindow, place: int
) -> None:
    page = go_to(window, "Changes")
    bar = page.tabs  # type: ignore[attr-defined]  # ChangesPage
    assert isinstance(bar, QTabBar)
    bar.setCurrentIndex(place)
    settle()
    stops = round_of(window)
    assert missed(window, stops) == []
    inner = [one for one in stops if page.isAncestorOf(one)]
    tab = (None, page.materials, page.candidates)[place]  # type: ignore[attr-defined]  # ChangesPage
    assert tab is not None
    at = inner.index(tab.table)
    above = tab.picker if place == 2 else tab.add_button
    assert inner.index(above) < at
    tab.setFocus(Qt.FocusReason.OtherFocusReason)
    assert focused() is tab.table


@pytest.mark.parametrize("title", TITLES)
def test_a_page_that_is_gone_to_hands_the_focus_on(
    window: MainWindow, title: str
) -> None:
    page = go_to(window, title)
    assert page.entry is not None
    assert focused() is page.entry or page.entry.isAncestorOf(focused())
    before = focused()
    press_tab()
    assert press_tab(back=True) is before


def test_what_is_below_the_page_comes_after_it(window: MainWindow) -> None:
    for title in TITLES:
        page = go_to(window, title)
        window.headline.warnings.click()
        settle()
        assert window.problems.isVisible()
        stops = round_of(window)
        below = [i for i, one in enumerate(stops) if window.problems.isAncestorOf(one)]
        inside = [i for i, one in enumerate(stops) if page.isAncestorOf(one)]
        assert below
        assert max(inside) < min(below), title
        window.problems.hide()


def test_an_empty_library_keeps_the_focus_on_its_page(
    qtbot: QtBot, make_workspace: Callable[[Library], Workspace]
) -> None:
    window = shown_window(qtbot, make_workspace(Library()))
    for title in ("Packs", "Joints", "Changes", "Brief"):
        page = go_to(window, title)
        assert focused() is page or page.isAncestorOf(focused())
        assert page.isAncestorOf(press_tab())
