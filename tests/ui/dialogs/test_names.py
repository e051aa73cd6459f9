"""Every control of every dialog has a name that a screen reader can say."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QProgressBar,
    QWidget,
)
from pytestqt.qtbot import QtBot

from benchpack.files.reading import Reading
from benchpack.files.tables import read_sheet
from benchpack.ui.dialogs.about import AboutDialog
from benchpack.ui.dialogs.command_search import CommandSearch
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.dialogs.import_table import ImportDialog
from benchpack.ui.dialogs.preferences import PreferencesDialog
from benchpack.ui.dialogs.shortcuts import ShortcutsDialog
from benchpack.ui.dialogs.studies import StudiesDialog
from benchpack.ui.dialogs.study import StudyDialog
from benchpack.ui.dialogs.unexpected import UnexpectedDialog
from benchpack.ui.dialogs.whole_library import WholeLibraryDialog
from benchpack.ui.widgets.problems_panel import ProblemsPanel
from benchpack.ui.widgets.progress_strip import ProgressStrip
from benchpack.ui.workspace import Workspace

CONTROLS = (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QPlainTextEdit,
    QProgressBar,
)


def import_dialog(workspace: Workspace, folder: Path) -> QWidget:
    path = folder / "list.csv"
    path.write_text("pack,mass [lb],energy [kWh]\nRuff 70,987,70\n", encoding="utf-8")
    return ImportDialog(workspace, path, sheet=read_sheet(path))


def explanation(workspace: Workspace, _folder: Path) -> QWidget:
    panel = ExplanationPanel(workspace)
    panel.ask("gap")
    return panel


def command_search(_workspace: Workspace, _folder: Path) -> QWidget:
    return CommandSearch([])


def whole_library(workspace: Workspace, folder: Path) -> QWidget:
    reading = Reading(workspace.state.library)
    return WholeLibraryDialog(workspace, folder, reading=reading)


Maker = Callable[[Workspace, Path], QWidget]
MAKERS: dict[str, Maker] = {
    "about": lambda _workspace, _folder: AboutDialog(),
    "explanation": explanation,
    "import": import_dialog,
    "preferences": lambda workspace, _folder: PreferencesDialog(workspace),
    "problems": lambda _workspace, _folder: ProblemsPanel(),
    "progress": lambda _workspace, _folder: ProgressStrip(),
    "shortcuts": lambda _workspace, _folder: ShortcutsDialog([("A", [("F1", "B")])]),
    "studies": lambda workspace, _folder: StudiesDialog(workspace),
    "study": lambda workspace, _folder: StudyDialog(workspace),
    "unexpected": lambda _workspace, _folder: UnexpectedDialog(),
    "whole library": whole_library,
}


@pytest.mark.parametrize("name", MAKERS)
def test_controls_have_names(
    qtbot: QtBot, workspace: Workspace, tmp_path: Path, name: str
) -> None:
    widget = MAKERS[name](workspace, tmp_path)
    qtbot.addWidget(widget)
    widget.show()
    nameless = [
        f"{type(control).__name__} in {type(control.parent()).__name__}"
        for control in widget.findChildren(QWidget)
        if isinstance(control, CONTROLS) and not _is_inner(control)
        if not _spoken_name(control)
    ]
    assert nameless == []
    assert _spoken_name(widget)


def _spoken_name(widget: QWidget) -> str:
    interface = QAccessible.queryAccessibleInterface(widget)
    return interface.text(QAccessible.Text.Name)


def _is_inner(widget: QWidget) -> bool:
    """Tell whether Qt made a control inside another, a popup or a corner button."""
    inside = widget.parent()
    while isinstance(inside, QWidget):
        if isinstance(inside, (*CONTROLS[1:5], QComboBox)):
            return True
        inside = inside.parent()
    return False


@pytest.mark.parametrize("name", MAKERS)
def test_dialogs_fit_a_small_screen(
    qtbot: QtBot, workspace: Workspace, tmp_path: Path, name: str
) -> None:
    widget = MAKERS[name](workspace, tmp_path)
    qtbot.addWidget(widget)
    widget.show()
    assert widget.width() <= 1024
    assert widget.height() <= 700
