"""Where the figures of the worth come from, in the window's panel."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.results.explain_worth import WORTH_KEYS
from benchpack.ui.dialogs.explanation import ExplanationPanel, show_explanation
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import changed_library


@pytest.fixture
def library() -> Library:
    """Give the library with a proposal."""
    return changed_library()


@pytest.fixture
def anchor(qtbot: QtBot) -> QWidget:
    """Give a window that asks."""
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    return window


def texts(panel: ExplanationPanel) -> list[str]:
    return [w.text() for w in panel.findChildren(QLabel) if not w.isHidden()]


@pytest.mark.parametrize("key", WORTH_KEYS)
def test_each_figure_is_shown(workspace: Workspace, anchor: QWidget, key: str) -> None:
    panel = show_explanation(workspace, key, "", anchor)
    assert panel is not None
    shown = texts(panel)
    assert any(text.startswith("Source of the formula") for text in shown)
    assert shown[1]


def test_it_follows_the_assumptions(workspace: Workspace, anchor: QWidget) -> None:
    panel = show_explanation(workspace, "target worth", "", anchor)
    assert panel is not None
    assert any(text.startswith("6\u00a0EUR") for text in texts(panel))
    workspace.edit("target", lambda state: state.with_study(target_kg=20.0))
    assert any(text.startswith("60\u00a0EUR") for text in texts(panel))
    study = workspace.state.study
    workspace.edit(
        "worth", lambda state: replace(state).with_study(worth_reason="agreed in May")
    )
    assert workspace.state.study != study
    assert "agreed in May" in texts(panel)


def test_asked_again_it_has_the_room_that_a_fresh_one_has(
    workspace: Workspace, anchor: QWidget, qtbot: QtBot
) -> None:
    panel = show_explanation(workspace, "target worth", "", anchor)
    assert panel is not None
    assert panel.ask("headroom")
    fresh = ExplanationPanel(workspace)
    qtbot.addWidget(fresh)
    fresh.ask("headroom")
    assert panel.height() == fresh.height()


def test_what_is_missing_is_a_sentence(workspace: Workspace, anchor: QWidget) -> None:
    panel = show_explanation(workspace, "customer gain", "", anchor)
    assert panel is not None
    shown = texts(panel)
    assert shown[1] == "\u2013"
    assert any(text.endswith(".") for text in shown)
