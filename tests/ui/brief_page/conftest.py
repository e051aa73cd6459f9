"""The Brief page over a small library with a proposal."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.session.state import State
from benchpack.ui.pages.brief.page import BriefPage
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import changed_library
from tests.ui.showing import plain, settle, shown

LEFT = Qt.MouseButton.LeftButton
MakePage = Callable[[Workspace], BriefPage]


@pytest.fixture
def library() -> Library:
    """Give the library with a proposal."""
    return changed_library()


@pytest.fixture
def make_page(qtbot: QtBot) -> MakePage:
    """Give what shows the page of a workspace, its first brief set."""

    def make(workspace: Workspace) -> BriefPage:
        made = shown(qtbot, BriefPage(workspace))
        made.setFocus()
        settle()
        return made

    return make


@pytest.fixture
def page(make_page: MakePage, workspace: Workspace) -> BriefPage:
    """Give the page over the library with a proposal."""
    return make_page(workspace)


def words(page: BriefPage) -> str:
    """Give the text of the preview, as a screen reader says it."""
    return plain(page.view.preview.accessibleDescription())


def click(button: QAbstractButton) -> None:
    """Click on the mark of a button, as its row may be wider than its words."""
    QTest.mouseClick(button, LEFT, pos=button.rect().center())


def after(page: BriefPage, qtbot: QtBot, act: Callable[[], object]) -> str:
    """Do something and give the words of the preview that follows."""
    with qtbot.waitSignal(page.desk.found):
        act()
    return words(page)


def renders(page: BriefPage) -> list[int]:
    """Give a list that grows with every preview that is set."""
    found: list[int] = []

    def count() -> None:
        found.append(len(found))

    page.desk.found.connect(count)
    return found


def with_study(**changes: object) -> Callable[[State], State]:
    """Give an edit that changes the study."""

    def make(state: State) -> State:
        return state.with_study(**changes)

    return make
