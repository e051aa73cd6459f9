"""The pareto of the joints, with its two choices above it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from benchpack.model.study import Study
from benchpack.report.joint_charts import pareto_spec
from benchpack.results.inventory import Grouping, Inventory, Measure, grouped
from benchpack.ui.charts.pareto import ParetoChart
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.entry_area import EntryArea


class ParetoTab(EntryArea):
    """Shows which groups of joints count most.

    Signals
    -------
    group_picked(object)
        Places of the joints of the group that was picked, in their inventory.
    explain_requested(str, str)
        Key of the figure that is shown, and the pack it belongs to.
    """

    group_picked = Signal(object)
    explain_requested = Signal(str, str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Pareto")
        self._inventory: Inventory | None = None
        self._study: Study | None = None
        self.measure, self.grouping = ChoiceBox(self), ChoiceBox(self)
        self.measure.addItems([str(word) for word in Measure])
        self.measure.setCurrentText(Measure.MASS)
        self.grouping.addItems([str(word) for word in Grouping])
        self.measure.setAccessibleName("Measure of the pareto")
        self.grouping.setAccessibleName("Grouping of the pareto")
        self.chart = ParetoChart(self)
        row = QHBoxLayout()
        row.setContentsMargins(16, 8, 0, 0)
        row.setSpacing(8)
        for words, box in (("By", self.measure), ("of each", self.grouping)):
            label = QLabel(words, self)
            label.setBuddy(box)
            set_text_role(label, "note")
            row.addWidget(label)
            row.addWidget(box)
        row.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(row)
        layout.addWidget(self.chart, 1)
        self.entry = self.chart
        self.measure.currentIndexChanged.connect(self._on_choice_changed)
        self.grouping.currentIndexChanged.connect(self._on_choice_changed)
        self.chart.picked.connect(self._on_group_picked)
        self.chart.explain_requested.connect(self._on_explain_requested)

    def show_inventory(self, inventory: Inventory, study: Study) -> None:
        """Show the joints of a pack."""
        if self._inventory is None or inventory.pack != self._inventory.pack:
            self.chart.set_selected("")
        self._inventory, self._study = inventory, study
        self._show()

    def _show(self) -> None:
        if self._inventory is None or self._study is None:
            return
        spec = pareto_spec(
            self._inventory,
            self._study,
            grouping=Grouping(self.grouping.currentText()),
            measure=Measure(self.measure.currentText()),
        )
        self.chart.explain_record = self._inventory.pack
        self.chart.show_spec(spec)

    def _on_explain_requested(self, key: str) -> None:
        self.explain_requested.emit(key, self.chart.explain_record)

    def _on_choice_changed(self) -> None:
        self.chart.set_selected("")
        self._show()

    def _on_group_picked(self, name: str) -> None:
        if self._inventory is None:
            return
        grouping = Grouping(self.grouping.currentText())
        for group in grouped(self._inventory, grouping):
            if group.name == name:
                self.chart.set_selected(name)
                self.group_picked.emit(group.members)
