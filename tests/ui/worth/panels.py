"""The panel of assumptions for tests, and how a person types into it."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from benchpack.model.study import Study
from benchpack.ui.pages.worth.assumption_panel import AssumptionPanel
from benchpack.ui.pages.worth.assumption_row import AssumptionRow
from benchpack.ui.workspace import Workspace
from tests.ui.showing import shown

ENTER = Qt.Key.Key_Return


def shown_panel(qtbot: QtBot, workspace: Workspace) -> AssumptionPanel:
    """Show the panel of a workspace, as narrow as on its page."""
    return shown(qtbot, AssumptionPanel(workspace), size=(290, 560))


def study_of(panel: AssumptionPanel) -> Study:
    return panel.workspace.state.study


def line_of(panel: AssumptionPanel, key: str) -> QLineEdit:
    editor = panel.rows[key].editor
    assert isinstance(editor, QLineEdit)
    return editor


def type_into(panel: AssumptionPanel, key: str, text: str) -> AssumptionRow:
    """Replace what stands in a line by typing, and press Enter."""
    line = line_of(panel, key)
    panel.ensureWidgetVisible(line)
    QTest.mouseClick(line, Qt.MouseButton.LeftButton)
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClicks(line, text)
    QTest.keyClick(line, ENTER)
    return panel.rows[key]


def choose(panel: AssumptionPanel, key: str, word: str) -> None:
    """Choose a word of a list with the keys."""
    box: Any = panel.rows[key].editor
    panel.ensureWidgetVisible(box)
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Home)
    for _ in range(box.findData(word) - box.currentIndex()):
        QTest.keyClick(box, Qt.Key.Key_Down)
