"""Currency, mass unit and decimal mark of a study."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QComboBox

from benchpack.model.study import Study
from benchpack.ui.dialogs.frame import FormRows, in_a_row

CURRENCIES = ("EUR", "USD", "GBP", "CHF", "SEK", "CNY", "JPY", "KRW", "INR")
"""Offered first; any code of three letters can be typed."""

_MARKS = {".": "point", ",": "comma"}


class UnitChoice(QObject):
    """The three choices, for the study's dialog and the preferences.

    Parameters
    ----------
    study : Study
        The study whose choices are shown.

    Signals
    -------
    units_changed()
        The person chose another.
    """

    units_changed = Signal()

    def __init__(self, study: Study) -> None:
        super().__init__()
        self.currency_box = QComboBox()
        self.currency_box.setEditable(True)
        self.currency_box.addItems(list(dict.fromkeys((study.currency, *CURRENCIES))))
        self.mass_box = QComboBox()
        self.mass_box.addItems(["kg", "lb"])
        self.mass_box.setCurrentText(study.mass_unit)
        self.mark_box = QComboBox()
        for mark, word in _MARKS.items():
            self.mark_box.addItem(word, mark)
        self.mark_box.setCurrentIndex(self.mark_box.findData(study.decimal_mark))
        for box in (self.currency_box, self.mass_box, self.mark_box):
            box.currentTextChanged.connect(self._on_changed)

    def add_rows(self, rows: FormRows) -> None:
        """Put the choices into a form."""
        table = (
            ("currency", "Currency", self.currency_box, "Sums are not converted."),
            ("mass_unit", "Mass unit", self.mass_box, "On screen; files say theirs."),
            ("decimal_mark", "Decimal mark", self.mark_box, "Files keep the point."),
        )
        for key, label, box, tip in table:
            rows.add_row(key, label, field=in_a_row(box), focus=box, tip=tip)

    def currency(self) -> str:
        """Give the currency code as typed, in capitals."""
        return self.currency_box.currentText().strip().upper()

    def values(self) -> dict[str, str]:
        """Give the choices as attributes of a study."""
        return {
            "currency": self.currency(),
            "mass_unit": self.mass_box.currentText(),
            "decimal_mark": str(self.mark_box.currentData()),
        }

    def _on_changed(self) -> None:
        self.units_changed.emit()
