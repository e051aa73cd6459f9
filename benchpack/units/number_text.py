"""Numbers as people write them: decimal commas, groups of three, true minus signs.

A number is **unambiguous** when its digits allow one reading only: both marks present
(the last is the decimal mark), a repeated mark (groups of three), digits grouped by
spaces or apostrophes, or a single comma that is not followed by exactly three digits or
has a zero, nothing, or more than three digits before it. Unambiguous numbers are read
as they stand, whatever the hint. What is left looks like ``1,234`` or ``1.234``: with a
hint it follows the hint; without one the comma is refused and the point is a decimal
point.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from typing import Literal

from benchpack.errors import DataError, Problem

DecimalMark = Literal[".", ","]

SPACES = " \u00a0\u2007\u2009\u202f"
"""Spaces that may group digits: plain, no-break, figure, thin, narrow no-break."""

_GROUPERS = SPACES + "'\u2019"
_SHAPE = re.compile(
    rf"([+\-\u2212]?)([0-9]*(?:[.,{_GROUPERS}][0-9]+)*)(?:[eE]([+\-\u2212]?[0-9]+))?"
)
_BEFORE = re.compile(r"\s*(?:(?:US\$|[A-Z]{3}|[€$£¥₩₹])\s*)?")
_MONTH = (
    r"(?:jan|feb|f\u00e9v|mar|m\u00e4r|mrz|apr|avr|may|mai|jun|jui|jul|aug|ao\u00fb"
    r"|sep|oct|okt|nov|dec|dez|d\u00e9c)\w*"
)
_DATE = re.compile(
    rf"\d{{4}}-\d\d-\d\d.*|\d{{1,2}}:\d\d(?::\d\d)?"
    rf"|\d{{1,2}}[./]\d{{1,2}}[./]\d{{2,4}}"
    rf"|\d{{1,4}}[.\-/ ]*{_MONTH}[.\-/ ]*\d{{0,4}}|{_MONTH}[.\-/ ]*\d{{1,4}}",
    re.IGNORECASE,
)
_UNSURE = re.compile(
    r"[~\u2248<>\u2264\u2265\u00b1].*|(?:ca|circa|approx|about|etwa|env)\b.*"
    r"|.*\d.*[?*]|.*\d\s*(?:\u00b1|\+/?-|[-\u2013\u2014])\s*\d.*|.*\d.*\(.*\)",
    re.IGNORECASE | re.DOTALL,
)
_NOT_DIGITS = re.compile(r"[^0-9]")
_SHOWN = 40


def shortened(text: str) -> str:
    """Give a text short enough to stand inside a message.

    Parameters
    ----------
    text : str
        What was read.
    """
    flat = " ".join(text.split())
    return flat if len(flat) <= _SHOWN else flat[: _SHOWN - 1] + "…"


def refusal(what: str, remedy: str, text: str) -> DataError:
    """Give the error for a text that cannot be used.

    Parameters
    ----------
    what, remedy : str
        The sentences of the problem.
    text : str
        The offending text.
    """
    return DataError(Problem(what=what, remedy=remedy, value=shortened(text)))


def peculiar(text: str) -> tuple[str, str] | None:
    """Say what a text is that is known to stand in place of a figure.

    Parameters
    ----------
    text : str
        The text, which is no number.

    Returns
    -------
    tuple of str or None
        What it is and what to do, None where it is nothing that is known.
    """
    bare, shown = text.strip(), shortened(text)
    if bare.startswith("#"):
        what = f"“{shown}” is the error of a formula."
        return what, "Mend the formula in the spreadsheet, or clear the cell."
    if _DATE.fullmatch(bare):
        what = f"“{shown}” looks like a date."
        return what, "Enter the figure again in a cell that is formatted as a number."
    if _UNSURE.fullmatch(bare):
        what = f"“{shown}” is not one plain figure."
        return what, "Write one figure with its unit; the rest belongs into the note."
    return None


def _well_grouped(whole: str, mark: str) -> bool:
    """Tell whether digits stand in groups of three behind a first of one to three."""
    first, *groups = whole.split(mark)
    return 1 <= len(first) <= 3 and all(len(group) == 3 for group in groups)


def _reading(digits: str) -> tuple[str, str, DecimalMark | None] | None:
    """Split digits into whole part, fraction and the decimal mark they prove.

    A mark of None means that one mark with three digits behind it proves nothing; the
    fraction is then given as if it were the decimal mark. None means no valid number.
    """
    marks = _NOT_DIGITS.findall(digits)
    kinds = set(marks)
    if not kinds:
        return (digits, "", None) if digits else None
    last = marks[-1]
    if len(kinds) > 2 or (len(kinds) == 2 and (marks.count(last) > 1)):
        return None
    if len(kinds) == 2:
        return _two_marks(digits, grouper=marks[0], last=last)
    if last not in ".,":
        return (digits, "", None) if _well_grouped(digits, last) else None
    if len(marks) > 1:
        other: DecimalMark = "." if last == "," else ","
        return (digits, "", other) if _well_grouped(digits, last) else None
    whole, fraction = digits.split(last)
    proved = len(fraction) != 3 or not 1 <= len(whole) <= 3 or whole[0] == "0"
    mark: DecimalMark = "," if last == "," else "."
    return whole, fraction, mark if proved else None


def _two_marks(
    digits: str, *, grouper: str, last: str
) -> tuple[str, str, DecimalMark | None] | None:
    """Read digits in which groups are marked one way and the fraction another."""
    whole, fraction = digits.split(last)
    if last not in ".," or not _well_grouped(whole, grouper):
        return None
    return whole, fraction, "," if last == "," else "."


def parse_number(text: str, *, decimal: str | None = None) -> float:
    """Read a number.

    Parameters
    ----------
    text : str
        The number, with a point or comma as decimal mark, groups of three marked by a
        space, apostrophe, point or comma, an optional sign and exponent.
    decimal : {".", ","} or None
        The decimal mark of the column, where it is known. It decides only what the
        digits leave open, see the module's description.

    Returns
    -------
    float
        A finite number.

    Raises
    ------
    DataError
        Where the text is no finite number, or may mean two.

    Examples
    --------
    >>> parse_number("1.234,5"), parse_number("0,450"), parse_number("1 234")
    (1234.5, 0.45, 1234.0)
    >>> parse_number("1,234", decimal=","), parse_number("1,234", decimal=".")
    (1.234, 1234.0)
    """
    trimmed = text.strip()
    match = _SHAPE.fullmatch(trimmed)
    if not trimmed:
        raise refusal("There is no number.", "Give a figure.", text)
    reading = _reading(match[2]) if match else None
    if match is None or reading is None:
        what = f"“{shortened(text)}” is not a number."
        remedy = "Write digits with one decimal mark, such as 431.5."
        raise refusal(*(peculiar(text) or (what, remedy)), text)
    whole, fraction, mark = reading
    if fraction and mark is None:
        seen = "," if "," in match[2] else "."
        if seen == "," and decimal not in (".", ","):
            raise refusal(
                f"“{trimmed}” may mean {whole}.{fraction} or {whole}{fraction}.",
                "State the decimal mark, point or comma.",
                text,
            )
        if decimal in (".", ",") and decimal != seen:
            whole, fraction = whole + fraction, ""
    return _finite(match[1], whole, fraction, match[3] or "0", text)


def _finite(sign: str, whole: str, fraction: str, exponent: str, text: str) -> float:
    """Put the pieces together, refusing what a float cannot hold."""
    digits = f"{_NOT_DIGITS.sub('', whole) or '0'}.{fraction or '0'}"
    value = float(f"{digits}e{exponent}".replace("\u2212", "-"))
    lost = value == 0 and digits.strip("0.") != ""
    if not math.isfinite(value) or lost:
        size = "small" if lost else "large"
        raise refusal(
            f"“{shortened(text)}” is too {size} for a number.",
            "Check the exponent.",
            text,
        )
    return -value if sign in ("-", "\u2212") and value else value


def detect_decimal(texts: Iterable[str]) -> DecimalMark | None:
    """Find the decimal mark of a whole column.

    Parameters
    ----------
    texts : iterable of str
        The cells; a currency before the digits and a unit behind them are ignored, and
        so is a cell that is no number.

    Returns
    -------
    {".", ","} or None
        The mark that every unambiguous cell uses; None where there is no such cell or
        where they disagree.

    Examples
    --------
    >>> detect_decimal(["1,234", "0,45 t", "12"])
    ','
    >>> detect_decimal(["1,234", "2,345"]) is None
    True
    """
    seen = decimal_marks(texts)
    return next(iter(seen)) if len(seen) == 1 else None


def decimal_marks(texts: Iterable[str]) -> frozenset[DecimalMark]:
    """Give the decimal marks that the unambiguous cells of a column use.

    Parameters
    ----------
    texts : iterable of str
        As for `detect_decimal`.
    """
    seen: set[DecimalMark] = set()
    for text in texts:
        start = _BEFORE.match(text)
        match = _SHAPE.match(text, start.end() if start else 0)
        reading = _reading(match[2].rstrip(_GROUPERS)) if match else None
        if reading is not None and reading[2] is not None:
            seen.add(reading[2])
            if len(seen) == 2:
                break
    return frozenset(seen)
