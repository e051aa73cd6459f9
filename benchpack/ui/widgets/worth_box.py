"""The field of the worth per mass, in the study's decimal mark."""

from __future__ import annotations

import re

from PySide6.QtCore import QSignalBlocker
from PySide6.QtGui import QValidator
from PySide6.QtWidgets import QDoubleSpinBox, QWidget

from benchpack.errors import DataError
from benchpack.ui.widgets.controls import named, text_margin
from benchpack.units.parsing import parse_number

_DECIMALS = 2
_BEGUN = re.compile(r"[\d\s.,]*")


class WorthBox(QDoubleSpinBox):
    """Shows the worth with the study's decimal mark; takes a point and a comma.

    Parameters
    ----------
    parent : QWidget, optional
        Owner.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._decimal_mark = "."
        named(self, "Likely worth per kilogram")
        text_margin(self)
        self.setRange(0, 1e6)
        self.setDecimals(_DECIMALS)
        self.setSingleStep(0.1)
        self.setKeyboardTracking(False)
        self.setFixedWidth(self.fontMetrics().horizontalAdvance("0" * 13))

    def show_worth(self, worth: float, *, unit: str, decimal_mark: str) -> None:
        """Show a worth, without telling anyone.

        Parameters
        ----------
        worth : float
            The worth in `unit`.
        unit : str
            Stands behind the figure.
        decimal_mark : str
            Point or comma.
        """
        with QSignalBlocker(self):
            is_other = decimal_mark != self._decimal_mark
            self._decimal_mark = decimal_mark
            if is_other or self.suffix() != f" {unit}":
                self.setSuffix(f" {unit}")  # writes the figure anew
            self.setValue(worth)

    def _figure(self, text: str) -> str:
        return text.removesuffix(self.suffix()).strip()

    def textFromValue(self, value: float) -> str:  # noqa: N802 - name of Qt
        """Write a worth in the study's decimal mark."""
        return f"{value:.{_DECIMALS}f}".replace(".", self._decimal_mark)

    def valueFromText(self, text: str) -> float:  # noqa: N802 - name of Qt
        """Read a worth; the study's mark decides where point and comma could be."""
        try:
            return parse_number(self._figure(text), decimal=self._decimal_mark)
        except DataError:
            return self.value()

    def validate(self, text: str, place: int) -> tuple[QValidator.State, str, int]:
        """Tell whether a text is a worth, or may become one."""
        figure = self._figure(text)
        state = QValidator.State.Intermediate
        if not _BEGUN.fullmatch(figure):
            state = QValidator.State.Invalid
        elif any(mark.isdigit() for mark in figure):
            try:
                worth = parse_number(figure, decimal=self._decimal_mark)
            except DataError:
                return state, text, place
            if self.minimum() <= worth <= self.maximum():
                state = QValidator.State.Acceptable
        return state, text, place
