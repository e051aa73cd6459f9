"""From a part to its busbar figures."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.ui.catalogue import PAGES
from benchpack.ui.dialogs.busbar import BusbarDialog
from benchpack.ui.main_window import MainWindow
from benchpack.ui.pages.packs.page import PacksPage
from benchpack.ui.pages.packs.parts_tab import PartsTab
from benchpack.ui.workspace import Workspace

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def workspace(
    make_workspace: Callable[[Library], Workspace], library: Library
) -> Workspace:
    """Give the small library with a busbar in its second pack."""
    parts = (
        Part(
            "Dunlin 74",
            "box busbar",
            "",
            Subsystem.ELECTRONICS,
            "copper",
            thickness_mm=3.0,
            length_mm=140.0,
            mass_each_kg=0.1125,
        ),
        Part("Dunlin 74", "box cover", "", Subsystem.ELECTRONICS, "PBT-GF30"),
    )
    return make_workspace(replace(library, parts={**library.parts, "Dunlin 74": parts}))


@pytest.fixture
def tab(page: PacksPage) -> PartsTab:
    page.panel.tabs.setCurrentWidget(page.panel.parts)
    page.workspace.select("Dunlin 74")
    return page.panel.parts


def test_the_button_is_for_conductors(tab: PartsTab) -> None:
    assert tab.go_to("box cover", "name")
    assert not tab.busbar_button.isEnabled()
    assert tab.go_to("box busbar", "name")
    assert tab.busbar_button.isEnabled()
    tab.tree.setCurrentIndex(tab.model.index(0, 0))
    assert not tab.busbar_button.isEnabled()


def test_the_button_opens_the_figures_of_the_part(
    tab: PartsTab, page: PacksPage
) -> None:
    """0.1125 kg / (8930 kg/m3 * 3 mm * 140 mm) = 30.0 mm."""
    tab.go_to("box busbar", "name")
    QTest.mouseClick(tab.busbar_button, LEFT)
    dialog = page.window().findChild(BusbarDialog)
    assert dialog is not None
    assert dialog.isVisible()
    assert dialog.part_box.currentText() == "box busbar"
    assert dialog.fields["width_mm"].text() == "30"
    assert dialog.trial().length_mm == 140.0
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


def test_the_command_opens_the_figures_of_the_selected_pack(
    workspace: Workspace, qtbot: QtBot
) -> None:
    window = MainWindow(workspace, PAGES)
    qtbot.addWidget(window)
    window.show()
    workspace.select("Dunlin 74")
    action = window.menu_actions["busbar"]
    assert action in window.every_action()
    action.trigger()
    dialog = window.findChild(BusbarDialog)
    assert dialog is not None
    assert dialog.part_box.currentText() == "box busbar"
    dialog.close()
