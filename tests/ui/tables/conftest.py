"""A table over the small library, in a view that can be typed into."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from benchpack.ui.pages.packs.pack_columns import PackBook, table_columns
from benchpack.ui.pages.packs.pack_edits import PackEdits
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle


def show_library(view: RecordTableView, workspace: Workspace) -> None:
    """Show the packs of the open library, in the study's number style."""
    study = workspace.state.study
    style = NumberStyle(study.decimal_mark, study.mass_unit)
    book = PackBook(workspace.state.library)
    view.table.show(book.records, table_columns(style), style=style, warn=book.warnings)


@pytest.fixture
def view(workspace: Workspace, qtbot: QtBot) -> RecordTableView:
    """Give a shown view that follows the open library."""
    table = RecordTableView(
        RecordTableModel(PackEdits(workspace)), "Packs", runner=workspace.runner
    )
    qtbot.addWidget(table)
    table.table.setParent(table)

    def follow() -> None:
        show_library(table, workspace)

    workspace.changed.connect(follow)
    follow()
    table.resize(1400, 400)
    table.show()
    qtbot.waitExposed(table)
    table.setFocus()
    table.setCurrentIndex(table.table.index(0, 0))
    return table
