"""One cell as text: on screen, in an editor, on the clipboard."""

from __future__ import annotations

import math
from collections import Counter
from typing import Any

from benchpack.model.boundary import Boundary
from benchpack.model.entry import value_text
from benchpack.model.fields import Kind
from benchpack.ui.tables.columns import TableColumn
from benchpack.units.formatting import UNKNOWN, NumberStyle, format_number

__all__ = [
    "UNKNOWN",
    "edited_text",
    "is_unknown",
    "plain_text",
    "plain_texts",
    "shown_text",
]


def is_unknown(value: Any) -> bool:
    """Tell whether a value means "not known"."""
    return (
        value is None
        or (isinstance(value, float) and math.isnan(value))
        or (isinstance(value, str) and value in ("", "unknown"))
        or (isinstance(value, Boundary) and not value.is_known)
    )


def shown_text(column: TableColumn, value: Any, style: NumberStyle) -> str:
    """Give a cell's text on screen, without the unit that its head names."""
    if column.kind is Kind.FLAG:
        return ""
    if is_unknown(value):
        return UNKNOWN
    if column.is_numeric:
        shown = value * column.factor
        decimals, grouped = column.decimals, column.grouped
        return format_number(shown, decimals, style=style, grouped=grouped)
    if isinstance(value, Boundary):
        counts = Counter(str(state) for state in value.states.values())
        return ", ".join(f"{n} {word}" for word, n in counts.items())
    return str(value)


def plain_text(column: TableColumn, value: Any) -> str:
    """Give a cell's full text with a decimal point, in the unit its head names."""
    if column.is_numeric and not is_unknown(value):
        if column.kind is Kind.COUNT:
            return f"{value:.0f}"
        shown = value * column.factor
        return repr(float(shown)) if column.factor == 1 else f"{shown:.15g}"
    if column.field is not None:
        return value_text(column.field, value)
    return "" if is_unknown(value) else str(value)


def plain_texts(column: TableColumn, values: list[Any]) -> list[str]:
    """Give the full texts of many cells of one column, see `plain_text`."""
    if column.kind is Kind.NUMBER and column.factor == 1:
        return ["" if math.isnan(value) else repr(value) for value in values]
    if column.kind is Kind.TEXT:
        return values
    if column.kind is Kind.CHOICE:
        by_value = {value: plain_text(column, value) for value in set(values)}
        return [by_value[value] for value in values]
    return [plain_text(column, value) for value in values]


def edited_text(column: TableColumn, value: Any, style: NumberStyle) -> str:
    """Give the text an editor starts with, with the study's decimal mark."""
    if not column.is_numeric or is_unknown(value):
        return plain_text(column, value)
    shown = value * column.factor
    text = f"{shown:.10g}" if column.factor != 1 else plain_text(column, value)
    return text.removesuffix(".0").replace(".", style.decimal_mark)
