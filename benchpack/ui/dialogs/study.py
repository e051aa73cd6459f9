"""The assumptions of a study: peers, trend, worth, target, joining, programme."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLineEdit,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError
from benchpack.model.study import Study
from benchpack.model.words import TrendKind
from benchpack.session.state import State
from benchpack.session.study_edits import with_stored_study
from benchpack.ui.dialogs.frame import ErrorLabel, FormDialog, FormRows, in_a_row
from benchpack.ui.dialogs.joining_fields import JoiningFields
from benchpack.ui.dialogs.number_field import NumberField
from benchpack.ui.dialogs.peers import PeersField
from benchpack.ui.dialogs.programme_fields import ProgrammeFields, study_numbers
from benchpack.ui.dialogs.study_text import (
    WORTH_FIELDS,
    Attempt,
    attempt,
    free_study_name,
    said,
)
from benchpack.ui.dialogs.unit_choice import UnitChoice
from benchpack.ui.widgets.controls import text_label
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import KG_PER_LB


class StudyDialog(FormDialog):
    """Edits the study on screen, or makes another; one step of undo.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget, optional
        The window it belongs to.
    as_new : bool
        True to add a study that starts from the one on screen.
    """

    def __init__(
        self,
        workspace: Workspace,
        parent: QWidget | None = None,
        *,
        as_new: bool = False,
    ) -> None:
        title = "New study" if as_new else "Study"
        verb = "Add study" if as_new else "Keep changes"
        super().__init__(title, verb, parent=parent)
        self.workspace = workspace
        self._as_new = as_new
        study = workspace.state.study
        self._replaced = "" if as_new else study.name
        if as_new:
            study = replace(study, name=free_study_name(workspace.state))
        self._study = study
        self.rows = FormRows()
        self.name = QLineEdit(study.name)
        self.trend = QComboBox()
        self.exponent = NumberField("Exponent b")
        self.worth = [NumberField(f"Worth, {w}") for w in ("low", "likely", "high")]
        self.reason = QPlainTextEdit(study.worth_reason)
        self.share = NumberField("Share captured")
        self.target = NumberField("Target")
        self.units = UnitChoice(study)
        self.joining = JoiningFields()
        self.programme = ProgrammeFields()
        names = workspace.state.library.packs.names.tolist()
        others = [name for name in names if name != study.subject]
        self.peers = PeersField(others, peers=study.peers)
        self._worth_unit = text_label()
        self._target_unit = text_label()
        self._lay_out()
        self._show_numbers(study)
        self._connect()

    def _lay_out(self) -> None:
        self.trend.addItems([str(kind) for kind in TrendKind])
        self.trend.setCurrentText(str(self._study.trend))
        self.reason.setTabChangesFocus(True)
        self.reason.setFixedHeight(3 * self.fontMetrics().lineSpacing() + 16)
        self.reason.setPlaceholderText("Why this worth, and where it comes from")
        for unit in (self._worth_unit, self._target_unit):
            unit.setWordWrap(False)
        low, likely, high = self.worth
        words = [text_label(word, "note") for word in ("low", "likely", "high")]
        for word in words:
            word.setWordWrap(False)
        worth = in_a_row(
            words[0], low, words[1], likely, words[2], high, self._worth_unit
        )
        add = self.rows.add_row
        add("name", "Name", field=self.name)
        add(
            "worth",
            "Worth",
            field=worth,
            focus=low,
            tip="What one kilogram less is worth.",
        )
        add("reason", "Reason of the worth", field=self.reason)
        add(
            "share",
            "Share captured",
            field=in_a_row(self.share, text_label("%")),
            focus=self.share,
            tip="The share of the gap that is thought to be reachable.",
        )
        add(
            "target",
            "Target",
            field=in_a_row(self.target, self._target_unit),
            focus=self.target,
            tip="The saving that is promised per pack; empty for none.",
        )
        add(
            "exponent",
            "Exponent b",
            field=in_a_row(self.exponent),
            focus=self.exponent,
            tip="How the mass that is not cells grows with energy, 0 to 1. "
            "It counts on the basis scaled and structure only.",
        )
        add(
            "trend",
            "Trend",
            field=in_a_row(self.trend),
            focus=self.trend,
            tip="Which line is laid through the peers.",
        )
        self.units.add_rows(self.rows)
        self.joining.add_rows(self.rows)
        self.rows.errors["peers"] = ErrorLabel()
        self.rows.fields["peers"] = self.peers.list
        right = QVBoxLayout()
        right.setSpacing(8)
        right.addWidget(text_label("Peers", "strong"))
        right.addWidget(self.peers, 1)
        right.addWidget(self.rows.errors["peers"])
        right.addWidget(self.programme.form_beside(self.rows))
        sides = QHBoxLayout()
        sides.setSpacing(24)
        left = QVBoxLayout()
        left.addWidget(self.rows)
        left.addStretch(1)
        sides.addLayout(left, 3)
        sides.addLayout(right, 2)
        self.body.addLayout(sides, 1)
        self.peers.list.setMinimumHeight(64)
        self.resize(900, 660)
        self.name.setFocus()

    def _connect(self) -> None:
        fields = (*self.worth, self.share, self.target, self.exponent)
        groups = (*self.joining.fields, *self.programme.fields)
        for field in (self.name, *fields, *groups):
            field.textChanged.connect(self._on_edited)
        self.peers.peers_changed.connect(self._on_edited)
        self.units.units_changed.connect(self._on_edited)

    def _show_numbers(self, study: Study) -> None:
        """Show the numbers in the units and with the mark of a study."""
        self._mark, self._mass_unit = study.decimal_mark, study.mass_unit
        self._currency = study.currency
        mark = self._mark
        in_lb = self._mass_unit == "lb"
        per_kg = KG_PER_LB if in_lb else 1.0
        mass = 1 / KG_PER_LB if in_lb else 1.0
        for field, value in zip(self.worth, study.worth_per_kg, strict=True):
            field.show_number(value, decimal_mark=mark, factor=per_kg)
        self.target.show_number(study.target_kg, decimal_mark=mark, factor=mass)
        self.share.show_number(study.share_captured, decimal_mark=mark, factor=100)
        self.exponent.show_number(study.exponent, decimal_mark=mark)
        self._target_unit.setText(f"{self._mass_unit} per pack")
        self._worth_unit.setText(f"{study.currency}/{self._mass_unit}")
        self.joining.show_study(study)
        self.programme.show_study(study)

    def attempt(self) -> Attempt:
        """Make a study of what is in the fields."""
        values: dict[str, object] = {
            "name": self.name.text().strip(),
            "trend": TrendKind(self.trend.currentText()),
            "worth_reason": self.reason.toPlainText().strip(),
            "peers": self.peers.peers(),
            "programme": self.programme.chosen(),
            **self.units.values(),
        }
        rows = [
            *((n, "worth", f) for n, f in zip(WORTH_FIELDS, self.worth, strict=True)),
            ("share_captured", "share", self.share),
            ("target_kg", "target", self.target),
            ("exponent", "exponent", self.exponent),
            *self.joining.numbers(),
            *self.programme.numbers(),
        ]
        numbers, errors = study_numbers(rows, decimal_mark=self._mark)
        values |= numbers
        if self.peers.error():
            errors["peers"] = self.peers.error()
        return attempt(self._study, values, errors)

    def accept(self) -> None:
        """Keep the study as one edit; say what is wrong instead where something is."""
        tried = self.attempt()
        study = tried.study
        if study is not None:
            try:
                with_stored_study(
                    self.workspace.state, study, instead_of=self._replaced
                )
            except DataError as error:
                tried = Attempt(None, {"name": said(error.problems[0])})
        errors = dict(tried.errors)
        self.rows.show_errors(errors)
        if study is None or errors:
            self.rows.focus_first(errors)
            return
        self._study = study
        label = f"new study {study.name}" if self._as_new else f"study {study.name}"
        unchanged = not self._as_new and study == self.workspace.state.study
        if unchanged or self.workspace.edit(label, self._edited):
            super().accept()

    def _edited(self, state: State) -> State:
        return with_stored_study(state, self._study, instead_of=self._replaced)

    def _on_edited(self) -> None:
        tried = self.attempt()
        study = tried.study
        shown = (self._mark, self._mass_unit, self._currency)
        if study is not None:
            chosen = (study.decimal_mark, study.mass_unit, study.currency)
            if chosen != shown:
                self._show_numbers(study)
        self.rows.show_errors(dict(tried.errors))
