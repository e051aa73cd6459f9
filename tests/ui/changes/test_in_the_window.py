"""The page in the window: its place, its keys, names for screen readers, narrow."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QApplication,
    QWidget,
)
from pytestqt.qtbot import QtBot

from benchpack.model.change import ChangeKind
from benchpack.ui.catalogue import PAGES
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.main_window import MainWindow
from benchpack.ui.pages.changes.changes_model import SAVED
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.pages.changes.subject_model import Selection
from benchpack.ui.workspace import Workspace
from tests.ui.showing import focused, shown_window

TITLES = [entry.title for entry in PAGES]
KEY, CTRL = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def window(workspace: Workspace, qtbot: QtBot) -> MainWindow:
    """Give the window over the library with a proposal."""
    return shown_window(qtbot, workspace)


def changes_page(window: MainWindow) -> ChangesPage:
    window.go_to_page(TITLES.index("Changes"))
    page = window.page(TITLES.index("Changes"))
    assert isinstance(page, ChangesPage)
    QApplication.processEvents()
    return page


def test_the_page_stands_behind_the_joints(window: MainWindow) -> None:
    assert TITLES.index("Changes") == TITLES.index("Joints") + 1
    QTest.keyClick(window, KEY.Key_4, CTRL)
    page = window.stack.currentWidget()
    assert isinstance(page, ChangesPage)
    assert focused() is page.view.tree


def test_f1_explains_the_current_figure(window: MainWindow) -> None:
    page = changes_page(window)
    table = page.view.table
    table.setCurrentIndex(table.changes.index(1, SAVED))
    table.setFocus()
    QTest.keyClick(table, KEY.Key_F1)
    panel = window.findChild(ExplanationPanel)
    assert panel is not None
    assert "lid in polymer" in panel._label.text()


def test_a_problem_of_a_change_leads_to_it(window: MainWindow) -> None:
    window.workspace.place_requested.emit("lid in polymer", "material")
    page = window.stack.currentWidget()
    assert isinstance(page, ChangesPage)
    assert page.view.table.current == "lid in polymer"


def test_nothing_is_cut_in_a_narrow_window(window: MainWindow) -> None:
    page = changes_page(window)
    bar = page.kinds
    assert bar.mapTo(page, bar.rect().bottomRight()).x() <= page.rect().right()
    for button in bar.buttons.values():
        wanted = button.fontMetrics().horizontalAdvance(button.text()) + 8
        assert button.width() >= wanted
    chance, totals = page.view.outcome.chance, page.view.totals
    for figure in (*chance.figures.values(), *totals.figures.values()):
        if figure.isVisible():
            assert figure.width() >= figure.sizeHint().width()
    form = page.view.panel.form
    inner = form.widget()
    assert inner is not None
    assert inner.width() <= form.viewport().width()


def test_in_a_narrow_window_the_outcome_is_a_tab_below(window: MainWindow) -> None:
    view = changes_page(window).view
    assert view.panel.currentWidget() is view.panel.form
    place = view.panel.indexOf(view.outcome)
    assert place >= 0
    chance = view.outcome.chance.figures["chance of the target"].text()
    assert view.panel.tabText(place) == f"Outcome {chance}"
    assert view.table.isVisible()
    view.panel.setCurrentWidget(view.outcome)
    QApplication.processEvents()
    # It takes the whole height, and every step of the waterfall has its row.
    assert not view.table.isVisible()
    assert view.outcome.waterfall.isVisible()
    assert view.panel.height() == view.upright.height()
    view.panel.setCurrentWidget(view.panel.checks)
    QApplication.processEvents()
    assert view.table.isVisible()
    assert view.table.viewport().height() >= 2.5 * view.table.rowHeight(0)


def test_in_a_wide_window_the_outcome_stands_at_the_right(window: MainWindow) -> None:
    view = changes_page(window).view
    view.panel.setCurrentWidget(view.outcome)
    window.resize(1400, 800)
    QApplication.processEvents()
    assert view.panel.indexOf(view.outcome) == -1
    assert view.splitter.indexOf(view.outcome) == 2
    assert view.outcome.isVisible()
    assert view.table.isVisible()
    window.resize(1024, 700)
    QApplication.processEvents()
    assert view.splitter.count() == 2
    assert view.table.isVisible()


@pytest.mark.parametrize("width", [1024, 1400])
def test_f6_goes_round_in_either_arrangement(window: MainWindow, width: int) -> None:
    window.resize(width, 760)
    view = changes_page(window).view
    view.tree.setFocus()
    seen = []
    for _ in range(4):
        QTest.keyClick(focused(), KEY.Key_F6)
        stops = (view.outcome, view.panel, view.table, view.tree)
        at = next(one for one in stops if one is focused() or holds(one, focused()))
        seen.append(type(at).__name__)
    assert seen == ["ChangesTable", "ChangePanel", "Outcome", "SubjectTree"]


def holds(widget: QWidget, other: QWidget) -> bool:
    return widget.isAncestorOf(other)


@pytest.mark.parametrize(("width", "beside"), [(1024, True), (1600, False)])
def test_several_checks_are_in_sight(
    window: MainWindow, width: int, *, beside: bool
) -> None:
    window.resize(width, 700 if beside else 1100)
    page = changes_page(window)
    page.view.table.go_to("lid in polymer")
    tab = page.view.panel.checks
    page.view.panel.setCurrentWidget(tab)
    QApplication.processEvents()
    rows = tab.view.viewport().height() / tab.view.sizeHintForRow(0)
    assert rows >= 2.9
    assert (tab.detail.mapTo(tab, tab.detail.rect().topLeft()).x() > 100) == beside
    assert tab.sentence.isVisible()


def test_the_field_that_is_typed_in_stays_in_sight(window: MainWindow) -> None:
    """What the change comes to is said above the fields, and pushes them down."""
    page = changes_page(window)
    page.view.tree.choose(Selection(("lid stiffener",)))
    QTest.mouseClick(
        page.kinds.buttons[ChangeKind.SUBSTITUTE], Qt.MouseButton.LeftButton
    )
    form = page.view.panel.form
    editor = focused()
    assert form.isAncestorOf(editor)
    QTest.keyClicks(editor, "PP-LGF40")
    QTest.keyClick(editor, KEY.Key_Return)
    QApplication.processEvents()
    field = focused()
    assert form.isAncestorOf(field)
    top = field.mapTo(form.viewport(), field.rect().topLeft()).y()
    assert 0 <= top <= form.viewport().height() - field.height()


def test_every_control_has_a_name(window: MainWindow) -> None:
    page = changes_page(window)
    for tab in range(3):
        page.tabs.setCurrentIndex(tab)
        QApplication.processEvents()
        for widget in page.findChildren(QWidget):
            takes_focus = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
            parent = widget.parentWidget()
            inner = isinstance(parent, QAbstractScrollArea)
            if not widget.isVisible() or not takes_focus or inner:
                continue
            if isinstance(widget, QAbstractButton) and widget.text():
                continue
            spoken = QAccessible.queryAccessibleInterface(widget)
            name = spoken.text(QAccessible.Text.Name)
            assert name, f"{type(widget).__name__} of {parent}"
