"""The Worth page: what a lighter pack is worth."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QVBoxLayout

from benchpack.report.worth_charts import fan_spec, value_bars_spec
from benchpack.session.state import Changed
from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.page import Page
from benchpack.ui.pages.worth.figures import WorthFigures
from benchpack.ui.theme import SPACE_AROUND
from benchpack.ui.workspace import Workspace


class WorthPage(Page):
    """The fan of value against kilograms saved, and the value of every gap."""

    title = "Worth"

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self.figures = WorthFigures(workspace)
        self.fan = FanChart()
        self.bars = GapBarsChart()
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.addWidget(self.fan)
        self.splitter.addWidget(self.bars)
        self.splitter.setSizes([600, 400])
        self.splitter.setChildrenCollapsible(False)
        self.splitter.setHandleWidth(SPACE_AROUND)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE_AROUND, SPACE_AROUND, SPACE_AROUND, 0)
        layout.setSpacing(SPACE_AROUND)
        layout.addWidget(self.figures)
        layout.addWidget(self.splitter, 1)
        for chart in self.charts():
            chart.explain_requested.connect(self._on_explain_requested)
            chart.said.connect(workspace.notifier.say)
        self.bars.picked.connect(workspace.select)
        workspace.selected.connect(self.bars.set_selected)

    def charts(self) -> tuple[Chart, ...]:
        """Give the charts of the page."""
        return self.fan, self.bars

    def refresh(self, changed: Changed) -> None:
        """Show the present results."""
        del changed
        results = self.workspace.results
        self.figures.refresh()
        self.fan.show_spec(fan_spec(results))
        self.bars.show_spec(value_bars_spec(results))
        self.bars.set_selected(self.workspace.selection)

    def _on_explain_requested(self, key: str) -> None:
        self.workspace.explain_requested.emit(key, self.workspace.selection)
