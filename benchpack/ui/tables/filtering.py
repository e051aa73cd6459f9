"""What a person types to see some rows only."""

from __future__ import annotations

import operator
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem
from benchpack.model.entry import parse_value
from benchpack.model.fields import Kind
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.records import RecordColumns
from benchpack.units.parsing import parse_number

Mask = NDArray[np.bool_]

_OPERATORS: dict[str, Callable[[Any, Any], Any]] = {
    ">=": operator.ge,
    "<=": operator.le,
    "!=": operator.ne,
    "<>": operator.ne,
    "≥": operator.ge,
    "≤": operator.le,
    "≠": operator.ne,
    ">": operator.gt,
    "<": operator.lt,
    "=": operator.eq,
}
_UNKNOWN = frozenset({"", "unknown", "-", "–"})
_JOINER = re.compile(r"\s+and\s+|;", re.IGNORECASE)
_SIGNS = re.compile("[<>=≥≤≠]")
_QUOTED = re.compile(r'\s*"([^"]*)"')


@dataclass(frozen=True, slots=True)
class Condition:
    """One column compared with one value; `value` None asks for the unknown."""

    column: TableColumn
    sign: str
    value: float | str | None


@dataclass(frozen=True, slots=True)
class RowFilter:
    """Which rows are wanted: words found in any text, and conditions that hold."""

    words: tuple[str, ...] = ()
    conditions: tuple[Condition, ...] = ()


EVERY_ROW = RowFilter()
"""The filter that lets every row through."""


def parse_filter(
    text: str, columns: Sequence[TableColumn], *, decimal: str = "."
) -> RowFilter:
    """Read a filter such as ``avocet``, ``energy > 60 and chemistry = LFP``.

    Parameters
    ----------
    text : str
        Words and conditions, set apart by blanks, semicolons or "and". A value that
        holds one of these itself stands in quotes.
    columns : sequence of TableColumn
        The columns that conditions may name by their title.
    decimal : str
        Decimal mark of numbers.

    Raises
    ------
    DataError
        When the value of a condition cannot be read, or its column is not known.
    """
    by_title = {column.title.casefold(): column for column in columns}
    titles = "|".join(re.escape(t) for t in sorted(by_title, key=len, reverse=True))
    signs = "|".join(map(re.escape, _OPERATORS))
    pattern = re.compile(rf"(?<!\w)({titles})\s*({signs})", re.IGNORECASE)
    found = list(pattern.finditer(text)) if titles else []
    head = text[: found[0].start()] if found else text
    conditions = []
    for place, match in enumerate(found):
        end = found[place + 1].start() if place + 1 < len(found) else len(text)
        column = by_title[match[1].casefold()]
        wanted, rest = _split_value(text[match.end() : end])
        head += f" {rest}"
        conditions.append(_condition(column, match[2], wanted, decimal=decimal))
    _refuse_unknown_column(head)
    words = (
        word for word in head.replace(";", " ").split() if word.casefold() != "and"
    )
    return RowFilter(tuple(words), tuple(conditions))


def _refuse_unknown_column(text: str) -> None:
    """Refuse a sign in what is left over: it compares nothing."""
    sign = _SIGNS.search(text)
    if sign:
        before = _JOINER.split(text[: sign.start()])[-1].strip()
        what = f"No column is called “{before}”." if before else "No column is named."
        raise DataError(Problem(what, "Columns lists their names.", value=text.strip()))


def _split_value(text: str) -> tuple[str, str]:
    """Split off the value of a condition: in quotes, or up to "and" or ";"."""
    quoted = _QUOTED.match(text)
    if quoted:
        return quoted[1], text[quoted.end() :]
    wanted, *rest = _JOINER.split(f"{text} ", maxsplit=1)
    return wanted.strip(), " ".join(rest)


def _condition(column: TableColumn, sign: str, text: str, *, decimal: str) -> Condition:
    if text.casefold() in _UNKNOWN and sign in ("=", "!=", "<>", "≠"):
        return Condition(column, sign, None)
    if column.is_numeric:
        return Condition(column, sign, _number(column, text, decimal=decimal))
    if sign not in ("=", "!=", "<>", "≠"):
        raise DataError(
            Problem(
                f"{column.title} is text, so {sign} says nothing.",
                "Use = or !=.",
                column=column.title,
                value=text,
            )
        )
    return Condition(column, sign, text)


def _number(column: TableColumn, text: str, *, decimal: str) -> float:
    if not text:
        raise DataError(
            Problem(
                f"{column.title} is compared with nothing.",
                "Put a figure behind the sign.",
                column=column.title,
            )
        )
    if column.field is None:
        return parse_number(text, decimal=decimal) / column.factor
    unit = column.entry_unit
    value = parse_value(column.field, text, unit=unit, decimal=decimal)
    return float(value)


def matching_rows(
    wanted: RowFilter, records: RecordColumns, columns: Sequence[TableColumn]
) -> Mask | None:
    """Tell which records a filter lets through.

    Parameters
    ----------
    wanted : RowFilter
        The filter.
    records : RecordColumns
        The records.
    columns : sequence of TableColumn
        The columns whose texts are searched for words.

    Returns
    -------
    ndarray of bool, shape (n,), or None
        None when every row passes.
    """
    if wanted == EVERY_ROW:
        return None
    mask = np.ones(len(records), dtype=bool)
    for condition in wanted.conditions:
        mask &= _holds(condition, records)
    searched = [c.key for c in columns if c.kind in (Kind.TEXT, Kind.CHOICE)]
    for word in wanted.words:
        hits = np.zeros(len(records), dtype=bool)
        for key in searched:
            hits |= records.text_index(key).containing(word)
        mask &= hits
    return mask


def _holds(condition: Condition, records: RecordColumns) -> Mask:
    column = condition.column
    negated = _OPERATORS[condition.sign] is operator.ne
    if condition.value is None:
        unknown: Mask = np.isnan(records.sort_keys(column))
        return ~unknown if negated else unknown
    if column.is_numeric:
        return _compared(condition, records.column(column.key))
    if column.kind is Kind.FLAG:
        yes = str(condition.value).casefold() in ("yes", "true", "1", "x")
        flags: Mask = records.column(column.key).astype(bool) == yes
        return ~flags if negated else flags
    if column.kind is Kind.BOUNDARY:
        texts = [boundary.to_text() for boundary in records.column(column.key)]
        same = np.array([str(condition.value) in text for text in texts], dtype=bool)
    else:
        same = records.text_index(column.key).equal_to(str(condition.value))
    return ~same if negated else same


def _compared(condition: Condition, values: NDArray[np.float64]) -> Mask:
    compare = _OPERATORS[condition.sign]
    value = float(condition.value or 0.0)
    if compare in (operator.eq, operator.ne):
        # Equal as shown: a reader cannot type what rounding hides.
        shown = 0.5 * 10.0**-condition.column.decimals / condition.column.factor
        near: Mask = np.abs(values - value) <= shown * (1 + 1e-9)
        return ~near & ~np.isnan(values) if compare is operator.ne else near
    mask: Mask = compare(values, value)
    return mask
