"""The table: computed figures, editing, paste, fill down, undo, refusals."""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QCompleter, QLineEdit

from benchpack.errors import Problem
from benchpack.model.words import KnownBy
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.tables.marks import Mark
from benchpack.ui.tables.ordering import Direction
from tests.ui.joints.conftest import joint, names
from tests.ui.showing import focused

KEY, MOD, ROLE = Qt.Key, Qt.KeyboardModifier, Qt.ItemDataRole
CTRL_SHIFT = MOD.ControlModifier | MOD.ShiftModifier


def index_of(page: JointsPage, name: str, key: str) -> QModelIndex:
    model = page.table.table
    column = model.column_place(key)
    assert column is not None
    return model.index(names(page).index(name), column)


def cell(
    page: JointsPage, name: str, key: str, role: Qt.ItemDataRole = ROLE.DisplayRole
) -> Any:
    return index_of(page, name, key).data(role)


def go(page: JointsPage, name: str, key: str) -> None:
    page.table.setCurrentIndex(index_of(page, name, key))
    page.table.setFocus()


def type_into(page: JointsPage, name: str, key: str, text: str) -> None:
    go(page, name, key)
    QTest.keyClick(page.table, KEY.Key_F2)
    editor = focused()
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, KEY.Key_Return)


@pytest.fixture
def found(page: JointsPage) -> list[tuple[str, tuple[Problem, ...]]]:
    """Give what the table said of refused edits."""
    heard: list[tuple[str, tuple[Problem, ...]]] = []

    def hear(heading: str, problems: tuple[Problem, ...]) -> None:
        heard.append((heading, problems))

    page.workspace.notifier.problems_found.connect(hear)
    return heard


def test_a_computed_mass_is_marked_and_says_so(page: JointsPage) -> None:
    model = page.table.table
    name = "connector plate screws"
    assert cell(page, name, "mass_each_g") == "6.50"
    assert cell(page, name, "known_by") == "standard table"
    remark = model.remark(index_of(page, name, "mass_each_g"))
    assert remark.startswith("Computed, not weighed: standard table")
    assert remark in cell(page, name, "mass_each_g", ROLE.ToolTipRole)
    assert remark in cell(page, name, "mass_each_g", ROLE.AccessibleTextRole)
    assert model.remark(index_of(page, "lid screws", "mass_each_g")) == ""


def darkest(page: JointsPage, name: str, key: str) -> int:
    """Give how light the darkest pixel of a cell is, 0 for black."""
    index = index_of(page, name, key)
    page.table.scrollTo(index)
    rect = page.table.visualRect(index)
    image = page.table.viewport().grab(rect).toImage()
    places = itertools.product(range(image.width()), range(image.height()))
    return min(image.pixelColor(x, y).lightness() for x, y in places)


def test_a_computed_mass_is_set_in_the_second_colour(page: JointsPage) -> None:
    for key in ("mass_each_g", "known_by", "mass_all_g"):
        computed = darkest(page, "connector plate screws", key)
        entered = darkest(page, "lid screws", key)
        assert entered + 20 < computed < 160


def test_usual_time_and_cost_are_marked(page: JointsPage) -> None:
    tip = cell(page, "harness clips", "time_each_s", ROLE.ToolTipRole)
    assert tip == "Not entered: usual for a clip, 2.0 to 6.0 s a piece."
    tip = cell(page, "lid gasket", "cost_each", ROLE.ToolTipRole)
    assert tip == "Not entered: usual for a gasket, 1.000 to 5.000 EUR a metre."
    assert "Not entered" not in str(
        cell(page, "lid screws", "money_all", ROLE.ToolTipRole)
    )


def test_what_is_not_known_is_a_dash_with_its_remedy(page: JointsPage) -> None:
    assert cell(page, "harness clips", "mass_each_g") == "–"
    tip = cell(page, "harness clips", "mass_each_g", ROLE.ToolTipRole)
    assert "weigh 20 and divide" in tip


