"""Columns of a file as columns of values, cell by cell only where it must be."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from math import isfinite
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem
from benchpack.files.gap_csv import without_apostrophe
from benchpack.files.head_words import BASIS_WORDS
from benchpack.files.mapping import folded
from benchpack.files.sheet import Column, number_text
from benchpack.model.boundary import UNKNOWN_BOUNDARY, parse_boundary
from benchpack.model.fields import Field, Kind
from benchpack.model.name_lists import parse_counts, parse_names, parse_reasons
from benchpack.units.absent import is_absent
from benchpack.units.number_text import decimal_marks

_PLAIN = re.compile(r"[+-]?\d+(?:\.\d*)?(?:[eE][+-]?\d+)?", re.ASCII)
_COMMA = re.compile(r"[+-]?\d+(?:,\d+)?", re.ASCII)
_UNSETTLED = re.compile(r"\s*[+-]?[1-9]\d{0,2}\.\d{3}(?!\d)")
_STATE = "Write it with one decimal mark throughout."
_YES = frozenset(("true", "yes", "y", "x", "1", "locked"))
_NO = frozenset(("false", "no", "n", "0", "free"))


@dataclass(frozen=True, slots=True)
class Values:
    """One column of values and the cells that could not be read.

    Parameters
    ----------
    column : array, shape (n,)
        float64 with NaN for numbers, else objects.
    bad : mapping of int to Problem
        What is wrong with a cell, by its place.
    """

    column: Column
    bad: Mapping[int, Problem] = field(default_factory=dict)


_RARE_BLANKS = "\t\r\x0b\x0c\x1c\x1d\x1e\x1f"
"""Blanks of ASCII besides the space and the line end."""


@dataclass(frozen=True, slots=True)
class Reader:
    """How cells are understood.

    Parameters
    ----------
    decimal : str or None
        The decimal mark, None to find it out column by column.
    currency : str or None
        The currency that money has to be in.
    verbatim : bool
        True to keep spaces at the ends of a text.
    hint : str or None
        The decimal mark of the other columns, for one that speaks for none.
    """

    decimal: str | None = None
    currency: str | None = None
    verbatim: bool = False
    hint: str | None = None

    def values(self, field: Field, cells: Column, *, unit: str = "") -> Values:
        """Give the values of one column.

        Parameters
        ----------
        field : Field
            What the column means.
        cells : array, shape (n,)
            The cells as read.
        unit : str
            Unit of bare numbers; empty for the field's own.
        """
        if field.is_numeric:
            return self._numbers(field, cells, unit)
        if field.kind is Kind.CHOICE:
            return _looked_up(cells, lambda text: _choice(field, text))
        if field.kind is Kind.FLAG:
            return _looked_up(cells, lambda text: _flag(field, text))
        if field.kind is Kind.BOUNDARY:
            return _looked_up(cells, _boundary)
        if field.kind is Kind.NAMES:
            by_hand = not self.verbatim
            return _looked_up(cells, partial(parse_names, by_hand=by_hand))
        if field.kind is Kind.COUNTS:
            by_hand = not self.verbatim
            return _looked_up(cells, partial(parse_counts, by_hand=by_hand))
        if field.kind is Kind.REASONS:
            return _looked_up(cells, parse_reasons)
        return Values(self._texts(cells))

    def _texts(self, cells: Column) -> Column:
        listed = cells.tolist()
        column = np.empty(len(cells), dtype=object)
        try:
            joined = "\n".join(("", *listed, ""))
        except TypeError:
            # A workbook mixes numbers into columns of text.
            listed = [cell_text(cell) for cell in listed]
            joined = "\n".join(("", *listed, ""))
        # Asking all texts at once takes a tenth of asking each.
        if not self.verbatim and "\n'" in joined:
            listed = [without_apostrophe(text).strip() for text in listed]
        elif not self.verbatim and not _is_trimmed(joined):
            listed = list(map(str.strip, listed))
        column[:] = listed
        return column

    def _numbers(self, field: Field, cells: Column, unit: str) -> Values:
        if cells.dtype == np.float64:
            return self._in_own_unit(field, cells, unit)
        listed = cells.tolist()
        bare = np.full(len(cells), np.nan)
        odd: dict[int, str] = {}
        for i, cell in enumerate(listed):
            if isinstance(cell, float):
                bare[i] = cell
            elif self._is_plain(cell) and isfinite(value := _float(cell)):
                bare[i] = value
            elif cell and not is_absent(cell):
                odd[i] = cell
        marks: frozenset[str] = frozenset()
        if self.decimal is None and (odd or self.hint):
            marks = decimal_marks(cell for cell in listed if isinstance(cell, str))
            mark = self.hint if not marks else min(marks)
            if mark is not None and len(marks) < 2:
                return replace(self, decimal=mark).values(field, cells, unit=unit)
        read = self._in_own_unit(field, bare, unit)
        read = self._with_odd(field, read, odd, unit) if odd else read
        return _without_unsettled(read, listed) if len(marks) > 1 else read

    def _is_plain(self, cell: str) -> bool:
        if self.decimal == ",":
            return _COMMA.fullmatch(cell) is not None
        return _PLAIN.fullmatch(cell) is not None

    def _in_own_unit(self, field: Field, bare: NDArray[Any], unit: str) -> Values:
        """Convert bare numbers all at once."""
        own = field.unit.replace("CUR", self.currency or "CUR")
        if not unit or unit in (field.unit, own):
            return Values(bare)
        from benchpack.units.parsing import convert

        try:
            return Values(convert(bare, unit, field.quantity, currency=self.currency))
        except DataError as error:
            at = np.flatnonzero(~np.isnan(bare)).tolist()
            bad = dict.fromkeys(at, error.problems[0])
            return Values(np.full(len(bare), np.nan), bad)

    def _with_odd(
        self, field: Field, read: Values, odd: Mapping[int, str], unit: str
    ) -> Values:
        """Read the cells that are no bare numbers, each different text once."""
        known = {text: self._quantity(field, text, unit) for text in set(odd.values())}
        column, bad = read.column.copy(), dict(read.bad)
        for i, text in odd.items():
            found = known[text]
            if isinstance(found, Problem):
                bad[i] = found
            else:
                column[i] = found
        return Values(column, bad)

    def _quantity(self, field: Field, text: str, unit: str) -> float | Problem:
        from benchpack.units.parsing import parse_quantity

        try:
            return parse_quantity(
                text,
                field.quantity,
                unit=unit or None,
                decimal=self.decimal,
                currency=self.currency,
            )
        except DataError as error:
            return error.problems[0]


def _without_unsettled(read: Values, listed: list[Any]) -> Values:
    """Refuse ``1.234`` in a column that marks decimals in both ways."""
    column, bad = read.column.copy(), dict(read.bad)
    for i, cell in enumerate(listed):
        if isinstance(cell, str) and _UNSETTLED.match(cell):
            what = f"“{cell.strip()}” may be a thousand or a fraction."
            bad[i] = Problem(f"{what} The column marks decimals both ways.", _STATE)
            column[i] = np.nan
    return Values(column, bad)


def _float(cell: str) -> float:
    return float(cell.replace(",", "."))


def cell_text(cell: object) -> str:
    """Give a cell as text: numbers of a workbook without needless zeros."""
    if isinstance(cell, str):
        return cell
    if isinstance(cell, float):
        return "" if np.isnan(cell) else number_text(cell)
    return str(cell)


def _is_trimmed(joined: str) -> bool:
    """Tell whether no text between line ends begins or ends with a blank."""
    if not joined.isascii() or any(blank in joined for blank in _RARE_BLANKS):
        return False
    return not any(edge in joined for edge in ("\n ", " \n", "\n\n"))


def _looked_up(cells: Column, read: Callable[[str], Any]) -> Values:
    """Read each different text once; columns of words repeat themselves."""
    known: dict[Any, Any] = {}
    listed = cells.tolist()
    for cell in set(listed):
        try:
            known[cell] = read(cell_text(cell).strip())
        except DataError as error:
            known[cell] = error.problems[0]
    column = np.empty(len(cells), dtype=object)
    column[:] = [known[cell] for cell in listed]
    faulty = {cell for cell, value in known.items() if isinstance(value, Problem)}
    at = [i for i, cell in enumerate(listed) if cell in faulty] if faulty else []
    bad = {i: known[listed[i]] for i in at}
    blank = read("") if at else None
    for i in at:
        column[i] = blank
    return Values(column, bad)


def _choice(field: Field, text: str) -> str | None:
    """Give the word of a closed list, None for an empty cell."""
    if is_absent(text):
        return None
    if field.name == "energy_basis":
        text = BASIS_WORDS.get(folded(text), text)
    for word in field.choices:
        if text == word or folded(text) == folded(word) != "":
            return word
    words = ", ".join(filter(None, field.choices))
    raise DataError(
        Problem(f"{field.title} “{text}” is not known.", f"Use one of: {words}.")
    )


def _flag(field: Field, text: str) -> bool | None:
    """Give yes or no, None for an empty cell."""
    word = text.casefold()
    if is_absent(word):
        return None
    if word in _YES or word in _NO:
        return word in _YES
    raise DataError(
        Problem(f"{field.title} “{text}” is neither yes nor no.", "Use true or false.")
    )


def _boundary(text: str) -> Any:
    return parse_boundary(text) if text else UNKNOWN_BOUNDARY
