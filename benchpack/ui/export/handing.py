"""What the files of one hand-over are made from, worked out when first asked for."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from benchpack.errors import BenchpackError, DataError, Problem
from benchpack.session.state import State
from benchpack.ui.export.window_thread import WindowThread
from benchpack.ui.tasks import Token

if TYPE_CHECKING:
    from benchpack.report.brief.blocks import Brief
    from benchpack.report.study_charts import NamedChart
    from benchpack.session.brief_request import BriefChoices
    from benchpack.session.handover_request import HandedOver
    from benchpack.ui.brief.pages import BriefPages

ResultT = TypeVar("ResultT")

_WIDTH, _HEIGHT = 960, 600
_SCALE = 2


class Handing:
    """One hand-over; lives on the thread of its work.

    Parameters
    ----------
    state : State
        What is handed over.
    choices : BriefChoices
        What the person chose of the brief.
    window : WindowThread
        Draws the charts.
    token : Token
        Tells whether to stop.
    """

    def __init__(
        self, state: State, choices: BriefChoices, window: WindowThread, token: Token
    ) -> None:
        self.state = state
        self.choices = choices
        self._window = window
        self._token = token

    @cached_property
    def given(self) -> HandedOver:
        """The figures."""
        from benchpack.session.handover_request import hand_over

        return hand_over(self.state.library, self.state.study)

    @cached_property
    def brief(self) -> Brief:
        """The brief as the person chose it."""
        from benchpack.session.brief_request import brief_of
        from benchpack.session.handover_request import today

        return brief_of(self.given, self.choices, made_on=today())

    @cached_property
    def charts(self) -> tuple[NamedChart, ...]:
        """The charts that have something to draw."""
        from benchpack.report.study_charts import study_charts

        return study_charts(self.given.results, self.given.proposal)

    def pages(self) -> BriefPages:
        """Set the brief on pages of its own."""
        from benchpack.ui.brief.pages import BriefPages

        brief, paper = self.brief, self.choices.paper
        return self.on_window(lambda: BriefPages(brief, paper=paper))

    def page_of_the_web(self) -> str:
        """Give the brief as a page of the web."""
        from benchpack.ui.brief.html import brief_html

        brief, paper = self.brief, self.choices.paper
        return self.on_window(lambda: brief_html(brief, paper=paper))

    def draw(self, chart: NamedChart, path: Path) -> None:
        """Draw a chart into a file, PNG or SVG by its ending.

        Parameters
        ----------
        chart : NamedChart
            The chart.
        path : Path
            The file.

        Raises
        ------
        DataError
            When the file cannot be written.
        """
        self.on_window(lambda: _draw(chart, path))

    def on_window(self, function: Callable[[], ResultT]) -> ResultT:
        """Have something done on the thread of the window."""
        return self._window.call(function, cancelled=self._token.cancelled)

    def cancelled(self) -> bool:
        """Tell whether to stop."""
        return self._token.cancelled()


def _draw(chart: NamedChart, path: Path) -> None:
    from benchpack.report.brief.blocks import ChartBlock
    from benchpack.ui.brief.chart_pictures import chart_of
    from benchpack.ui.export.picture import render_png, render_svg

    block = ChartBlock(chart.spec, _HEIGHT / _WIDTH, chart.name)
    widget = chart_of(block, width=_WIDTH)
    try:
        if path.suffix == ".svg":
            render_svg(widget, path, title=chart.spec.title)
        else:
            render_png(widget, path, scale=_SCALE)
    except BenchpackError as error:
        problem = Problem(
            f"{path.name} could not be written.",
            "Choose a folder that can be written, and see that the disk is not full.",
            source=str(path),
        )
        raise DataError(problem) from error
    finally:
        widget.deleteLater()
