"""How wide a column starts."""

from __future__ import annotations

from PySide6.QtGui import QFontMetrics

from benchpack.model.fields import Kind
from benchpack.ui.tables.columns import TableColumn

_PADDING = 22
_NAME, _TEXT, _NOTE, _FLAG = 196, 130, 260, 80


def initial_width(column: TableColumn, metrics: QFontMetrics) -> int:
    """Give a width that holds the head and what usually stands below it, in pixels.

    Parameters
    ----------
    column : TableColumn
        The column.
    metrics : QFontMetrics
        Of the font of head and cells.
    """
    head = metrics.horizontalAdvance(column.head) + _PADDING
    if column.is_numeric:
        sample = "8" * 5 + ("." + "8" * column.decimals if column.decimals else "")
        return max(head, metrics.horizontalAdvance(sample) + _PADDING)
    if column.kind is Kind.CHOICE and column.field is not None:
        longest = max(column.field.choices, key=len)
        return max(head, metrics.horizontalAdvance(longest) + _PADDING)
    if column.kind is Kind.FLAG:
        return max(head, _FLAG)
    if column.key == "name":
        return _NAME
    return max(head, _NOTE if column.key == "note" else _TEXT)
