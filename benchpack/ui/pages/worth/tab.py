"""What a tab of the Worth page is: a chart with its table, figures above it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchpack.report.worth_figures import Shown
from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.chart_or_table import ChartOrTable
from benchpack.ui.pages.worth.desk import WorthDesk
from benchpack.ui.pages.worth.figure_strip import FigureStrip
from benchpack.ui.widgets.entry_area import EntryArea
from benchpack.ui.workspace import Workspace

Figures = Callable[[WorthDesk], Sequence[Shown]]


class WorthTab(EntryArea):
    """Base of the tabs; refreshed only while it is seen.

    Signals
    -------
    asked(object)
        The `Shown` of a figure that was asked about.
    field_requested(str)
        Column of an assumption that has to be entered; empty: what the empty chart
        lacks.

    Parameters
    ----------
    name : str
        What screen readers call it.
    workspace : Workspace
        The open document.
    parent : QWidget
        Owner.
    """

    asked = Signal(object)
    field_requested = Signal(str)

    def __init__(self, name: str, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.Base)
        self.workspace = workspace
        self.charts: list[Chart] = []
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(0)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present case."""
        raise NotImplementedError

    def found(self, desk: WorthDesk, what: str) -> None:
        """Take over what was worked out; nothing, unless a tab waits for it."""

    def with_table(self, chart: Chart) -> ChartOrTable:
        """Give a chart of this tab that shows its table when asked."""
        made = ChartOrTable(chart, self)
        self.charts.append(chart)
        chart.explain_requested.connect(self._on_chart_explain_requested)
        chart.said.connect(self.workspace.notifier.say)
        chart.empty_action_requested.connect(self._on_empty_action_requested)
        return made

    def figure_strip(self, name: str, *, count: int) -> FigureStrip:
        """Give a strip of so many figures of this tab."""
        made = FigureStrip(name, self, count=count)
        made.asked.connect(self.asked)
        return made

    def _on_empty_action_requested(self) -> None:
        self.field_requested.emit("")

    def _on_chart_explain_requested(self, key: str) -> None:
        chosen, subject = self.workspace.selection, self.workspace.state.study.subject
        # A pack is no reference of its own; the one of the study is meant then.
        reference = "" if chosen == subject else chosen
        self.workspace.explain_requested.emit(key, reference)


class ChartTab(WorthTab):
    """A tab of one chart, with figures above it where it has some.

    Parameters
    ----------
    make_chart : callable
        Gives the chart, of the owner that it is given.
    make_spec : callable
        Gives what it shows of the desk.
    figures : callable, optional
        Gives the figures above it.
    count : int
        How many these are.
    """

    def __init__(
        self,
        name: str,
        workspace: Workspace,
        parent: QWidget,
        *,
        make_chart: Callable[[QWidget], Chart],
        make_spec: Callable[[WorthDesk], Any],
        figures: Figures | None = None,
        count: int = 0,
    ) -> None:
        super().__init__(name, workspace, parent)
        self._make_spec, self._figures = make_spec, figures
        self.figures: FigureStrip | None = None
        if figures is not None:
            self.figures = self.figure_strip(f"Figures of {name}", count=count)
        self.chart: Any = make_chart(self)
        self.view = self.with_table(self.chart)
        if self.figures is not None:
            self.column.addWidget(self.figures)
        self.column.addWidget(self.view, 1)
        self.entry = self.view

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present case."""
        if self.figures is not None and self._figures is not None:
            self.figures.show_figures(self._figures(desk))
        self.chart.show_spec(self._make_spec(desk))
