"""A field for one number that gives back what it was given unless it was changed."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit

from benchpack.errors import DataError
from benchpack.ui.dialogs.study_text import said
from benchpack.ui.widgets.controls import named
from benchpack.units.formatting import plain
from benchpack.units.parsing import parse_number

_SHOWN_DIGITS = 6


def typed_number(text: str, *, decimal_mark: str) -> float:
    """Read a number as typed; the study's decimal mark decides where both could be.

    Parameters
    ----------
    text : str
        What was typed.
    decimal_mark : str
        Point or comma.

    Raises
    ------
    DataError
        When it is no number.
    """
    return parse_number(text, decimal=decimal_mark)


class NumberField(QLineEdit):
    """A number in some unit; rounding it for the screen does not change it.

    Parameters
    ----------
    name : str
        What a screen reader says.
    """

    def __init__(self, name: str) -> None:
        super().__init__()
        named(self, name)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.setFixedWidth(84)
        self._value: float | None = None
        self._shown = ""
        self._factor = 1.0

    def show_number(
        self, value: float | None, *, decimal_mark: str, factor: float = 1.0
    ) -> None:
        """Show a number.

        Parameters
        ----------
        value : float or None
            The number, None for an empty field.
        decimal_mark : str
            Point or comma.
        factor : float
            What `value` is multiplied with to be shown.
        """
        self._value, self._factor = value, factor
        rounded = (
            None if value is None else float(f"{value * factor:.{_SHOWN_DIGITS}g}")
        )
        self._shown = plain(rounded).replace(".", decimal_mark)
        self.setText(self._shown)

    def number(self, *, decimal_mark: str) -> float | None:
        """Give the number in the unit it was shown in, None for an empty field.

        Parameters
        ----------
        decimal_mark : str
            Point or comma.

        Raises
        ------
        DataError
            When the text is no number.
        """
        text = self.text().strip()
        if text == self._shown:
            return self._value
        if not text:
            return None
        return typed_number(text, decimal_mark=decimal_mark) / self._factor


NumberRow = tuple[str, str, NumberField]
"""Attribute that a number belongs to, the row of the form it stands in, its field."""


def numbers_in(
    rows: Iterable[NumberRow], *, decimal_mark: str, optional: frozenset[str]
) -> tuple[dict[str, float | None], dict[str, str]]:
    """Read several fields.

    Parameters
    ----------
    rows : iterable of tuple
        Attribute, row of the form, field.
    decimal_mark : str
        Point or comma.
    optional : frozenset of str
        Attributes whose field may be empty.

    Returns
    -------
    tuple of dict
        Numbers by attribute, and complaints by row of the form.
    """
    numbers: dict[str, float | None] = {}
    errors: dict[str, str] = {}
    for name, row, field in rows:
        try:
            number = field.number(decimal_mark=decimal_mark)
        except DataError as error:
            errors[row] = said(error.problems[0])
            continue
        if number is None and name not in optional:
            errors[row] = "A figure is missing. Fill it in."
        else:
            numbers[name] = number
    return numbers, errors
