"""The map of two assumptions, whose places can be taken over."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from benchpack.report.worth_map_chart import SIDES, map_spec, side_of
from benchpack.results.wording import listed
from benchpack.session.state import State
from benchpack.ui.charts.worth_map import WorthMapChart
from benchpack.ui.pages.worth.desk import WorthDesk
from benchpack.ui.pages.worth.tab import WorthTab
from benchpack.ui.pages.worth.taking_over import taken_over
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.theme import set_text_role
from benchpack.ui.workspace import Workspace

_FIRST = ("worth", "share")
_WORDS = dict(SIDES)


class MapTab(WorthTab):
    """Two choices for the sides, and the map with its break-even line."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__("Map", workspace, parent)
        self._desk: WorthDesk | None = None
        self.across, self.upwards = ChoiceBox(self), ChoiceBox(self)
        self.chart = WorthMapChart(self)
        self.view = self.with_table(self.chart)
        row = QHBoxLayout()
        row.setContentsMargins(16, 8, 16, 0)
        row.setSpacing(8)
        for box, words, first in (
            (self.across, "Across", _FIRST[0]),
            (self.upwards, "Upwards", _FIRST[1]),
        ):
            for key, side in SIDES:
                box.addItem(side, key)
            box.setCurrentIndex(box.findData(first))
            box.setAccessibleName(f"{words} on the map")
            label = QLabel(words, self)
            set_text_role(label, "note")
            label.setBuddy(box)
            row.addWidget(label)
            row.addWidget(box)
        row.addStretch(1)
        self.column.addLayout(row)
        self.column.addWidget(self.view, 1)
        self.entry = self.view
        self._keys = list(_FIRST)
        self.across.currentIndexChanged.connect(self._on_across_changed)
        self.upwards.currentIndexChanged.connect(self._on_upwards_changed)
        self.chart.spot_picked.connect(self._on_spot_picked)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the present map."""
        self._desk = desk
        self.chart.show_spec(map_spec(desk.map(*self._keys), desk.study))

    def _on_across_changed(self) -> None:
        self._take_side(0, self.across, self.upwards)

    def _on_upwards_changed(self) -> None:
        self._take_side(1, self.upwards, self.across)

    def _take_side(self, place: int, box: ChoiceBox, other: ChoiceBox) -> None:
        """Take a side; where both would be the same they change places."""
        before = self._keys[place]
        self._keys[place] = box.currentData()
        if self._keys[1 - place] == self._keys[place]:
            self._keys[1 - place] = before
            with QSignalBlocker(other):
                other.setCurrentIndex(other.findData(before))
        if self._desk is not None:
            self.show_desk(self._desk)

    def _on_spot_picked(self, x: float, y: float) -> None:
        """Take over what the study assumes; the rest is named."""
        if self._desk is None:
            return
        case = self._desk.case
        changes: dict[str, Any] = {}
        taken: list[str] = []
        left: list[str] = []
        for key, shown in zip(self._keys, (x, y), strict=True):
            found = taken_over(case, key, shown / side_of(key, case.study).factor)
            changes |= found
            (taken if found else left).append(_WORDS[key])

        def change(state: State) -> State:
            return state.with_study(**changes)

        if changes:
            self.workspace.edit(f"{listed(tuple(taken))} from the map", change)
        if left:
            said = f"{listed(tuple(left)).capitalize()}: no figure of this study, "
            self.workspace.notifier.say(f"{said}so it is not taken over.")
