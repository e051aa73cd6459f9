"""The page: selection, filter, subject and reference, adding and removing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QPushButton
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.session.document import Document
from benchpack.session.settings import load_settings, settings_file
from benchpack.session.state import State
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.pages.packs.page import SHORTCUTS, PacksPage
from benchpack.ui.tables.ordering import Direction
from benchpack.ui.window_memory import keep_place
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import Watch, small_library

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton
CTRL_SHIFT = MOD.ControlModifier | MOD.ShiftModifier


def click_row(page: PacksPage, row: int) -> None:
    rect = page.table.visualRect(page.model.index(row, 0))
    QTest.mouseClick(page.table.viewport(), LEFT, pos=rect.center())


def names(page: PacksPage) -> list[str]:
    return [page.model.name(int(row)) for row in page.model.order]


def test_first_showing_selects_the_subject(page: PacksPage) -> None:
    assert page.workspace.selection == "Avocet 81"
    assert page.panel.name.text() == "Avocet 81"
    assert page.filter.count.text() == "5 packs"
    assert page.table.hasFocus()


def test_click_on_a_row_selects_the_pack_everywhere(
    page: PacksPage, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(page.workspace.selected) as told:
        click_row(page, 2)
    assert told.args == ["Turnstone 68"]
    assert page.panel.name.text() == "Turnstone 68"


def test_selection_from_elsewhere_moves_the_row_once(page: PacksPage) -> None:
    page.table.setCurrentIndex(page.model.index(0, 2))
    page.workspace.select("Knot 42")
    index = page.table.currentIndex()
    assert page.model.name_at(index) == "Knot 42"
    assert index.column() == 2
    moved: list[int] = []
    page.table.record_selected.connect(moved.append)
    page.workspace.selected.emit("Knot 42")
    assert moved == []


def test_selection_made_while_hidden_is_caught_up(page: PacksPage) -> None:
    page.hide()
    page.workspace.select("Dunlin 74")
    page.show()
    assert page.panel.name.text() == "Dunlin 74"
    assert page.model.name_at(page.table.currentIndex()) == "Dunlin 74"


def test_filter_follows_the_typing(page: PacksPage, qtbot: QtBot) -> None:
    QTest.keyClick(page.table, KEY.Key_F, MOD.ControlModifier)
    assert page.filter.line.hasFocus()
    QTest.keyClicks(page.filter.line, "energy > 60 and lfp")
    qtbot.waitUntil(lambda: names(page) == ["Turnstone 68"])
    assert page.filter.count.text() == "1 of 5 packs"
    QTest.keyClick(page.filter.line, KEY.Key_Down)
    assert page.table.hasFocus()
    QTest.keyClick(page.table, KEY.Key_F, MOD.ControlModifier)
    QTest.keyClick(page.filter.line, KEY.Key_Escape)
    assert len(names(page)) == 5


def test_filter_that_cannot_be_read_says_why_and_changes_nothing(
    page: PacksPage, qtbot: QtBot
) -> None:
    QTest.keyClicks(page.filter.line, "mass > 3x")
    qtbot.waitUntil(page.filter.error.isVisible)
    assert "x" in page.filter.error.text()
    assert len(names(page)) == 5
    page.filter.line.clear()
    assert not page.filter.error.isVisible()


def test_pack_becomes_the_reference_by_button_and_trades_by_key(
    page: PacksPage,
) -> None:
    click_row(page, 2)
    QTest.mouseClick(page.panel.reference_button, LEFT)
    study = page.workspace.state.study
    assert (study.subject, study.reference) == ("Avocet 81", "Turnstone 68")
    assert page.panel.reference_button.text() == "Is the reference"
    page.table.setFocus()
    QTest.keyClick(page.table, KEY.Key_S, CTRL_SHIFT)
    study = page.workspace.state.study
    assert (study.subject, study.reference) == ("Turnstone 68", "Avocet 81")
    assert page.workspace.document.undo_label == "Turnstone 68 as subject"
    spoken = page.model.index(2, 0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert spoken == "Turnstone 68, subject"


def test_row_menu_offers_the_same(page: PacksPage, qtbot: QtBot) -> None:
    click_row(page, 3)
    rect = page.table.visualRect(page.model.index(3, 0))
    page.table.customContextMenuRequested.emit(rect.center())
    menu = page.findChild(QMenu)
    assert menu is not None
    words = [action.text().partition("\t")[0] for action in menu.actions()]
    assert words[:4] == ["Use as subject", "Use as reference", "Add pack", "Remove"]
    assert "Paste as new rows" in words
    menu.actions()[1].trigger()
    assert page.workspace.state.study.reference == "Knot 42"
    menu.close()


def test_removed_packs_come_back_with_undo(page: PacksPage) -> None:
    start = page.workspace.state
    click_row(page, 1)
    below = page.table.visualRect(page.model.index(2, 0)).center()
    QTest.mouseClick(page.table.viewport(), LEFT, MOD.ShiftModifier, below)
    QTest.mouseClick(page.bar.remove, LEFT)
    assert names(page) == ["Avocet 81", "Knot 42", "Ruff 12"]
    assert page.workspace.document.undo_label == "removal of 2 packs"
    page.workspace.undo()
    assert page.workspace.state == start
    assert len(names(page)) == 5


def test_pack_is_added_by_the_dialog(page: PacksPage, qtbot: QtBot) -> None:
    QTest.mouseClick(page.bar.add, LEFT)
    dialog = page.findChild(RecordDialog)
    assert dialog is not None
    rows = dialog.form.rows
    for key, text in (("name", "Stint 53"), ("energy_kwh", "52,6"), ("mass_kg", "x")):
        line = rows[key].editor
        QTest.keyClicks(line, text)
    QTest.keyClick(rows["mass_kg"].editor, KEY.Key_Return)
    assert dialog.isVisible()
    assert rows["mass_kg"].error_text
    assert not rows["name"].error_text
    rows["mass_kg"].set_text("766 lb")
    QTest.keyClick(rows["mass_kg"].editor, KEY.Key_Return)
    assert not dialog.isVisible()
    pack = page.workspace.state.library.packs[5]
    assert (pack.name, pack.energy_kwh) == ("Stint 53", 52.6)
    assert pack.mass_kg == pytest.approx(766 * 0.45359237)
    assert page.workspace.selection == "Stint 53"
    assert page.panel.name.text() == "Stint 53"


def test_taken_name_is_said_below_the_field(page: PacksPage) -> None:
    page.actions_of_pack.add_pack()
    dialog = page.findChild(RecordDialog)
    assert dialog is not None
    for key, text in (("name", "Knot 42"), ("energy_kwh", "5"), ("mass_kg", "50")):
        dialog.form.rows[key].set_text(text)
    dialog.accept()
    assert "already called" in dialog.form.rows["name"].error_text
    dialog.reject()


def test_renamed_pack_stays_selected(page: PacksPage) -> None:
    page.model.enter(page.model.index(0, 0), "Avocet 82")
    assert page.workspace.selection == "Avocet 82"
    assert page.panel.name.text() == "Avocet 82"
    assert page.workspace.state.study.subject == "Avocet 82"


def test_empty_library_offers_what_to_do(
    make_workspace: Callable[[Library], Workspace], qtbot: QtBot
) -> None:
    page = PacksPage(make_workspace(Library()))
    qtbot.addWidget(page)
    page.show()
    assert page.empty.isVisible()
    with qtbot.waitSignal(page.open_requested):
        QTest.mouseClick(page.empty.open_button, LEFT)
    with qtbot.waitSignal(page.demo_requested):
        QTest.mouseClick(page.empty.demo_button, LEFT)
    page.workspace.open_document(Document(State(small_library())))
    assert not page.empty.isVisible()
    assert len(names(page)) == 5
    page.table.selectAll()
    page.actions_of_pack.remove_packs()
    assert page.empty.isVisible()


def test_other_library_is_sorted_and_selected_anew(page: PacksPage) -> None:
    page.table.sort_by("mass_kg", Direction.RISING)
    page.workspace.select("Ruff 12")
    library = small_library()
    turned = library.packs.with_cells("mass_kg", [3, 4], [900.0, 80.0])
    page.workspace.open_document(Document(State(replace(library, packs=turned))))
    assert names(page)[0] == "Ruff 12"
    assert names(page)[-1] == "Knot 42"
    assert page.workspace.selection == "Avocet 81"
    assert page.panel.name.text() == "Avocet 81"


@pytest.mark.parametrize("column", ["mass [kg]", "mass", "mass_kg"])
def test_problem_leads_to_its_cell(page: PacksPage, column: str) -> None:
    page.filter.line.setText("lfp")
    page.filter.filter_changed.emit("lfp")
    page.workspace.place_requested.emit("Ruff 12", column)
    index = page.table.currentIndex()
    assert page.model.name_at(index) == "Ruff 12"
    assert page.model.columns[index.column()].key == "mass_kg"
    assert page.table.hasFocus()


def test_problem_in_a_hidden_column_leads_to_the_form(page: PacksPage) -> None:
    page.workspace.place_requested.emit("Dunlin 74", "voltage")
    assert page.panel.name.text() == "Dunlin 74"
    assert page.panel.record.form.rows["voltage_v"].editor.hasFocus()


def test_problem_of_a_part_leads_to_the_part(page: PacksPage) -> None:
    page.workspace.select("Knot 42")
    page.workspace.place_requested.emit("lid panel", "mass each [kg]")
    part = page.panel.parts.tree.current_part()
    assert part is not None
    assert part.name == "lid panel"
    assert page.workspace.selection == "Avocet 81"
    assert page.panel.parts.tree.hasFocus()


def test_columns_chosen_are_kept(page: PacksPage) -> None:
    place = page.model.column_place("voltage_v") or 0
    assert page.table.isColumnHidden(place)
    QTest.mouseClick(page.bar.columns, LEFT)
    menu = page.table.findChild(QMenu)
    assert menu is not None
    next(a for a in menu.actions() if a.data() == "voltage_v").trigger()
    menu.close()
    assert not page.table.isColumnHidden(place)
    assert "voltage_v" not in load_settings().hidden_columns


def test_order_of_columns_and_splitter_are_kept(
    page: PacksPage, workspace: Workspace, qtbot: QtBot
) -> None:
    keep_place(page)
    page.table.horizontalHeader().moveSection(2, 1)
    page.splitter.setSizes([500, 600])
    page.splitter.splitterMoved.emit(500, 1)
    again = PacksPage(workspace)
    keep_place(again)
    qtbot.addWidget(again)
    again.resize(page.size())
    again.show()
    first = [again.model.columns[i].key for i in again.table.visible_columns()[:3]]
    assert first == ["name", "mass_kg", "energy_kwh"]
    assert again.splitter.sizes() == page.splitter.sizes()


def test_a_window_that_does_not_keep_its_place_leaves_no_file(page: PacksPage) -> None:
    page.table.horizontalHeader().moveSection(2, 1)
    page.splitter.splitterMoved.emit(500, 1)
    assert not settings_file().with_name("window.ini").exists()


def test_pounds_change_every_head_and_entry(page: PacksPage) -> None:
    page.workspace.edit("lb", lambda s: s.with_study(mass_unit="lb", decimal_mark=","))
    assert page.panel.record.form.rows["mass_kg"].text == "1098,122528"
    assert "mass each [lb]" in [c.head for c in page.panel.parts.model.columns]
    page.model.enter(page.model.index(0, 2), "1100,5")
    mass_kg = page.workspace.state.library.packs[0].mass_kg
    assert mass_kg == pytest.approx(1100.5 * 0.45359237)


def test_f6_goes_between_table_and_record(page: PacksPage) -> None:
    QTest.keyClick(page.table, KEY.Key_F6)
    focused = QApplication.focusWidget()
    assert focused is not None
    assert page.panel.isAncestorOf(focused)
    QTest.keyClick(focused, KEY.Key_F6)
    assert page.table.hasFocus()


def test_sort_and_filter_outlive_an_edit_elsewhere(page: PacksPage) -> None:
    page.table.sort_by("mass_kg", Direction.FALLING)
    before = names(page)
    page.workspace.edit("worth", lambda s: s.with_study(worth_likely_per_kg=4.0))
    assert names(page) == before
    assert page.table.horizontalHeader().isSortIndicatorShown()


def test_keys_of_the_page_are_listed_once(page: PacksPage) -> None:
    keys = [key for key, _ in SHORTCUTS]
    assert len(keys) == len(set(keys))
    assert all(words for _, words in SHORTCUTS)


def test_page_lets_go_of_everything(
    workspace: Workspace, qtbot: QtBot, watch_leaks: Watch
) -> None:
    page = PacksPage(workspace)
    watch_leaks(page)
    watch_leaks(page.table)
    watch_leaks(page.panel)
    page.show()
    click_row(page, 1)
    button: QPushButton = page.bar.weigh_in
    QTest.mouseClick(button, LEFT, pos=QPoint(5, 5))
