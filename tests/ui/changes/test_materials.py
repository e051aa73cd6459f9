"""Materials and candidates: own ones, marks and sources, the comparison, its chart."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from benchpack.model.change import ChangeKind
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.pages.changes.subject_model import Selection
from tests.ui.changes.conftest import POLYMER, STEEL
from tests.ui.showing import focused

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


@pytest.fixture
def materials(page: ChangesPage) -> ChangesPage:
    """Give the page with its materials in view."""
    page.tabs.setCurrentIndex(1)
    QApplication.processEvents()
    return page


@pytest.fixture
def candidates(page: ChangesPage) -> ChangesPage:
    """Give the page with the candidates for the lid in view."""
    page.view.tree.choose(Selection(("lid panel",)))
    page.tabs.setCurrentIndex(2)
    QApplication.processEvents()
    return page


def cell(page: ChangesPage, row: int, key: str) -> str:
    model = page.materials.table.table
    place = model.column_place(key)
    assert place is not None
    return model.shown(model.index(row, place))


def dialog_of(page: ChangesPage) -> RecordDialog:
    found = page.window().findChild(RecordDialog)
    assert found is not None
    return found


def test_marks_and_sources_stand_in_the_table(materials: ChangesPage) -> None:
    assert cell(materials, 0, "name") == STEEL.name
    assert cell(materials, 0, "mark") == "confirmed"
    assert cell(materials, 1, "mark") == "from memory"
    assert cell(materials, 1, "source") == "data sheet"
    assert not materials.kinds.isVisible()


def test_a_cell_is_typed_over_and_the_proposal_follows(materials: ChangesPage) -> None:
    table = materials.materials.table
    before = materials.desk.results
    place = table.table.column_place("density_kg_m3")
    assert place is not None
    table.setCurrentIndex(table.table.index(1, place))
    table.setFocus()
    QTest.keyClick(table, KEY.Key_F2)
    editor = focused()
    QTest.keyClicks(editor, "1300")
    QTest.keyClick(editor, KEY.Key_Return)
    assert materials.workspace.state.library.materials[1].density_kg_m3 == 1300
    after = materials.desk.results
    assert before is not None
    assert after is not None
    assert after.totals.saved_kg.likely < before.totals.saved_kg.likely


def test_a_material_of_ones_own_is_added_and_undone(materials: ChangesPage) -> None:
    QTest.mouseClick(materials.materials.add_button, LEFT)
    dialog = dialog_of(materials)
    for key, text in (("name", "own polymer"), ("density_kg_m3", "1400")):
        dialog.form.rows[key].editor.set_entry(text)
    QTest.mouseClick(dialog.accept_button, LEFT)
    found = materials.workspace.state.library.materials
    assert (found[-1].name, found[-1].density_kg_m3) == ("own polymer", 1400)
    current = materials.materials.current_material()
    assert current is not None
    assert current.name == "own polymer"
    materials.workspace.undo()
    assert len(materials.workspace.state.library.materials) == 2


def test_a_copy_loses_the_mark_and_a_taken_name_is_refused(
    materials: ChangesPage,
) -> None:
    materials.materials.go_to(STEEL.name)
    QTest.mouseClick(materials.materials.copy_button, LEFT)
    dialog = dialog_of(materials)
    assert dialog.form.rows["name"].text == "mild steel, own"
    assert dialog.form.rows["mark"].text == ""
    dialog.form.rows["name"].editor.set_entry(POLYMER.name)
    QTest.mouseClick(dialog.accept_button, LEFT)
    assert "already called" in dialog.form.rows["name"].error_text
    dialog.form.rows["name"].editor.set_entry("steel of ours")
    QTest.mouseClick(dialog.accept_button, LEFT)
    made = materials.workspace.state.library.materials[-1]
    assert (made.name, made.mark) == ("steel of ours", "")
    assert made.source == "after mild steel"


def test_a_material_is_removed_and_the_change_says_what_it_lacks(
    materials: ChangesPage,
) -> None:
    materials.materials.go_to(POLYMER.name)
    QTest.mouseClick(materials.materials.remove_button, LEFT)
    assert materials.workspace.state.library.materials == (STEEL,)
    line = materials.view.table.changes.lines[1]
    assert line.words.startswith("refused:")
    materials.workspace.undo()
    assert materials.view.table.changes.lines[1].effect is not None


def test_candidates_of_the_chosen_part(candidates: ChangesPage) -> None:
    tab = candidates.candidates
    assert tab.picker.currentText() == "lid panel"
    rows = tab.table.candidates.rows
    assert rows[0].is_today
    assert [row.name for row in rows[1:]] == [POLYMER.name]
    assert "PP-LGF40" in tab.headline.text()
    spec = tab.chart.spec
    assert spec.mass[0] == pytest.approx(rows[1].mass_kg - 12.7)
    assert np.isfinite(spec.cost[0])


def test_table_and_chart_choose_the_same(candidates: ChangesPage) -> None:
    tab = candidates.candidates
    assert not tab.button.isEnabled()
    tab.chart.picked.emit(POLYMER.name)
    assert tab.table.current == POLYMER.name
    assert tab.chart.selected == POLYMER.name
    assert tab.button.isEnabled()


def test_a_candidate_becomes_a_change(candidates: ChangesPage) -> None:
    tab = candidates.candidates
    tab.table.go_to(POLYMER.name)
    tab.table.setFocus()
    QTest.keyClick(tab.table, KEY.Key_Return)
    made = candidates.workspace.state.changes[-1]
    assert (made.kind, made.material) == (ChangeKind.SUBSTITUTE, POLYMER.name)
    assert made.parts == ("lid panel",)
    assert candidates.tabs.currentIndex() == 0
    assert candidates.view.table.current == made.name


def click_on_head(page: ChangesPage, place: int) -> list[str]:
    """Click on the head of a column, and give the names in their new order."""
    heads = page.candidates.table.horizontalHeader()
    page.candidates.table.scrollTo(page.candidates.table.model().index(0, place))
    x = heads.sectionViewportPosition(place) + heads.sectionSize(place) // 2
    point = QPoint(x, heads.height() // 2)
    QTest.mouseClick(heads.viewport(), LEFT, pos=point)
    return [row.name for row in page.candidates.table.candidates.rows]


def test_a_click_on_a_head_sorts_and_the_part_as_it_is_stays_first(
    candidates: ChangesPage,
) -> None:
    state = candidates.workspace.state
    dense = replace(POLYMER, name="dense", density_kg_m3=1900.0, price_per_kg=1.0)
    bare = replace(POLYMER, name="Bare", price_per_kg=None)
    more = (*state.library.materials, dense, bare)
    candidates.workspace.edit("more", lambda s: s.with_library(materials=more))
    QApplication.processEvents()
    table = candidates.candidates.table
    model, heads = table.candidates, table.horizontalHeader()
    today = STEEL.name
    assert [row.name for row in model.rows] == [today, POLYMER.name, "Bare", "dense"]
    table.go_to("dense")
    name, cost = model.place_of("name"), model.place_of("cost")
    assert click_on_head(candidates, name) == [today, "Bare", "dense", POLYMER.name]
    assert click_on_head(candidates, name) == [today, POLYMER.name, "dense", "Bare"]
    assert heads.isSortIndicatorShown()
    assert heads.sortIndicatorOrder() is Qt.SortOrder.DescendingOrder
    # What has no price comes last either way; the current one stays current.
    assert click_on_head(candidates, cost) == [today, "dense", POLYMER.name, "Bare"]
    assert click_on_head(candidates, cost) == [today, POLYMER.name, "dense", "Bare"]
    assert table.current == "dense"
    assert candidates.candidates.chart.selected == "dense"
    # An edit keeps the order, a third click takes it back.
    candidates.workspace.undo()
    candidates.workspace.redo()
    QApplication.processEvents()
    assert [row.name for row in model.rows[1:]] == [POLYMER.name, "dense", "Bare"]
    assert table.current == "dense"
    click_on_head(candidates, cost)
    assert [row.name for row in model.rows[1:]] == [POLYMER.name, "Bare", "dense"]
    assert not heads.isSortIndicatorShown()


def test_another_part_is_picked(candidates: ChangesPage) -> None:
    tab = candidates.candidates
    tab.picker.edit.setFocus()
    tab.picker.edit.selectAll()
    QTest.keyClicks(tab.picker.edit, "cable")
    QTest.keyClick(tab.picker.edit, KEY.Key_Return)
    assert candidates.view.tree.selection().parts == ("cable duct",)
    assert tab.picker.currentText() == "cable duct"


def test_f1_explains_a_candidate(candidates: ChangesPage) -> None:
    tab = candidates.candidates
    tab.table.go_to(POLYMER.name)
    tab.table.setFocus()
    QTest.keyClick(tab.table, KEY.Key_F1)
    panel = candidates.window().findChild(ExplanationPanel)
    assert panel is not None
    assert panel.isVisible()
    assert "lid panel in PP-LGF40" in panel._label.text()
