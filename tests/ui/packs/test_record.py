"""The record form, the boundary dialog, the source tab, and spoken names."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.boundary import ITEMS, Boundary, Weighed, parse_boundary
from benchpack.model.words import EnergyBasis
from benchpack.ui.dialogs.boundary import BoundaryDialog
from benchpack.ui.forms.boundary_row import boundary_summary
from benchpack.ui.pages.packs.page import PacksPage
from benchpack.units.formatting import NumberStyle
from tests.ui.showing import focused

KEY, MOD, LEFT = Qt.Key, Qt.KeyboardModifier, Qt.MouseButton.LeftButton


def enter(page: PacksPage, key: str, text: str) -> None:
    assert page.panel.go_to_field(key)
    editor = focused()
    QTest.keyClick(editor, KEY.Key_A, MOD.ControlModifier)
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, KEY.Key_Return)


def test_form_shows_every_field_of_the_record(page: PacksPage) -> None:
    rows = page.panel.record.form.rows
    keys = {c.key for c in page.model.columns if c.field is not None}
    assert {*rows, "boundary"} == keys
    assert rows["mass_kg"].text == "498.1"
    assert rows["energy_basis"].text == "gross"
    assert rows["voltage_v"].text == ""
    assert rows["mass_kg"].editor.toolTip()


def test_enter_makes_the_edit(page: PacksPage) -> None:
    enter(page, "mass_kg", "1100 lb")
    mass_kg = page.workspace.state.library.packs[0].mass_kg
    assert mass_kg == pytest.approx(1100 * 0.45359237)
    assert page.workspace.document.undo_label == "mass of Avocet 81"
    assert page.panel.record.form.rows["mass_kg"].text == f"{mass_kg!r}"


def test_leaving_the_field_makes_the_edit(page: PacksPage) -> None:
    page.panel.go_to_field("chemistry")
    editor = focused()
    QTest.keyClick(editor, KEY.Key_A, MOD.ControlModifier)
    QTest.keyClicks(editor, "LMFP")
    QTest.keyClick(editor, KEY.Key_Tab)
    assert page.workspace.state.library.packs[0].chemistry == "LMFP"


def test_refused_entry_is_explained_below_its_field(page: PacksPage) -> None:
    enter(page, "mass_kg", "12 kWh")
    row = page.panel.record.form.rows["mass_kg"]
    assert "kWh" in row.error_text
    assert row.text == "12 kWh"
    assert page.workspace.state.library.packs[0].mass_kg == 498.1
    enter(page, "mass_kg", "300")
    assert "more than the pack's mass" in row.error_text
    QTest.keyClick(row.editor, KEY.Key_Escape)
    assert row.text == "498.1"
    enter(page, "mass_kg", "499")
    assert row.error_text == ""


def test_note_takes_several_lines(page: PacksPage) -> None:
    page.panel.go_to_field("note")
    editor = focused()
    QTest.keyClicks(editor, "one")
    QTest.keyClick(editor, KEY.Key_Return, MOD.ShiftModifier)
    QTest.keyClicks(editor, "two")
    QTest.keyClick(editor, KEY.Key_Return)
    assert page.workspace.state.library.packs[0].note == "one\ntwo"


def test_choice_is_made_in_the_form(page: PacksPage) -> None:
    page.panel.go_to_field("energy_basis")
    box = focused()
    assert isinstance(box, QComboBox)
    box.showPopup()
    QTest.keyClick(box.view(), KEY.Key_Down)
    QTest.keyClick(box.view(), KEY.Key_Return)
    basis = page.workspace.state.library.packs[0].energy_basis
    assert basis is EnergyBasis.USABLE


def test_wheel_does_not_change_a_choice_in_passing(page: PacksPage) -> None:
    box = page.panel.record.form.rows["energy_basis"].editor
    assert isinstance(box, QComboBox)
    turn = QWheelEvent(
        QPointF(5, 5),
        QPointF(box.mapToGlobal(QPoint(5, 5))),
        QPoint(0, -120),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,  # noqa: FBT003 - the toolkit's signature
    )
    QApplication.sendEvent(box, turn)
    assert box.currentData() == "gross"


def test_boundary_is_edited_item_by_item(page: PacksPage) -> None:
    boundary_row = page.panel.record.form.boundary
    assert boundary_row is not None
    QTest.mouseClick(boundary_row.button, LEFT)
    dialog = page.window().findChild(BoundaryDialog)
    assert dialog is not None
    assert dialog.states["coolant"].currentData() == "out"
    assert dialog.masses["coolant"].text() == "4.6"
    QTest.keyClicks(dialog.states["lid"], "on the")
    QTest.keyClicks(dialog.masses["lid"], "9500 g")
    dialog.accept()
    boundary = page.workspace.state.library.packs[0].boundary
    assert boundary == parse_boundary("cells=in; coolant=out 4.6; lid=in 9.5")
    assert page.workspace.document.undo_label == "boundary of Avocet 81"


def test_boundary_with_a_bad_mass_stays_open(qtbot: QtBot) -> None:
    style = NumberStyle(",", "lb")
    dialog = BoundaryDialog("Avocet", Boundary(masses_kg={"lid": 9.5}), style=style)
    qtbot.addWidget(dialog)
    with qtbot.waitActive(dialog):
        dialog.show()
    assert dialog.masses["lid"].text() == "20,94391491"
    assert dialog.boundary().masses_kg["lid"] == 9.5
    for bad in ("x", "-2"):
        dialog.masses["tray"].setText(bad)
        dialog.accept()
        assert dialog.isVisible()
        assert dialog.error.text().startswith("\u2715 Tray: ")
        assert dialog.masses["tray"].hasFocus()


def test_boundary_buttons_set_every_item(qtbot: QtBot) -> None:
    dialog = BoundaryDialog("Avocet", Boundary(), style=NumberStyle())
    qtbot.addWidget(dialog)
    dialog._on_all_in_clicked()
    assert set(dialog.boundary().states.values()) == {Weighed.IN}
    assert len(dialog.boundary().states) == len(ITEMS)
    dialog._on_all_unknown_clicked()
    assert not dialog.boundary().is_known


def test_boundary_is_put_into_words() -> None:
    every = Boundary(dict.fromkeys(ITEMS, Weighed.IN))
    assert boundary_summary(every) == "19 of 19 items were on the scale."
    assert boundary_summary(Boundary()) == "What was on the scale is not recorded."
    text = boundary_summary(Boundary({**every.states, "coolant": Weighed.OUT}))
    assert text == "18 of 19 items were on the scale; not coolant."


def test_source_is_shown_and_edited(page: PacksPage) -> None:
    tab = page.panel.source
    page.panel.tabs.setCurrentWidget(tab)
    assert tab.choice.currentText() == "bench protocol 1"
    assert tab.note.text() == "2 packs name this source."
    tab.form.focus_field("date")
    editor = focused()
    QTest.keyClick(editor, KEY.Key_A, MOD.ControlModifier)
    QTest.keyClicks(editor, "2026-03-01")
    QTest.keyClick(editor, KEY.Key_Return)
    assert page.workspace.state.library.sources[0].date == "2026-03-01"
    label = page.workspace.document.undo_label
    assert label == "date of source bench protocol 1"


def test_new_source_is_named_and_recorded(page: PacksPage) -> None:
    page.workspace.select("Knot 42")
    tab = page.panel.source
    page.panel.tabs.setCurrentWidget(tab)
    assert tab.note.text().startswith("The pack names no source.")
    tab.choice.setFocus()
    QTest.keyClicks(tab.choice, "log 7")
    QTest.keyClick(tab.choice, KEY.Key_Return)
    assert page.workspace.state.library.packs[3].source == "log 7"
    assert "not recorded yet" in tab.note.text()
    tab.form.focus_field("kind")
    editor = focused()
    QTest.keyClicks(editor, "own weighing")
    QTest.keyClick(editor, KEY.Key_Return)
    assert page.workspace.state.library.sources[-1].kind == "own weighing"


def spoken_name(widget: QWidget) -> str:
    interface = QAccessible.queryAccessibleInterface(widget)
    return interface.text(QAccessible.Text.Name)


def test_everything_that_takes_the_focus_has_a_spoken_name(page: PacksPage) -> None:
    page.panel.parts.begin_weigh_in()
    silent = []
    for place in range(page.panel.tabs.count()):
        page.panel.tabs.setCurrentIndex(place)
        for widget in page.findChildren(QWidget):
            takes = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
            if takes and widget.isVisible() and not spoken_name(widget):
                silent.append(f"{type(widget).__name__} {widget.objectName()}")
    assert silent == []
    assert spoken_name(page.table) == "Packs of the library"
