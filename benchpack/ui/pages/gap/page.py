"""The Gap page: where the subject stands, and where its excess mass sits."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QVBoxLayout

from benchpack.report.gap_charts import (
    energy_mass_spec,
    gap_bars_spec,
    waterfall_spec,
)
from benchpack.session.document import Change
from benchpack.session.state import Changed
from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.energy_mass import EnergyMassChart
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.charts.waterfall import WaterfallChart
from benchpack.ui.page import Page
from benchpack.ui.theme import SPACE_AROUND
from benchpack.ui.workspace import Workspace


class GapPage(Page):
    """Energy against mass, gaps to all peers, and the gap to the reference in steps."""

    title = "Gap"

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self.energy_mass = EnergyMassChart()
        self.bars = GapBarsChart()
        self.waterfall = WaterfallChart()
        self.entry = self.energy_mass
        left = QSplitter(Qt.Orientation.Vertical)
        left.addWidget(self.energy_mass)
        left.addWidget(self.bars)
        left.setSizes([600, 400])
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.addWidget(left)
        self.splitter.addWidget(self.waterfall)
        self.splitter.setSizes([560, 440])
        for splitter in (self.splitter, left):
            splitter.setChildrenCollapsible(False)
            splitter.setHandleWidth(SPACE_AROUND)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE_AROUND, SPACE_AROUND, SPACE_AROUND, 0)
        layout.addWidget(self.splitter)
        for chart in self.charts():
            chart.explain_requested.connect(self._on_explain_requested)
            chart.said.connect(workspace.notifier.say)
        for chart in (self.energy_mass, self.bars):
            chart.picked.connect(workspace.select)
        workspace.selected.connect(self._on_selected)

    def charts(self) -> tuple[Chart, ...]:
        """Give the charts of the page."""
        return self.energy_mass, self.bars, self.waterfall

    def refresh(self, changed: Changed) -> None:
        """Show the present results in all three charts."""
        del changed
        results = self.workspace.results
        self.energy_mass.show_spec(energy_mass_spec(results))
        self.bars.show_spec(gap_bars_spec(results))
        self.waterfall.show_spec(waterfall_spec(results))
        self._on_selected(self.workspace.selection)

    def _on_workspace_changed(self, change: Change) -> None:
        # Nothing here depends on the worth, which is all that passes by.
        if not change.passing:
            super()._on_workspace_changed(change)

    def _on_selected(self, name: str) -> None:
        self.energy_mass.set_selected(name)
        self.bars.set_selected(name)

    def _on_explain_requested(self, key: str) -> None:
        self.workspace.explain_requested.emit(key, self.workspace.selection)
