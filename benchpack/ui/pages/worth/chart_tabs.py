"""The tabs of one chart: fan, programme, price, peers."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QItemSelectionModel, QModelIndex
from PySide6.QtWidgets import QWidget

from benchpack.model.worth_words import ValuedMass
from benchpack.report.chart_specs import FanSpec, GapBarsSpec, WaterfallSpec
from benchpack.report.worth_charts import fan_spec, value_bars_spec
from benchpack.report.worth_figures import Shown, programme_figures
from benchpack.report.worth_price import price_figures, price_spec
from benchpack.report.worth_programme import programme_spec
from benchpack.report.worth_shares import price_shares, programme_shares
from benchpack.report.worth_specs import ProgrammeSpec
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.charts.programme import ProgrammeChart
from benchpack.ui.charts.waterfall import WaterfallChart
from benchpack.ui.pages.worth.desk import WorthDesk
from benchpack.ui.pages.worth.tab import ChartTab
from benchpack.ui.workspace import Workspace

_WHOLE_ROW = (
    QItemSelectionModel.SelectionFlag.ClearAndSelect
    | QItemSelectionModel.SelectionFlag.Rows
    | QItemSelectionModel.SelectionFlag.Current
)


def fan_tab(workspace: Workspace, parent: QWidget) -> ChartTab:
    """Give the tab of the worth over kilograms saved."""
    return ChartTab("Fan", workspace, parent, make_chart=FanChart, make_spec=_fan)


def price_tab(workspace: Workspace, parent: QWidget) -> ChartTab:
    """Give the tab of the price ladder."""
    return ChartTab(
        "Price",
        workspace,
        parent,
        make_chart=partial(WaterfallChart, kind="Price ladder"),
        make_spec=_price,
        figures=_price_figures,
        count=7,
    )


class PeersTab(ChartTab):
    """What the gap to every peer is worth; a peer that is picked is selected."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(
            "Peers", workspace, parent, make_chart=GapBarsChart, make_spec=_peers
        )
        self.chart.picked.connect(workspace.select)
        workspace.selected.connect(self.chart.set_selected)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present gaps."""
        super().show_desk(desk)
        self.chart.set_selected(self.workspace.selection)


class ProgrammeTab(ChartTab):
    """Money by year; a year that is picked is selected in the table too."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(
            "Programme",
            workspace,
            parent,
            make_chart=ProgrammeChart,
            make_spec=_programme,
            figures=_programme_figures,
            count=6,
        )
        self.chart.picked.connect(self._on_chart_picked)
        self.view.view_changed.connect(self._on_view_changed)
        rows = self.view.table.selectionModel()
        rows.currentRowChanged.connect(self._on_row_changed)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present programme; the selected year stays."""
        super().show_desk(desk)
        if self.chart.selected not in self.chart.item_names():
            self.chart.set_selected("")

    def _on_chart_picked(self, name: str) -> None:
        self.chart.set_selected(name)
        self._select_row()

    def _on_view_changed(self, view: str) -> None:
        if view == "table":
            self._select_row()

    def _select_row(self) -> None:
        years = self.chart.spec.years
        chosen = self.chart.selected
        table = self.view.table
        if chosen in years and years.index(chosen) < table.table.rowCount():
            index = table.table.index(years.index(chosen), 0)
            table.selectionModel().setCurrentIndex(index, _WHOLE_ROW)
            table.scrollTo(index)

    def _on_row_changed(self, current: QModelIndex) -> None:
        years = self.chart.spec.years
        if current.isValid() and current.row() < len(years):
            self.chart.set_selected(years[current.row()])


def _fan(desk: WorthDesk) -> FanSpec:
    saving = desk.case.saving
    proposed = saving.saved_kg if saving.valued is ValuedMass.PROPOSAL else None
    return fan_spec(desk.case.gap, proposed)


def _price(desk: WorthDesk) -> WaterfallSpec:
    return price_spec(desk.case)


def _price_figures(desk: WorthDesk) -> tuple[Shown, ...]:
    return (*price_figures(desk.case), *price_shares(desk.case))


def _peers(desk: WorthDesk) -> GapBarsSpec:
    return value_bars_spec(desk.case.gap)


def _programme(desk: WorthDesk) -> ProgrammeSpec:
    return programme_spec(desk.case)


def _programme_figures(desk: WorthDesk) -> tuple[Shown, ...]:
    return (*programme_figures(desk.case), *programme_shares(desk.case))
