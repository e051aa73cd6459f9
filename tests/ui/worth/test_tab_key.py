"""Tab reaches everything on the Worth page, in the order in which it stands."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from benchpack.ui.pages.worth.asked_figure import AskedFigure
from benchpack.ui.pages.worth.page import WorthPage
from benchpack.ui.workspace import Workspace
from tests.ui.showing import focused
from tests.ui.worth.conftest import MakeWorkspace, open_tab, valued_library

KEY = Qt.Key


@pytest.fixture
def frame() -> QWidget:
    """Give what holds the line and the page, for as long as a test runs."""
    return QWidget()


@pytest.fixture
def framed(
    frame: QWidget, qtbot: QtBot, make_workspace: MakeWorkspace
) -> tuple[QLineEdit, WorthPage]:
    """Give the page under a line, as it stands under the headline of its window."""
    workspace: Workspace = make_workspace(valued_library())
    line, page = QLineEdit(frame), WorthPage(workspace)
    column = QVBoxLayout(frame)
    column.addWidget(line)
    column.addWidget(page)
    qtbot.addWidget(frame)
    frame.resize(1120, 640)
    frame.show()
    qtbot.waitExposed(frame)
    frame.activateWindow()
    return line, page


def stops_from(first: QWidget, last: QWidget) -> list[QWidget]:
    """Press Tab on `first` until `last` has the focus; gives where it stopped."""
    first.setFocus()
    stops: list[QWidget] = []
    for _ in range(120):
        QTest.keyClick(focused(), KEY.Key_Tab)
        if focused() is last:
            return stops
        stops.append(focused())
    raise AssertionError("Tab does not come round")


def from_top_to_bottom(page: WorthPage, widgets: list[QWidget]) -> bool:
    tops = [one.mapTo(page, one.rect().topLeft()).y() for one in widgets]
    return tops == sorted(tops)


def test_tab_comes_from_the_headline_to_the_figures_then_the_assumptions(
    framed: tuple[QLineEdit, WorthPage],
) -> None:
    line, page = framed
    stops = stops_from(line, page.tabs.tabBar())
    figures = [one for one in stops if isinstance(one, AskedFigure)]
    assert stops[: len(figures)] == figures
    mains = [one for one in figures if any(one is g.main for g in page.figures.groups)]
    assert mains == [group.main for group in page.figures.groups]
    panel = page.assumptions
    body = panel.widget()
    assert body is not None
    fields = [one for one in stops if body.isAncestorOf(one)]
    editors = [row.editor for row in panel.rows.values() if row.editor.isEnabled()]
    assert set(editors) <= set(fields)
    assert {panel.volumes.view, panel.cycle.read} <= set(fields)
    page.assumptions.verticalScrollBar().setValue(0)
    assert from_top_to_bottom(page, [one for one in fields if one in editors])
    before = fields.index(panel.rows["programme_years"].editor)
    assert fields[before + 1] is panel.volumes.view


@pytest.mark.parametrize("title", ["Programme", "Price", "Target", "Map", "Sets"])
def test_tab_reaches_what_stands_above_the_chart_first(
    framed: tuple[QLineEdit, WorthPage], title: str
) -> None:
    line, page = framed
    open_tab(page, title)
    stops = stops_from(page.tabs.tabBar(), line)
    above: dict[str, list[QWidget]] = {
        "Map": [page.map.across, page.map.upwards],
        "Sets": [page.sets.measure, page.sets.name],
    }
    strip = getattr(page.tabs.currentWidget(), "figures", None)
    wanted = above.get(title) or list(strip.figures if strip else ())
    assert wanted
    assert stops[: len(wanted)] == wanted


@pytest.mark.parametrize("title", ["Fan", "Price", "Sets", "Target"])
def test_a_tab_that_is_given_the_focus_hands_it_to_its_main_thing(
    framed: tuple[QLineEdit, WorthPage], title: str
) -> None:
    _, page = framed
    open_tab(page, title)
    tab = page.views[
        [page.tabs.tabText(place) for place in range(page.tabs.count())].index(title)
    ]
    tab.setFocus(Qt.FocusReason.OtherFocusReason)
    entry = tab.entry
    assert entry is not None
    assert entry is focused() or entry.isAncestorOf(focused())


def test_the_page_hands_the_focus_to_its_tabs(
    framed: tuple[QLineEdit, WorthPage],
) -> None:
    line, page = framed
    line.setFocus()
    page.setFocus(Qt.FocusReason.OtherFocusReason)
    assert focused() is page.tabs.tabBar()
    assert page.tabs.tabBar().accessibleName()
    QTest.keyClick(focused(), KEY.Key_Right)
    assert page.tabs.currentWidget() is page.programme
