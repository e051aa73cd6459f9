"""The packs page over the small library."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from benchpack.ui.pages.packs.page import PacksPage
from benchpack.ui.workspace import Workspace
from tests.ui.showing import shown


@pytest.fixture
def page(workspace: Workspace, qtbot: QtBot) -> PacksPage:
    """Give the page, shown."""
    made = shown(qtbot, PacksPage(workspace), size=(1150, 640))
    made.setFocus()
    return made
