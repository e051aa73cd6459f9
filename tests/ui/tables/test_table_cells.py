"""Copy, paste, fill down and clear."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import QItemSelection, QItemSelectionModel, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.errors import Problem
from benchpack.model.library import Library
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.workspace import Workspace

KEY, MOD = Qt.Key, Qt.KeyboardModifier
SELECT = QItemSelectionModel.SelectionFlag.ClearAndSelect
Told = list[tuple[str, tuple[Problem, ...]]]


@pytest.fixture
def told(view: RecordTableView) -> Told:
    """Give what the view tells of edits that were not made."""
    found: Told = []

    def note(heading: str, problems: tuple[Problem, ...]) -> None:
        found.append((heading, problems))

    view.problems_found.connect(note)
    return found


def select(view: RecordTableView, rows: tuple[int, int], *keys: str) -> None:
    places = [view.table.column_place(key) or 0 for key in keys]
    top = view.table.index(rows[0], min(places))
    view.setCurrentIndex(top)
    bottom = view.table.index(rows[1], max(places))
    view.selectionModel().select(QItemSelection(top, bottom), SELECT)


def press(view: RecordTableView, qtbot: QtBot, key: Qt.Key) -> None:
    QTest.keyClick(view, key, MOD.ControlModifier)


def paste(view: RecordTableView, qtbot: QtBot, text: str) -> None:
    QGuiApplication.clipboard().setText(text)
    press(view, qtbot, KEY.Key_V)


def test_copied_cells_have_full_precision(view: RecordTableView, qtbot: QtBot) -> None:
    select(view, (0, 1), "energy_kwh", "density_wh_per_kg")
    press(view, qtbot, KEY.Key_C)
    rows = [r.split("\t") for r in QGuiApplication.clipboard().text().splitlines()]
    assert rows[0][:2] == ["81.0", "498.1"]
    assert float(rows[0][2]) == pytest.approx(81000 / 498.1, rel=1e-15)


def test_whole_rows_are_copied_with_their_heads(
    view: RecordTableView, qtbot: QtBot
) -> None:
    view.show_columns({"note"})
    view.setCurrentIndex(view.table.index(0, 0))
    QTest.keyClick(view, KEY.Key_Space, MOD.ShiftModifier)
    press(view, qtbot, KEY.Key_C)
    heads, row = QGuiApplication.clipboard().text().splitlines()
    assert heads.split("\t")[:3] == ["pack", "energy [kWh]", "mass [kg]"]
    assert "note" not in heads.split("\t")
    assert row.split("\t")[0] == "Avocet 81"


def test_separate_selections_leave_gaps(view: RecordTableView, qtbot: QtBot) -> None:
    select(view, (0, 0), "energy_kwh")
    model = view.selectionModel()
    other = view.table.index(1, view.table.column_place("mass_kg") or 0)
    model.select(other, QItemSelectionModel.SelectionFlag.Select)
    press(view, qtbot, KEY.Key_C)
    assert QGuiApplication.clipboard().text() == "81.0\t\n\t447.2\n"


def test_block_is_pasted_as_one_step(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    start = workspace.state
    select(view, (1, 1), "energy_kwh")
    paste(view, qtbot, "75,5\t448,2 kg\r\n69\t1100 lb\r\n")
    packs = workspace.state.library.packs
    assert (packs[1].energy_kwh, packs[1].mass_kg) == (75.5, 448.2)
    assert packs[2].mass_kg == pytest.approx(1100 * 0.45359237)
    assert workspace.document.undo_label == "paste of 2 × 2 cells"
    workspace.undo()
    assert workspace.state == start


def test_paste_is_all_or_nothing_and_names_the_cells(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot, told: Told
) -> None:
    start = workspace.state
    select(view, (0, 0), "energy_kwh")
    paste(view, qtbot, "82\t499\nmany\t448\n70\t-3\n")
    assert workspace.state is start
    ((_, problems),) = told
    assert [(p.row, p.column, p.value) for p in problems] == [
        (2, "energy [kWh]", "many"),
        (3, "mass [kg]", "-3"),
    ]


def test_record_faults_are_named_by_row_of_the_block(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot, told: Told
) -> None:
    select(view, (0, 0), "mass_kg")
    paste(view, qtbot, "499\n300\n")
    ((_, problems),) = told
    assert [(p.source, p.row, p.record) for p in problems] == [
        ("pasted block", 2, "Dunlin 74")
    ]


def test_block_that_runs_past_the_end_adds_packs(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    select(view, (4, 4), "name")
    paste(view, qtbot, "Ruff 12\t12\t90\nStint 50\t50\t350\n")
    packs = workspace.state.library.packs
    assert list(packs.names)[-2:] == ["Ruff 12", "Stint 50"]
    assert packs[5].mass_kg == 350.0
    workspace.undo()
    assert len(workspace.state.library.packs) == 5


def test_new_pack_without_mass_is_refused(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot, told: Told
) -> None:
    select(view, (4, 4), "name")
    paste(view, qtbot, "Ruff 12\t12\nStint 50\t50\n")
    assert len(workspace.state.library.packs) == 5
    ((_, problems),) = told
    assert [(p.row, p.column) for p in problems] == [(2, "mass [kg]")]


def test_heads_say_which_column_is_which(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    view.setCurrentIndex(view.table.index(0, 0))
    text = "Mass (lb)\tpack\tdensity\tenergy [MJ]\n1000\tStint 50\t1\t180\n"
    QGuiApplication.clipboard().setText(text)
    QTest.keyClick(view, KEY.Key_V, MOD.ControlModifier | MOD.ShiftModifier)
    pack = workspace.state.library.packs[5]
    assert (pack.name, pack.energy_kwh) == ("Stint 50", 50.0)
    assert pack.mass_kg == pytest.approx(453.59237)


def test_own_copy_is_pasted_right_in_a_comma_study(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    workspace.edit("m", lambda s: s.with_study(decimal_mark=","))
    view.table.enter(
        view.table.index(0, view.table.column_place("mass_kg") or 0), "447,231"
    )
    select(view, (0, 0), "mass_kg")
    press(view, qtbot, KEY.Key_C)
    assert QGuiApplication.clipboard().text() == "447.231\n"
    select(view, (1, 1), "mass_kg")
    press(view, qtbot, KEY.Key_V)
    assert workspace.state.library.packs[1].mass_kg == 447.231


def test_one_cell_is_pasted_into_all_selected(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    select(view, (2, 4), "year")
    paste(view, qtbot, "2026")
    years = [pack.year for pack in workspace.state.library.packs]
    assert years == [2024, 2025, 2026, 2026, 2026]


def test_fill_down_is_one_step(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    select(view, (0, 3), "energy_basis")
    press(view, qtbot, KEY.Key_D)
    bases = [str(pack.energy_basis) for pack in workspace.state.library.packs]
    assert bases == ["gross"] * 4 + ["unknown"]
    assert workspace.document.undo_label == "fill down energy basis of 3 rows"


def test_delete_clears_what_may_be_empty(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot, told: Told
) -> None:
    select(view, (0, 1), "cells_mass_kg")
    QTest.keyClick(view, KEY.Key_Delete)
    assert [p.cells_mass_kg for p in workspace.state.library.packs] == [None] * 5
    select(view, (0, 1), "mass_kg")
    QTest.keyClick(view, KEY.Key_Delete)
    ((heading, problems),) = told
    assert heading == "Not cleared"
    assert problems[0].what == "mass is empty."


def test_empty_clipboard_is_said(view: RecordTableView, qtbot: QtBot) -> None:
    QGuiApplication.clipboard().clear()
    with qtbot.waitSignal(view.said) as said:
        press(view, qtbot, KEY.Key_V)
    assert said.args == ["There are no cells on the clipboard."]


def test_text_with_tabs_and_lines_survives(
    view: RecordTableView, workspace: Workspace, qtbot: QtBot
) -> None:
    text = 'one\ttwo\n"three"'
    view.table.entries.edits.change("note", [(0, {"note": text})])
    select(view, (0, 0), "note")
    press(view, qtbot, KEY.Key_C)
    select(view, (1, 1), "note")
    press(view, qtbot, KEY.Key_V)
    assert workspace.state.library.packs[1].note == text


def test_paste_wider_than_the_table_is_refused(
    view: RecordTableView, qtbot: QtBot, told: Told
) -> None:
    select(view, (0, 0), "note")
    paste(view, qtbot, "a\tb\tc\n")
    assert "3 columns" in told[0][1][0].what


def test_packs_can_be_pasted_into_an_empty_table(
    view: RecordTableView,
    make_workspace: Callable[[Library], Workspace],
    workspace: Workspace,
    qtbot: QtBot,
) -> None:
    workspace.edit("none", lambda s: s.with_library(packs=Library().packs))
    paste(view, qtbot, "Stint 50\t50\t350\nRuff 79\t79\t520\n")
    assert list(workspace.state.library.packs.names) == ["Stint 50", "Ruff 79"]


def test_rows_that_were_added_are_counted(view: RecordTableView, qtbot: QtBot) -> None:
    text = "pack\tenergy [kWh]\tmass [kg]\nRail 70\t70\t410\nCrake 66\t66\t430"
    QGuiApplication.clipboard().setText(text)
    with qtbot.waitSignal(view.said) as said:
        view.cells.paste_as_new()
    assert said.args == ["Pasted 3 × 3 cells, 2 of the rows new."]
