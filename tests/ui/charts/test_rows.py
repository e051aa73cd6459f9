from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QPointF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.report.chart_rows import chart_rows
from benchpack.report.chart_specs import GapBarsSpec
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.charts.ink import text_size
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.waterfall import WaterfallChart, running_totals
from benchpack.ui.export.picture import render_svg
from benchpack.ui.theme import font
from tests.ui.charts import samples


@pytest.fixture
def bars(qtbot: QtBot) -> GapBarsChart:
    made = GapBarsChart()
    qtbot.addWidget(made)
    made.resize(700, 480)
    made.show()
    made.show_spec(samples.gap_bars())
    QCoreApplication.processEvents()
    return made


def test_a_long_word_below_the_axis_keeps_both_its_ends(
    bars: GapBarsChart, tmp_path: Path
) -> None:
    label = f"Gap to {'Longestnameofall' * 12} [kg]"
    bars.show_spec(replace(samples.gap_bars(), axis_label=label))
    render_svg(bars, tmp_path / "bars.svg")
    words = [one.text or "" for one in ET.parse(tmp_path / "bars.svg").iter()]
    (shown,) = [word for word in words if word.startswith("Gap to Longest")]
    assert "\u2026" in shown
    assert shown.endswith("[kg]")
    assert text_size(shown, font("note")).width() <= bars.plot.rect().width()


@pytest.fixture
def fall(qtbot: QtBot) -> WaterfallChart:
    made = WaterfallChart()
    qtbot.addWidget(made)
    made.resize(700, 480)
    made.show()
    made.show_spec(samples.waterfall())
    QCoreApplication.processEvents()
    return made


def many(count: int) -> GapBarsSpec:
    gap = np.random.default_rng(2).normal(0, 30, count)
    names = tuple(f"Knot {number}" for number in range(count))
    return GapBarsSpec(names=names, gap=gap, reference="Knot 3")


def test_bars_are_sorted_and_start_at_zero(bars: GapBarsChart) -> None:
    assert bars.rows.names == [
        "Ruff 88",
        "Dunlin 74",
        "Curlew 95",
        "Knot 62",
        "Stint 70",
    ]
    assert bars.rows.end[:4].tolist() == [14.9, 8.5, 2.1, -17.1]
    assert np.isnan(bars.rows.end[4])
    assert np.all(bars.rows.start == 0)
    assert bars.rows.names[bars.rows.reference_row] == "Dunlin 74"


def test_whiskers_span_two_u(bars: GapBarsChart) -> None:
    assert bars.rows.spread is not None
    assert bars.rows.spread[[1, 2, 3]].tolist() == [4.0, 3.0, 6.0]


def test_the_pixels_of_a_bar_are_those_of_its_gap(bars: GapBarsChart) -> None:
    area = plot_area(bars.plot)
    lighter = bars.rows.bar_rect(area, 3)
    assert lighter.right() == pytest.approx(area.x_pixel(0.0))
    assert lighter.left() == pytest.approx(area.x_pixel(-17.1))
    heavier = bars.rows.bar_rect(area, 1)
    assert heavier.left() == pytest.approx(area.x_pixel(0.0))
    assert heavier.right() == pytest.approx(area.x_pixel(8.5))


def test_figures_stand_on_the_side_of_their_sign(bars: GapBarsChart) -> None:
    assert bars.rows.figures_left().tolist() == [False, False, False, True, False]


def test_an_unknown_gap_says_so(bars: GapBarsChart) -> None:
    index = bars.spec.names.index("Stint 70")
    assert bars.readout_at(index) == "Stint 70\nno gap known"


def test_the_frame_lists_rows_as_shown(bars: GapBarsChart) -> None:
    rows = chart_rows(bars.spec)
    assert rows[0] == ["pack", "Gap at equal energy [kg]", "standard uncertainty [kg]"]
    assert [row[0] for row in rows[1:]] == bars.rows.names


def test_a_fixed_range_stays_when_values_change(bars: GapBarsChart) -> None:
    spec = replace(samples.gap_bars(), value_range=(-40.0, 40.0))
    bars.show_spec(spec)
    low, high = bars.view.viewRange()[0]
    assert low <= -40.0
    assert high >= 40.0
    bars.show_spec(replace(spec, gap=spec.gap * 0.5))
    now = bars.view.viewRange()[0]
    assert now == pytest.approx([low, high], rel=0.1)


