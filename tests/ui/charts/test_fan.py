from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QPointF
from pytestqt.qtbot import QtBot

from benchpack.report.chart_rows import chart_rows
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.overlay import plot_area
from tests.ui.charts import samples


@pytest.fixture
def chart(qtbot: QtBot) -> FanChart:
    made = FanChart()
    qtbot.addWidget(made)
    made.resize(700, 480)
    made.show()
    made.show_spec(samples.fan())
    QCoreApplication.processEvents()
    return made


def test_the_fan_shows_its_spec(chart: FanChart) -> None:
    spec = samples.fan()
    for name in ("saved", "low", "likely", "high"):
        shown = getattr(chart.band.spec, name)
        assert np.array_equal(shown, getattr(spec, name))
    assert chart.marks.spec.points == spec.points
    assert chart.item_names() == ["gap as counted", "share captured", "target"]


def test_everything_is_in_view_with_round_ends(chart: FanChart) -> None:
    assert chart.view.viewRange() == [[0.0, 40.0], [0.0, 250.0]]


def test_small_changes_of_worth_do_not_move_the_view(chart: FanChart) -> None:
    spec = samples.fan()
    before = chart.view.viewRange()
    chart.show_spec(replace(spec, likely=spec.likely * 1.02, high=spec.high * 1.02))
    assert chart.view.viewRange() == before
    assert chart.band.spec.high[-1] == pytest.approx(244.8)


def test_negative_values_show_the_zero_line(chart: FanChart) -> None:
    spec = samples.fan()
    chart.show_spec(replace(spec, low=spec.low - 60))
    low, high = chart.view.viewRange()[1]
    assert low <= -60 < 0 < high
    assert chart.frame.zero_y


def test_hovering_between_points_reads_the_lines(chart: FanChart) -> None:
    area = plot_area(chart.plot)
    place = QPointF(area.x_pixel(30.0), area.y_pixel(200.0))
    assert chart.nearest(place) == -1
    assert chart.hover_text(place) == "30.0 kg saved\n90 EUR (60 EUR to 180 EUR)"
    assert chart.hover_text(QPointF(1, 1)) == ""


def test_the_target_is_an_item(chart: FanChart) -> None:
    assert chart.readout_at(2) == "target\n25.0 kg saved, 75 EUR"
    assert chart.nearest(chart.item_position(2)) == 2
    chart.show_spec(replace(samples.fan(), target=None))
    assert chart.item_names() == ["gap as counted", "share captured"]


def test_a_target_outside_the_view_is_not_drawn(chart: FanChart) -> None:
    chart.view.setRange(xRange=(0, 10), yRange=(0, 30), padding=0)
    chart.grab()
    assert len(chart.marks.boxes) == 1  # only "share captured" is still in view


def test_the_table_holds_the_lines_and_the_marks(chart: FanChart) -> None:
    heads, *rows = chart_rows(chart.spec)
    assert heads[:2] == ["place", "Mass saved [kg]"]
    assert [row[0] for row in rows[:41]] == ["line"] * 41
    assert rows[40] == ["line", 40.0, 80.0, 120.0, 240.0]
    assert rows[41] == ["gap as counted", 11.3, 22.6, 33.9, 68]
    # What has no range of its own gets that of the lines above it.
    assert rows[42][:2] == ["share captured", 6.8]
    assert rows[42][2:] == pytest.approx([13.6, 20.4, 40.8])
    assert rows[43] == ["target", 25, 50.0, 75, 150.0]
    assert len(rows) == 44