def test_computed_cells_open_empty_and_a_weighed_mass_replaces_them(
    page: JointsPage,
) -> None:
    name = "connector plate screws"
    assert cell(page, name, "mass_each_g", ROLE.EditRole) == ""
    go(page, name, "mass_each_g")
    QTest.keyClick(page.table, KEY.Key_F2)
    QTest.keyClick(focused(), KEY.Key_Return)
    assert joint(page, name).mass_each_g is None
    type_into(page, name, "mass_each_g", "6.7")
    assert joint(page, name).mass_each_g == 6.7
    assert page.table.table.remark(index_of(page, name, "mass_each_g")) == ""
    page.workspace.undo()
    assert joint(page, name).mass_each_g is None
    assert cell(page, name, "mass_each_g") == "6.50"


def test_a_computed_mass_is_not_filled_down_as_an_entry(page: JointsPage) -> None:
    page.joints.change("mass", [(3, {"mass_each_g": 1.2})])
    top = index_of(page, "connector plate screws", "mass_each_g")
    page.table.setCurrentIndex(top)
    page.table.setFocus()
    QTest.keyClick(page.table, KEY.Key_Down, MOD.ShiftModifier)
    QTest.keyClick(page.table, KEY.Key_D, MOD.ControlModifier)
    assert joint(page, "harness clips").mass_each_g is None


def test_a_copied_row_says_how_its_mass_is_known(page: JointsPage) -> None:
    go(page, "connector plate screws", "mass_each_g")
    QTest.keyClick(page.table, KEY.Key_Right, MOD.ShiftModifier)
    QTest.keyClick(page.table, KEY.Key_C, MOD.ControlModifier)
    assert QApplication.clipboard().text() == "6.5\tstandard table\n"


def test_carry_over_joints_carry_a_lock(page: JointsPage) -> None:
    assert page.table.table.mark(2) is Mark.CARRY_OVER
    assert page.table.table.mark(0) is None
    tip = cell(page, "connector plate screws", "name", ROLE.ToolTipRole)
    assert "It has to stay." in tip


def test_families_and_parts_are_offered(page: JointsPage) -> None:
    go(page, "odd fixings", "family")
    QTest.keyClick(page.table, KEY.Key_F2)
    editor = focused()
    assert isinstance(editor, QLineEdit)
    completer = editor.completer()
    assert isinstance(completer, QCompleter)
    editor.selectAll()
    QTest.keyClicks(editor, "solid")
    popup = completer.popup()
    assert popup is not None
    assert popup.isVisible()
    QTest.keyClick(popup, KEY.Key_Down)
    QTest.keyClick(popup, KEY.Key_Return)
    QApplication.processEvents()
    assert joint(page, "odd fixings").family == "solid rivet"
    joins = page.table.table.column_of("joins")
    assert joins is not None
    assert joins.offers == page.table.table.column_of("to").offers  # type: ignore[union-attr]  # it is there
    assert "connector plate" in joins.offers


def test_a_typed_family_is_taken_with_one_enter_though_the_list_is_open(
    page: JointsPage,
) -> None:
    go(page, "odd fixings", "family")
    QTest.keyClick(page.table, KEY.Key_F2)
    editor = focused()
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, "clip")
    popup = editor.completer().popup()
    assert popup is not None
    QTest.keyClick(popup, KEY.Key_Return)
    assert joint(page, "odd fixings").family == "clip"


def test_a_block_is_pasted_as_new_joints_and_taken_back(page: JointsPage) -> None:
    block = (
        "joint\tfamily\tdesignation\tcount\tmass [g]\n"
        "floor screws\tflow-drill screw\tM5x20\t60\t5,1\n"
        "side rivets\tblind rivet\tISO 15977 4.8x12\t64\t2,4"
    )
    QApplication.clipboard().setText(block)
    go(page, "lid screws", "name")
    start = page.workspace.state
    QTest.keyClick(page.table, KEY.Key_V, CTRL_SHIFT)
    assert names(page)[-2:] == ["floor screws", "side rivets"]
    assert joint(page, "side rivets").mass_each_g == 2.4
    page.workspace.undo()
    assert page.workspace.state == start
    assert len(names(page)) == 5


def test_a_pasted_row_without_a_name_is_called_by_what_it_is(page: JointsPage) -> None:
    QApplication.clipboard().setText("family\tdesignation\tcount\nnut\tEN 1661 M6\t6")
    page.table.setFocus()
    QTest.keyClick(page.table, KEY.Key_V, CTRL_SHIFT)
    assert names(page)[-1] == "nut EN 1661 M6"


