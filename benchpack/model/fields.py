"""What each column of each record is: name, unit, limits, words a file may use for it.

One table per record serves the files, the library's schema, the table on screen and
the form, so that a column is added in one place.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any

from benchpack.errors import Problem, Severity


class Kind(Enum):
    """What sort of value a field holds."""

    TEXT = auto()
    NUMBER = auto()
    COUNT = auto()
    CHOICE = auto()
    FLAG = auto()
    BOUNDARY = auto()
    NAMES = auto()
    REASONS = auto()
    COUNTS = auto()


_NUMERIC = (Kind.NUMBER, Kind.COUNT)


@dataclass(frozen=True, slots=True)
class Field:
    """One column of a record.

    Parameters
    ----------
    name : str
        Attribute of the record, with its unit where it has one.
    title : str
        The column head without the unit.
    kind : Kind
        What sort of value it holds.
    quantity : str
        Name of the quantity in ``benchpack.units`` for numbers, else empty.
    unit : str
        Unit label in files, ``kg`` for instance; empty where there is none.
    required : bool
        True where a record without it is refused.
    positive : bool
        True where zero is refused as well as a negative value.
    ceiling : float
        Greatest value that can be meant; above it the value is refused.
    plausible : tuple of float
        Low and high end of what is usual; outside it the value draws a warning.
    choices : tuple of str
        Allowed words of a choice, the first being the default.
    synonyms : tuple of str
        Further column heads, lower case, that mean this field.
    help : str
        One sentence for the form and the schema.
    decimals : int
        Digits after the point on screen.
    floor : float
        Least value that can be meant, minus infinity where it may fall below zero.
    attribute, end : str
        Where a range takes three columns: the attribute that holds the range, and
        which of its ends this is, ``low`` for instance.
    """

    name: str
    title: str
    kind: Kind = Kind.TEXT
    quantity: str = ""
    unit: str = ""
    required: bool = False
    positive: bool = False
    ceiling: float = math.inf
    plausible: tuple[float, float] = (-math.inf, math.inf)
    choices: tuple[str, ...] = ()
    synonyms: tuple[str, ...] = ()
    help: str = ""
    decimals: int = 1
    floor: float = 0.0
    attribute: str = ""
    end: str = ""

    def value_of(self, record: object) -> Any:
        """Give what a record has in this column."""
        value = getattr(record, self.attribute or self.name)
        return getattr(value, self.end, None) if self.end else value

    def says_again(self, record: object) -> bool:
        """Tell whether this is an end of a range that equals its likely figure."""
        if self.end in ("", "likely"):
            return False
        found = getattr(record, self.attribute)
        return found is not None and self.value_of(record) == found.likely

    def header(self, *, currency: str = "CUR") -> str:
        """Give the column head with its unit, ``mass [kg]``.

        Parameters
        ----------
        currency : str
            Currency code that stands in for ``CUR``.
        """
        if not self.unit:
            return self.title
        return f"{self.title} [{self.unit.replace('CUR', currency)}]"

    @property
    def is_numeric(self) -> bool:
        """True for numbers and counts."""
        return self.kind in _NUMERIC

    def refusal(self, value: float) -> Problem | None:
        """Say why a number cannot stand in this field, or None if it can.

        Parameters
        ----------
        value : float
            The number in the field's unit.
        """
        shown = f"{value:g} {self.unit}".strip()
        if math.isnan(value) or math.isinf(value):
            return self._problem(
                f"{self.title} is not a number.", "Give a figure or leave it empty."
            )
        if value < self.floor or (self.positive and value == 0):
            word = f"at least {self.floor:g} {self.unit}".strip()
            if self.floor == 0:
                word = "above zero" if self.positive else "zero or more"
            return self._problem(
                f"{self.title} is {shown}.", f"It has to be {word}.", value
            )
        if value > self.ceiling:
            most = f"at most {self.ceiling:g} {self.unit}".rstrip()
            return self._problem(
                f"{self.title} is {shown}, more than can be meant.",
                f"It has to be {most}{': check the unit' * bool(self.unit)}.",
                value,
            )
        if self.kind is Kind.COUNT and value != int(value):
            return self._problem(
                f"{self.title} is {shown}.", "It has to be a whole number.", value
            )
        return None

    def doubt(self, value: float) -> Problem | None:
        """Say why a number is unusual for this field, or None if it is not.

        Parameters
        ----------
        value : float
            The number in the field's unit.
        """
        low, high = self.plausible
        if math.isnan(value) or low <= value <= high:
            return None
        return self._problem(
            f"{self.title} is {value:g} {self.unit}".strip()
            + f", outside the usual {low:g} to {high:g}.",
            "Check the unit and the figure.",
            value,
            Severity.WARNING,
        )

    def _problem(
        self,
        what: str,
        remedy: str,
        value: float | None = None,
        severity: Severity = Severity.ERROR,
    ) -> Problem:
        return Problem(
            what=what,
            remedy=remedy,
            column=self.header(),
            value="" if value is None else f"{value:g}",
            severity=severity,
        )
