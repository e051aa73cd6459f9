"""Attributes of records as the text of a cell."""

from __future__ import annotations

from typing import Any

from benchpack.model.boundary import Boundary
from benchpack.model.fields import Field, Kind
from benchpack.model.name_lists import counts_text, names_text, reasons_text


def cell_text(field: Field, value: Any) -> str:
    """Give an attribute as exact text: point, hyphen, full precision.

    Parameters
    ----------
    field : Field
        The attribute's column.
    value : object
        The attribute; None gives empty text.
    """
    if value is None:
        return ""
    if field.kind is Kind.NUMBER:
        return repr(float(value))
    if field.kind is Kind.FLAG:
        return "true" if value else "false"
    if isinstance(value, Boundary):
        return value.to_text()
    if field.kind is Kind.NAMES:
        return names_text(value)
    if field.kind is Kind.COUNTS:
        return counts_text(value)
    return reasons_text(value) if field.kind is Kind.REASONS else str(value)


def record_texts(fields: tuple[Field, ...], record: object) -> list[str]:
    """Give all attributes of a record as text, in the order of its columns."""
    return [cell_text(field, field.value_of(record)) for field in fields]
