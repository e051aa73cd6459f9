"""What an audit sheet is made of: cells with text, a number or a formula."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

NEVER = "never"
"""What a cell shows for an amount that is infinite."""


class Look(StrEnum):
    """How a cell is meant, and so how it looks."""

    TITLE = "title"
    SECTION = "section"
    HEAD = "head"
    TEXT = "text"
    NOTE = "note"
    CHANGEABLE = "changeable"
    RECORD = "record"
    FIXED = "fixed"
    FORMULA = "formula"
    SUM = "sum"


class Format(StrEnum):
    """Formats of numbers, as spreadsheet programs write them, a blank at the end."""

    NONE = ""
    COUNT = "#,##0_ "
    TENTH = "#,##0.0_ "
    CENT = "#,##0.00_ "
    THOUSANDTH = "#,##0.000_ "
    FINE = "0.00000_ "
    SHARE = "0.0%_ "


@dataclass(frozen=True, slots=True)
class AuditCell:
    """One cell.

    Parameters
    ----------
    content : str, float or None
        Text or a number at full precision; of a formula the figure that it gives, as
        this program has worked it out. None for an empty cell.
    look : Look
        How it is meant.
    formula : str
        The formula with its equals sign, empty where there is none. It never holds
        text of a person.
    number_format : Format
        How its number is shown.
    name : str
        Name by which formulas of all sheets find it, empty where it has none.
    choices : tuple of str
        The words that may be chosen in it.
    limits : tuple of float or None
        Least and greatest number that may be entered.
    """

    content: str | float | None
    look: Look = Look.TEXT
    formula: str = ""
    number_format: Format = Format.NONE
    name: str = ""
    choices: tuple[str, ...] = ()
    limits: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class AuditSheet:
    """One sheet.

    Parameters
    ----------
    title : str
        Its name, at most 31 characters.
    purpose : str
        What stands on it, one sentence for the list of sheets.
    cells : mapping of (int, int) to AuditCell
        By row and column, both from 0.
    widths : tuple of float
        Widths of the columns in characters.
    head_row : int
        Row of the column heads: what is above it and itself stay in view, and are
        printed on each page.
    fixed_columns : int
        Columns at the left that stay in view.
    is_wide : bool
        True to print it across.
    """

    title: str
    purpose: str
    cells: Mapping[tuple[int, int], AuditCell]
    widths: tuple[float, ...]
    head_row: int
    fixed_columns: int = 1
    is_wide: bool = True

    @property
    def size(self) -> tuple[int, int]:
        """Rows and columns that are written."""
        rows = max((row for row, _ in self.cells), default=0)
        columns = max((column for _, column in self.cells), default=0)
        return rows + 1, columns + 1


def shown(value: float | None) -> float | None:
    """Give a number that a cell can hold, None where it is not known."""
    return None if value is None or math.isnan(value) else float(value)


def text(content: str, look: Look = Look.TEXT) -> AuditCell:
    """Give a cell of text."""
    return AuditCell(content, look)


def record(value: float | None, number_format: Format = Format.CENT) -> AuditCell:
    """Give a cell with a recorded number, empty to be filled where it is not known."""
    return AuditCell(shown(value), Look.RECORD, number_format=number_format)


def fixed(value: float | None, number_format: Format = Format.CENT) -> AuditCell:
    """Give a cell with a number of this program that no formula moves."""
    if value is not None and math.isinf(value):
        return AuditCell(NEVER, Look.FIXED)
    return AuditCell(shown(value), Look.FIXED, number_format=number_format)


def formula(
    body: str,
    value: float | str | None,
    number_format: Format = Format.CENT,
    *,
    name: str = "",
    look: Look = Look.FORMULA,
) -> AuditCell:
    """Give a cell with a formula.

    Parameters
    ----------
    body : str
        The formula without its equals sign.
    value : float, str or None
        What it comes to; NaN and None for nothing, infinite for "never".
    number_format : Format
        How it is shown.
    name : str
        Its defined name.
    look : Look
        FORMULA, or SUM for sums.
    """
    content: str | float | None
    if isinstance(value, str):
        content = value
    elif value is not None and math.isinf(value):
        content = NEVER
    else:
        content = shown(value)
    return AuditCell(content, look, f"={body}", number_format, name)
