"""What a person typed, as the value of a field, and the value as text again."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.boundary import Boundary, parse_boundary
from benchpack.model.fields import Field, Kind
from benchpack.units.absent import is_absent
from benchpack.units.parsing import parse_number, parse_quantity

_YES = frozenset({"true", "yes", "1", "x"})
_NO = frozenset({"false", "no", "0", ""})
_PLAIN_QUANTITIES = frozenset({"", "count", "ratio"})


def parse_value(
    field: Field,
    text: str,
    *,
    unit: str | None = None,
    decimal: str | None = None,
    currency: str | None = None,
) -> Any:
    """Give the attribute value that a text means in a field.

    Parameters
    ----------
    field : Field
        The field it was entered in.
    text : str
        What was typed, pasted or read; numbers may carry their own unit.
    unit : str, optional
        Unit label of a number without one; the field's own by default.
    decimal : str, optional
        Decimal mark of the text, ``.`` or ``,``; found from the text by default.
    currency : str, optional
        Currency code that money is stated in.

    Returns
    -------
    object
        A float in the field's unit, an int for a count, a bool for a flag, the member
        of the list for a choice, a `Boundary`, or the text itself. None for an empty
        number, the first of the list for an empty choice.

    Raises
    ------
    DataError
        When the text cannot be read or the value cannot stand, with column and value.

    Examples
    --------
    >>> from benchpack.model.pack import PACK_FIELD
    >>> parse_value(PACK_FIELD["mass_kg"], "0.45 t")
    450.0
    """
    try:
        if field.is_numeric:
            return _number(field, text, unit=unit, decimal=decimal, currency=currency)
        if field.kind is Kind.CHOICE:
            return _choice(field, text)
        if field.kind is Kind.FLAG:
            return _flag(field, text)
        if field.kind is Kind.BOUNDARY:
            return parse_boundary(text)
        return _text(field, text)
    except DataError as error:
        raise _placed(error, field, text) from error


def value_text(field: Field, value: Any) -> str:
    """Give a value as text for files and the clipboard, the inverse of `parse_value`.

    Parameters
    ----------
    field : Field
        The field it stands in.
    value : object
        An attribute value, or a NaN from a column, meaning "not known".

    Returns
    -------
    str
        Numbers with a decimal point, at full precision and without unit; empty text
        for what is not known.
    """
    if value is None:
        return ""
    if field.is_numeric:
        if math.isnan(value):
            return ""
        return str(int(value)) if field.kind is Kind.COUNT else repr(float(value))
    if field.kind is Kind.FLAG:
        return "true" if value else "false"
    if isinstance(value, Boundary):
        return value.to_text()
    return str(value)


def _text(field: Field, text: str) -> str:
    if field.required and not text.strip():
        raise DataError(Problem(f"{field.title} is empty.", "Fill it in."))
    return text


def _number(
    field: Field,
    text: str,
    *,
    unit: str | None,
    decimal: str | None,
    currency: str | None,
) -> float | int | None:
    if is_absent(text):
        _text(field, "")
        return None
    if field.quantity in _PLAIN_QUANTITIES:
        value = parse_number(text, decimal=decimal)
    else:
        value = parse_quantity(
            text, field.quantity, unit=unit, decimal=decimal, currency=currency
        )
    refusal = field.refusal(value)
    if refusal is not None:
        raise DataError(refusal)
    return int(value) if field.kind is Kind.COUNT else value


def _choice(field: Field, text: str) -> str:
    wanted = text.strip().casefold()
    if not wanted:
        return field.choices[0]
    for choice in field.choices:
        if choice.casefold() == wanted:
            return choice
    raise DataError(
        Problem(
            f"{field.title} {text.strip()!r} is not known.",
            f"Use one of: {', '.join(filter(None, field.choices))}.",
        )
    )


def _flag(field: Field, text: str) -> bool:
    word = text.strip().casefold()
    if word in _YES:
        return True
    if word in _NO:
        return False
    what = f"{field.title} {text.strip()!r} is not understood."
    raise DataError(Problem(what, "Use yes or no."))


def _placed(error: DataError, field: Field, text: str) -> DataError:
    return DataError(
        *(
            replace(problem, column=field.header(), value=text)
            for problem in error.problems
        )
    )
