"""The charts of worth: programme, sets of assumptions, shares of the variance."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QPointF
from PySide6.QtGui import QColor, QImage
from pytestqt.qtbot import QtBot

from benchpack.report.chart_specs import WaterfallSpec
from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.programme import ProgrammeChart
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.charts.shares import SharesChart
from benchpack.ui.charts.waterfall import WaterfallChart
from tests.ui.charts import samples

NAN = float("nan")


@pytest.fixture
def programme(qtbot: QtBot) -> ProgrammeChart:
    made = ProgrammeChart()
    qtbot.addWidget(made)
    made.resize(700, 480)
    made.show()
    made.show_spec(samples.programme())
    QCoreApplication.processEvents()
    return made


@pytest.fixture
def shares(qtbot: QtBot) -> SharesChart:
    made = SharesChart()
    qtbot.addWidget(made)
    made.resize(620, 400)
    made.show()
    made.show_spec(samples.shares())
    QCoreApplication.processEvents()
    return made


@pytest.fixture
def sets(qtbot: QtBot) -> SetsChart:
    made = SetsChart()
    qtbot.addWidget(made)
    made.resize(700, 400)
    made.show()
    made.show_spec(samples.sets())
    QCoreApplication.processEvents()
    return made


def canvas_colour(chart: Chart, at: QPointF) -> QColor:
    image: QImage = chart.parts.canvas.grab().toImage()
    scale = image.devicePixelRatio()
    return image.pixelColor(int(at.x() * scale), int(at.y() * scale))


def test_a_programme_holds_zero_and_round_ends(programme: ProgrammeChart) -> None:
    assert programme.view.viewRange() == [[-0.6, 5.6], [-200.0, 200.0]]
    assert programme.frame.zero_y
    before = programme.view.viewRange()
    spec = samples.programme()
    programme.show_spec(replace(spec, likely=spec.likely * 1.01))
    assert programme.view.viewRange() == before


def test_bars_of_a_programme_start_at_zero(programme: ProgrammeChart) -> None:
    area = plot_area(programme.plot)
    panel = programme.tokens.panel
    beside = 0.2  # off the whisker and the line

    def colour_at(year: float, value: float) -> str:
        return canvas_colour(programme, area.point(year, value)).name().upper()

    for year, value in ((4, 60.0), (4, 4.0), (0, -4.0), (0, -90.0)):
        assert colour_at(year - beside, value) != panel
    for year, value in ((4, 90.0), (4, -10.0), (0, 10.0), (0, -130.0)):
        assert colour_at(year - beside, value) == panel


def test_the_payback_is_an_item_in_its_place(programme: ProgrammeChart) -> None:
    assert programme.item_names()[-1] == "payback"
    assert programme.keyboard_order().tolist() == [0, 1, 2, 6, 3, 4, 5]
    area = plot_area(programme.plot)
    place = programme.item_position(6)
    assert place == area.point(2.25, 0.0)
    assert programme.nearest(place) == 6
    assert programme.nearest(place + QPointF(0, 30)) == 2
    assert programme.readout_at(6) == "payback\npaid back in 2.3 years"
    assert canvas_colour(programme, place).name().upper() == programme.tokens.subject


def test_a_programme_never_paid_back_has_no_mark(programme: ProgrammeChart) -> None:
    programme.show_spec(replace(samples.programme(), payback=NAN, payback_text=""))
    assert "payback" not in programme.item_names()
    assert programme.line.payback_point(plot_area(programme.plot)) is None
    programme.grab()


def test_years_without_a_value_are_said(programme: ProgrammeChart) -> None:
    spec = samples.programme()
    likely, cumulative = spec.likely.copy(), spec.cumulative.copy()
    likely[3] = cumulative[3] = NAN
    programme.show_spec(replace(spec, likely=likely, cumulative=cumulative))
    programme.grab()
    assert "so far" not in programme.readout_at(3)


def test_many_years_are_named_as_many_as_have_room(programme: ProgrammeChart) -> None:
    count = 31
    money = np.linspace(-50, 60, count)
    programme.show_spec(
        replace(
            samples.programme(),
            years=tuple(f"year {year}" for year in range(count)),
            low=money,
            likely=money,
            high=money,
            cumulative=np.cumsum(money),
        )
    )
    area = plot_area(programme.plot)
    values, texts = programme.frame.x_ticks(area)
    assert texts[:2] == ["year 0", f"year {values[1]:.0f}"]
    apart = area.x_pixel(values[1]) - area.x_pixel(values[0])
    assert 45 < apart < 140
    programme.view.setRange(xRange=(9.5, 14.5), padding=0)
    names = programme.frame.x_ticks(plot_area(programme.plot))[1]
    assert names == [f"year {year}" for year in range(10, 15)]


def test_a_zoomed_programme_names_the_last_year_in_view(
    programme: ProgrammeChart,
) -> None:
    assert [value for value, _ in programme.line.end_texts()] == [200.0, 60.0]
    programme.view.setRange(xRange=(1.5, 4.5), padding=0)
    area = plot_area(programme.plot)
    ends = programme.line.end_texts(area.x_high)
    assert ends[0] == (140.0, ("present value so far", "140 EUR"))
    assert ends[1] == (80.0, ("in the year", "80 EUR"))


def test_in_a_narrow_programme_the_line_is_named_above(
    programme: ProgrammeChart,
) -> None:
    assert programme.line.has_names_beside()
    wide = programme.line.label_room()
    programme.resize(380, 300)
    QCoreApplication.processEvents()
    assert not programme.line.has_names_beside()
    assert programme.line.label_room() < wide
    programme.grab()


def test_shares_are_sorted_and_span_nothing_to_all(shares: SharesChart) -> None:
    assert shares.rows.names == ["worth per kilogram", "lid: release", "tray: mass"]
    assert shares.rows.end.tolist() == pytest.approx([62.0, 30.0, 1.2])
    assert shares.rows.first.tolist() == pytest.approx([55.0, 21.0, 1.0])
    assert shares.rows.spread is not None
    assert shares.rows.spread[:2].tolist() == pytest.approx([8.0, 6.0])
    low, high = shares.view.viewRange()[0]
    assert low < 0 < 100 < high
    values, _ = shares.frame.x_ticks(plot_area(shares.plot))
    assert (values[0], values[-1]) == (0.0, 100.0)


def test_what_an_input_makes_alone_is_solid(shares: SharesChart) -> None:
    area = plot_area(shares.plot)
    bar = shares.rows.bar_rect(area, 0)
    middle = bar.center().y()
    subject = shares.tokens.subject

    def colours_from(begin: float, end: float) -> set[str]:
        places = np.linspace(area.x_pixel(begin), area.x_pixel(end), 30)
        return {
            canvas_colour(shares, QPointF(float(x), middle)).name().upper()
            for x in places
        }

    assert colours_from(10.0, 45.0) == {subject}
    hatched = colours_from(56.0, 61.0)
    assert shares.tokens.panel in hatched
    assert len(hatched) > 1


def test_an_unknown_share_comes_last_with_a_dash(shares: SharesChart) -> None:
    spec = samples.shares()
    shares.show_spec(replace(spec, total=np.array([NAN, 0.62, 0.01])))
    assert shares.rows.names[-1] == "lid: release"
    assert "– with others" in shares.readout_at(0)
    shares.grab()


def test_a_whisker_of_a_set_ends_where_its_range_does(sets: SetsChart) -> None:
    assert sets.rows.start.tolist() == [20.0, -10.0, -60.0]
    assert sets.rows.end.tolist() == [68.0, 30.0, -5.0]
    low, high = sets.view.viewRange()[0]
    assert low < -60
    assert high > 68
    assert sets.frame.zero_x


def test_the_set_in_use_is_filled_and_said(sets: SetsChart) -> None:
    area = plot_area(sets.plot)
    assert sets.rows.names[0] == "ours, in use"
    for row, value, ink in (
        (0, 34.0, sets.tokens.subject),
        (1, 12.0, sets.tokens.panel),
    ):
        at = QPointF(area.x_pixel(value), sets.rows.bar_rect(area, row).center().y())
        assert canvas_colour(sets, at).name().upper() == ink


def test_ranges_of_sets_are_written_where_there_is_room(sets: SetsChart) -> None:
    assert sets.rows.figure_text(1) == "12 EUR (−10 EUR to 30 EUR)"
    right = plot_area(sets.plot).rect.right()
    assert sets.nearest(QPointF(right + 30, sets.item_position(1).y())) == 1
    sets.resize(380, 300)
    QCoreApplication.processEvents()
    assert sets.rows.figure_text(1) == "12 EUR"


def test_a_set_without_a_figure_has_a_dash(sets: SetsChart) -> None:
    spec = samples.sets()
    unknown = np.array([34.0, NAN, -22.0])
    sets.show_spec(replace(spec, low=unknown, likely=unknown, high=unknown))
    assert sets.readout_at(0) == "ours, in use\n34 EUR"
    assert sets.value_extent() == (-22.0, 34.0)
    sets.grab()


def test_a_ladder_of_prices_is_all_money(qtbot: QtBot) -> None:
    """The waterfall knows no unit of its own."""
    ladder = WaterfallChart(kind="Price step by step")
    qtbot.addWidget(ladder)
    ladder.resize(520, 360)
    ladder.show_spec(
        WaterfallSpec(
            title="The part may cost 31 EUR",
            names=("worth of the saving", "tooling", "headroom"),
            kinds=("step", "step", "sum"),
            values=np.array([42.0, -11.0, 31.0]),
            axis_label="Money per pack [EUR]",
            format_value=samples.euros,
            format_full=samples.euros,
            target=25.0,
            target_text="today's price 25 EUR",
        )
    )
    ladder.show()
    assert ladder.accessibleName() == "Price step by step"
    texts = [ladder.readout_at(index) for index in range(3)]
    assert texts[1] == "tooling\n−11 EUR\n31 EUR so far"
    assert not any("kg" in text for text in texts)
    assert ladder.value_extent() == (0.0, 42.0)
    unknown = replace(ladder.spec, values=np.array([42.0, NAN, NAN]))
    ladder.show_spec(unknown)
    ladder.grab()
    assert ladder.value_extent() == (0.0, 42.0)
