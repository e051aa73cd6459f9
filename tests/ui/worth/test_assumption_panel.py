"""The panel of assumptions, with keys and clicks as a person has them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Any

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.library import Library
from benchpack.model.ranges import Range
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from benchpack.session.state import State
from benchpack.ui.pages.worth.assumption_panel import AssumptionPanel
from benchpack.ui.pages.worth.assumption_sections import WORTH
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import small_library
from tests.ui.worth.panels import (
    ENTER,
    choose,
    line_of,
    shown_panel,
    study_of,
    type_into,
)


@pytest.fixture
def library() -> Library:
    """Give the small library, whose study has no proposal and no volume."""
    return small_library()


@pytest.fixture
def panel(qtbot: QtBot, workspace: Workspace) -> AssumptionPanel:
    """Give the panel over the small library."""
    return shown_panel(qtbot, workspace)


@pytest.mark.parametrize(
    ("key", "typed", "attribute", "value"),
    [
        ("worth_source", "minutes 7", "worth_source", "minutes 7"),
        ("yearly_volume", "40000", "yearly_volume", 40_000),
        ("programme_years", "5.5", "programme_years", 5.5),
        ("start_year", "2031", "start_year", 2031),
        ("volume_spread", "30", "volume_spread", 0.3),
        ("discount_rate", "6 %", "discount_rate", 0.06),
        ("share_captured", "50", "share_captured", 0.5),
        ("target_kg", "12.5", "target_kg", 12.5),
        ("old_part_price", "80", "old_part_price", 80.0),
        ("part_price", "60", "part_price", 60.0),
        ("required_saving", "10", "required_saving", 10.0),
        ("customer_share", "40", "customer_share", 0.4),
        ("mass_energy", "0.5:0.6:0.8", "mass_energy", Range(0.5, 0.6, 0.8)),
        ("battery_cost", "100 +- 20", "battery_cost", Range(80.0, 100.0, 120.0)),
        ("vehicle_range_km", "500", "vehicle_range_km", 500.0),
        ("usable_share", "90", "usable_share", 0.9),
        ("pack_density_wh_per_kg", "180", "pack_density_wh_per_kg", 180.0),
        ("secondary_share", "0.2", "secondary_share", 0.2),
        ("driver_km_per_year", "20000", "driver_km_per_year", 20_000.0),
        ("driver_years", "10", "driver_years", 10.0),
        ("energy_price", "0.4", "energy_price", 0.4),
        ("charging_efficiency", "92", "charging_efficiency", 0.92),
        ("driver_rate", "3", "driver_rate", 0.03),
    ],
)
def test_an_entry_is_one_step_of_undo(
    panel: AssumptionPanel, key: str, typed: str, attribute: str, value: object
) -> None:
    before = study_of(panel)
    row = type_into(panel, key, typed)
    assert getattr(study_of(panel), attribute) == pytest.approx(value) or (
        getattr(study_of(panel), attribute) == value
    )
    assert row.error_text == ""
    assert panel.workspace.document.undo_label == row.column.title
    panel.workspace.undo()
    assert study_of(panel) == before
    assert panel.workspace.document.undo_label == ""


def test_the_worth_is_one_entry_of_three_figures(panel: AssumptionPanel) -> None:
    row = type_into(panel, WORTH, "2:4:9")
    assert study_of(panel).worth_per_kg == (2.0, 4.0, 9.0)
    assert row.text == "2:4:9"
    type_into(panel, WORTH, "5")
    assert study_of(panel).worth_per_kg == (5.0, 5.0, 5.0)


def test_the_reason_is_taken_when_the_focus_leaves(panel: AssumptionPanel) -> None:
    editor = panel.rows["worth_reason"].editor
    editor.setFocus()
    QTest.keyClicks(editor, "agreed in May")
    line_of(panel, "worth_source").setFocus()
    assert study_of(panel).worth_reason == "agreed in May"


@pytest.mark.parametrize(
    ("key", "typed", "said"),
    [
        ("discount_rate", "eight", "is not a number"),
        ("discount_rate", "150", "has to lie between 0 and 100 %"),
        ("usable_share", "0", "has to lie between 5 and 100 %"),
        ("discount_rate", "", "is empty"),
        ("yearly_volume", "0.5", "Yearly volume is 0.5"),
        ("yearly_volume", "-4", "has to be above zero"),
        (WORTH, "3:2:1", "low, likely, high"),
        (WORTH, "1:2", "is no range"),
        ("mass_energy", "0.4:0.6:40", "at most 10"),
        ("start_year", "12", "at least 1900"),
        ("programme_years", "200", "at most 100"),
    ],
)
def test_a_bad_entry_stays_and_says_what_is_wrong_beside_it(
    panel: AssumptionPanel, key: str, typed: str, said: str
) -> None:
    before = study_of(panel)
    row = type_into(panel, key, typed)
    assert said in row.error_text
    assert row.text == typed
    assert row.editor.accessibleDescription().startswith("Not taken.")
    assert study_of(panel) is before
    # Another edit leaves it; so does an undo of that.
    type_into(panel, "energy_price", "0.5")
    panel.workspace.undo()
    assert row.text == typed
    assert said in row.error_text
    # Escape brings the value back, and leaving the line drops the complaint.
    line = line_of(panel, key)
    line.setFocus()
    QTest.keyClick(line, Qt.Key.Key_Escape)
    QTest.keyClick(line, ENTER)
    assert row.error_text == ""
    assert study_of(panel) is before


def test_an_empty_field_means_what_stands_in_it_in_grey(
    panel: AssumptionPanel,
) -> None:
    for key, grey in (
        ("target_kg", "none"),
        ("part_price", "none"),
        ("secondary_share", "by kind"),
        ("pack_density_wh_per_kg", "subject's"),
    ):
        type_into(panel, key, "2")
        type_into(panel, key, "")
        assert getattr(study_of(panel), key) is None
        assert line_of(panel, key).placeholderText() == grey


def test_the_same_figure_written_otherwise_is_no_edit(panel: AssumptionPanel) -> None:
    row = type_into(panel, "discount_rate", "8.00 %")
    assert row.text == "8"
    assert panel.workspace.document.undo_label == ""


def test_units_and_marks_are_those_of_the_study(
    qtbot: QtBot,
    make_workspace: Callable[[Library], Workspace],
    library: Library,
) -> None:
    study = replace(
        library.studies[0], mass_unit="lb", decimal_mark=",", currency="USD"
    )
    panel = shown_panel(qtbot, make_workspace(replace(library, studies=(study,))))
    assert panel.rows[WORTH].column.unit == "USD/lb"
    type_into(panel, WORTH, "0,5:1:2")
    assert study_of(panel).worth_likely_per_kg == pytest.approx(1 / 0.45359237)
    assert panel.rows[WORTH].text == "0,5:1:2"
    type_into(panel, "target_kg", "10")
    assert study_of(panel).target_kg == pytest.approx(4.5359237)
    assert panel.rows["energy_price"].text == "0,25"


def test_units_follow_the_study(panel: AssumptionPanel) -> None:
    panel.workspace.edit("unit", lambda state: state.with_study(currency="CHF"))
    assert panel.rows["part_price"].column.unit == "CHF"
    assert panel.rows["battery_cost"].column.unit == "CHF/kWh"


def test_only_what_matters_for_the_chosen_way_is_enabled(
    panel: AssumptionPanel,
) -> None:
    def enabled() -> set[str]:
        return {key for key, row in panel.rows.items() if row.isEnabled()}

    pattern = {"rolling_resistance", "drive_efficiency", "recuperated_share"}
    range_kept = {"vehicle_range_km", "usable_share", "battery_cost"}
    assert "mass_energy" in enabled()
    assert not enabled() & {*pattern, "steady_speed_kmh", "consumption_kwh"}
    choose(panel, "energy_from", EnergyFrom.STEADY)
    assert study_of(panel).energy_from is EnergyFrom.STEADY
    assert {*pattern, "steady_speed_kmh"} <= enabled()
    assert "mass_energy" not in enabled()
    choose(panel, "energy_from", EnergyFrom.URBAN)
    assert "steady_speed_kmh" not in enabled()
    assert {*range_kept, "secondary_share"} <= enabled()
    choose(panel, "programme", ProgrammeKind.RUNNING)
    assert "secondary_share" not in enabled()
    choose(panel, "sizing", Sizing.BATTERY_KEPT)
    assert not enabled() & range_kept
    assert "consumption_kwh" in enabled()
    choose(panel, "valued_mass", ValuedMass.SHARE)
    assert study_of(panel).valued_mass is ValuedMass.SHARE
    for _ in range(5):
        panel.workspace.undo()
    assert "mass_energy" in enabled()


def _note_key(written: list[str], key: str, text: str) -> None:
    del text
    written.append(key)


def _at_worth(worth: float, state: State) -> State:
    return state.with_study(worth_likely_per_kg=worth)


class Counting(QWidget):
    """Counts how often it is asked for another layout."""

    def __init__(self) -> None:
        super().__init__()
        self.layouts = 0

    def eventFilter(self, watched: Any, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest:
            self.layouts += 1
        return super().eventFilter(watched, event)


def test_a_tick_of_the_worth_changes_one_text_and_lays_nothing_out(
    panel: AssumptionPanel, qtbot: QtBot
) -> None:
    qtbot.wait(20)
    counting = Counting()
    qtbot.addWidget(counting)
    body = panel.volumes.parentWidget()
    assert body is not None
    for widget in (panel, body, *panel.rows.values(), panel.volumes, panel.cycle):
        widget.installEventFilter(counting)
    written: list[str] = []
    for key, row in panel.rows.items():
        if isinstance(row.editor, QLineEdit):
            row.editor.textChanged.connect(partial(_note_key, written, key))
    for worth in (3.1, 3.25, 3.3):
        assert panel.workspace.preview("worth", partial(_at_worth, worth))
        qtbot.wait(5)
    assert written == [WORTH] * 3
    assert panel.rows[WORTH].text == "1:3.3:6"
    assert counting.layouts == 0
    panel.workspace.settle("worth")


def test_hidden_it_waits_and_shown_it_is_up_to_date(panel: AssumptionPanel) -> None:
    panel.hide()
    panel.workspace.edit("x", lambda state: state.with_study(energy_price=0.9))
    assert panel.rows["energy_price"].text == "0.25"
    panel.show()
    assert panel.rows["energy_price"].text == "0.9"


def test_every_row_has_a_name_and_help(panel: AssumptionPanel) -> None:
    for key, row in panel.rows.items():
        assert row.editor.accessibleName(), key
        assert row.editor.toolTip().endswith(".</span>"), key
    assert panel.accessibleName() == "Assumptions"


def test_a_problem_leads_to_its_field(panel: AssumptionPanel) -> None:
    for column, key in (
        ("worth", WORTH),
        ("yearly volume", "yearly_volume"),
        ("old part price", "old_part_price"),
        ("density of the battery saved", "pack_density_wh_per_kg"),
        ("worth reason", "worth_reason"),
    ):
        assert panel.focus_field(column)
        assert QApplication.focusWidget() is panel.rows[key].editor
    assert panel.focus_field("volumes")
    assert QApplication.focusWidget() is panel.volumes.view
    assert not panel.focus_field("colour")


def test_it_goes_when_it_is_closed(
    qtbot: QtBot, workspace: Workspace, watch_leaks: Callable[[QWidget], None]
) -> None:
    panel = shown_panel(qtbot, workspace)
    watch_leaks(panel)
    type_into(panel, "discount_rate", "7")
    assert study_of(panel).discount_rate == 0.07
