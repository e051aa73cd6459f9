"""The map of two assumptions: what is drawn where, and how it is asked."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QPointF, Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchpack.ui.charts.clipping import cut_segments
from benchpack.ui.charts.field import between, middle_of, region, sampled, two_sided
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.worth_map import WorthMapChart
from benchpack.ui.palette import Scheme
from benchpack.ui.theme import apply_theme
from tests.ui.charts import samples

KEY = Qt.Key


@pytest.fixture
def chart(qtbot: QtBot) -> WorthMapChart:
    made = WorthMapChart()
    qtbot.addWidget(made)
    made.resize(640, 460)
    made.show()
    made.show_spec(samples.worth_map())
    QCoreApplication.processEvents()
    return made


def colour_at(chart: WorthMapChart, x: float, y: float) -> QColor:
    image: QImage = chart.parts.canvas.grab().toImage()
    at = plot_area(chart.plot).point(x, y)
    scale = image.devicePixelRatio()
    return image.pixelColor(int(at.x() * scale), int(at.y() * scale))


@pytest.mark.parametrize("scheme", Scheme)
def test_gain_and_loss_have_the_two_ends_of_the_scale(
    qapp: QApplication, chart: WorthMapChart, scheme: Scheme
) -> None:
    apply_theme(qapp, scheme)
    gain, loss = colour_at(chart, 5.9, 0.95), colour_at(chart, 1.1, 0.02)
    assert gain.blue() > gain.red() + 40
    assert loss.red() > loss.blue() + 10
    strongest = QColor.fromRgb(int(chart.field._scale_colours()[-1]))
    assert gain.lightness() == pytest.approx(strongest.lightness(), abs=20)


def test_the_words_of_both_sides_stand_in_them(chart: WorthMapChart) -> None:
    chart.grab()
    field = chart.field.shown
    for is_gain in (True, False):
        place = middle_of(region(field, is_gain=is_gain))
        assert place is not None
        row, column = (int(s * n) for s, n in zip(place, field.shape, strict=True))
        assert bool(field[row, column] > 0) is is_gain
    assert len(chart.marks.boxes) == 4  # study, gain, loss, break-even
    for index, box in enumerate(chart.marks.boxes):
        assert not any(box.overlap(one) for one in chart.marks.boxes[index + 1 :])


def test_without_a_loss_only_the_gain_is_named(chart: WorthMapChart) -> None:
    spec = samples.worth_map()
    chart.show_spec(replace(spec, values=np.abs(spec.values) + 1, break_even=()))
    chart.grab()
    assert middle_of(region(chart.field.shown, is_gain=False)) is None
    assert len(chart.marks.boxes) == 2


def test_the_money_is_read_between_the_places_of_the_grid(chart: WorthMapChart) -> None:
    # The sample is bilinear, so reading between its places is exact.
    assert chart.value_at(3.21, 0.47) == pytest.approx(20 * 3.21 * 0.47 - 25)
    at = plot_area(chart.plot).point(5.0, 0.8)
    assert chart.hover_text(at) == "5.00 EUR/kg, 80 %\n55 EUR, gain"
    at = plot_area(chart.plot).point(2.0, 0.2)
    assert chart.hover_text(at) == "2.00 EUR/kg, 20 %\n−17 EUR, loss"
    assert chart.hover_text(QPointF(1, 1)) == ""


def test_what_is_not_known_is_hatched_and_said(chart: WorthMapChart) -> None:
    spec = samples.worth_map()
    values = spec.values.copy()
    values[:3, :3] = np.nan
    chart.show_spec(replace(spec, values=values))
    assert chart.readout_over(1.3, 0.1).endswith("not known here")
    assert np.isnan(chart.value_at(1.3, 0.1))
    assert np.isfinite(chart.value_at(5.0, 0.9))
    seen = {
        colour_at(chart, 1.3, 0.1 + step / 100).name().upper() for step in range(12)
    }
    assert seen == {chart.tokens.panel, chart.tokens.hairline}


def test_a_double_click_picks_the_spot(qtbot: QtBot, chart: WorthMapChart) -> None:
    at = plot_area(chart.plot).point(4.0, 0.7)
    canvas = chart.parts.canvas.viewport()
    place = at.toPoint()
    with qtbot.waitSignal(chart.spot_picked) as heard:
        QTest.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=place)
        QTest.mouseDClick(canvas, Qt.MouseButton.LeftButton, pos=place)
    assert heard.args is not None
    assert heard.args[0] == pytest.approx(4.0, abs=0.02)
    assert heard.args[1] == pytest.approx(0.7, abs=0.01)
    with qtbot.assertNotEmitted(chart.spot_picked):
        chart.answer_double_click(QPointF(2, 2))


def test_arrows_move_a_cursor_and_enter_picks_it(
    qtbot: QtBot, chart: WorthMapChart
) -> None:
    QTest.keyClick(chart, KEY.Key_Right)
    assert chart.spot == (3.0, 0.5)  # it begins at the study
    QTest.keyClick(chart, KEY.Key_Right)
    QTest.keyClick(chart, KEY.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert chart.spot == pytest.approx((3.0 + 5 / 40, 0.5 + 5 / 40))
    assert chart.readout.isVisible()
    assert chart.readout.text().endswith("14 EUR, gain")
    with qtbot.waitSignal(chart.spot_picked) as heard:
        QTest.keyClick(chart, KEY.Key_Return)
    assert heard.args == pytest.approx([3.125, 0.625])
    for _ in range(60):
        QTest.keyClick(chart, KEY.Key_Left)
    assert chart.spot == pytest.approx((1.0, 0.625))
    QTest.keyClick(chart, KEY.Key_Home)
    assert chart.spot == (3.0, 0.5)
    QTest.keyClick(chart, KEY.Key_Escape)
    gone: object = chart.spot
    assert gone is None
    assert not chart.readout.isVisible()


def test_the_wheel_zooms_and_the_button_resets(chart: WorthMapChart) -> None:
    chart.view.setRange(xRange=(2, 3), yRange=(0.3, 0.6), padding=0)
    chart.grab()
    assert chart.is_zoomed()
    expected = 20 * 2.0 * 0.6 - 25  # the upper left corner of what is in view
    assert chart.field.shown[0, 0] == pytest.approx(expected, abs=0.5)
    chart.parts.reset_button.click()
    assert chart.view.viewRange() == [[1.0, 6.0], [0.0, 1.0]]


def test_the_view_stays_while_the_axes_do(chart: WorthMapChart) -> None:
    spec = samples.worth_map()
    chart.view.setRange(xRange=(2, 3), yRange=(0.3, 0.6), padding=0)
    chart.show_spec(replace(spec, values=spec.values + 3))
    assert chart.view.viewRange() == [[2.0, 3.0], [0.3, 0.6]]
    chart.show_spec(replace(spec, x=spec.x * 2))
    assert chart.view.viewRange() == [[2.0, 12.0], [0.0, 1.0]]


def test_a_fixed_limit_keeps_the_colours(chart: WorthMapChart) -> None:
    assert chart.field.limit == pytest.approx(95.0)
    chart.show_spec(replace(samples.worth_map(), limit=200.0))
    assert chart.field.limit == 200.0
    assert chart.field.scale_texts() == ("200 EUR", "0 EUR", "−200 EUR")


def test_the_map_is_told_in_words(chart: WorthMapChart) -> None:
    said = chart.accessibleDescription()
    assert "from −25 EUR to 95 EUR" in said
    assert "this study: 3.00 EUR/kg, 50 %, 5 EUR, gain" in said


def test_samples_between_places_are_linear() -> None:
    grid = np.array([0.0, 1.0, 4.0])
    values = np.array([[0.0, 10.0, 40.0], [1.0, 11.0, 41.0]])
    down = between(np.array([0.0, 2.0]), np.array([1.0]))
    across = between(grid, np.array([-1.0, 0.5, 2.0, 4.0, 9.0]))
    found = sampled(values, down=down, across=across)
    assert found.tolist() == [[0.5, 5.5, 20.5, 40.5, 40.5]]


def test_the_middle_of_a_region_lies_deep_in_it() -> None:
    mask = np.zeros((20, 20), dtype=np.bool_)
    mask[:, :3] = True
    mask[12:, :] = True
    place = middle_of(mask)
    assert place is not None
    assert place[0] > 0.6
    assert middle_of(np.zeros((4, 4), dtype=np.bool_)) is None


def test_the_scale_has_the_middle_colour_in_its_middle() -> None:
    colours = two_sided("#FF0000", "#FFFFFF", "#0000FF")
    assert len(colours) == 511
    assert [f"{int(colours[at]):08x}" for at in (0, 255, 510)] == [
        "ffff0000",
        "ffffffff",
        "ff0000ff",
    ]


def test_lines_of_any_course_are_cut_at_the_edges() -> None:
    """Each piece lies inside, on its segment, and reaches an edge or its ends."""
    points = np.random.default_rng(5).uniform(-2.0, 2.0, (60, 2))
    points[20] = np.nan
    points[31, 0] = points[30, 0]  # upright
    found = cut_segments(points, x=(-1.0, 1.0), y=(-0.5, 1.5))
    length = 0.0
    for begin, end in pairwise(points):
        at = begin + (end - begin) * (np.arange(4000)[:, None] + 0.5) / 4000
        inside = (np.abs(at[:, 0]) <= 1) & (at[:, 1] >= -0.5) & (at[:, 1] <= 1.5)
        if np.isfinite(begin + end).all():
            length += float(np.hypot(*(end - begin)) * inside.mean())
    cut = np.hypot(*(found[:, 1] - found[:, 0]).T).sum()
    assert cut == pytest.approx(length, rel=1e-3)
    assert np.all(np.abs(found[..., 0]) <= 1 + 1e-12)
    assert np.all((found[..., 1] >= -0.5 - 1e-12) & (found[..., 1] <= 1.5 + 1e-12))
    assert cut_segments(np.empty((0, 2)), x=(0, 1), y=(0, 1)).shape == (0, 2, 2)
