"""The page in the window: its key, F1, problems that lead here, parts, files."""

from __future__ import annotations

import csv
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QPushButton
from pytestqt.qtbot import QtBot

from benchpack.results.explain_joints import joint_record
from benchpack.ui.catalogue import PAGES
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.main_window import MainWindow
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.pages.packs.page import PacksPage
from benchpack.ui.pages.packs.parts_tab import PartsTab
from benchpack.ui.workspace import Workspace
from tests.ui.joints.conftest import joint, names
from tests.ui.showing import focused, settle, shown_window

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton
CTRL, CTRL_SHIFT = MOD.ControlModifier, MOD.ControlModifier | MOD.ShiftModifier
JOINTS = [entry.title for entry in PAGES].index("Joints")


@pytest.fixture
def window(qtbot: QtBot, workspace: Workspace) -> MainWindow:
    return shown_window(qtbot, workspace, size=(1280, 800))


@pytest.fixture
def page(window: MainWindow) -> JointsPage:
    """Give the page, gone to by its key."""
    QTest.keyClick(window, KEY.Key_3, CTRL)
    made = window.stack.currentWidget()
    assert isinstance(made, JointsPage)
    settle()
    return made


def to_cell(page: JointsPage, row: int, key: str) -> None:
    column = page.table.table.column_place(key)
    assert column is not None
    page.table.setFocus()
    page.table.setCurrentIndex(page.table.table.index(row, column))


def test_the_pages_are_numbered_in_their_order(page: JointsPage) -> None:
    assert [entry.title for entry in PAGES] == [
        "Packs",
        "Gap",
        "Joints",
        "Changes",
        "Worth",
        "Brief",
    ]
    assert page.table.hasFocus()


def test_f1_on_a_cell_explains_the_figure_of_its_joint(
    window: MainWindow, page: JointsPage, qtbot: QtBot
) -> None:
    to_cell(page, 2, "mass_each_g")
    with qtbot.waitSignal(window.workspace.explain_requested) as asked:
        QTest.keyClick(page.table, KEY.Key_F1)
    record = joint_record("Avocet 81", "connector plate screws")
    assert asked.args == ["joint mass", record]


@pytest.mark.parametrize("place", range(3))
def test_a_click_on_a_total_opens_where_it_comes_from(
    window: MainWindow, page: JointsPage, place: int, qtbot: QtBot
) -> None:
    button = list(page.totals.figures.values())[place]
    with qtbot.waitSignal(window.workspace.explain_requested) as asked:
        QTest.mouseClick(button, LEFT)
    assert asked.args == [
        ("joints mass", "joints time", "joints money")[place],
        "Avocet 81",
    ]
    assert window.status.remark.text() == ""
    to_cell(page, 0, "count")
    with qtbot.waitSignal(window.workspace.explain_requested) as asked:
        QTest.mouseClick(button, LEFT)
    assert asked.args[1] == joint_record("Avocet 81", "lid screws")


def test_f1_on_the_pareto_explains_its_measure(
    window: MainWindow, page: JointsPage, qtbot: QtBot
) -> None:
    page.tabs.pareto.measure.setCurrentText("time")
    page.tabs.pareto.chart.setFocus()
    with qtbot.waitSignal(window.workspace.explain_requested) as asked:
        QTest.keyClick(page.tabs.pareto.chart, KEY.Key_F1)
    assert asked.args == ["joints time", "Avocet 81"]


def test_a_problem_of_a_joint_leads_to_its_cell(
    window: MainWindow, qtbot: QtBot
) -> None:
    window.show_page(0)
    window.problems.place_requested.emit("harness clips", "mass each [g]")
    settle()
    page = window.stack.currentWidget()
    assert isinstance(page, JointsPage)
    current = page.table.current_joint()
    assert current is not None
    assert (current.name, page.table.current_key()) == ("harness clips", "mass_each_g")


def test_a_problem_of_all_joints_leads_to_their_pack(window: MainWindow) -> None:
    window.problems.place_requested.emit("Dunlin 74", "joints")
    page = window.stack.currentWidget()
    assert isinstance(page, JointsPage)
    assert page.bar.picker.currentText() == "Dunlin 74"


def test_a_filter_gives_way_to_the_joint_that_is_gone_to(
    window: MainWindow, page: JointsPage, qtbot: QtBot
) -> None:
    page.bar.filter.line.setText("gasket")
    QTest.keyClick(page.bar.filter.line, KEY.Key_Return)
    assert names(page) == ["lid gasket"]
    window.workspace.place_requested.emit("lid screws", "count")
    assert page.table.current_key() == "count"
    assert len(names(page)) == 5


