"""Everything about the current change: fields, add-backs, what is reopened, checks."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu

from benchpack.model.change import RANGES, Change, ChangeKind
from benchpack.model.ranges import Range
from benchpack.ui.forms.field_row import FieldRow
from benchpack.ui.pages.changes.add_backs_tab import AddBackRow
from benchpack.ui.pages.changes.form_rows import NamesRow, RangeRow
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.pages.changes.subject_model import Selection
from tests.ui.showing import focused, plain

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


def change(page: ChangesPage, name: str) -> Change:
    found = page.edits.change(name)
    assert found is not None
    return found


def field(page: ChangesPage, key: str) -> FieldRow:
    row = page.view.panel.form.rows[key]
    assert isinstance(row, FieldRow)
    return row


def range_row(page: ChangesPage, key: str) -> RangeRow:
    row = page.view.panel.form.rows[key]
    assert isinstance(row, RangeRow)
    return row


def add_back(page: ChangesPage, key: str) -> AddBackRow:
    page.view.panel.setCurrentWidget(page.view.panel.add_backs)
    return page.view.panel.add_backs.rows[key]


def type_into(page: ChangesPage, key: str, text: str) -> None:
    editor = field(page, key).editor
    page.view.panel.form.focus_field(key)
    QTest.keyClick(editor, KEY.Key_A, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, KEY.Key_Return)


def test_a_field_is_typed_and_can_be_undone(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    type_into(page, "stiffness_shape", "2.5")
    assert change(page, "lid in polymer").stiffness_shape == 2.5
    label = "stiffness shape of lid in polymer"
    assert page.workspace.document.undo_label == label
    page.workspace.undo()
    assert field(page, "stiffness_shape").text == "1"


def test_a_rename_keeps_the_change_current(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    type_into(page, "name", "lid in long glass")
    assert page.view.table.current == "lid in long glass"
    type_into(page, "name", "duct goes")
    assert "already called" in field(page, "name").error_text
    assert page.view.panel.name == "lid in long glass"


def test_the_chance_is_typed_in_per_cent(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    assert field(page, "release_chance").text == "80"
    type_into(page, "release_chance", "55 %")
    assert change(page, "lid in polymer").release_chance == 0.55
    type_into(page, "release_chance", "120")
    assert "between 0 and 100 %" in field(page, "release_chance").error_text


def test_each_kind_has_its_own_fields(page: ChangesPage) -> None:
    page.view.table.go_to("fewer lid screws")
    rows = page.view.panel.form.rows
    assert rows["material"].isHidden()
    assert not rows["family"].isHidden()
    page.view.table.go_to("lid in polymer")
    assert not rows["material"].isHidden()
    assert rows["family"].isHidden()
    for key in RANGES:
        assert not rows[key].isHidden()


def test_what_is_computed_stands_in_grey_until_it_is_typed_over(
    page: ChangesPage,
) -> None:
    page.view.table.go_to("lid in polymer")
    row = range_row(page, "mass_kg")
    results = page.desk.results
    assert results is not None
    effect = results.effect("lid in polymer")
    assert effect is not None
    after = sum((e.after_kg.likely for e in effect.applied.entries), 0.0)
    assert float(row.lines["likely"].placeholderText()) == round(after, 3)
    assert row.texts() == ("", "", "")
    page.view.panel.form.focus_field("mass_kg")
    row.lines["low"].setFocus()
    for end, text in (("low", "6"), ("likely", "7"), ("high", "8.5")):
        assert focused() is row.lines[end]
        QTest.keyClicks(row.lines[end], text)
        QTest.keyClick(row.lines[end], KEY.Key_Tab)
    assert change(page, "lid in polymer").mass_kg == Range(6.0, 7.0, 8.5)
    assert row.texts() == ("6", "7", "8.5")


def test_a_range_is_read_from_one_figure(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    line = range_row(page, "part_cost").lines["likely"]
    line.setFocus()
    QTest.keyClicks(line, "10 +- 2")
    QTest.keyClick(line, KEY.Key_Return)
    assert change(page, "lid in polymer").part_cost == Range(8.0, 10.0, 12.0)
    line.clear()
    for other in range_row(page, "part_cost").lines.values():
        other.clear()
    QTest.keyClick(line, KEY.Key_Return)
    assert change(page, "lid in polymer").part_cost is None


def test_a_range_that_runs_the_wrong_way_is_said_below(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    row = range_row(page, "seconds")
    page.view.panel.form.focus_field("seconds")
    for end, text in (("low", "9"), ("likely", "5"), ("high", "7")):
        row.lines[end].setFocus()
        QTest.keyClicks(row.lines[end], text)
    QTest.keyClick(row.lines["high"], KEY.Key_Return)
    assert "runs 9, 5, 7" in row.error_text
    assert change(page, "lid in polymer").seconds is None


def test_names_are_typed_or_chosen_from_a_list(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    row = page.view.panel.form.rows["excludes"]
    assert isinstance(row, NamesRow)
    page.view.panel.form.focus_field("excludes")
    QTest.mouseClick(row.button, LEFT)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    chosen = {one.text(): one for one in menu.actions()}
    chosen["duct goes"].trigger()
    menu.close()
    assert change(page, "lid in polymer").excludes == ("duct goes",)
    row.editor.setFocus()
    row.editor.selectAll()
    QTest.keyClicks(row.editor, "fewer lid screws; duct goes")
    QTest.keyClick(row.editor, KEY.Key_Return)
    assert change(page, "lid in polymer").excludes == ("fewer lid screws", "duct goes")


def test_the_form_says_design_values_beside_the_data_sheet(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    words = plain(page.view.panel.form.said.text())
    assert "by design values" in words
    assert "Data-sheet values give" in words


def test_an_add_back_leaves_the_sum_with_a_reason_only(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    row = add_back(page, "fire barrier")
    assert row.box.isChecked()
    QTest.mouseClick(
        row.box, LEFT, pos=row.box.rect().center() - row.box.rect().center()
    )
    QTest.keyClick(row.box, KEY.Key_Space)
    assert row.box.isChecked()
    assert focused() is row.reason
    QTest.keyClick(row.reason, KEY.Key_Return)
    assert change(page, "lid in polymer").waived == ()
    QTest.keyClicks(row.reason, "a mica sheet is there")
    QTest.keyClick(row.reason, KEY.Key_Return)
    expected = (("fire barrier", "a mica sheet is there"),)
    assert change(page, "lid in polymer").waived == expected
    row = add_back(page, "fire barrier")
    assert not row.box.isChecked()
    assert "a mica sheet is there" in row.words.text()
    row.box.setFocus()
    QTest.keyClick(row.box, KEY.Key_Space)
    assert change(page, "lid in polymer").waived == ()


def test_escape_leaves_an_add_back_in(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    row = add_back(page, "shield foil")
    row.box.setFocus()
    QTest.keyClick(row.box, KEY.Key_Space)
    QTest.keyClicks(row.reason, "perhaps")
    QTest.keyClick(row.reason, KEY.Key_Escape)
    assert row.reason.isHidden()
    assert change(page, "lid in polymer").waived == ()


def test_what_is_reopened_always_shows(page: ChangesPage) -> None:
    panel = page.view.panel
    page.view.table.go_to("lid in polymer")
    text = panel.duties.text()
    assert text.startswith("By this change")
    results = page.desk.results
    assert results is not None
    for reopened in results.duties:
        key = reopened.duty.key
        assert f"{key[:1].upper()}{key[1:]}" in text
        assert reopened.duty.rules[0].mark in text
    page.view.table.go_to("duct goes")
    assert panel.duties.text().startswith("This change reopens no function.")
    assert "By other changes" in panel.duties.text()
    assert panel.isTabVisible(2)


def test_checks_have_sign_word_and_figures(page: ChangesPage) -> None:
    panel = page.view.panel
    page.view.table.go_to("lid in polymer")
    panel.setCurrentWidget(panel.checks)
    checks = panel.checks.model.checks
    assert checks
    assert panel.checks.model.heading(checks[0]).startswith(checks[0].kind)
    assert checks[0].words in panel.checks.detail.text().replace("\u202f", "\u2009")
    page.view.table.go_to("duct goes")
    assert panel.checks.model.checks == ()
    assert "does not count" in panel.checks.sentence.text()


def test_another_kind_brings_its_fields(page: ChangesPage) -> None:
    page.view.table.go_to("duct goes")
    box = field(page, "kind").editor
    box.setFocus()
    box.set_entry("adjust")
    box.entry_finished.emit()
    assert change(page, "duct goes").kind is ChangeKind.ADJUST
    assert not page.view.panel.form.rows["mass_kg"].isHidden()


def test_a_refusal_stands_in_full_above_the_fields(page: ChangesPage) -> None:
    selection = Selection(joints=("lid screws",))
    page.actions_of_change.make(ChangeKind.REMOVE, selection)
    said = page.view.panel.form.said.text()
    assert said.startswith("remove lid screws does not count:")
    assert "fewer lid screws" in said


def test_money_of_seven_figures_can_be_read(page: ChangesPage) -> None:
    page.view.table.go_to("lid in polymer")
    line = range_row(page, "tooling").lines["likely"]
    room = line.width() - 10
    assert line.fontMetrics().horizontalAdvance("1200000") <= room
