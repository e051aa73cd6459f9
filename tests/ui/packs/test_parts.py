"""Parts: the tree, edits in place, closure, and the weigh-in."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QComboBox, QLabel, QLineEdit
from pytestqt.qtbot import QtBot

from benchpack.errors import DataError
from benchpack.model.part import Part
from benchpack.model.words import KnownBy, Subsystem
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.forms.weighing import parse_count, parse_weighing
from benchpack.ui.pages.packs.page import PacksPage
from benchpack.ui.pages.packs.parts_tab import PartsTab
from benchpack.units.formatting import NumberStyle
from tests.ui.showing import focused

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton


@pytest.fixture
def tab(page: PacksPage) -> PartsTab:
    page.panel.tabs.setCurrentWidget(page.panel.parts)
    page.panel.parts.tree.setFocus()
    return page.panel.parts


def row_texts(tab: PartsTab, group: int, row: int | None = None) -> dict[str, str]:
    model = tab.model
    parent = model.index(group, 0)
    return {
        column.key: str(
            (
                model.index(group, place)
                if row is None
                else model.index(row, place, parent)
            ).data()
        )
        for place, column in enumerate(model.columns)
    }


def parts(tab: PartsTab) -> tuple[Part, ...]:
    return tab._workspace.state.library.parts_of("Avocet 81")


def test_tree_shows_subsystems_with_their_sums(tab: PartsTab) -> None:
    groups = [group.name for group in tab.model.groups]
    assert groups == ["cells", "tray", "lid", "joints"]
    cells = row_texts(tab, 0)
    assert (cells["mass"], cells["share"]) == ("330.24", "66.3")
    cell = row_texts(tab, 0, 0)
    assert (cell["count"], cell["mass_each_kg"]) == ("192", "1.720")
    assert cell["carry_over"] == "approved with the vehicle"
    assert row_texts(tab, 1, 1)["mass"] == "–"
    joints = row_texts(tab, 3, 0)
    assert (joints["name"], joints["count"]) == ("2 joints", "168")
    assert joints["mass"] == "1.07"


def test_tree_keeps_the_rules_of_qt(tab: PartsTab) -> None:
    tester = QAbstractItemModelTester(
        tab.model, QAbstractItemModelTester.FailureReportingMode.Warning
    )
    tab._workspace.select("Dunlin 74")
    tab._workspace.select("Avocet 81")
    assert tester.model() is tab.model


def test_lock_gives_its_reason_on_hover(tab: PartsTab) -> None:
    index = tab.model.index_of("cell", "carry_over")
    tip = index.data(Qt.ItemDataRole.ToolTipRole)
    assert tip == "Stays as it is: approved with the vehicle"


def test_closure_is_said_with_its_word(tab: PartsTab) -> None:
    assert tab.bar.spec.verdict == "good"
    assert tab.bar.spec.verdict_text == "good, 99.3 %"
    assert tab.sentence.text() == "3.3\u00a0kg unaccounted. 1 is without a mass."
    tab._workspace.select("Knot 42")
    assert tab.sentence.text() == "Add a part, or start the weigh-in."


def test_count_and_mass_are_edited_in_place(tab: PartsTab) -> None:
    assert tab.go_to("side section", "count")
    QTest.keyClicks(tab.tree, "3")
    QTest.keyClick(focused(), KEY.Key_Tab)
    QTest.keyClicks(tab.tree, "1")
    line = focused()
    QTest.keyClicks(line, "53 g")
    QTest.keyClick(line, KEY.Key_Return)
    part = parts(tab)[2]
    assert part.count == 3
    assert part.mass_each_kg == pytest.approx(0.153)
    label = tab._workspace.document.undo_label
    assert label == "mass each of side section"


def test_refused_count_stays_open_with_the_reason(tab: PartsTab) -> None:
    tab.go_to("lid panel", "count")
    QTest.keyClicks(tab.tree, "0")
    line = focused()
    assert isinstance(line, QLineEdit)
    QTest.keyClick(line, KEY.Key_Return)
    assert focused() is line
    said = tab.tree.viewport().findChild(QLabel, "refusal_note")
    assert isinstance(said, QLabel)
    assert "count is 0" in said.text()
    assert parts(tab)[3].count == 1


def test_known_by_is_chosen_from_a_list(tab: PartsTab) -> None:
    tab.go_to("lid panel", "known_by")
    QTest.keyClick(tab.tree, KEY.Key_F2)
    box = focused()
    assert isinstance(box, QComboBox)
    QTest.keyClicks(box, "dec")
    QTest.keyClick(box, KEY.Key_Return)
    assert parts(tab)[3].known_by is KnownBy.DECLARED


def test_sums_cannot_be_edited(tab: PartsTab) -> None:
    tab.tree.setCurrentIndex(tab.model.index(0, 1))
    QTest.keyClicks(tab.tree, "5")
    assert tab.tree.hasFocus()
    assert not tab.edit_button.isEnabled()


def test_closed_subsystems_stay_closed(tab: PartsTab) -> None:
    tab.tree.collapse(tab.model.index(0, 0))
    tab._workspace.select("Dunlin 74")
    tab._workspace.select("Avocet 81")
    assert not tab.tree.isExpanded(tab.model.index(0, 0))
    assert tab.tree.isExpanded(tab.model.index(1, 0))


def test_part_is_edited_in_full(tab: PartsTab, page: PacksPage) -> None:
    tab.go_to("lid panel", "name")
    QTest.mouseClick(tab.edit_button, LEFT)
    dialog = page.window().findChild(RecordDialog)
    assert dialog is not None
    dialog.form.rows["carry_over"].set_text("true")
    dialog.form.rows["reason"].set_text("crash tested")
    dialog.accept()
    part = parts(tab)[3]
    assert (part.carry_over, part.reason) == (True, "crash tested")
    assert part.mass_each_kg == 101.5
    tab._workspace.undo()
    assert not parts(tab)[3].carry_over


def test_part_is_added_and_removed(tab: PartsTab, page: PacksPage) -> None:
    QTest.mouseClick(tab.add_button, LEFT)
    dialog = page.window().findChild(RecordDialog)
    assert dialog is not None
    dialog.accept()
    assert dialog.isVisible()
    assert "part is empty" in dialog.form.rows["name"].error_text
    dialog.form.rows["name"].set_text("skid plate")
    dialog.form.rows["subsystem"].set_text("frame")
    dialog.accept()
    assert parts(tab)[-1] == Part("Avocet 81", "skid plate", subsystem=Subsystem.FRAME)
    current = tab.tree.current_part()
    assert current is not None
    assert current.name == "skid plate"
    QTest.mouseClick(tab.remove_button, LEFT)
    assert len(parts(tab)) == 4


def type_part(tab: PartsTab, name: str, mass: str, count: str) -> None:
    bar = tab.weigh_in
    QTest.keyClicks(bar.name, name)
    QTest.keyClicks(bar.mass, mass)
    QTest.keyClicks(bar.count, count)
    QTest.keyClick(bar.count, KEY.Key_Return)


def test_weigh_in_adds_part_after_part(tab: PartsTab, page: PacksPage) -> None:
    page.table.setFocus()
    QTest.keyClick(page.table, KEY.Key_W, MOD.ControlModifier | MOD.ShiftModifier)
    assert tab.weigh_in.name.hasFocus()
    type_part(tab, "rail", "2,4 kg", "2")
    assert tab.weigh_in.name.hasFocus()
    assert tab.weigh_in.name.text() == tab.weigh_in.mass.text() == ""
    type_part(tab, "clip", "3.06 kg / 20", "")
    rail, clip = parts(tab)[-2:]
    assert (rail.count, rail.mass_each_kg, rail.known_by) == (2, 2.4, KnownBy.WEIGHED)
    assert (clip.count, clip.known_by) == (20, KnownBy.WEIGHED_BATCH)
    assert clip.mass_each_kg == pytest.approx(0.153)
    assert tab._workspace.document.undo_label == "weigh-in of clip"
    tab._workspace.undo()
    assert parts(tab)[-1].name == "rail"
    QTest.keyClick(tab.weigh_in.name, KEY.Key_Escape)
    assert not tab.weigh_in.isVisible()
    assert tab.tree.hasFocus()


def test_weigh_in_keeps_what_cannot_be_taken(tab: PartsTab) -> None:
    tab.begin_weigh_in()
    type_part(tab, "cell", "2 kg", "")
    assert "already called" in tab.weigh_in.note.text()
    assert tab.weigh_in.name.text() == "cell"
    tab.weigh_in.taken("")
    type_part(tab, "rail", "much", "")
    assert tab.weigh_in.mass.hasFocus()
    assert len(parts(tab)) == 4
    tab.weigh_in.taken("")
    QTest.keyClick(tab.weigh_in.name, KEY.Key_Return)
    assert tab.weigh_in.note.text() == "The part has no name. Give it one."


def test_known_name_brings_its_subsystem(page: PacksPage, qtbot: QtBot) -> None:
    page.workspace.select("Knot 42")
    page.panel.begin_weigh_in()
    bar = page.panel.parts.weigh_in
    QTest.keyClicks(bar.name, "lid panel")
    QTest.keyClick(bar.name, KEY.Key_Tab)
    assert bar.subsystem.currentText() == "lid"
    assert bar.subsystem.hasFocus()


@pytest.mark.parametrize(
    ("text", "each_kg", "pieces"),
    [
        ("2.4 kg", 2.4, 1),
        ("153 g", 0.153, 1),
        ("12,3 kg", 12.3, 1),
        ("3.06 kg / 20", 0.153, 20),
        ("2/4", 0.5, 4),
        ("1 lb", 0.45359237, 1),
    ],
)
def test_mass_from_the_scale(text: str, each_kg: float, pieces: int) -> None:
    weighing = parse_weighing(text, NumberStyle())
    assert weighing.mass_each_kg == pytest.approx(each_kg)
    assert weighing.pieces == pieces


@pytest.mark.parametrize("text", ["", "/ 20", "3 kg /", "3 kg / 0", "3 kg / x", "-1"])
def test_mass_that_cannot_be_read(text: str) -> None:
    with pytest.raises(DataError):
        parse_weighing(text, NumberStyle())


def test_bare_mass_is_in_the_unit_of_the_study() -> None:
    weighing = parse_weighing("10", NumberStyle(",", "lb"))
    assert weighing.mass_each_kg == pytest.approx(4.5359237)
    assert parse_count("", weighing) == 1
    assert parse_count("7", weighing) == 7
