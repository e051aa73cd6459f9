"""Everything about the current change: form, add-backs, what is reopened, checks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from PySide6.QtWidgets import QTabWidget, QWidget

from benchpack.errors import DataError, Problem
from benchpack.model.change import Change
from benchpack.model.words import GOVERNS
from benchpack.report.display import Display, number_style
from benchpack.report.proposal_resizing import resized_text
from benchpack.report.proposal_text import refusal_text, volume_text
from benchpack.results.closure import Grade
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect
from benchpack.ui.pages.changes.add_backs_tab import AddBacksTab
from benchpack.ui.pages.changes.change_form import ChangeForm
from benchpack.ui.pages.changes.checks_tab import ChecksTab
from benchpack.ui.pages.changes.desk import CHECKS, ProposalDesk
from benchpack.ui.pages.changes.duties_tab import DutiesTab
from benchpack.ui.pages.changes.form_fields import (
    FIELDS,
    RANGE_FIELDS,
    form_column,
    read_field,
    read_range,
)
from benchpack.ui.pages.changes.outcome import SLIM_TABS
from benchpack.ui.pages.changes.proposal_edits import ProposalEdits

_NOT_COUNTED = "It does not count: switch it on, or see what is said in its row."


class ChangePanel(QTabWidget):
    """Four tabs about one change.

    Parameters
    ----------
    desk : ProposalDesk
        The proposal.
    edits : ProposalEdits
        Where edits go.
    parent : QWidget
        Owner.
    """

    def __init__(
        self, desk: ProposalDesk, edits: ProposalEdits, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._edits = edits
        self.name = ""
        self.setDocumentMode(True)
        self.setUsesScrollButtons(False)
        self.setStyleSheet(SLIM_TABS)
        for named in (self, self.tabBar()):
            named.setAccessibleName("The current change")
        self.form = ChangeForm(self)
        self.add_backs = AddBacksTab(self)
        self.duties = DutiesTab(self)
        self.checks = ChecksTab(self)
        for widget in (self.form, self.add_backs, self.duties, self.checks):
            self.addTab(widget, "")
        self.form.entered.connect(self._on_field_entered)
        self.form.range_entered.connect(self._on_range_entered)
        self.add_backs.waived.connect(self._on_add_back_waived)
        desk.found.connect(self._on_found)

    def take_outcome(self, outcome: QWidget) -> None:
        """Take what the whole proposal comes to as the last tab.

        Parameters
        ----------
        outcome : QWidget
            What is shown beside the panel where there is room.
        """
        self.addTab(outcome, "Outcome")
        place = self.indexOf(outcome)
        self.setTabToolTip(place, "What the whole proposal comes to")

    def give_outcome(self, outcome: QWidget) -> None:
        """Give the last tab away again."""
        self.removeTab(self.indexOf(outcome))

    def show_change(self, name: str) -> None:
        """Show a change of the proposal, or none for an empty name."""
        results, change = self._desk.results, self._edits.change(name)
        self.name = name if change is not None else ""
        self.form.setEnabled(change is not None)
        if results is None:
            return
        effect = results.effect(name)
        display = Display(results.study)
        if change is not None:
            self.form.show_change(
                change,
                effect,
                style=number_style(results.study),
                currency=results.study.currency,
                offers=_offers(results, change),
            )
            words = _words(effect, display)
            refusal = results.refusal(name)
            if refusal is not None:
                words = iter((refusal_text(refusal),))
            self.form.show_words(" ".join(words))
        backs = effect.add_backs if effect is not None else ()
        sentence = "It needs nothing back." if effect else _NOT_COUNTED
        if backs:
            sentence = "In the sum until a reason says why it is not needed."
        self.add_backs.show_add_backs(backs, display, sentence=sentence)
        self.duties.show_duties(results.duties, self.name)
        own = [one for one in results.duties if name in one.changes]
        counted = sum(back.is_counted for back in backs)
        self._say(change, ("Change", f"Add-backs {counted}" if backs else "Add-backs"))
        shown = len(own) if self.name else len(results.duties)
        self.setTabText(2, f"Validate again {shown}" if shown else "Validate again")
        self._show_checks()

    def _say(self, change: Change | None, titles: Sequence[str]) -> None:
        for place, title in enumerate(titles):
            self.setTabText(place, title)
            self.setTabVisible(place, change is not None)
        self.setTabVisible(3, change is not None)

    def _show_checks(self) -> None:
        self._desk.want(CHECKS)
        checks = self._desk.checks(self.name)
        counts = self._desk.results is not None and bool(
            self._desk.results.effect(self.name)
        )
        reason = "Nothing of it can be checked by calculation."
        self.checks.show_checks(checks, reason=reason if counts else _NOT_COUNTED)
        said = "Checks"
        if checks:
            grades = [check.grade for check in checks]
            worst = Grade.FAIL if Grade.FAIL in grades else Grade.LOOK
            count = grades.count(worst)
            said += f" {count} {worst}" if count else ""
        self.setTabText(3, said)

    def _on_found(self, what: str) -> None:
        if what == CHECKS:
            self._show_checks()

    def begin_entry(self, change: Change) -> None:
        """Go to what a new change still lacks."""
        self.setCurrentWidget(self.form)
        self.form.focus_first_lack(change)

    def _on_field_entered(self, key: str, text: str) -> None:
        results = self._desk.results
        if results is None or not self.name:
            return
        style, currency = number_style(results.study), results.study.currency
        column = form_column(key, style, currency=currency)
        try:
            value = read_field(column, text, style, currency=currency)
        except DataError as error:
            self.form.show_problem(key, error.problems[0])
            return
        self._set(key, FIELDS[key].title, {key: value})

    def _on_range_entered(self, attribute: str, texts: Sequence[str]) -> None:
        results = self._desk.results
        if results is None or not self.name:
            return
        style, currency = number_style(results.study), results.study.currency
        try:
            value = read_range(attribute, texts, style, currency=currency)
        except DataError as error:
            self.form.show_problem(attribute, error.problems[0])
            return
        title = RANGE_FIELDS[attribute][0].title.removesuffix(" low")
        self._set(attribute, title, {attribute: value})

    def _set(self, key: str, title: str, values: Mapping[str, object]) -> None:
        name = self.name
        if key == "name":
            self.name = str(values["name"])
        problems: tuple[Problem, ...] = self._edits.set(name, title, values)
        if problems:
            self.name = name
            self.form.show_problem(key, problems[0])

    def _on_add_back_waived(self, key: str, reason: str) -> None:
        change = self._edits.change(self.name)
        if change is None:
            return
        waived = tuple(pair for pair in change.waived if pair[0] != key)
        if reason:
            waived = (*waived, (key, reason))
        label = f"{key} {'taken out' if reason else 'put back'}"
        self._edits.set(self.name, label, {"waived": waived})


def _words(effect: Effect | None, display: Display) -> Iterator[str]:
    if effect is None:
        return
    for one in effect.applied.resized:
        yield resized_text(one, display)
    for note in effect.notes:
        yield f"{note.what} {note.remedy}".strip()
    if effect.unknown:
        yield f"Counts as nothing: {' '.join(effect.unknown)}"
    yield volume_text(effect.break_even_volume, display)


def _offers(results: ProposalResults, change: Change) -> dict[str, tuple[str, ...]]:
    """Give the names to choose from: what may be changed, and the other changes."""
    others = tuple(one.name for one in results.changes if one.name != change.name)
    parts, joints = results.today.parts.values(), results.today.joints.values()
    return {
        "parts": tuple(item.name for item in parts if not item.record.carry_over),
        "joints": tuple(item.name for item in joints if not item.record.carry_over),
        "governs": tuple(word for word in GOVERNS if word),
        "requires": others,
        "excludes": others,
        "material": tuple(one.name for one in results.library.materials),
    }
