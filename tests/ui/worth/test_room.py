"""Nothing on the Worth page is cut where there is little room."""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.worth_words import EnergyFrom
from benchpack.ui.pages.worth.assumption_sections import WORTH
from benchpack.ui.pages.worth.page import WorthPage
from tests.ui.showing import settle
from tests.ui.worth.conftest import MakePage, MakeWorkspace, valued_library
from tests.ui.worth.panels import line_of, study_of, type_into

NARROW = (912, 470)
"""What the page has in a window of 1024 x 700."""


@pytest.fixture
def narrow(make_page: MakePage, make_workspace: MakeWorkspace) -> WorthPage:
    """Give the page as narrow as it may become."""
    page = make_page(make_workspace(valued_library()))
    page.resize(*NARROW)
    settle()
    return page


def edit(page: WorthPage, **values: Any) -> None:
    page.workspace.edit("other", lambda state: state.with_study(**values))
    settle()


def assert_figures_whole(page: WorthPage) -> None:
    row = page.figures
    for group in row.groups:
        for button in (group.main, *group.small):
            assert button.width() >= button.sizeHint().width(), button.text()
        assert group.geometry().right() <= row.width(), group.label.text()


def test_figures_are_whole_whatever_was_shown_before(narrow: WorthPage) -> None:
    assert_figures_whole(narrow)
    for values in (
        {"target_kg": 50.0},
        {"volumes": (0, 0, 0)},
        {"volumes": (), "currency": "CHF", "mass_unit": "lb", "decimal_mark": ","},
        {"worth_high_per_kg": 99_000.0, "worth_likely_per_kg": 88_000.0},
        {"yearly_volume": None},
        {"target_kg": None, "mass_unit": "kg"},
    ):
        edit(narrow, **values)
        assert_figures_whole(narrow)


def test_what_is_valued_stands_in_the_label(narrow: WorthPage) -> None:
    group = narrow.figures.worth
    assert group.label.text() == "Worth per pack: proposal"
    assert group.small[0].text().endswith("after costs")
    narrow.workspace.edit("none", lambda state: state.with_library(changes={}))
    settle()
    assert group.label.text() == "Worth per pack: share captured"
    assert group.small[0].text() == "costs not known"
    assert_figures_whole(narrow)


def test_the_panel_is_never_wider_than_what_is_seen_of_it(narrow: WorthPage) -> None:
    panel = narrow.assumptions
    edit(narrow, volumes=(1, 2), energy_from=EnergyFrom.STEADY, drive_cycle="")
    panel.resize(panel.minimumWidth(), 400)
    settle()
    panel.cycle.forget.show()
    settle()
    body = panel.widget()
    assert body is not None
    assert body.width() <= panel.viewport().width()
    assert panel.horizontalScrollBar().maximum() == 0


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("programme", ProgrammeKind.NEW),
        ("programme", ProgrammeKind.RUNNING),
        ("energy_from", EnergyFrom.STEADY),
        ("energy_from", EnergyFrom.URBAN),
    ],
)
def test_the_word_that_is_chosen_is_whole(
    narrow: WorthPage, key: str, value: str
) -> None:
    edit(narrow, **{key: value})
    box = narrow.assumptions.rows[key].editor
    assert isinstance(box, QComboBox)
    assert box.currentText() == value
    assert box.width() >= box.sizeHint().width()


def test_a_worth_per_pound_can_be_read_and_keeps_its_digits(narrow: WorthPage) -> None:
    edit(narrow, mass_unit="lb")
    panel = narrow.assumptions
    line = line_of(panel, WORTH)
    assert line.text() == "18.14:27.22:40.82"
    room = line.width() - 16
    assert line.fontMetrics().horizontalAdvance(line.text()) <= room
    type_into(panel, WORTH, "18.14:27.22:45")
    study = study_of(panel)
    assert (study.worth_low_per_kg, study.worth_likely_per_kg) == (40.0, 60.0)
    assert study.worth_high_per_kg == pytest.approx(45 / 0.45359237)


def test_what_is_wrong_is_scrolled_into_view(narrow: WorthPage) -> None:
    panel = narrow.assumptions
    row = type_into(panel, "start_year", "12")
    settle()
    area = panel.viewport().rect()
    bottom = row.mapTo(panel.viewport(), row.rect().bottomLeft())
    assert row.error_text
    assert area.contains(bottom)
    panel.volumes.show_problem(None)
    panel.verticalScrollBar().setValue(0)
    panel.volumes.view.setFocus(Qt.FocusReason.OtherFocusReason)
    panel.volumes.model.entered.emit(0, -5)
    settle()
    table = panel.volumes
    assert table.error_text
    assert area.contains(table.mapTo(panel.viewport(), table.rect().bottomLeft()))
