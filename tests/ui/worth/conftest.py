"""The Worth page over a small library with a proposal, a volume and sets."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QTabBar
from pytestqt.qtbot import QtBot

from benchpack.model.assumptions import AssumptionSet, assumption_values
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.ui.pages.worth.page import WorthPage
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import STUDY, changed_library
from tests.ui.showing import settle, shown

MakePage = Callable[[Workspace], WorthPage]
MakeWorkspace = Callable[[Library], Workspace]


def valued_library(**values: object) -> Library:
    """Give the library with a proposal that pays, and assumptions as told."""
    library = changed_library()
    first = library.studies[0]
    study: Study = replace(
        first,
        worth_likely_per_kg=60.0,
        worth_low_per_kg=40.0,
        worth_high_per_kg=90.0,
        old_part_price=60.0,
        **values,  # type: ignore[arg-type]  # names are checked by the dataclass
    )
    kept = assumption_values(study)
    sets = (
        AssumptionSet(STUDY, "cautious", **{**kept, "worth_likely_per_kg": 50.0}),
        AssumptionSet(STUDY, "dear money", **{**kept, "discount_rate": 0.2}),
    )
    return replace(library, studies=(study,), assumption_sets={STUDY: sets})


@pytest.fixture
def make_page(qtbot: QtBot) -> MakePage:
    """Give what shows the page of a workspace."""

    def make(workspace: Workspace) -> WorthPage:
        return shown(qtbot, WorthPage(workspace))

    return make


@pytest.fixture
def page(make_page: MakePage, make_workspace: MakeWorkspace) -> WorthPage:
    """Give the page over the library with a proposal."""
    return make_page(make_workspace(valued_library()))


def open_tab(page: WorthPage, title: str) -> None:
    """Click on the tab of a name."""
    bar: QTabBar = page.tabs.tabBar()
    titles = [page.tabs.tabText(place) for place in range(page.tabs.count())]
    place = bar.tabRect(titles.index(title)).center()
    QTest.mouseClick(bar, Qt.MouseButton.LeftButton, pos=place)
    settle()