def test_a_count_of_nothing_is_refused_with_its_row(
    page: JointsPage, found: list[tuple[str, tuple[Problem, ...]]]
) -> None:
    block = "joint\tfamily\tcount\na\tclip\t4\nb\tclip\t0\nc\tclip\tmany"
    QApplication.clipboard().setText(block)
    go(page, "lid screws", "name")
    QTest.keyClick(page.table, KEY.Key_V, CTRL_SHIFT)
    ((heading, problems),) = found
    assert heading == "Nothing was pasted of 4 × 3 cells"
    assert [problem.row for problem in problems] == [3, 4]
    assert problems[0].what == "count is 0."
    assert problems[0].remedy == "It has to be above zero."
    assert len(names(page)) == 5


def test_a_class_and_a_designation_that_are_not_known_say_so_at_their_row(
    page: JointsPage,
) -> None:
    block = (
        "joint\tfamily\tdesignation\tproperty class\tcount\n"
        "m\tsocket screw\tISO 4762 M6x20\t8.9\t4\n"
        "n\tsocket screw\tthe short ones\t8.8\t4"
    )
    QApplication.clipboard().setText(block)
    go(page, "lid screws", "name")
    QTest.keyClick(page.table, KEY.Key_V, CTRL_SHIFT)
    tip = cell(page, "m", "name", ROLE.ToolTipRole)
    assert "The property class '8.9' is not known. Use one of: 4.6" in tip
    tip = cell(page, "n", "name", ROLE.ToolTipRole)
    assert "'the short ones'" in tip
    assert "Weigh 20 and divide" in tip
    page.tabs.setCurrentWidget(page.tabs.checks)
    records = [one.record for one in page.tabs.checks.model.checks]
    assert {"m", "n"} <= set(records)


def test_a_refused_entry_stays_with_its_cell(page: JointsPage) -> None:
    type_into(page, "lid screws", "count", "0")
    editor = focused()
    assert isinstance(editor, QLineEdit)
    assert editor.text() == "0"
    page.bar.filter.line.setFocus()
    refused = page.table.table.refused(index_of(page, "lid screws", "count"))
    assert refused is not None
    assert refused.problem.what == "count is 0."
    assert joint(page, "lid screws").count == 84


def test_a_name_that_is_taken_is_refused(
    page: JointsPage, found: list[tuple[str, tuple[Problem, ...]]]
) -> None:
    problems = page.table.table.enter(
        index_of(page, "harness clips", "name"), "lid screws"
    )
    assert problems[0].what == "A joint is already called 'lid screws'."
    assert "harness clips" in names(page)


def test_fill_down_and_clear_are_one_step_each(page: JointsPage) -> None:
    go(page, "lid screws", "tightening")
    for _ in range(2):
        QTest.keyClick(page.table, KEY.Key_Down, MOD.ShiftModifier)
    QTest.keyClick(page.table, KEY.Key_D, MOD.ControlModifier)
    assert joint(page, "connector plate screws").tightening == "torque"
    QTest.keyClick(page.table, KEY.Key_Delete)
    assert joint(page, "lid screws").tightening == ""
    page.workspace.undo()
    page.workspace.undo()
    assert joint(page, "connector plate screws").tightening == ""
    assert joint(page, "lid screws").tightening == "torque"


def test_sorting_follows_the_figures_that_are_shown(page: JointsPage) -> None:
    page.table.sort_by("mass_all_g", Direction.FALLING)
    assert names(page)[:3] == ["lid screws", "lid gasket", "connector plate screws"]
    page.table.sort_by("mass_all_g", None)
    assert names(page)[3] == "harness clips"


def test_the_wording_of_a_weighed_mass_is_kept_apart(page: JointsPage) -> None:
    rows = {"mass_each_g": 6.6, "known_by": KnownBy.WEIGHED_BATCH}
    page.joints.change("mass", [(2, rows)])
    name = "connector plate screws"
    assert cell(page, name, "known_by") == "weighed batch"
    assert page.table.table.remark(index_of(page, name, "known_by")) == ""
