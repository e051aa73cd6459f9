"""What the programme hangs on: swings at once, shares of the variance later."""

from __future__ import annotations

import math

from PySide6.QtWidgets import QHBoxLayout, QLabel, QStackedWidget, QWidget

from benchpack.errors import Problem
from benchpack.report.worth_matters import (
    WORKING,
    worth_shares_spec,
    worth_swings_spec,
)
from benchpack.report.worth_specs import SharesSpec
from benchpack.ui.charts.shares import SharesChart
from benchpack.ui.charts.swings import SwingsChart
from benchpack.ui.pages.worth.desk import SHARES, WorthDesk
from benchpack.ui.pages.worth.tab import WorthTab
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.theme import set_text_role
from benchpack.ui.workspace import Workspace

_CHOICES = ("one input at a time", "shares of the variance")


class MattersTab(WorthTab):
    """Swings or Sobol shares, by choice; only what is seen is worked out."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__("What matters", workspace, parent)
        self._desk: WorthDesk | None = None
        self.choice = ChoiceBox(self)
        self.choice.addItems(_CHOICES)
        self.choice.setAccessibleName("What matters by")
        self.swings, self.shares = SwingsChart(self), SharesChart(self)
        self.views = [self.with_table(one) for one in (self.swings, self.shares)]
        self.stack = QStackedWidget(self)
        for view in self.views:
            self.stack.addWidget(view)
        label = QLabel("What matters by", self)
        set_text_role(label, "note")
        label.setBuddy(self.choice)
        row = QHBoxLayout()
        row.setContentsMargins(16, 8, 16, 0)
        row.setSpacing(8)
        row.addWidget(label)
        row.addWidget(self.choice)
        row.addStretch(1)
        self.column.addLayout(row)
        self.column.addWidget(self.stack, 1)
        self.entry = self.choice
        self.choice.currentIndexChanged.connect(self._on_choice_changed)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show what matters now."""
        self._desk = desk
        if self.choice.currentIndex() == 0:
            programme = desk.case.programme
            released = (
                math.nan if isinstance(programme, Problem) else programme.npv.likely
            )
            spec = worth_swings_spec(desk.swings(), desk.study, released=released)
            self.swings.show_spec(spec)
            return
        desk.want(SHARES)
        found = desk.shares
        self.shares.show_spec(
            SharesSpec(empty_sentence=WORKING)
            if found is None
            else worth_shares_spec(found, desk.study)
        )

    def found(self, desk: WorthDesk, what: str) -> None:
        """Show the shares once they are there."""
        if what == SHARES and self.choice.currentIndex() == 1:
            self.show_desk(desk)

    def _on_choice_changed(self, place: int) -> None:
        self.stack.setCurrentIndex(place)
        if self._desk is not None:
            self.show_desk(self._desk)
