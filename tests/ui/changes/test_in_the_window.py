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

from benchpack.ui.catalogue import PAGES
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.main_window import MainWindow
from benchpack.ui.pages.changes.changes_model import SAVED
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import focused

TITLES = [entry.title for entry in PAGES]
KEY, CTRL = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def window(workspace: Workspace, qtbot: QtBot) -> MainWindow:
    """Give the window over the library with a proposal."""
    made = MainWindow(workspace, PAGES)
    qtbot.addWidget(made)
    made.resize(1024, 700)
    made.show()
    qtbot.waitExposed(made)
    made.activateWindow()
    QApplication.processEvents()
    return made


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
