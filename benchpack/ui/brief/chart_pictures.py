"""Charts of a brief, drawn by those of the window in the colours of print."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QSize
from PySide6.QtGui import QPicture

from benchpack.report.brief.blocks import ChartBlock
from benchpack.report.candidates_charts import CandidatesSpec
from benchpack.report.change_charts import SwingsSpec
from benchpack.report.chart_specs import (
    ChartSpec,
    ClosureSpec,
    EnergyMassSpec,
    FanSpec,
    GapBarsSpec,
    ParetoSpec,
    WaterfallSpec,
)
from benchpack.report.worth_specs import (
    ProgrammeSpec,
    SetsSpec,
    SharesSpec,
    WorthMapSpec,
)
from benchpack.ui.brief.print_type import ink
from benchpack.ui.charts.candidates import CandidatesChart
from benchpack.ui.charts.chart_base import ChartBase
from benchpack.ui.charts.closure_bar import ClosureBar
from benchpack.ui.charts.energy_mass import EnergyMassChart
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.charts.pareto import ParetoChart
from benchpack.ui.charts.programme import ProgrammeChart
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.charts.shares import SharesChart
from benchpack.ui.charts.swings import SwingsChart
from benchpack.ui.charts.waterfall import WaterfallChart
from benchpack.ui.charts.worth_map import WorthMapChart

_STEP = 12
_MOST_HEIGHT = 1200

CHARTS: dict[type[ChartSpec], Callable[[], Any]] = {
    WaterfallSpec: WaterfallChart,
    GapBarsSpec: GapBarsChart,
    EnergyMassSpec: EnergyMassChart,
    FanSpec: FanChart,
    ParetoSpec: ParetoChart,
    ClosureSpec: ClosureBar,
    SwingsSpec: SwingsChart,
    CandidatesSpec: CandidatesChart,
    ProgrammeSpec: ProgrammeChart,
    WorthMapSpec: WorthMapChart,
    SharesSpec: SharesChart,
    SetsSpec: SetsChart,
}
"""The chart that draws each kind of spec."""


@dataclass(frozen=True, slots=True)
class ChartPicture:
    """A chart as drawing commands.

    Parameters
    ----------
    picture : QPicture
        The commands.
    size : QSize
        Its width and height, in the pixels of the chart.
    """

    picture: QPicture
    size: QSize


def chart_of(block: ChartBlock, *, width: int) -> Any:
    """Make the chart of a block, high enough to show all its rows.

    Parameters
    ----------
    block : ChartBlock
        What is shown.
    width : int
        Pixels across.

    Returns
    -------
    Chart
        A widget that is never shown; the caller deletes it.
    """
    chart = CHARTS[type(block.spec)]()
    chart.show_spec(block.spec)
    height = round(width * block.relative_height)
    chart.resize(width, height)
    chart.grab()
    while _hides_rows(chart) and height < _MOST_HEIGHT:
        height += _STEP
        chart.resize(width, height)
        chart.grab()
    return chart


def _hides_rows(chart: Any) -> bool:
    if not isinstance(chart, ChartBase):
        return False
    return not chart.parts.scroll_bar.isHidden()


def picture_of(block: ChartBlock, *, width: int) -> ChartPicture:
    """Record a chart in the colours of print.

    Parameters
    ----------
    block : ChartBlock
        What is shown.
    width : int
        Pixels across.
    """
    chart = chart_of(block, width=width)
    recorded = ChartPicture(chart.record_picture(ink()), QSize(chart.size()))
    chart.deleteLater()
    return recorded
