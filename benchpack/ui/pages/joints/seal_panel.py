"""A seal line tried out: another flange, gasket or number of screws."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.display import number_style
from benchpack.report.seal_text import NOTES, TrialNames, recorded_words, trial_text
from benchpack.results.inventory import Inventory
from benchpack.results.seal import (
    SealLine,
    line_of,
    trial_of,
    try_out,
)
from benchpack.results.seal_flange import is_metal
from benchpack.results.seal_rows import Holding
from benchpack.results.wording import Wording
from benchpack.ui.pages.joints.seal_form import SealForm
from benchpack.ui.pages.joints.seal_outcome import SealOutcome
from benchpack.ui.pages.joints.seal_shelf import SealShelf
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN, SPACE_INSIDE
from benchpack.ui.widgets.controls import hairline, named, plain_button, text_label
from benchpack.ui.workspace import Workspace

NO_LINE = (
    "This pack has no seal line on record. Enter a gasket or a sealant bead with its "
    "length, and the screws that clamp it."
)
_WIDE = 720
"""From this width on what comes out stands beside the form, not above it."""


class SealPanel(QWidget):
    """Shows what a flange, a gasket and a number of screws come to, while one types.

    Nothing that is entered here changes the library.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget, optional
        Owner.
    """

    def __init__(self, workspace: Workspace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.workspace = workspace
        self._shelf = SealShelf()
        self._pack = ""
        self._line: SealLine | None = None
        self._filled_from: tuple[object, ...] = ()
        self._recorded = ""
        self.outcome = SealOutcome(self)
        self.form_area = QScrollArea(self)
        self._content = QWidget()
        self.form_area.setWidget(self._content)
        self.form = SealForm(self._content)
        self.back = plain_button(
            "Back to what is recorded", "Fill the form with the recorded values again."
        )
        self._lay_out()
        named(self, "Seal line")
        self.form.edited.connect(self._show_outcome)
        self.back.clicked.connect(self._on_back_clicked)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self._content)
        column.setContentsMargins(0, 0, SPACE_BETWEEN, 0)
        column.setSpacing(SPACE_INSIDE)
        column.addWidget(self.form)
        column.addSpacing(SPACE_INSIDE)
        column.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        column.addSpacing(SPACE_BETWEEN)
        column.addWidget(hairline())
        column.addSpacing(SPACE_INSIDE)
        for note in NOTES:
            column.addWidget(text_label(note, "note"))
        column.addStretch(1)
        self.form_area.setWidgetResizable(True)
        self.form_area.setFrameShape(QFrame.Shape.NoFrame)
        self.form_area.setHorizontalScrollBarPolicy(
            Qt.ScrollBarPolicy.ScrollBarAlwaysOff
        )
        named(self.form_area, "Seal line, form")
        self._sides = QBoxLayout(QBoxLayout.Direction.TopToBottom, self)
        self._sides.setContentsMargins(SPACE_AROUND, SPACE_AROUND, SPACE_BETWEEN, 0)
        self._sides.setSpacing(SPACE_AROUND)
        self._sides.addWidget(self.outcome)
        self._sides.addWidget(self.form_area, 1)

    def show(self, inventory: Inventory | None = None, joint_name: str = "") -> None:
        """Show the seal line of a joint; called without an inventory, the widget.

        What was typed stays while the recorded line stays as it was.

        Parameters
        ----------
        inventory : Inventory, optional
            The joints of the pack.
        joint_name : str
            A gasket, a bead, or screws that clamp one. Any other joint leaves the line
            that is shown, or the first one that screws clamp.
        """
        if inventory is None:
            super().show()
            return
        library = self.workspace.state.library
        line = self._found(inventory, joint_name)
        self._pack, self._line = inventory.pack, line
        self.form_area.setVisible(line is not None)
        self.form.show_library(library, wording=self._wording)
        if line is None:
            self._filled_from = ()
            self.outcome.show_line("", NO_LINE)
        else:
            recorded = recorded_words(line, wording=self._wording)
            self.outcome.show_line(line.name, recorded)
            if self._filled_from != self._origin(line):
                self._fill(line)
        self._show_outcome()

    def _found(self, inventory: Inventory, joint_name: str) -> SealLine | None:
        lines = self._shelf.of(self.workspace.state.library, inventory)
        line = line_of(lines, joint_name)
        if line is None and self._line is not None and self._pack == inventory.pack:
            line = line_of(lines, self._line.name)
        if line is not None:
            return line
        clamped = (one for one in lines if one.holding is Holding.CLAMPED)
        return next(clamped, lines[0] if lines else None)

    def _fill(self, line: SealLine) -> None:
        flange = line.governing
        self.form.show_trial(
            trial_of(line),
            flange=flange.part,
            material=flange.material,
            kind=line.kind,
            stiffeners=tuple(part.name for part in flange.stiffeners),
        )
        self._filled_from = self._origin(line)
        self._recorded = str(self.form.trial())

    def _origin(self, line: SealLine) -> tuple[object, ...]:
        """Give what decides whether the fields are still those of a line."""
        # The text of a record tells unknown figures apart, which are not equal.
        flanges = tuple(map(str, line.flanges))
        mark = self.workspace.state.study.decimal_mark
        return self._pack, line.name, str(trial_of(line)), flanges, line.kind, mark

    @property
    def _wording(self) -> Wording:
        return Wording(number_style(self.workspace.state.study))

    def _on_back_clicked(self) -> None:
        if self._line is not None:
            self._fill(self._line)
            self._show_outcome()

    def _show_outcome(self) -> None:
        line = self._line
        if line is None:
            self.outcome.clear()
            return
        trial, study = self.form.trial(), self.workspace.state.study
        self.back.setEnabled(str(trial) != self._recorded)
        text = trial_text(
            trial,
            try_out(trial),
            line=line,
            names=self._trial_names(line),
            least_clamp_n=self._shelf.least_clamp_n(line, study),
            wording=self._wording,
        )
        self.outcome.show_text(text)

    def _trial_names(self, line: SealLine) -> TrialNames:
        """Give how the trial names material and other side, and what does not fit."""
        material, kind = self.form.chosen_material, self.form.chosen_kind
        unfit = ""
        if kind is not None and kind.metal_flanges_only:
            if material is not None and is_metal(material) is False:
                unfit = material.name
            elif line.other.is_metal is False:
                unfit = line.other.material
        name = "" if material is None else material.name
        return TrialNames(name, line.other.part or "not recorded", unfit)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put what comes out beside the form where there is room."""
        super().resizeEvent(event)
        is_wide = event.size().width() >= _WIDE
        directions = QBoxLayout.Direction
        self._sides.setDirection(
            directions.RightToLeft if is_wide else directions.TopToBottom
        )
        self._sides.setStretch(0, 1 if is_wide else 0)
