"""What a study asks of its proposal: programme, volume, years, interest, budget."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtWidgets import QComboBox

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.study import Study
from benchpack.ui.dialogs.frame import FormRows, in_a_row
from benchpack.ui.dialogs.number_field import NumberField, NumberRow, numbers_in
from benchpack.ui.widgets.controls import text_label

_OPTIONAL = frozenset({"target_kg", "yearly_volume", "tooling_budget"})
"""Attributes whose field may be empty."""

_PERCENT_ROWS = {"share_captured": "share", "discount_rate": "discount"}


class ProgrammeFields:
    """One choice and four numbers, as a group of rows under its own heading."""

    def __init__(self) -> None:
        self.kind = QComboBox()
        for kind in ProgrammeKind:
            self.kind.addItem(str(kind) or "not stated", str(kind))
        self.volume = NumberField("Yearly volume")
        self.volume.setPlaceholderText("own")
        self.years = NumberField("Programme years")
        self.discount = NumberField("Interest a year")
        self.budget = NumberField("Tooling budget")
        self.budget.setPlaceholderText("none")
        self.budget.setFixedWidth(120)
        self._budget_unit = text_label()
        self._budget_unit.setWordWrap(False)

    @property
    def fields(self) -> tuple[NumberField, ...]:
        """All fields of numbers, in their order."""
        return self.volume, self.years, self.discount, self.budget

    def form_beside(self, main: FormRows) -> FormRows:
        """Put the group into a form of its own; `main` shows its complaints too."""
        rows = FormRows()
        rows.add_heading("Programme")
        rows.add_row(
            "programme",
            "Programme",
            field=in_a_row(self.kind),
            focus=self.kind,
            tip="When in the life of the pack the proposal is to come.",
        )
        percent, per_year = text_label("%"), text_label("packs per year")
        for unit in (percent, per_year):
            unit.setWordWrap(False)
        rows.add_row(
            "volume",
            "Yearly volume",
            field=in_a_row(self.volume, per_year),
            focus=self.volume,
            tip="Packs per year; empty for the pack's own yearly volume.",
        )
        rows.add_row(
            "years",
            "Programme years",
            field=in_a_row(self.years, text_label("years")),
            focus=self.years,
            tip="Years over which tools are paid back.",
        )
        rows.add_row(
            "discount",
            "Interest a year",
            field=in_a_row(self.discount, percent),
            focus=self.discount,
            tip="Interest per year on what is spent on tools.",
        )
        rows.add_row(
            "budget",
            "Tooling budget",
            field=in_a_row(self.budget, self._budget_unit),
            focus=self.budget,
            tip="One-time money that may be spent; empty for no limit.",
        )
        main.errors |= rows.errors
        main.fields |= rows.fields
        return rows

    def show_study(self, study: Study) -> None:
        """Show the kind, and the numbers with mark and currency of a study."""
        self.kind.setCurrentIndex(self.kind.findData(str(study.programme)))
        mark = study.decimal_mark
        self.volume.show_number(study.yearly_volume, decimal_mark=mark)
        self.years.show_number(study.programme_years, decimal_mark=mark)
        self.discount.show_number(study.discount_rate, decimal_mark=mark, factor=100)
        self.budget.show_number(study.tooling_budget, decimal_mark=mark)
        self._budget_unit.setText(study.currency)

    def chosen(self) -> ProgrammeKind:
        """Give the kind of programme that is chosen."""
        return ProgrammeKind(str(self.kind.currentData()))

    def numbers(self) -> tuple[NumberRow, ...]:
        """Give attribute, row of the form and field of each number."""
        return (
            ("yearly_volume", "volume", self.volume),
            ("programme_years", "years", self.years),
            ("discount_rate", "discount", self.discount),
            ("tooling_budget", "budget", self.budget),
        )


def study_numbers(
    rows: Iterable[NumberRow], *, decimal_mark: str
) -> tuple[dict[str, float | None], dict[str, str]]:
    """Read the numbers of a study: the volume as a count, shares within 100 %.

    Parameters
    ----------
    rows : iterable of tuple
        Attribute, row of the form, field.
    decimal_mark : str
        Point or comma.

    Returns
    -------
    tuple of dict
        Numbers by attribute, and complaints by row of the form.
    """
    numbers, errors = numbers_in(rows, decimal_mark=decimal_mark, optional=_OPTIONAL)
    volume = numbers.get("yearly_volume")
    if volume is not None and volume > 0 and float(volume).is_integer():
        numbers["yearly_volume"] = int(volume)
    elif volume is not None:
        errors["volume"] = "Give a whole number above 0."
    for name, row in _PERCENT_ROWS.items():
        share = numbers.get(name)
        if share is not None and not 0 <= share <= 1:
            errors[row] = "It has to lie between 0 and 100 %."
    return numbers, errors