def test_values_change_in_place(bars: GapBarsChart) -> None:
    spec = bars.spec
    before, names = bars.rows, bars.rows.names
    bars.show_spec(replace(spec, gap=spec.gap * 2))
    assert bars.rows is before
    assert bars.rows.names is names
    assert bars.rows.end[:4].tolist() == [29.8, 17.0, 4.2, -34.2]


def test_another_order_is_followed(bars: GapBarsChart) -> None:
    spec = bars.spec
    bars.show_spec(replace(spec, gap=-spec.gap))
    assert bars.rows.names == [
        "Knot 62",
        "Curlew 95",
        "Dunlin 74",
        "Ruff 88",
        "Stint 70",
    ]


def test_many_rows_scroll_and_only_those_in_view_are_drawn(
    qtbot: QtBot, bars: GapBarsChart
) -> None:
    bars.show_spec(many(400))
    QCoreApplication.processEvents()
    bar = bars.parts.scroll_bar
    assert bar.isVisible()
    shown = bars.rows.rows_in_view(plot_area(bars.plot))
    assert shown.start == 0
    assert 5 < len(shown) < 60
    QTest.keyClick(bars, Qt.Key.Key_End)
    shown = bars.rows.rows_in_view(plot_area(bars.plot))
    assert shown.stop == 400
    assert bars.current == bars.order[-1]
    bars.row_view.scrolled.emit(-60.0)
    assert bar.value() < bar.maximum()


def test_few_rows_do_not_scroll(bars: GapBarsChart) -> None:
    bars.show_spec(many(400))
    bars.show_spec(samples.gap_bars())
    QCoreApplication.processEvents()
    assert not bars.parts.scroll_bar.isVisible()
    assert bars.rows.rows_in_view(plot_area(bars.plot)) == range(5)


def test_every_row_is_found_under_its_bar(bars: GapBarsChart) -> None:
    for index in range(5):
        assert bars.nearest(bars.item_position(index)) == index
    assert bars.nearest(QPointF(10, 2)) == -1


def test_long_names_leave_room_for_the_bars(bars: GapBarsChart) -> None:
    spec = samples.gap_bars()
    bars.show_spec(replace(spec, names=("x" * 200, *spec.names[1:])))
    QCoreApplication.processEvents()
    assert plot_area(bars.plot).rect.width() > 0.5 * bars.parts.canvas.width()


def test_running_totals() -> None:
    start, end = running_totals(
        ("energy", "step", "step", "sum"), np.array([40.7, -4.0, 15.3, 52.0])
    )
    assert start.tolist() == pytest.approx([0, 40.7, 36.7, 0])
    assert end.tolist() == pytest.approx([40.7, 36.7, 52.0, 52.0])


def test_steps_after_a_sum_start_there() -> None:
    start, end = running_totals(("sum", "step", "sum"), np.array([460.0, -10, 450]))
    assert start.tolist() == [0, 460, 0]
    assert end.tolist() == [460, 450, 450]


def test_the_waterfall_shows_its_spec(fall: WaterfallChart) -> None:
    assert tuple(fall.rows.names) == samples.waterfall().names
    assert fall.rows.value.tolist() == [40.7, -4.0, 15.3, 52.0]
    assert fall.rows.end[-1] == pytest.approx(52.0)
    low, high = fall.view.viewRange()[0]
    assert low <= 0
    assert high > 52


def test_the_energy_share_says_that_it_is_no_saving(fall: WaterfallChart) -> None:
    assert "carries energy, no saving" in fall.readout_at(0)
    assert "no saving" not in fall.readout_at(2)
    assert "so far" not in fall.readout_at(3)


def test_the_target_is_in_view(fall: WaterfallChart) -> None:
    spec = replace(samples.waterfall(), target=70.0, target_text="target 70.0 kg")
    fall.show_spec(spec)
    assert fall.view.viewRange()[0][1] >= 70.0


def test_uncertain_steps_read_their_range(fall: WaterfallChart) -> None:
    spec = replace(samples.waterfall(), uncertainty=np.array([1.0, 1.0, 2.0, np.nan]))
    fall.show_spec(spec)
    assert "15.3 kg (11.3 kg to 19.3 kg)" in fall.readout_at(2)
    assert fall.readout_at(3) == "Gap as weighed\n52.0 kg"
