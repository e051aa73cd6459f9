"""What a person chooses of the brief: for whom, on which paper, which sections."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QRadioButton,
    QWidget,
)

from benchpack.report.brief.blocks import Audience
from benchpack.report.brief.choices import SectionChoice
from benchpack.report.brief.worth_section import every_section
from benchpack.session.brief_request import BriefChoices, brief_choices
from benchpack.ui.brief.paper import PAPERS
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN, set_text_role
from benchpack.ui.widgets.controls import named, text_label
from benchpack.ui.workspace import Workspace

LOCKED = "A reader must not miss this."
INTERNAL_ONLY = "A customer does not see this."
_AUDIENCES = {Audience.INTERNAL: "internal use", Audience.CUSTOMER: "a customer"}


class ChoicesPanel(QWidget):
    """Keeps each choice in the settings at once.

    Parameters
    ----------
    workspace : Workspace
        The settings.
    """

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.workspace = workspace
        self.audiences = {
            str(audience): named(QRadioButton(words), f"Brief for {words}")
            for audience, words in _AUDIENCES.items()
        }
        self.papers = {
            paper: named(QRadioButton(paper), f"Paper {paper}") for paper in PAPERS
        }
        self.sections = {choice.key: _box(choice) for choice in every_section()}
        self._notes = {choice.key: _note() for choice in every_section()}
        self._groups = [QButtonGroup(self), QButtonGroup(self)]
        self._lay_out()
        self._groups[0].buttonClicked.connect(self._on_audience_clicked)
        self._groups[1].buttonClicked.connect(self._on_paper_clicked)
        for box in self.sections.values():
            box.clicked.connect(self._on_section_clicked)
        self.show_settings()

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_BETWEEN)
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(1, 1)
        rows = (("For", self.audiences), ("Paper", self.papers))
        for row, ((words, buttons), group) in enumerate(
            zip(rows, self._groups, strict=True)
        ):
            grid.addWidget(text_label(words, "strong"), row, 0)
            grid.addLayout(_in_a_row(list(buttons.values()), group), row, 1)
        head = text_label("Sections", "strong")
        head.setContentsMargins(0, SPACE_BETWEEN, 0, 0)
        grid.addWidget(head, 2, 0, 1, 2)
        for row, choice in enumerate(every_section(), start=3):
            line = QHBoxLayout()
            line.setSpacing(SPACE_BETWEEN)
            line.addWidget(self.sections[choice.key])
            line.addWidget(self._notes[choice.key], 1)
            grid.addLayout(line, row, 0, 1, 2)

    def show_settings(self) -> None:
        """Show what the settings hold."""
        choices = brief_choices(self.workspace.settings)
        self.audiences[str(choices.audience)].setChecked(True)
        self.papers[choices.paper].setChecked(True)
        for choice in every_section():
            self._show_section(choice, choices)

    def _show_section(self, choice: SectionChoice, choices: BriefChoices) -> None:
        box, note = self.sections[choice.key], self._notes[choice.key]
        is_hidden = choice.is_internal and choices.audience is Audience.CUSTOMER
        reason = "" if choice.can_be_left_out else LOCKED
        reason = INTERNAL_ONLY if is_hidden else reason
        with QSignalBlocker(box):
            box.setChecked(choice.key not in choices.left_out and not is_hidden)
        box.setEnabled(not reason)
        box.setToolTip(reason)
        box.setAccessibleDescription(reason)
        note.setText(reason)

    def _on_audience_clicked(self) -> None:
        for key, button in self.audiences.items():
            if button.isChecked():
                self._keep(brief_audience=key)

    def _on_paper_clicked(self) -> None:
        for key, button in self.papers.items():
            if button.isChecked():
                self._keep(brief_paper=key)

    def _on_section_clicked(self) -> None:
        before = brief_choices(self.workspace.settings).left_out
        # A box that cannot be chosen now keeps what was chosen before.
        left_out = tuple(
            key
            for key, box in self.sections.items()
            if (not box.isChecked() if box.isEnabled() else key in before)
        )
        self._keep(brief_left_out=left_out)

    def _keep(self, **choice: object) -> None:
        settings = self.workspace.settings
        if any(getattr(settings, name) != value for name, value in choice.items()):
            self.workspace.change_settings(**choice)


def _box(choice: SectionChoice) -> QCheckBox:
    return named(QCheckBox(choice.title), f"Section {choice.title}")


def _note() -> QLabel:
    label = QLabel()
    label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    set_text_role(label, "note")
    return label


def _in_a_row(buttons: Sequence[QRadioButton], group: QButtonGroup) -> QHBoxLayout:
    row = QHBoxLayout()
    row.setSpacing(SPACE_AROUND)
    for button in buttons:
        group.addButton(button)
        row.addWidget(button)
    row.addStretch(1)
    return row
