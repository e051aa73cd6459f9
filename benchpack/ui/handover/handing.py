"""What the files of one hand-over are made from, worked out when first asked for."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from benchpack.errors import BenchpackError, DataError, Problem
from benchpack.results.results import Results, compute
from benchpack.session.state import State
from benchpack.ui.handover.window_thread import WindowThread
from benchpack.ui.tasks import Token

if TYPE_CHECKING:
    from benchpack.report.brief.blocks import Brief
    from benchpack.report.study_charts import NamedChart
    from benchpack.session.brief_request import BriefChoices
    from benchpack.session.handover_request import HandedOver

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

    Attributes
    ----------
    token : Token or None
        Of the work that goes on: tells whether to stop.
    """

    def __init__(
        self, state: State, choices: BriefChoices, window: WindowThread
    ) -> None:
        self.state = state
        self.choices = choices
        self.token: Token | None = None
        self._window = window

    @cached_property
    def results(self) -> Results:
        """The gap alone, which is there sooner."""
        return compute(self.state.library, self.state.study)

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
        """The charts that have something to draw and may be seen."""
        from benchpack.report.study_charts import study_charts

        every = study_charts(self.given.results, self.given.proposal)
        return tuple(one for one in every if not (one.is_internal and self.is_outward))

    @property
    def is_outward(self) -> bool:
        """True where a customer gets it."""
        from benchpack.report.brief.blocks import Audience

        return self.choices.audience is Audience.CUSTOMER

    def pdf(self) -> bytes:
        """Give the brief as PDF."""
        from benchpack.ui.brief.pages import BriefPages
        from benchpack.ui.brief.pdf import pdf_bytes

        brief, paper = self.brief, self.choices.paper
        # Set, painted and let go on one thread: what draws letters belongs to it.
        return self.on_window(lambda: pdf_bytes(BriefPages(brief, paper=paper)))

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
        return self._window.call(function, cancelled=self.cancelled)

    def cancelled(self) -> bool:
        """Tell whether to stop."""
        return self.token is not None and self.token.cancelled()


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
