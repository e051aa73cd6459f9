"""What the workspace tells of edits that were refused, and when that is past."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from pytestqt.qtbot import QtBot

from benchpack.errors import Problem
from benchpack.session.document import Document
from benchpack.session.state import State
from benchpack.ui.widgets.problems_panel import ProblemsPanel
from benchpack.ui.workspace import Workspace


def panel_on(qtbot: QtBot, workspace: Workspace) -> ProblemsPanel:
    panel = ProblemsPanel()
    qtbot.addWidget(panel)
    workspace.notifier.problems_found.connect(panel.show_problems)
    return panel


def with_target(target_kg: float) -> Callable[[State], State]:
    def make(state: State) -> State:
        return state.with_study(target_kg=target_kg)

    return make


def test_an_edit_that_is_made_closes_the_list_of_the_refused_one(
    qtbot: QtBot, workspace: Workspace
) -> None:
    panel = panel_on(qtbot, workspace)
    assert not workspace.edit("target", with_target(-1.0))
    assert panel.isVisible()
    assert workspace.edit("target", with_target(5.0))
    assert not panel.isVisible()


def test_an_edit_that_is_made_leaves_another_list_open(
    qtbot: QtBot, workspace: Workspace
) -> None:
    panel = panel_on(qtbot, workspace)
    assert not workspace.edit("target", with_target(-1.0))
    panel.show_problems("Warnings", (Problem("One."),))
    assert workspace.edit("target", with_target(5.0))
    assert panel.isVisible()


def test_another_library_closes_the_list(qtbot: QtBot, workspace: Workspace) -> None:
    panel = panel_on(qtbot, workspace)
    panel.show_problems("Not opened: packs.csv", (Problem("One."),))
    library = replace(workspace.state.library, title="Other")
    workspace.open_document(Document(State(library, library.first_study().name)))
    assert not panel.isVisible()
