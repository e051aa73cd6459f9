"""The charts of the Changes page: what matters, and candidate materials."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.report.candidates_charts import CandidatesSpec
from benchpack.report.change_charts import SwingsSpec
from benchpack.report.chart_rows import chart_rows
from benchpack.ui.charts.candidates import CandidatesChart
from benchpack.ui.charts.swings import SwingsChart
from benchpack.ui.palette import Scheme, roles

KEY = Qt.Key
SWINGS = SwingsSpec(
    title="84 % of the variance: lid",
    names=("lid: release", "mass estimate"),
    at_low=np.array([-3.0, 0.5]),
    at_high=np.array([1.0, -1.2]),
    details=("lid, 84 % of the variance", ""),
)
CANDIDATES = CandidatesSpec(
    names=("PP-GF30", "EN AW-6061-T6", "copper"),
    mass=np.array([-5.2, -3.0, np.nan]),
    mass_low=np.array([-6.0, -3.5, np.nan]),
    mass_high=np.array([-4.0, -2.5, np.nan]),
    sheet_mass=np.array([-7.0, -3.0, np.nan]),
    cost=np.array([12.0, -4.0, 10.0]),
    cost_low=np.array([9.0, -5.0, 8.0]),
    cost_high=np.array([15.0, -3.0, 12.0]),
    verdicts=("fail", "good", "unknown"),
    details=("checks: 1 fail", "checks: all good", ""),
    subject_text="lid panel, mild steel",
    worth_slopes=(1.0, 3.0, 6.0),
    worth_text="3.00 EUR/kg",
)


@pytest.fixture
def swings(qtbot: QtBot) -> SwingsChart:
    """Give the chart of what matters."""
    chart = SwingsChart()
    qtbot.addWidget(chart)
    chart.resize(420, 320)
    chart.show_spec(SWINGS)
    chart.show()
    return chart


@pytest.fixture
def candidates(qtbot: QtBot) -> CandidatesChart:
    """Give the chart of candidates."""
    chart = CandidatesChart()
    qtbot.addWidget(chart)
    chart.resize(520, 400)
    chart.show_spec(CANDIDATES)
    chart.show()
    return chart


def test_a_swing_reaches_from_end_to_end_across_zero(swings: SwingsChart) -> None:
    assert swings.rows.start.tolist() == [-3.0, -1.2]
    assert swings.rows.end.tolist() == [1.0, 0.5]
    # The figure stands at the greater swing.
    assert swings.rows.value.tolist() == [-3.0, -1.2]
    assert swings.value_extent() == (-3.0, 1.0)


def test_keys_step_through_the_inputs(swings: SwingsChart) -> None:
    swings.setFocus()
    QTest.keyClick(swings, KEY.Key_Down)
    assert swings.current == 0
    assert "84 % of the variance" in swings.readout.text()
    assert "low: −3.0, high: +1.0" in swings.readout.text()


def test_without_swings_a_sentence_stands_there(swings: SwingsChart) -> None:
    swings.show_spec(SwingsSpec(empty_sentence="Nothing is uncertain."))
    assert swings.parts.is_empty
    assert swings.parts.empty_label.text() == "Nothing is uncertain."


def test_candidates_are_visited_from_the_lightest(candidates: CandidatesChart) -> None:
    assert candidates.keyboard_order().tolist() == [0, 1]
    candidates.setFocus()
    QTest.keyClick(candidates, KEY.Key_Right)
    assert "PP-GF30" in candidates.readout.text()
    with_pick: list[str] = []
    candidates.picked.connect(with_pick.append)
    QTest.keyClick(candidates, KEY.Key_Return)
    assert with_pick == ["PP-GF30"]


def test_the_first_view_holds_today_and_all_candidates(
    candidates: CandidatesChart,
) -> None:
    (x_low, x_high), (y_low, y_high) = candidates.view.viewRange()
    assert x_low < -5.2
    assert x_high > 0
    assert y_low < -4
    assert y_high > 12


def test_both_charts_draw_in_both_schemes(
    swings: SwingsChart, candidates: CandidatesChart
) -> None:
    candidates.set_selected("PP-GF30")
    for chart in (swings, candidates):
        for scheme in Scheme:
            assert not chart.record_picture(roles(scheme)).isNull()
        assert len(chart_rows(chart.spec)) == 1 + len(chart.item_names())
