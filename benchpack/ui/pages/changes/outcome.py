"""What the proposal comes to: chance, waterfall, what matters, suggestion."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.change_charts import steps_from_today, swings_spec
from benchpack.report.display import number_style
from benchpack.results.explained_chance import chance_figure
from benchpack.ui.charts.swings import SwingsChart
from benchpack.ui.charts.waterfall import WaterfallChart
from benchpack.ui.dialogs.explanation import show_figure
from benchpack.ui.pages.changes.chance_figures import ChanceFigures
from benchpack.ui.pages.changes.checks_tab import COMPUTING
from benchpack.ui.pages.changes.desk import CHANCE, CHOICE, MATTERS, ProposalDesk
from benchpack.ui.pages.changes.suggestion_tab import SuggestionTab
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.entry_area import EntryArea
from benchpack.ui.workspace import Workspace

LEAST_WIDTH = 264
SLIM_TABS = "QTabBar::tab { font-size: 9pt; padding: 6px 9px; }"
"""Tabs that stand beside each other in a narrow window."""
_MASS, _MONEY = "mass saved", "net worth"


class Outcome(QWidget):
    """The right side of the page; only the tab that is seen is worked out.

    Signals
    -------
    change_picked(str)
        A change was picked in the waterfall.
    taken(object)
        Names of the changes that are to be on, no others.
    explain_requested(str, str)
        Key of a figure, and the change it belongs to.
    """

    change_picked = Signal(str)
    taken = Signal(object)
    explain_requested = Signal(str, str)

    def __init__(
        self, workspace: Workspace, desk: ProposalDesk, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self._desk = desk
        self.setMinimumWidth(LEAST_WIDTH)
        self.setAccessibleName("What the proposal comes to")
        self.chance = ChanceFigures(self)
        self.tabs = QTabWidget(self)
        self.tabs.setDocumentMode(True)
        self.tabs.setUsesScrollButtons(False)
        self.tabs.setStyleSheet(SLIM_TABS)
        for named in (self.tabs, self.tabs.tabBar()):
            named.setAccessibleName("Waterfall, what matters and suggestion")
        self.waterfall = WaterfallChart(self.tabs)
        self.matters = EntryArea(self.tabs)
        self.measure = ChoiceBox(self.matters)
        self.swings = SwingsChart(self.matters)
        self.suggestion = SuggestionTab(self.tabs)
        self._lay_out()
        self.tabs.currentChanged.connect(self._on_tab_changed)
        self.measure.currentIndexChanged.connect(self._show_matters)
        self.waterfall.picked.connect(self.change_picked)
        self.suggestion.taken.connect(self.taken)
        self.chance.asked.connect(self._on_chance_asked)
        for chart in (self.waterfall, self.swings):
            chart.explain_requested.connect(self._on_explain_requested)
            chart.said.connect(workspace.notifier.say)
        desk.found.connect(self._on_found)

    def _lay_out(self) -> None:
        self.measure.addItems([_MASS, _MONEY])
        self.measure.setAccessibleName("What matters for")
        label = QLabel("For the", self.matters)
        set_text_role(label, "note")
        label.setBuddy(self.measure)
        row = QHBoxLayout()
        row.setContentsMargins(8, 8, 8, 0)
        row.addWidget(label)
        row.addWidget(self.measure)
        row.addStretch(1)
        column = QVBoxLayout(self.matters)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(row)
        column.addWidget(self.swings, 1)
        self.matters.entry = self.swings
        self.tabs.addTab(self.waterfall, "Waterfall")
        self.tabs.addTab(self.matters, "What matters")
        self.tabs.addTab(self.suggestion, "Suggestion")
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._layout.setSpacing(4)
        self._layout.addWidget(self.chance)
        self._layout.addWidget(self.tabs, 1)

    def lie_flat(self, *, flat: bool) -> None:
        """Put the chance into one line where there is little height.

        Parameters
        ----------
        flat : bool
            True for one line.
        """
        self.chance.lie_flat(flat=flat)
        self._layout.setContentsMargins(*((8, 8, 0, 0) if flat else (0, 0, 0, 0)))
        # As one of several tabs it may not hold the others to its own least height.
        policy = QSizePolicy.Policy
        upright = policy.Ignored if flat else policy.Preferred
        self.setSizePolicy(policy.Preferred, upright)

    def show_proposal(self) -> None:
        """Show the proposal of the desk, and have the rest of it worked out."""
        results = self._desk.results
        if results is None:
            return
        self.waterfall.show_spec(steps_from_today(results))
        self._desk.want(CHANCE)
        self.chance.show_desk(self._desk)
        self._on_tab_changed()

    def show_worth(self) -> None:
        """Take over a worth that passes by."""
        self.chance.show_desk(self._desk)

    def mark_change(self, name: str) -> None:
        """Mark the step of the current change."""
        self.waterfall.set_selected(name)

    def _on_tab_changed(self) -> None:
        current = self.tabs.currentWidget()
        if current is self.matters:
            self._desk.want(MATTERS)
            self._show_matters()
        elif current is self.suggestion:
            self._desk.want(CHOICE)
            self.suggestion.show_desk(self._desk)

    def _on_found(self, what: str) -> None:
        if what == CHANCE:
            self.chance.show_desk(self._desk)
        elif what == MATTERS:
            self._show_matters()
        elif what == CHOICE:
            self.suggestion.show_desk(self._desk)

    def _show_matters(self) -> None:
        desk = self._desk
        of_money = self.measure.currentText() == _MONEY
        spec = swings_spec(
            desk.matters[1 if of_money else 0], desk.study, of_money=of_money
        )
        if not desk.has(MATTERS):
            spec = type(spec)(empty_sentence=COMPUTING)
        self.swings.show_spec(spec)

    def _on_explain_requested(self, key: str) -> None:
        self.explain_requested.emit(key, "")

    def _on_chance_asked(self, key: str) -> None:
        results, chance = self._desk.results, self._desk.chance
        anchor = self.chance.figures.get(key)
        if results is None or chance is None or anchor is None:
            return
        figure = chance_figure(results, chance, key)
        style = number_style(results.study)
        show_figure(self._workspace, figure, style=style, anchor=anchor)
