"""What the current part could be made of: a table and a chart of candidates."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError
from benchpack.report.candidates_charts import CandidatesSpec, candidates_spec
from benchpack.report.candidates_text import candidates_headline
from benchpack.report.display import number_style
from benchpack.results.candidate_explained import (
    CANDIDATE_COST,
    CANDIDATE_MASS,
    explain_candidate,
)
from benchpack.results.candidate_record import Candidates
from benchpack.results.candidates import compare_candidates
from benchpack.results.proposal import ProposalResults
from benchpack.ui.charts.candidates import CandidatesChart
from benchpack.ui.dialogs.explanation import show_figure
from benchpack.ui.pages.changes.candidates_table import CandidatesTable
from benchpack.ui.pages.changes.checks_tab import COMPUTING
from benchpack.ui.pages.changes.desk import ProposalDesk
from benchpack.ui.tasks import Token
from benchpack.ui.widgets.controls import text_label, unbroken
from benchpack.ui.widgets.entry_area import EntryArea
from benchpack.ui.widgets.pack_picker import PackPicker
from benchpack.ui.workspace import Workspace

_WORK = "candidates"
_SIGNS = (
    "Checks: circle good, triangle look, cross fail. Of the chosen one: lines for its "
    "ranges, a hollow mark for what the data sheet alone would give."
)
_NOTES_HEIGHT = 52


class CandidatesTab(EntryArea):
    """Compares materials for one part of the subject.

    Signals
    -------
    part_picked(str)
        Another part was picked.
    change_requested(str, str)
        A change is to be made: part and material.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    desk : ProposalDesk
        The proposal.
    parent : QWidget
        Owner.
    """

    part_picked = Signal(str)
    change_requested = Signal(str, str)

    def __init__(
        self, workspace: Workspace, desk: ProposalDesk, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Candidates for a part")
        self._workspace = workspace
        self._desk = desk
        self._part = ""
        self._of: tuple[ProposalResults, str] | None = None
        self._compared: Candidates | None = None
        self.picker = PackPicker("Part to compare materials for")
        self.picker.setParent(self)  # Tab goes in the order in which they join
        self.picker.setMinimumContentsLength(22)
        self.button = QPushButton("Make a change of it", self)
        self.button.setToolTip("Substitute the part by the current material (Enter)")
        self.headline = text_label(role="strong")
        self.notes = text_label(role="note")
        self.splitter = QSplitter(Qt.Orientation.Horizontal, self)
        self.table = CandidatesTable(self.splitter)
        self.chart = CandidatesChart(self.splitter)
        self._lay_out()
        self.picker.picked.connect(self.part_picked)
        self.table.candidate_chosen.connect(self._on_candidate_chosen)
        self.table.change_requested.connect(self._on_change_requested)
        self.table.asked.connect(self._on_asked)
        self.chart.picked.connect(self.table.go_to)
        self.chart.explain_requested.connect(self._on_chart_asked)
        self.chart.said.connect(workspace.notifier.say)
        self.button.clicked.connect(self._on_button_clicked)

    def _lay_out(self) -> None:
        label = QLabel("Candidates for", self)
        label.setBuddy(self.picker)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(label)
        row.addWidget(self.picker, 1)
        row.addStretch(1)
        row.addWidget(self.button)
        self.splitter.setChildrenCollapsible(False)
        self.splitter.setHandleWidth(8)
        self.splitter.setSizes([560, 500])
        self.splitter.setStretchFactor(0, 1)
        self.splitter.setStretchFactor(1, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        layout.addLayout(row)
        layout.addWidget(self.headline)
        layout.addWidget(self.splitter, 1)
        scroll = QScrollArea(self)
        scroll.setAccessibleName("Notes on the comparison")
        scroll.setWidgetResizable(True)
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setFixedHeight(_NOTES_HEIGHT)
        self.notes.setAlignment(Qt.AlignmentFlag.AlignTop)
        scroll.setWidget(self.notes)
        layout.addWidget(scroll)
        self.entry = self.table

    def show_part(self, part: str) -> None:
        """Compare materials for a part; nothing is worked out twice."""
        results = self._desk.results
        if results is None:
            return
        parts = tuple(item.name for item in results.today.parts.values())
        self.picker.show_names(parts)
        self._part = part if part in parts else next(iter(parts), "")
        self.picker.show_name(self._part)
        if not self._part:
            self._show(None, f"No parts of {results.study.subject} are recorded.")
            return
        wanted = (results, self._part)
        if self._of is not None and self._of == wanted:
            return
        self._of = wanted
        self._show(None, COMPUTING)
        name = self._part

        def work(token: Token) -> tuple[ProposalResults, Candidates]:
            del token
            return results, compare_candidates(
                results.library, results.study, name, today=results.today
            )

        self._workspace.runner.start(
            _WORK,
            work,
            done=self._on_compared,
            failed=self._on_failed,
            words="Comparing candidates",
        )

    def _show(self, compared: Candidates | None, words: str) -> None:
        self._compared = compared
        study = self._desk.study
        self.table.show_candidates(compared, study)
        self.headline.setText(unbroken(words))
        self.button.setEnabled(bool(self.table.current))
        if compared is None:
            self.notes.setText("")
            self.chart.show_spec(CandidatesSpec(empty_sentence=words))
            return
        self.notes.setText(unbroken(" ".join(compared.notes)))
        spec = candidates_spec(compared, study)
        self.chart.show_spec(replace(spec, note=_SIGNS))
        self.chart.set_selected(self.table.current)

    def _on_compared(self, told: tuple[ProposalResults, Candidates]) -> None:
        results, compared = told
        if results is self._desk.results:
            self._show(compared, candidates_headline(compared, results.study))

    def _on_failed(self, error: BaseException) -> None:
        self._of = None
        if isinstance(error, DataError):
            self._show(None, str(error))
        else:
            self._workspace.notifier.report(error)

    def _on_candidate_chosen(self, name: str) -> None:
        self.chart.set_selected(name)
        self.button.setEnabled(bool(name))

    def _on_button_clicked(self) -> None:
        self._on_change_requested(self.table.current)

    def _on_change_requested(self, material: str) -> None:
        if material and self._part:
            self.change_requested.emit(self._part, material)

    def _on_chart_asked(self) -> None:
        self._on_asked(max(self.table.currentIndex().row(), 0), 0)

    def _on_asked(self, row: int, column: int) -> None:
        """Say where the mass or the cost of a row comes from."""
        compared, results = self._compared, self._desk.results
        if compared is None or results is None:
            return
        of_cost = compared.currency in self.table.candidates.head(column)
        key = CANDIDATE_COST if of_cost else CANDIDATE_MASS
        figure = explain_candidate(compared, self.table.candidates.rows[row], key=key)
        style = number_style(results.study)
        show_figure(self._workspace, figure, style=style, anchor=self.table)
