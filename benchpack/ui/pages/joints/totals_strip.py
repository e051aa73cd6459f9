"""What the chosen joints come to, and whether they may go."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from benchpack.model.study import Study
from benchpack.report.display import Display
from benchpack.report.joint_text import amount_text, counted_text, fate_text
from benchpack.results.explain_joints import (
    ONE_KEYS,
    SUM_KEYS,
    joint_record,
    joints_record,
)
from benchpack.results.inventory import Measure, Totals, totals_of
from benchpack.results.joint_facts import JointFacts
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import text_label
from benchpack.ui.widgets.figure_button import FigureButton
from benchpack.ui.widgets.steady import Steady

SELECTED = "Selected"
"""What is said of joints that were chosen; they are told in full whether they go."""
ALL = "All"
_INSET = 6
_MEASURES = (Measure.MASS, Measure.TIME, Measure.MONEY)


class TotalsStrip(QWidget):
    """Totals of the selected joints, or of all, as figures that can be asked about.

    Signals
    -------
    explain_requested(str, str)
        Key of the figure that was clicked, and the pack or joint it belongs to.
    """

    explain_requested = Signal(str, str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Totals")
        self.which = QLabel(self)
        set_text_role(self.which, "note")
        self.counted = self._figure(Measure.COUNT)
        self.figures: dict[Measure, FigureButton] = {
            measure: self._figure(measure) for measure in _MEASURES
        }
        self.fate = text_label(role="note")
        self.fate.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.fate.setContentsMargins(_INSET, 0, 0, 0)
        head = QHBoxLayout()
        head.setContentsMargins(_INSET, 0, 0, 0)
        head.setSpacing(8)
        head.addWidget(self.which)
        head.addWidget(self.counted)
        head.addStretch(1)
        row = QHBoxLayout()
        row.setSpacing(8)
        for button in self.figures.values():
            row.addWidget(button)
        self.per = QLabel("a pack", self)
        set_text_role(self.per, "note")
        row.addWidget(self.per)
        row.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 8, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(head)
        layout.addLayout(row)
        layout.addWidget(Steady(self.fate, least_lines=2))

    def _figure(self, measure: Measure) -> FigureButton:
        button = FigureButton(SUM_KEYS[measure], self)
        button.clicked.connect(self._on_figure_clicked)
        return button

    def show_joints(
        self,
        which: str,
        facts: Sequence[JointFacts],
        study: Study,
        *,
        totals: Totals | None = None,
    ) -> None:
        """Show what some joints come to.

        Parameters
        ----------
        which : str
            Which joints these are: all, shown, selected.
        facts : sequence of JointFacts
            The joints.
        study : Study
            How numbers are shown.
        totals : Totals, optional
            Their sums, where they are known already.
        """
        display = Display(study)
        totals = totals or totals_of(facts)
        self.which.setText(f"{which}:")
        alone = len(facts) == 1 and which == SELECTED
        record = record_of(facts, which=which)
        texts: dict[Measure, str] = {Measure.COUNT: counted_text(facts, display)}
        texts |= {m: amount_text(totals, m, display) for m in self.figures}
        for measure, text in texts.items():
            button = self.figures.get(measure, self.counted)
            of_one = alone and measure in ONE_KEYS
            button.explain_key = (ONE_KEYS if of_one else SUM_KEYS)[measure]
            button.explain_record = record
            if of_one:
                joint = facts[0].joint
                button.explain_record = joint_record(joint.pack, joint.name)
            button.setText(text)
            word = measure.capitalize()
            button.setToolTip(f"{word} a pack. Click: where it comes from")
            button.setAccessibleName(f"{measure} of {which.casefold()} joints: {text}")
        self.fate.setText(fate_text(facts) if which == SELECTED else _staying(facts))

    def _on_figure_clicked(self) -> None:
        button = self.sender()
        if isinstance(button, FigureButton):
            self.explain_requested.emit(button.explain_key, button.explain_record)


def record_of(facts: Sequence[JointFacts], *, which: str) -> str:
    """Give what a sum belongs to: the pack of all joints, else these joints of it."""
    if not facts:
        return ""
    pack = facts[0].joint.pack
    if which == ALL:
        return pack
    return joints_record(pack, (one.joint.name for one in facts))


def _staying(facts: Sequence[JointFacts]) -> str:
    """Count the rows that have to stay."""
    staying = sum(one.joint.carry_over for one in facts)
    if not staying:
        return "None of them is carry-over."
    verb = "is" if staying == 1 else "are"
    return f"{staying} of {len(facts)} rows {verb} carry-over and may not go."
