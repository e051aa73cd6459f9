"""The packs page over the small library."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from benchpack.ui.pages.packs.page import PacksPage
from benchpack.ui.workspace import Workspace


def focused() -> QWidget:
    """Give the widget that has the focus."""
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


@pytest.fixture
def page(workspace: Workspace, qtbot: QtBot) -> PacksPage:
    """Give the page, shown."""
    made = PacksPage(workspace)
    qtbot.addWidget(made)
    made.resize(1150, 640)
    made.show()
    qtbot.waitExposed(made)
    made.setFocus()
    return made
