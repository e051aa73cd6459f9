"""What a study reckons joints with: rates, takt time, friction."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel

from benchpack.model.study import Study
from benchpack.ui.dialogs.frame import FormRows, in_a_row
from benchpack.ui.dialogs.number_field import NumberField, NumberRow
from benchpack.ui.widgets.controls import text_label


class JoiningFields:
    """The five numbers, as a group of rows under a heading of their own."""

    def __init__(self) -> None:
        self.labour = NumberField("Labour rate")
        self.station = NumberField("Station rate")
        self.takt = NumberField("Takt time")
        self.thread = NumberField("Thread friction")
        self.head = NumberField("Head friction")
        self._rate_unit = text_label()
        self._rate_unit.setWordWrap(False)

    @property
    def fields(self) -> tuple[NumberField, ...]:
        """All fields, in their order."""
        return self.labour, self.station, self.takt, self.thread, self.head

    def add_rows(self, rows: FormRows) -> None:
        """Put the group into a form."""
        rows.add_heading("Joining")
        rows.add_row(
            "rates",
            "Rates",
            field=in_a_row(
                _note("labour"),
                self.labour,
                _note("station"),
                self.station,
                self._rate_unit,
            ),
            focus=self.labour,
            tip="What one hour of a person and of an assembly station costs.",
        )
        rows.add_row(
            "takt",
            "Takt time",
            field=in_a_row(self.takt, text_label("s")),
            focus=self.takt,
            tip="Seconds in which the line finishes one pack; it sets the stations.",
        )
        rows.add_row(
            "friction",
            "Friction",
            field=in_a_row(_note("thread"), self.thread, _note("head"), self.head),
            focus=self.thread,
            tip="Friction coefficients of screws; 0.08 to 0.16 is class B of VDI 2230.",
        )

    def show_study(self, study: Study) -> None:
        """Show the numbers with the mark and the currency of a study."""
        values = (
            study.labour_rate_per_h,
            study.station_rate_per_h,
            study.takt_time_s,
            study.thread_friction,
            study.head_friction,
        )
        for field, value in zip(self.fields, values, strict=True):
            field.show_number(value, decimal_mark=study.decimal_mark)
        self._rate_unit.setText(f"{study.currency}/h")

    def numbers(self) -> tuple[NumberRow, ...]:
        """Give attribute, row of the form and field of each number."""
        return (
            ("labour_rate_per_h", "rates", self.labour),
            ("station_rate_per_h", "rates", self.station),
            ("takt_time_s", "takt", self.takt),
            ("thread_friction", "friction", self.thread),
            ("head_friction", "friction", self.head),
        )


def _note(text: str) -> QLabel:
    label = text_label(text, "note")
    label.setWordWrap(False)
    return label
