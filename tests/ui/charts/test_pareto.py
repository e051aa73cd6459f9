"""The pareto chart: bars, what stays, the lane of the running share."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtGui import QColor
from pytestqt.qtbot import QtBot

from benchpack.report.chart_text import share_text
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.pareto import ParetoChart
from tests.ui.charts import samples


@pytest.fixture
def chart(qtbot: QtBot) -> ParetoChart:
    made = ParetoChart()
    qtbot.addWidget(made)
    made.resize(460, 420)
    made.show()
    made.show_spec(samples.pareto())
    QCoreApplication.processEvents()
    return made


def test_bars_start_at_zero_and_the_lane_lies_beside_them(chart: ParetoChart) -> None:
    area = plot_area(chart.plot)
    assert np.all(chart.rows.start == 0)
    left, right = chart.rows.lane(area)
    assert area.rect.right() < left < right < chart.plot.rect().right()
    assert chart.rows.bar_rect(area, 0).right() < area.rect.right()


def test_the_running_share_spans_its_lane(chart: ParetoChart) -> None:
    area = plot_area(chart.plot)
    left, right = chart.rows.lane(area)
    points = [chart.rows.share_point(area, row) for row in range(4)]
    shares = [(point.x() - left) / (right - left) for point in points]
    assert shares == pytest.approx([0.6, 0.9, 0.975, 1.0])
    assert not chart.rows.is_shared(4)


@pytest.mark.parametrize(
    ("share", "text"),
    [(0.0, "0 %"), (0.003, "< 1 %"), (0.37, "37 %"), (0.998, "> 99 %"), (1.0, "100 %")],
)
def test_shares_are_whole_per_cent(share: float, text: str) -> None:
    assert share_text(share) == text


def test_what_stays_is_hatched_at_the_end_of_its_bar(chart: ParetoChart) -> None:
    area = plot_area(chart.plot)
    bar = chart.rows.bar_rect(area, 1)
    image = chart.parts.canvas.grab().toImage()
    scale = image.devicePixelRatio()

    def colours(first: float, last: float) -> set[str]:
        y = int(scale * bar.center().y())
        places = range(int(scale * first) + 2, int(scale * last) - 2)
        return {image.pixelColor(QPoint(x, y)).name() for x in places}

    solid = QColor(chart.tokens.subject).name()
    assert colours(bar.left(), bar.center().x()) == {solid}
    assert colours(bar.center().x(), bar.right()) != {solid}


def test_the_bars_of_the_reference_have_its_colour(chart: ParetoChart) -> None:
    chart.show_spec(replace(samples.pareto(), role="reference"))
    QCoreApplication.processEvents()
    area = plot_area(chart.plot)
    place = chart.rows.bar_rect(area, 0).center().toPoint()
    image = chart.parts.canvas.grab().toImage()
    found = image.pixelColor(place * image.devicePixelRatio()).name()
    assert found == QColor(chart.tokens.reference).name()


def test_many_groups_are_scrolled_and_the_line_reaches_the_edges(
    qtbot: QtBot,
) -> None:
    count = 60
    values = np.arange(count, 0, -1).astype(float)
    spec = replace(
        samples.pareto(),
        names=tuple(f"pair {number}" for number in range(count)),
        values=values,
        staying=np.zeros(count),
        running=np.cumsum(values) / values.sum(),
        details=("1 row",) * count,
    )
    chart = ParetoChart()
    qtbot.addWidget(chart)
    chart.resize(460, 420)
    chart.show_spec(spec)
    chart.show()
    QCoreApplication.processEvents()
    assert chart.parts.scroll_bar.isVisible()
    chart.parts.scroll_bar.setValue(10)
    area = plot_area(chart.plot)
    edge = chart.rows._cut(area, 9, 10, area.rect.top())
    above, below = (chart.rows.share_point(area, row) for row in (9, 10))
    assert above.x() < edge.x() < below.x()
    assert edge.y() == pytest.approx(area.rect.top())
    assert not chart.grab().isNull()
