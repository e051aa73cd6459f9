"""The page: what is shown, totals, pack, selection, empty states, keys."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.session.document import Document
from benchpack.session.state import State
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.pages.joints.shortcuts import SHORTCUTS
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import Watch, small_library
from tests.ui.joints.conftest import MakePage, joined_library, names
from tests.ui.showing import focused, plain

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton
CTRL, SHIFT = MOD.ControlModifier, MOD.ShiftModifier
MakeWorkspace = Callable[[Library], Workspace]


def place_of(page: JointsPage, row: int, key: str = "name") -> QPoint:
    column = page.table.table.column_place(key)
    assert column is not None
    index = page.table.table.index(row, column)
    page.table.scrollTo(index)
    return page.table.visualRect(index).center()


def click(
    page: JointsPage, row: int, modifier: Qt.KeyboardModifier = MOD.NoModifier
) -> None:
    QTest.mouseClick(page.table.viewport(), LEFT, modifier, place_of(page, row))


def shown_totals(page: JointsPage) -> list[str]:
    figures = [button.text() for button in page.totals.figures.values()]
    texts = [page.totals.which.text(), page.totals.counted.text(), *figures]
    return [plain(text) for text in texts]


def test_the_subject_is_shown_until_a_pack_is_selected(page: JointsPage) -> None:
    assert page.bar.picker.currentText() == "Avocet 81"
    assert names(page)[0] == "lid screws"
    page.workspace.select("Dunlin 74")
    assert page.bar.picker.currentText() == "Dunlin 74"
    assert names(page) == ["lid screws"]


def test_picking_a_pack_selects_it_everywhere(page: JointsPage, qtbot: QtBot) -> None:
    page.bar.picker.edit.setFocus()
    page.bar.picker.edit.selectAll()
    QTest.keyClicks(page.bar.picker.edit, "dunlin")
    with qtbot.waitSignal(page.workspace.selected) as told:
        QTest.keyClick(page.bar.picker.edit, KEY.Key_Return)
    assert told.args == ["Dunlin 74"]


def test_totals_are_those_of_all_of_the_selected_and_of_the_shown(
    page: JointsPage, qtbot: QtBot
) -> None:
    assert shown_totals(page) == [
        "All:",
        "167 pieces and 5.9 m of seal",
        "at least 0.94 kg",
        "at least 970 s",
        "at least 52 EUR",
    ]
    assert page.totals.fate.text() == "1 of 5 rows is carry-over and may not go."
    click(page, 2)
    assert shown_totals(page)[:2] == ["Selected:", "16 screws"]
    assert page.totals.fate.text() == "They have to stay: vehicle harness is fixed."
    click(page, 0, CTRL)
    assert page.totals.counted.text() == "100 screws"
    assert "connector plate screws" in page.totals.fate.text()
    QTest.keyClick(page.table, KEY.Key_Escape)
    assert page.totals.which.text() == "All:"
    page.bar.filter.line.setFocus()
    QTest.keyClicks(page.bar.filter.line, "family = gasket")
    qtbot.waitUntil(lambda: names(page) == ["lid gasket"])
    assert shown_totals(page)[:2] == ["Shown:", "5.9 m of seal"]
    assert page.bar.filter.count.text() == "1 of 5 rows"


def test_what_goes_with_a_part_is_said(page: JointsPage) -> None:
    click(page, 0)
    assert page.totals.fate.text() == "They go if the lid panel is moulded in."


def test_a_filter_that_cannot_be_read_says_why(page: JointsPage, qtbot: QtBot) -> None:
    QTest.keyClick(page.table, KEY.Key_F, CTRL)
    assert page.bar.filter.line.hasFocus()
    QTest.keyClicks(page.bar.filter.line, "count > many")
    qtbot.waitUntil(page.bar.filter.error.isVisible)
    assert len(names(page)) == 5


def test_every_key_of_the_sheet_is_bound(page: JointsPage) -> None:
    assert len({key for key, _ in SHORTCUTS}) == len(SHORTCUTS)
    QTest.keyClick(page.table, KEY.Key_F6)
    assert page.tabs.isAncestorOf(focused())
    QTest.keyClick(focused(), KEY.Key_F6)
    assert page.table.hasFocus()


def test_the_menu_offers_the_same(page: JointsPage) -> None:
    click(page, 1)
    page.table.customContextMenuRequested.emit(place_of(page, 1))
    menu = page.findChild(QMenu)
    assert menu is not None
    words = [action.text().partition("\t")[0] for action in menu.actions()]
    assert words[:4] == ["Add joint", "Edit joint", "Remove", "Show part"]
    assert "Paste as new rows" in words
    menu.close()


def test_a_pack_without_joints_says_so_and_can_be_counted(page: JointsPage) -> None:
    page.workspace.select("Knot 42")
    assert page.view.empty.isVisible()
    assert page.view.empty.sentence.text() == "No joints of Knot 42 are recorded yet."
    assert not page.bar.edit.isEnabled()
    QTest.mouseClick(page.view.empty_count_in, LEFT)
    assert not page.view.empty.isVisible()
    assert page.count_in.family.hasFocus()
    QTest.keyClick(focused(), KEY.Key_Escape)
    assert page.view.empty.isVisible()


def test_rows_are_pasted_into_a_pack_without_joints(page: JointsPage) -> None:
    page.workspace.select("Knot 42")
    block = "joint\tfamily\tcount\nlid clips\tclip\t12\nfloor spots\tspot weld\t40"
    QApplication.clipboard().setText(block)
    QTest.mouseClick(page.view.empty_paste, LEFT)
    assert names(page) == ["lid clips", "floor spots"]
    assert page.workspace.state.library.joints_of("Knot 42")[1].count == 40


def test_an_empty_library_offers_the_demo(
    make_page: MakePage, make_workspace: MakeWorkspace, qtbot: QtBot
) -> None:
    page = make_page(make_workspace(Library()))
    assert page.empty.isVisible()
    with qtbot.waitSignal(page.demo_requested):
        QTest.mouseClick(page.demo_button, LEFT)
    with qtbot.waitSignal(page.open_requested):
        QTest.mouseClick(page.open_button, LEFT)
    page.workspace.open_document(Document(State(joined_library(), "")))
    assert not page.empty.isVisible()
    assert len(names(page)) == 5


def test_another_library_forgets_what_was_shown(page: JointsPage) -> None:
    click(page, 3)
    page.workspace.open_document(Document(State(small_library(), "")))
    assert names(page) == ["lid screws", "lid inserts"]
    assert page.table.current_joint() is None
    assert page.totals.which.text() == "All:"


def drawings(page: JointsPage) -> list[str]:
    """Give a list that grows whenever cells of the table are told to be drawn."""
    heard: list[str] = []

    def changed(*_: object) -> None:
        heard.append("cells")

    def reset() -> None:
        heard.append("rows")

    page.table.table.dataChanged.connect(changed)
    page.table.table.modelReset.connect(reset)
    return heard


def test_a_hidden_page_waits_and_catches_up(page: JointsPage) -> None:
    heard = drawings(page)
    page.hide()
    page.joints.change("count", [(0, {"count": 80})])
    assert heard == []
    page.show()
    assert heard == ["cells"]
    assert "163 pieces" in page.totals.counted.text()


def test_ticks_of_the_worth_leave_the_table_alone(page: JointsPage) -> None:
    page.tabs.setCurrentWidget(page.tabs.reference)
    assert "at 3.00 EUR/kg" in plain(page.tabs.reference.worth.text())
    heard = drawings(page)

    def dearer(state: State) -> State:
        return state.with_study(worth_likely_per_kg=5.5)

    page.workspace.preview("worth", dearer)
    assert "at 5.50 EUR/kg" in plain(page.tabs.reference.worth.text())
    page.workspace.settle("worth")
    assert heard == []


def test_another_rate_changes_the_money(page: JointsPage) -> None:
    click(page, 2)
    before = page.totals.figures[next(iter(page.totals.figures))].text()
    money = list(page.totals.figures.values())[2]
    assert plain(money.text()) == "3.76 EUR"

    def dearer(state: State) -> State:
        return state.with_study(labour_rate_per_h=90.0)

    page.workspace.edit("labour rate", dearer)
    assert plain(money.text()) == "4.96 EUR"
    assert next(iter(page.totals.figures.values())).text() == before


def test_hidden_columns_and_order_are_kept(page: JointsPage) -> None:
    menu = page.table.column_menu()
    action = next(a for a in menu.actions() if a.data() == "note")
    action.trigger()
    place = page.table.table.column_place("note")
    assert place is not None
    assert page.table.isColumnHidden(place)
    page.refresh(page._stale)
    assert page.table.isColumnHidden(place)


def test_renaming_keeps_the_row_current(page: JointsPage) -> None:
    click(page, 1)
    page.joints.change("joint", [(1, {"name": "lid seal"})])
    current = page.table.current_joint()
    assert current is not None
    assert current.name == "lid seal"


def test_pounds_and_comma_are_the_study_s(page: JointsPage) -> None:
    def american(state: State) -> State:
        return state.with_study(mass_unit="lb", decimal_mark=",")

    page.workspace.edit("look", american)
    column = page.table.table.column_place("mass_each_g")
    assert column is not None
    assert page.table.table.index(0, column).data() == "8,70"
    assert "lb" in next(iter(page.totals.figures.values())).text()


def test_page_lets_go_of_everything(
    make_page: MakePage, workspace: Workspace, watch_leaks: Watch
) -> None:
    page = make_page(workspace)
    click(page, 0)
    page.joints.change("count", [(0, {"count": 3})])
    for place in range(page.tabs.count()):
        page.tabs.setCurrentIndex(place)
    watch_leaks(page)


@pytest.mark.parametrize("width", [912, 1120, 1700])
def test_buttons_and_words_have_their_room(page: JointsPage, width: int) -> None:
    page.resize(width, 560)
    QApplication.processEvents()
    assert page.width() == width
    for button in (page.bar.count_in, page.bar.remove, page.bar.export):
        assert button.width() >= button.minimumSizeHint().width()
    assert page.totals.counted.width() >= page.totals.counted.sizeHint().width()
    assert page.bar.filter.line.width() >= 80


def test_parts_that_are_renamed_carry_through(page: JointsPage) -> None:
    library = page.workspace.state.library
    parts = tuple(
        replace(part, name="lid") if part.name == "lid panel" else part
        for part in library.parts_of("Avocet 81")
    )

    def renamed(state: State) -> State:
        return state.with_library(parts={**library.parts, "Avocet 81": parts})

    page.workspace.edit("part", renamed)
    column = page.table.table.column_of("joins")
    assert column is not None
    assert "lid" in column.offers