def test_the_part_of_a_joint_is_shown_on_the_packs_page(
    window: MainWindow, page: JointsPage
) -> None:
    to_cell(page, 2, "name")
    QTest.keyClick(page.table, KEY.Key_P, CTRL_SHIFT)
    settle()
    packs = window.stack.currentWidget()
    assert isinstance(packs, PacksPage)
    assert isinstance(packs.panel.tabs.currentWidget(), PartsTab)
    part = packs.panel.parts.tree.current_part()
    assert part is not None
    assert part.name == "connector plate"


def test_the_other_part_is_shown_from_its_own_cell(
    window: MainWindow, page: JointsPage, qtbot: QtBot
) -> None:
    to_cell(page, 2, "to")
    with qtbot.waitSignal(window.workspace.place_requested) as asked:
        page.actions_of_joint.show_part()
    assert asked.args == ["tray floor", ""]


@pytest.mark.parametrize(
    ("row", "said"),
    [(3, "What harness clips joins is not recorded."), (4, "has no part gear.")],
)
def test_a_joint_without_a_part_says_so(
    window: MainWindow, page: JointsPage, row: int, said: str
) -> None:
    page.joints.change("joins", [(4, {"joins": "gear"})])
    to_cell(page, row, "name")
    page.actions_of_joint.show_part()
    assert said in window.status.remark.text()
    assert window.stack.currentWidget() is page


def dialog_of(page: JointsPage) -> RecordDialog:
    (dialog,) = page.window().findChildren(RecordDialog)
    return dialog


def test_a_joint_is_added_by_the_dialog(page: JointsPage) -> None:
    QTest.mouseClick(page.bar.add, LEFT)
    dialog = dialog_of(page)
    rows = dialog.form.rows
    QTest.keyClicks(rows["name"].editor, "floor spots")
    QTest.keyClicks(rows["family"].editor, "spot weld")
    rows["count"].set_text("0")
    dialog.accept_button.click()
    assert "count is 0. It has to be above zero." in rows["count"].error_text
    rows["count"].set_text("40")
    dialog.accept_button.click()
    assert joint(page, "floor spots").count == 40
    current = page.table.current_joint()
    assert current is not None
    assert current.name == "floor spots"


def test_all_fields_of_a_joint_are_edited(page: JointsPage) -> None:
    to_cell(page, 2, "name")
    QTest.keyClick(page.table, KEY.Key_Return, CTRL)
    dialog = dialog_of(page)
    assert dialog.form.rows["mass_each_g"].text == ""
    dialog.form.rows["count"].set_text("12")
    dialog.accept_button.click()
    assert joint(page, "connector plate screws").count == 12
    undo = page.workspace.document.undo_label
    assert undo == "count of connector plate screws"


def test_selected_joints_are_removed_and_come_back(page: JointsPage) -> None:
    page.table.select_rows([0, 3])
    QTest.keyClick(page.table, KEY.Key_Delete, CTRL_SHIFT)
    assert names(page) == ["lid gasket", "connector plate screws", "odd fixings"]
    QTest.keyClick(page.table, KEY.Key_Z, CTRL)
    assert len(names(page)) == 5


def test_the_joints_are_exported_with_their_computed_masses(
    window: MainWindow,
    page: JointsPage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    target = tmp_path / "joints.csv"

    def chosen(*_: Any) -> tuple[str, str]:
        return str(target), "CSV (*.csv)"

    monkeypatch.setattr(QFileDialog, "getSaveFileName", chosen)
    QTest.mouseClick(page.bar.export, LEFT)
    with target.open(encoding="utf-8", newline="") as file:
        rows = {row["joint"]: row for row in csv.DictReader(file)}
    assert float(rows["connector plate screws"]["mass each [g]"]) == 6.5
    assert rows["connector plate screws"]["known by"] == "standard table"
    assert target.with_name("joints.schema.json").exists()
    assert "Written" in window.status.remark.text()


def test_nothing_is_exported_of_a_pack_without_joints(
    window: MainWindow, page: JointsPage
) -> None:
    window.workspace.select("Knot 42")
    page.actions_of_joint.export_joints()
    assert window.status.remark.text() == "There are no joints to write."


def test_every_button_can_be_reached_by_tab(page: JointsPage) -> None:
    page.bar.picker.edit.setFocus()
    seen = set()
    for _ in range(30):
        QTest.keyClick(focused(), KEY.Key_Tab)
        seen.add(focused())
    for button in page.bar.findChildren(QPushButton):
        assert button in seen


@pytest.mark.parametrize("size", [(1024, 700), (1280, 800)])
def test_it_fits_the_window_with_every_tab_and_the_entry_bar(
    window: MainWindow, page: JointsPage, size: tuple[int, int]
) -> None:
    window.resize(*size)
    page.view.bar.count_in.click()
    for place in range(page.tabs.count()):
        page.tabs.setCurrentIndex(place)
        settle()
        assert (window.width(), window.height()) == size
        assert page.table.height() > 100
