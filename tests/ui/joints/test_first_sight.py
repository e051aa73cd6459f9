"""What one sees of the table without scrolling, and hears of cut cells."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, QPoint
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QApplication, QStyleOptionViewItem, QToolTip
from pytestqt.qtbot import QtBot

from benchpack.model.joint import JOINT_FIELDS
from benchpack.ui.catalogue import PAGES
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.main_window import MainWindow
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.workspace import Workspace
from tests.ui.joints.conftest import names

FIRST = ["joint", "designation", "count", "mass of all", "joins"]


def head_ends(page: JointsPage) -> dict[str, int]:
    """Give where each column ends, in pixels from the left of the table."""
    heads, table = page.table.horizontalHeader(), page.table.table
    return {
        column.title: heads.sectionViewportPosition(place) + heads.sectionSize(place)
        for place, column in enumerate(table.columns)
    }


def test_what_is_asked_first_is_seen_without_scrolling(
    workspace: Workspace, qtbot: QtBot
) -> None:
    window = MainWindow(workspace, PAGES)
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    window.show_page([entry.title for entry in PAGES].index("Joints"))
    QApplication.processEvents()
    page = window.stack.currentWidget()
    assert isinstance(page, JointsPage)
    room = page.table.viewport().width()
    seen = [title for title, end in head_ends(page).items() if end <= room]
    assert seen == FIRST
    assert page.table.table.columns[len(seen)].title == "to"


def test_the_form_keeps_the_order_of_the_record(page: JointsPage) -> None:
    page.table.go_to_joint("lid screws")
    page.actions_of_joint.edit_joint()
    dialog = page.window().findChild(RecordDialog)
    assert dialog is not None
    assert list(dialog.form.rows) == [f.name for f in JOINT_FIELDS[1:]]
    dialog.reject()


def hover(page: JointsPage, name: str, key: str) -> str:
    """Give what is shown over a cell."""
    model = page.table.table
    column = model.column_place(key)
    assert column is not None
    index = model.index(names(page).index(name), column)
    option = QStyleOptionViewItem()
    option.rect = page.table.visualRect(index)
    event = QHelpEvent(QEvent.Type.ToolTip, option.rect.center(), QPoint(40, 40))
    QToolTip.hideText()
    page.table.itemDelegate().helpEvent(event, page.table, option, index)
    return QToolTip.text()


@pytest.mark.parametrize(("width", "is_cut"), [(60, True), (300, False)])
def test_a_cell_that_is_cut_is_shown_in_full_on_hover(
    page: JointsPage, width: int, is_cut: bool
) -> None:
    column = page.table.table.column_place("designation")
    assert column is not None
    page.table.setColumnWidth(column, width)
    shown = hover(page, "lid gasket", "designation")
    assert ("silicone foam 12x6" in shown) is is_cut


def test_a_cut_name_is_shown_before_what_it_warns_of(page: JointsPage) -> None:
    page.table.setColumnWidth(0, 50)
    shown = hover(page, "connector plate screws", "name")
    first, second = shown.removeprefix("<span>").removesuffix("</span>").split("<br>")
    assert (first, second) == ("connector plate screws", "It has to stay.")
