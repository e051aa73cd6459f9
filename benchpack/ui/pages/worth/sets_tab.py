"""Sets of assumptions side by side: kept, used, renamed, removed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.display import number_style
from benchpack.report.worth_figures import Shown
from benchpack.report.worth_sets import (
    NOW,
    SetMeasure,
    sets_spec,
    sets_table,
    shown_outcomes,
)
from benchpack.results.explain_worth import explain_worth
from benchpack.results.worth_sets import SetOutcome
from benchpack.session.assumption_edits import (
    with_kept_set,
    with_renamed_set,
    with_used_set,
    without_set,
)
from benchpack.session.state import State
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.pages.worth.asked_figure import is_known
from benchpack.ui.pages.worth.desk import WorthDesk
from benchpack.ui.pages.worth.sets_table import MOST_LETTERS, SetsTableView
from benchpack.ui.pages.worth.tab import WorthTab
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import named, plain_button
from benchpack.ui.workspace import Workspace


class SetsTab(WorthTab):
    """One figure of each set as a chart, all of them as a table."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__("Sets", workspace, parent)
        self._desk: WorthDesk | None = None
        self._names: tuple[str, ...] = ()
        self.measure = ChoiceBox(self)
        self.measure.addItems([str(one) for one in SetMeasure])
        self.measure.setAccessibleName("Compare the")
        self.name = named(QLineEdit(self), "Name of the set")
        self.name.setPlaceholderText("name of the set")
        self.name.setMaxLength(MOST_LETTERS)
        self.keep = plain_button("Keep", "Keep the present assumptions under this name")
        self.keep.setParent(self)
        self.chart = SetsChart(self)
        self.view = self.with_table(self.chart)
        self.table = SetsTableView(self)
        self.use = plain_button("Use", "Reckon with the assumptions of this set")
        self.rename = plain_button("Rename", "Give this set another name (F2)")
        self.remove = plain_button("Remove", "Remove this set (Del)")
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        label = QLabel("Compare the", self)
        set_text_role(label, "note")
        label.setBuddy(self.measure)
        top = QHBoxLayout()
        top.setContentsMargins(16, 8, 16, 0)
        top.setSpacing(8)
        top.addWidget(label)
        top.addWidget(self.measure)
        top.addStretch(1)
        self.name.setMinimumWidth(150)
        top.addWidget(self.name, 1)
        top.addWidget(self.keep)
        lower = QWidget(self)
        below = QVBoxLayout(lower)
        below.setContentsMargins(0, 0, 0, 0)
        below.setSpacing(8)
        buttons = QHBoxLayout()
        buttons.setContentsMargins(16, 0, 16, 8)
        buttons.setSpacing(8)
        buttons.addStretch(1)
        for button in (self.use, self.rename, self.remove):
            buttons.addWidget(button)
        below.addWidget(self.table, 1)
        below.addLayout(buttons)
        self.splitter = QSplitter(Qt.Orientation.Vertical, self)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.addWidget(self.view)
        self.splitter.addWidget(lower)
        self.splitter.setSizes([260, 220])
        self.column.addLayout(top)
        self.column.addWidget(self.splitter, 1)
        self.entry = self.table

    def _connect(self) -> None:
        self.measure.currentIndexChanged.connect(self._on_measure_changed)
        self.chart.picked.connect(self._on_chart_picked)
        self.name.returnPressed.connect(self.keep_set)
        self.name.textChanged.connect(self._enable)
        self.keep.clicked.connect(self.keep_set)
        self.use.clicked.connect(self.use_set)
        self.rename.clicked.connect(self.table.edit_name)
        self.remove.clicked.connect(self.remove_set)
        self.table.row_chosen.connect(self._on_row_chosen)
        self.table.used.connect(self.use_set)
        self.table.removed.connect(self.remove_set)
        self.table.renamed.connect(self._on_renamed)
        self.table.asked.connect(self._on_figure_asked)
        self.table.said.connect(self.workspace.notifier.say)

    @property
    def current(self) -> str:
        """Name of the current set, empty for what the study reckons with now."""
        row = self.table.currentIndex().row()
        return self._names[row] if 0 <= row < len(self._names) else ""

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the sets; the current one stays."""
        self._desk = desk
        outcomes, chosen = desk.outcomes(), self.current
        measure = SetMeasure(self.measure.currentText())
        self.chart.show_spec(sets_spec(outcomes, desk.study, measure))
        table = sets_table(outcomes)
        self._names = table.names
        in_use = [one.is_in_use for one in shown_outcomes(outcomes)]
        self.table.show_table(table, in_use=in_use)
        if chosen != self.current and chosen in self._names:
            self.table.selectRow(self._names.index(chosen))
        self._enable()

    def keep_set(self) -> None:
        """Keep the present assumptions under the name that is entered."""
        name = self.name.text().strip()
        if not name:
            self.name.setFocus()
            self.workspace.notifier.say("Enter a name for the set first.")
            return
        if self._is_taken(name):
            return
        state = self.workspace.state
        own = state.library.sets_of(state.study.name)
        is_there = any(one.name == name for one in own)

        def make(state: State) -> State:
            return with_kept_set(state, name)

        if self.workspace.edit(f"set {name}", make):
            self.name.clear()
            self._go_to(name)
            if is_there:
                self.workspace.notifier.say(f"Replaced the set {name}.")

    def use_set(self) -> None:
        """Reckon with the assumptions of the current set."""
        self._edit("use of set", with_used_set)

    def remove_set(self) -> None:
        """Remove the current set."""
        self._edit("removal of set", without_set)

    def _edit(self, words: str, make: Callable[[State, str], State]) -> None:
        name = self.current
        if not name:
            return

        def change(state: State) -> State:
            return make(state, name)

        self.workspace.edit(f"{words} {name}", change)

    def _is_taken(self, name: str) -> bool:
        """Tell, and say, whether a name stands for the present assumptions."""
        if name.casefold() != NOW:
            return False
        self.workspace.notifier.say(
            f"{NOW!r} stands for the present assumptions. Choose another name."
        )
        return True

    def _go_to(self, name: str) -> None:
        if name in self._names:
            self.table.selectRow(self._names.index(name))

    def _enable(self) -> None:
        is_set = bool(self.current)
        for button in (self.use, self.rename, self.remove):
            button.setEnabled(is_set)
        self.keep.setEnabled(bool(self.name.text().strip()))

    def _on_measure_changed(self) -> None:
        if self._desk is not None:
            self.show_desk(self._desk)

    def _on_chart_picked(self, name: str) -> None:
        places = list(self.chart.item_names())
        self.table.selectRow(places.index(name))

    def _on_chart_explain_requested(self, key: str) -> None:
        self._explain(key)

    def _on_figure_asked(self, shown: Shown) -> None:
        if shown.key and is_known(shown):
            self._explain(shown.key)
        else:
            said = shown.why or f"{shown.text}: as it is assumed."
            self.workspace.notifier.say(said)

    def _explain(self, key: str) -> None:
        """Say where a figure of the current set comes from."""
        found = self._outcome()
        if found is None or not found.name or found.is_in_use or found.case is None:
            self.workspace.explain_requested.emit(key, "")
            return
        from benchpack.ui.dialogs.explanation import show_figure

        figure = explain_worth(found.case, key)
        figure = replace(figure, label=f"{found.name}: {figure.label}")
        style = number_style(found.case.study)
        show_figure(self.workspace, figure, style=style, anchor=self)

    def _outcome(self) -> SetOutcome | None:
        row = self.table.currentIndex().row()
        if self._desk is None or row < 0:
            return None
        return shown_outcomes(self._desk.outcomes())[row]

    def _on_row_chosen(self, row: int) -> None:
        names = self.chart.item_names()
        self.chart.set_selected(names[row] if 0 <= row < len(names) else "")
        self._enable()

    def _on_renamed(self, row: int, name: str) -> None:
        old = self._names[row] if row < len(self._names) else ""

        def change(state: State) -> State:
            return with_renamed_set(state, old, name)

        if not old or name.strip() == old or self._is_taken(name.strip()):
            return
        if self.workspace.edit(f"name of set {old}", change):
            self._go_to(name.strip())
