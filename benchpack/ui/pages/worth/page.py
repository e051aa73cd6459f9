"""The Worth page: what a lighter pack is worth, and what that hangs on."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QSplitter, QTabWidget, QVBoxLayout, QWidget

from benchpack.errors import Problem
from benchpack.report.display import number_style
from benchpack.report.worth_figures import Shown
from benchpack.session.document import Change
from benchpack.session.state import Changed
from benchpack.ui.charts.chart import Chart
from benchpack.ui.page import Page
from benchpack.ui.pages.worth.asked_figure import is_known
from benchpack.ui.pages.worth.assumption_panel import AssumptionPanel
from benchpack.ui.pages.worth.chart_tabs import (
    PeersTab,
    ProgrammeTab,
    fan_tab,
    price_tab,
)
from benchpack.ui.pages.worth.desk import CHANCE, WorthDesk
from benchpack.ui.pages.worth.figure_row import FigureRow
from benchpack.ui.pages.worth.map_tab import MapTab
from benchpack.ui.pages.worth.matters_tab import MattersTab
from benchpack.ui.pages.worth.sets_tab import SetsTab
from benchpack.ui.pages.worth.shortcuts import SHORTCUTS
from benchpack.ui.pages.worth.tab import WorthTab
from benchpack.ui.pages.worth.target_tab import TargetTab
from benchpack.ui.pages.worth.trial_figures import OF_TRIALS, trial_figure
from benchpack.ui.pages.worth.vehicle_tab import VehicleTab
from benchpack.ui.tables.layout_memory import keep_splitter, restore_splitter
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN
from benchpack.ui.widgets.page_keys import bind_keys
from benchpack.ui.workspace import Workspace

_MEMORY = "worth"
_SLIM_TABS = "QTabBar::tab { font-size: 9pt; padding: 6px 9px; }"


class WorthPage(Page):
    """Figures at the top, assumptions at the left, one large view at the right."""

    title = "Worth"
    shortcuts = SHORTCUTS

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self.desk = WorthDesk(workspace, self)
        self._is_passing = False
        self._waiting: set[QWidget] = set()
        self.figures = FigureRow(self)
        self.splitter = QSplitter(Qt.Orientation.Horizontal, self)
        self.assumptions = AssumptionPanel(workspace, self.splitter)
        self.tabs = QTabWidget(self.splitter)
        self.entry = self.tabs
        self._make_tabs()
        self._lay_out()
        self._connect()
        self._is_restored = False

    def _make_tabs(self) -> None:
        tabs, workspace = self.tabs, self.workspace
        tabs.setDocumentMode(True)
        tabs.setUsesScrollButtons(False)
        tabs.setStyleSheet(_SLIM_TABS)
        tabs.setAccessibleName("Views of the worth")
        tabs.tabBar().setAccessibleName("Views of the worth")
        self.fan = fan_tab(workspace, tabs)
        self.programme = ProgrammeTab(workspace, tabs)
        self.price = price_tab(workspace, tabs)
        self.vehicle = VehicleTab(workspace, tabs)
        self.target = TargetTab(workspace, tabs)
        self.matters = MattersTab(workspace, tabs)
        self.map = MapTab(workspace, tabs)
        self.sets = SetsTab(workspace, tabs)
        self.peers = PeersTab(workspace, tabs)
        self.views: tuple[WorthTab, ...] = (
            self.fan,
            self.programme,
            self.price,
            self.vehicle,
            self.target,
            self.matters,
            self.map,
            self.sets,
            self.peers,
        )
        for view in self.views:
            tabs.addTab(view, view.accessibleName())
            view.asked.connect(self._on_figure_asked)
            view.field_requested.connect(self._on_field_requested)

    def _lay_out(self) -> None:
        self.splitter.addWidget(self.assumptions)
        self.splitter.addWidget(self.tabs)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.setHandleWidth(SPACE_BETWEEN)
        self.splitter.setStretchFactor(1, 1)
        self.splitter.setSizes([290, 830])
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE_AROUND, SPACE_BETWEEN, SPACE_AROUND, 0)
        layout.setSpacing(SPACE_BETWEEN)
        layout.addWidget(self.figures)
        layout.addWidget(self.splitter, 1)

    def _connect(self) -> None:
        self.figures.asked.connect(self._on_figure_asked)
        self.tabs.currentChanged.connect(self._on_tab_changed)
        self.splitter.splitterMoved.connect(self._on_splitter_moved)
        self.desk.found.connect(self._on_found)
        bind_keys(
            self,
            {
                "F6": self._on_next_requested,
                "Alt+Right": self._on_next_tab_requested,
                "Alt+Left": self._on_previous_tab_requested,
                "Ctrl+Shift+K": self._on_keep_requested,
            },
        )

    def charts(self) -> tuple[Chart, ...]:
        """Give the charts of the page."""
        return tuple(chart for view in self.views for chart in view.charts)

    # What is shown

    def refresh(self, changed: Changed) -> None:
        """Show the present worth: the figures, and the tab that is seen."""
        del changed
        if not self._is_restored:
            self._is_restored = True
            restore_splitter(self.splitter, _MEMORY)
        self.desk.take(passing=self._is_passing)
        self.desk.want(CHANCE)
        self.figures.show_desk(self.desk)
        self._waiting = set(self.views)
        self._show_tab()

    def _show_tab(self) -> None:
        view = self.tabs.currentWidget()
        if isinstance(view, WorthTab) and view in self._waiting:
            self._waiting.discard(view)
            view.show_desk(self.desk)

    def _on_workspace_changed(self, change: Change) -> None:
        self._is_passing = change.passing
        super()._on_workspace_changed(change)

    def _on_workspace_opened(self) -> None:
        self._is_passing = False
        self.desk.clear()
        super()._on_workspace_opened()

    def _on_tab_changed(self) -> None:
        if self._waiting:
            self._show_tab()

    def _on_found(self, what: str) -> None:
        if what == CHANCE:
            self.figures.show_desk(self.desk)
        view = self.tabs.currentWidget()
        for other in self.views:
            if other is not view:
                self._waiting.add(other)
        if isinstance(view, WorthTab) and view not in self._waiting:
            view.found(self.desk, what)

    # What is asked and chosen

    def _on_figure_asked(self, shown: Shown) -> None:
        """Say where a figure comes from, or why it is not known."""
        if not is_known(shown):
            said = shown.why or "It is still being worked out."
            self.workspace.notifier.say(said)
        elif shown.key in OF_TRIALS:
            self._explain_trials(shown.key)
        else:
            self.workspace.explain_requested.emit(shown.key, "")

    def _on_field_requested(self, column: str) -> None:
        """Go to the field of an assumption, or of what an empty chart lacks."""
        case = self.desk.case
        missing = case.price if self.sender() is self.price else case.programme
        if not column and isinstance(missing, Problem):
            column = missing.column
        self.assumptions.focus_field(column)

    def _explain_trials(self, key: str) -> None:
        from benchpack.ui.dialogs.explanation import show_figure

        proposal, chance = self.desk.case.proposal, self.desk.chance
        if proposal is None or chance is None:
            return
        figure = trial_figure(proposal, chance, key=key)
        focused = QApplication.focusWidget()
        anchor = focused if focused and self.isAncestorOf(focused) else self.figures
        style = number_style(proposal.study)
        show_figure(self.workspace, figure, style=style, anchor=anchor)

    def _on_splitter_moved(self) -> None:
        keep_splitter(self.splitter, _MEMORY)

    def _on_next_requested(self) -> None:
        """Put the focus into the next of figures, assumptions and the view."""
        focused = QApplication.focusWidget()
        stops = (self.figures, self.assumptions, self.tabs)
        held = next(
            (i for i, one in enumerate(stops) if focused and one.isAncestorOf(focused)),
            -1,
        )
        following = stops[(held + 1) % len(stops)]
        view = self.tabs.currentWidget()
        if following is self.figures:
            self.figures.worth.main.setFocus(Qt.FocusReason.TabFocusReason)
        elif following is self.assumptions:
            self.assumptions.focus_field("worth_likely_per_kg")
        elif view is not None:
            view.setFocus(Qt.FocusReason.TabFocusReason)

    def _on_next_tab_requested(self) -> None:
        self._go(1)

    def _on_previous_tab_requested(self) -> None:
        self._go(-1)

    def _go(self, by: int) -> None:
        self.tabs.setCurrentIndex((self.tabs.currentIndex() + by) % self.tabs.count())
        view = self.tabs.currentWidget()
        if view is not None:
            view.setFocus(Qt.FocusReason.TabFocusReason)

    def _on_keep_requested(self) -> None:
        self.tabs.setCurrentWidget(self.sets)
        self.sets.name.setFocus(Qt.FocusReason.ShortcutFocusReason)
