"""The table model: what cells say, order, filter, selection."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from pytestqt.qtbot import QtBot

from benchpack.model.joint import JOINT_FIELDS
from benchpack.ui.pages.packs.pack_edits import PackEdits
from benchpack.ui.tables.columns import recorded_columns
from benchpack.ui.tables.marks import Mark
from benchpack.ui.tables.ordering import Direction
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tables.records import listed_records
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle
from tests.ui.tables.conftest import show_library

ROLE = Qt.ItemDataRole


def names(view: RecordTableView) -> list[str]:
    model = view.table
    return [str(model.index(row, 0).data()) for row in range(model.rowCount())]


def cell(
    view: RecordTableView, name: str, key: str, role: int = ROLE.DisplayRole
) -> Any:
    place = view.table.column_place(key)
    assert place is not None
    return view.table.index(names(view).index(name), place).data(role)


def test_model_keeps_the_rules_of_qt(view: RecordTableView) -> None:
    tester = QAbstractItemModelTester(
        view.table, QAbstractItemModelTester.FailureReportingMode.Warning
    )
    view.sort_by("mass_kg", Direction.RISING)
    view.table.set_marks({0: Mark.SUBJECT})
    assert tester.model() is view.table


def test_cells_are_plain_texts_with_fixed_decimals(view: RecordTableView) -> None:
    assert cell(view, "Avocet 81", "energy_kwh") == "81.0"
    assert cell(view, "Avocet 81", "mass_kg") == "498.1"
    assert cell(view, "Avocet 81", "density_wh_per_kg") == "163"
    assert cell(view, "Avocet 81", "cells_share") == "66"
    assert cell(view, "Avocet 81", "year") == "2024"
    assert cell(view, "Avocet 81", "boundary") == "1 in, 1 out"
    model = view.table
    for row in range(model.rowCount()):
        for column in range(model.columnCount()):
            assert type(model.index(row, column).data()) is str


def test_unit_stands_once_in_the_head(view: RecordTableView) -> None:
    heads = [
        view.table.headerData(place, Qt.Orientation.Horizontal)
        for place in range(view.table.columnCount())
    ]
    assert heads[:4] == ["pack", "energy [kWh]", "mass [kg]", "density [Wh/kg]"]


def test_unknown_is_a_dash_with_its_reason(view: RecordTableView) -> None:
    assert cell(view, "Knot 42", "cells_share") == "–"
    tip = cell(view, "Knot 42", "cells_share", ROLE.ToolTipRole)
    assert tip == "Not known. It needs the mass of the cells."
    assert cell(view, "Knot 42", "energy_basis") == "–"
    assert cell(view, "Knot 42", "volume_l", ROLE.AccessibleTextRole) == "not known"


def test_figures_are_set_right_and_texts_left(view: RecordTableView) -> None:
    right = cell(view, "Knot 42", "mass_kg", ROLE.TextAlignmentRole)
    left = cell(view, "Knot 42", "chemistry", ROLE.TextAlignmentRole)
    assert Qt.AlignmentFlag(right) & Qt.AlignmentFlag.AlignRight
    assert Qt.AlignmentFlag(left) & Qt.AlignmentFlag.AlignLeft


def test_marks_and_warnings_are_said_in_words(view: RecordTableView) -> None:
    view.table.set_marks({0: Mark.SUBJECT, 1: Mark.REFERENCE})
    spoken = cell(view, "Avocet 81", "name", ROLE.AccessibleTextRole)
    assert spoken == "Avocet 81, subject"
    assert "the reference" in cell(view, "Dunlin 74", "name", ROLE.ToolTipRole)
    assert cell(view, "Ruff 12", "name", ROLE.AccessibleTextRole) == (
        "Ruff 12, 1 warning"
    )
    tip = cell(view, "Ruff 12", "name", ROLE.ToolTipRole)
    assert tip.startswith("Warning: The pack comes to 17 Wh/kg")


def test_pounds_and_comma_change_heads_and_cells(
    view: RecordTableView, workspace: Workspace
) -> None:
    workspace.edit("lb", lambda s: s.with_study(mass_unit="lb", decimal_mark=","))
    place = view.table.column_place("mass_kg")
    assert view.table.headerData(place or 0, Qt.Orientation.Horizontal) == "mass [lb]"
    assert cell(view, "Avocet 81", "mass_kg") == "1\u2009098,1"
    assert cell(view, "Avocet 81", "density_wh_per_kg") == "163"


def test_sort_is_stable_and_puts_the_unknown_last(view: RecordTableView) -> None:
    view.sort_by("cells_share", Direction.RISING)
    assert names(view)[:2] == ["Avocet 81", "Dunlin 74"]
    assert names(view)[2:] == ["Turnstone 68", "Knot 42", "Ruff 12"]
    view.sort_by("cells_share", Direction.FALLING)
    assert names(view) == [
        "Dunlin 74",
        "Avocet 81",
        "Turnstone 68",
        "Knot 42",
        "Ruff 12",
    ]
    view.sort_by("chemistry", Direction.FALLING)
    assert names(view)[:3] == ["Avocet 81", "Dunlin 74", "Turnstone 68"]
    assert names(view)[-1] == "Ruff 12"


def test_clicks_on_a_head_sort_reverse_and_go_back(
    view: RecordTableView, qtbot: QtBot
) -> None:
    at_first = names(view)
    heads = view.horizontalHeader()
    x = heads.sectionViewportPosition(view.table.column_place("mass_kg") or 0) + 20
    seen = []
    for _ in range(3):
        QTest.mouseClick(
            heads.viewport(),
            Qt.MouseButton.LeftButton,
            pos=QPoint(x, heads.height() // 2),
        )
        seen.append(names(view))
    assert seen[0][0] == "Knot 42"
    assert seen[1] == seen[0][::-1]
    assert seen[2] == at_first


def test_selection_follows_its_records_through_sort_and_filter(
    view: RecordTableView,
) -> None:
    row = names(view).index("Turnstone 68")
    view.setCurrentIndex(view.table.index(row, 2))
    view.sort_by("mass_kg", Direction.RISING)
    current = view.currentIndex()
    assert view.table.name_at(current) == "Turnstone 68"
    assert current.column() == 2
    assert [(r.top, r.left) for r in view.selected_ranges()] == [(current.row(), 2)]


def test_all_stays_all_through_a_sort(view: RecordTableView) -> None:
    view.selectAll()
    view.sort_by("mass_kg", Direction.RISING)
    ranges = view.selected_ranges()
    assert [(r.top, r.bottom) for r in ranges] == [(0, view.table.rowCount() - 1)]


def test_row_keeps_its_place_after_an_edit(view: RecordTableView) -> None:
    view.sort_by("mass_kg", Direction.RISING)
    before = names(view)
    place = view.table.column_place("mass_kg") or 0
    assert view.table.enter(view.table.index(0, place), "900") == ()
    assert names(view) == before
    assert view.table.index(0, place).data() == "900.0"


def test_joints_can_be_shown_by_the_same_table(workspace: Workspace) -> None:
    joints = workspace.state.library.joints_of("Avocet 81")
    fields = [field for field in JOINT_FIELDS if field.name != "pack"]
    style = NumberStyle()
    model = RecordTableModel(PackEdits(workspace))
    columns = recorded_columns(fields, style, currency="EUR")
    model.show(listed_records(joints, fields), columns, style=style)
    model.sort_by("mass_each_g", Direction.RISING)
    assert [model.name(int(row)) for row in model.order] == [
        "lid inserts",
        "lid screws",
    ]
    place = model.column_place("carry_over")
    assert model.index(0, place or 0).data(ROLE.CheckStateRole) is (
        Qt.CheckState.Unchecked
    )
    assert "cost each [EUR]" in [column.head for column in model.columns]


def test_other_library_resets_the_table(
    view: RecordTableView, workspace: Workspace
) -> None:
    library = workspace.state.library
    fewer = library.packs.selected(np.array([3, 1]))
    workspace.edit("fewer", lambda s: s.with_library(packs=fewer))
    assert names(view) == ["Knot 42", "Dunlin 74"]


@pytest.mark.parametrize("shown", ["energy_kwh", "note"])
def test_columns_are_shown_and_hidden_by_choice(
    view: RecordTableView, qtbot: QtBot, shown: str
) -> None:
    view.show_columns({"note"})
    menu = view.column_menu()
    action = next(a for a in menu.actions() if a.data() == shown)
    with qtbot.waitSignal(view.columns_chosen) as chosen:
        action.trigger()
    place = view.table.column_place(shown) or 0
    assert view.isColumnHidden(place) is (shown == "energy_kwh")
    assert (shown in chosen.args[0]) is (shown == "energy_kwh")
    view.show_columns({"name"})
    assert not view.isColumnHidden(0)


def test_view_follows_the_document(view: RecordTableView, workspace: Workspace) -> None:
    view.table.enter(
        view.table.index(0, view.table.column_place("mass_kg") or 0), "500"
    )
    workspace.undo()
    show_library(view, workspace)
    assert cell(view, "Avocet 81", "mass_kg") == "498.1"
