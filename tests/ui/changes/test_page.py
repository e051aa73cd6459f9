"""The page: tree, kinds of changes, the table of changes, empty states, keys."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchpack.model.change import ChangeKind
from benchpack.model.library import Library
from benchpack.ui.pages.changes.changes_model import CHANGE, ON, SAVED, WORTH
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.pages.changes.shortcuts import SHORTCUTS
from benchpack.ui.pages.changes.subject_model import Selection
from benchpack.ui.pages.changes.subject_rows import RowKind
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import MakePage, changed_library
from tests.ui.conftest import Watch
from tests.ui.showing import focused, plain

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton
ALT, CTRL, SHIFT = MOD.AltModifier, MOD.ControlModifier, MOD.ShiftModifier
MakeWorkspace = Callable[[Library], Workspace]


def names(page: ChangesPage) -> list[str]:
    return [line.change.name for line in page.view.table.changes.lines]


def tree_place(page: ChangesPage, kind: RowKind, name: str) -> QPoint:
    tree = page.view.tree
    index = tree.items.indexes_of(kind, name)[0]
    tree.scrollTo(index)
    return tree.visualRect(index).center()


def click_item(
    page: ChangesPage,
    kind: RowKind,
    name: str,
    modifier: Qt.KeyboardModifier = MOD.NoModifier,
) -> None:
    viewport = page.view.tree.viewport()
    QTest.mouseClick(viewport, LEFT, modifier, tree_place(page, kind, name))


def said(page: ChangesPage, qtbot: QtBot, act: Callable[[], object]) -> str:
    with qtbot.waitSignal(page.workspace.notifier.said) as told:
        act()
    return str(told.args[0])


def test_the_proposal_shows_at_once(page: ChangesPage) -> None:
    assert names(page) == ["fewer lid screws", "lid in polymer", "duct goes"]
    lines = page.view.table.changes.lines
    assert plain(lines[0].saved) == "0.2 kg"
    assert plain(lines[1].saved_range) == "(-1.2 to 3.4)"
    assert lines[2].words == "switched off: remove: cable duct and duct clips"
    worth = page.view.table.changes.index(0, WORTH)
    assert plain(page.view.table.changes.texts(worth)[0]) == "6.44 EUR"
    assert plain(page.view.totals.figures["proposal saved"].text()).startswith("1.7 kg")


def test_the_tree_says_what_stays_and_what_was_taken(page: ChangesPage) -> None:
    items = page.view.tree.items

    def fate(kind: RowKind, name: str) -> str:
        return items.row_at(items.indexes_of(kind, name)[0]).fate

    assert fate(RowKind.PART, "cell") == "stays: approved with the vehicle"
    assert "assumed to close" in fate(RowKind.PART, "rest")
    assert fate(RowKind.JOINT, "lid screws") == "taken by fewer lid screws"
    assert fate(RowKind.PART, "lid panel") == "changed by lid in polymer"
    assert fate(RowKind.PART, "cable duct") == ""
    # A joint stands below each part that it joins.
    assert len(items.indexes_of(RowKind.JOINT, "lid screws")) == 2


def test_a_click_on_the_box_switches_and_undo_switches_back(page: ChangesPage) -> None:
    table = page.view.table
    box = table.visualRect(table.changes.index(1, ON))
    before = plain(page.view.totals.figures["proposal saved"].text())
    place = QPoint(box.left() + 10, box.center().y())
    QTest.mouseClick(table.viewport(), LEFT, MOD.NoModifier, place)
    assert [one.is_on for one in page.workspace.state.changes] == [True, False, False]
    assert plain(page.view.totals.figures["proposal saved"].text()) == "0.2 kg"
    page.workspace.undo()
    assert [one.is_on for one in page.workspace.state.changes] == [True, True, False]
    assert plain(page.view.totals.figures["proposal saved"].text()) == before


def test_space_switches_the_current_change(page: ChangesPage) -> None:
    page.view.table.go_to("duct goes")
    page.view.table.setFocus()
    QTest.keyClick(page.view.table, KEY.Key_Space)
    assert page.workspace.state.changes[2].is_on
    assert page.view.table.current == "duct goes"


def test_alt_and_arrows_move_a_change(page: ChangesPage) -> None:
    page.view.table.go_to("duct goes")
    page.view.table.setFocus()
    QTest.keyClick(page.view.table, KEY.Key_Up, ALT)
    assert names(page) == ["fewer lid screws", "duct goes", "lid in polymer"]
    assert page.view.table.current == "duct goes"
    QTest.keyClick(page.view.table, KEY.Key_Down, ALT)
    QTest.keyClick(page.view.table, KEY.Key_Down, ALT)
    assert names(page) == ["fewer lid screws", "lid in polymer", "duct goes"]
    page.workspace.undo()
    page.workspace.undo()
    assert names(page) == ["fewer lid screws", "lid in polymer", "duct goes"]


def test_a_change_is_dropped_into_another_place(page: ChangesPage) -> None:
    table = page.view.table
    data = table.changes.mimeData([table.changes.index(0, CHANGE)])
    rect = table.visualRect(table.changes.index(1, CHANGE))
    place = QPointF(rect.center().x(), rect.bottom() - 2)
    table.dropEvent(drop(data, place))
    assert names(page)[:2] == ["lid in polymer", "fewer lid screws"]


def drop(data: QMimeData, place: QPointF) -> QDropEvent:
    action = Qt.DropAction.MoveAction
    return QDropEvent(place, action, data, LEFT, MOD.NoModifier)


def test_parts_dragged_onto_a_kind_make_a_change(page: ChangesPage) -> None:
    tree = page.view.tree
    index = tree.items.indexes_of(RowKind.PART, "tray floor")[0]
    assert tree.items.flags(index) & Qt.ItemFlag.ItemIsDragEnabled
    data = tree.items.mimeData([index])
    button = page.kinds.buttons[ChangeKind.SUBSTITUTE]
    enter = QDragEnterEvent(
        QPoint(4, 4), Qt.DropAction.CopyAction, data, LEFT, MOD.NoModifier
    )
    button.dragEnterEvent(enter)
    assert enter.isAccepted()
    button.dropEvent(drop(data, QPointF(4, 4)))
    made = page.workspace.state.changes[-1]
    assert (made.name, made.parts) == ("substitute tray floor", ("tray floor",))


def test_several_are_chosen_and_a_key_makes_the_change(page: ChangesPage) -> None:
    click_item(page, RowKind.PART, "lid panel")
    click_item(page, RowKind.PART, "lid stiffener", CTRL)
    assert page.view.tree.selection().parts == ("lid panel", "lid stiffener")
    assert page.view.chosen.text().startswith("2 parts chosen")
    QTest.keyClick(page.view.tree, KEY.Key_I, ALT)
    made = page.workspace.state.changes[-1]
    assert made.kind is ChangeKind.INTEGRATE
    assert made.into == "lid panel in one piece"
    assert page.view.table.current == made.name
    assert page.workspace.document.undo_label == f"change {made.name}"


def test_a_new_change_asks_for_what_it_lacks(page: ChangesPage) -> None:
    click_item(page, RowKind.PART, "tray floor")
    page.kinds.buttons[ChangeKind.SUBSTITUTE].click()
    assert focused() is page.view.panel.form.rows["material"].editor
    line = page.view.table.changes.lines[-1]
    assert line.words.startswith("not complete: It names no new material.")
    assert "no new material" in page.view.panel.form.rows["material"].error_text


def test_what_stays_refuses_with_its_reason(page: ChangesPage, qtbot: QtBot) -> None:
    click_item(page, RowKind.PART, "cell")
    index = page.view.tree.items.indexes_of(RowKind.PART, "cell")[0]
    assert not page.view.tree.items.flags(index) & Qt.ItemFlag.ItemIsDragEnabled
    told = said(page, qtbot, page.kinds.buttons[ChangeKind.REMOVE].click)
    assert "cell stays: approved with the vehicle" in told
    assert len(page.workspace.state.changes) == 3


def test_a_kind_without_a_selection_says_what_to_choose(
    page: ChangesPage, qtbot: QtBot
) -> None:
    page.view.tree.choose(Selection())
    assert "two parts" in said(
        page, qtbot, page.kinds.buttons[ChangeKind.INTEGRATE].click
    )
    page.kinds.buttons[ChangeKind.ADD].click()
    assert page.workspace.state.changes[-1].into == "new part"


def test_every_kind_can_be_made(page: ChangesPage) -> None:
    wanted = Selection(("lid panel", "lid stiffener"), ("lid screws",))
    for kind in ChangeKind:
        page.actions_of_change.make(kind, wanted)
        assert page.workspace.state.changes[-1].kind is kind
        assert page.view.table.current == page.workspace.state.changes[-1].name


def test_the_later_of_two_is_refused_and_names_the_other(page: ChangesPage) -> None:
    page.actions_of_change.make(ChangeKind.REMOVE, Selection(joints=("lid screws",)))
    words = page.view.table.changes.lines[-1].words
    assert words.startswith("refused:")
    assert "fewer lid screws" in words


def test_copy_and_removal(page: ChangesPage) -> None:
    page.view.table.go_to("fewer lid screws")
    page.view.table.setFocus()
    QTest.keyClick(page.view.table, KEY.Key_D, CTRL | SHIFT)
    made = page.workspace.state.changes[-1]
    assert (made.name, made.is_on) == ("fewer lid screws, copy", False)
    page.view.table.setFocus()
    QTest.keyClick(page.view.table, KEY.Key_Delete)
    assert len(page.workspace.state.changes) == 3
    page.workspace.undo()
    assert page.workspace.state.changes[-1].name == made.name


def test_f1_belongs_to_the_figure_in_the_cell(page: ChangesPage) -> None:
    table = page.view.table
    table.setCurrentIndex(table.changes.index(1, WORTH))
    assert (table.explain_key, table.explain_record) == (
        "change net worth",
        "lid in polymer",
    )
    table.setCurrentIndex(table.changes.index(2, SAVED))
    assert table.explain_key == "proposal saved"


def test_f1_in_the_tree_belongs_to_the_joint(page: ChangesPage) -> None:
    tree = page.view.tree
    click_item(page, RowKind.JOINT, "duct clips")
    assert tree.explain_key == "joint mass"
    with_record = tree.explain_record
    assert "duct clips" in with_record
    click_item(page, RowKind.PART, "lid panel")
    assert (tree.explain_key, tree.explain_record) == ("proposal mass", "")


def test_escape_chooses_nothing(page: ChangesPage) -> None:
    click_item(page, RowKind.PART, "lid panel")
    QTest.keyClick(page.view.tree, KEY.Key_Escape)
    assert page.view.tree.selection() == Selection()
    assert page.view.chosen.text().startswith("Choose parts or joints")


def test_a_worth_that_passes_touches_the_worth_alone(page: ChangesPage) -> None:
    changes, results = page.view.table.changes, page.desk.results
    worth = changes.index(0, WORTH)
    before = changes.texts(worth)
    page.workspace.preview(
        "worth",
        lambda state: state.with_study(
            worth_low_per_kg=5.0, worth_likely_per_kg=9.0, worth_high_per_kg=12.0
        ),
    )
    assert changes.texts(worth) != before
    assert page.desk.results is results
    shown = plain(page.view.totals.figures["proposal net worth"].text())
    page.workspace.settle("worth")
    assert page.desk.results is not results
    assert plain(page.view.totals.figures["proposal net worth"].text()) == shown


def test_f6_goes_round_and_comes_back(page: ChangesPage) -> None:
    page.view.tree.setFocus()
    stops = []
    for _ in range(4):
        QTest.keyClick(focused(), KEY.Key_F6)
        stops.append(focused())
    assert stops[0] is page.view.table
    assert page.view.panel.isAncestorOf(stops[1])
    assert page.view.outcome.isAncestorOf(stops[2])
    assert stops[3] is page.view.tree


def test_without_changes_a_sentence_and_a_button(
    make_workspace: MakeWorkspace, make_page: MakePage
) -> None:
    page = make_page(make_workspace(replace(changed_library(), changes={})))
    assert page.view.stack.currentWidget() is page.view.empty
    page.view.add_button.click()
    assert page.view.stack.currentWidget() is page.view.table
    assert len(page.workspace.state.changes) == 1


def test_without_a_subject_or_packs_the_page_says_so(
    make_workspace: MakeWorkspace, make_page: MakePage, qtbot: QtBot
) -> None:
    library = changed_library()
    study = replace(library.studies[0], subject="Heron 99")
    page = make_page(make_workspace(replace(library, studies=(study,))))
    assert page.empty.isVisible()
    assert "Choose a subject" in page.empty.sentence.text()
    bare = make_page(make_workspace(Library()))
    assert "no packs" in bare.empty.sentence.text()
    with qtbot.waitSignal(bare.demo_requested):
        bare.demo_button.click()


def test_without_parts_the_tree_is_empty_and_adding_still_works(
    make_workspace: MakeWorkspace, make_page: MakePage
) -> None:
    library = replace(changed_library(), parts={}, joints={}, changes={})
    page = make_page(make_workspace(library))
    assert page.view.tree.items.rowCount() == 0
    assert "No parts" in page.view.chosen.text()
    page.kinds.buttons[ChangeKind.ADD].click()
    assert len(page.workspace.state.changes) == 1


def test_cautions_stand_on_the_page(page: ChangesPage) -> None:
    said = page.whole.cautions.text()
    assert page.whole.cautions.isVisible()
    for words in ("trained and authorised", "never a validation", "UN R100"):
        assert words in said


def test_a_place_that_a_problem_names_is_found(page: ChangesPage) -> None:
    page.tabs.setCurrentIndex(1)
    page.go_to_place("lid in polymer", "material")
    assert page.tabs.currentIndex() == 0
    assert page.view.table.current == "lid in polymer"
    assert focused() is page.view.panel.form.rows["material"].editor


def test_every_key_is_bound_once(page: ChangesPage) -> None:
    keys = [key for key, _ in SHORTCUTS]
    assert len(keys) == len(set(keys))


def test_the_page_lets_go(
    make_page: MakePage, workspace: Workspace, watch_leaks: Watch
) -> None:
    page = make_page(workspace)
    watch_leaks(page)
    page.tabs.setCurrentIndex(2)
    QApplication.processEvents()
