"""A busbar as it is typed: texts of fields, and what is wrong with them. No Qt."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from benchpack.errors import DataError
from benchpack.model.fields import Field, Kind
from benchpack.results.busbar import ENTERED, BusbarTrial
from benchpack.results.busbar_fields import TRIAL_FIELDS
from benchpack.ui.dialogs.study_text import said
from benchpack.units.absent import is_absent
from benchpack.units.busbar_units import busbar_quantity
from benchpack.units.formatting import plain
from benchpack.units.parsing import parse_number, parse_quantity

_SHOWN_DIGITS = 4


@dataclass(frozen=True, slots=True)
class Typed:
    """What the fields make of a busbar.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar; what cannot be read counts as not known.
    errors : mapping of str to str
        Complaints by attribute.
    """

    trial: BusbarTrial
    errors: Mapping[str, str]


def shown_figure(value: float, *, decimal_mark: str) -> str:
    """Give a figure as its field shows it: four digits, no unit, empty for NaN.

    Parameters
    ----------
    value : float
        The figure in the unit of its field.
    decimal_mark : str
        Point or comma.

    Examples
    --------
    >>> shown_figure(16.0612, decimal_mark=","), shown_figure(1450.0, decimal_mark=".")
    ('16,06', '1450')
    """
    if math.isnan(value):
        return ""
    whole = len(f"{abs(value):.0f}")
    digits = max(_SHOWN_DIGITS, whole)
    return plain(float(f"{value:.{digits}g}")).replace(".", decimal_mark)


def read_figure(field: Field, text: str, *, decimal_mark: str) -> float:
    """Give the figure that a text means in a field, NaN for an empty text.

    Parameters
    ----------
    field : Field
        One of the fields of a busbar.
    text : str
        What was typed, ``25 mm`` or ``0,3 m``; without a unit it is the field's.
    decimal_mark : str
        Point or comma.

    Raises
    ------
    DataError
        When it cannot be read or cannot stand.

    Examples
    --------
    >>> from benchpack.results.busbar_fields import TRIAL_FIELD
    >>> read_figure(TRIAL_FIELD["fault_current_a"], "5 kA", decimal_mark=".")
    5000.0
    """
    if is_absent(text):
        return math.nan
    if field.kind is Kind.COUNT:
        value = parse_number(text, decimal=decimal_mark)
    else:
        quantity = busbar_quantity(field.quantity)
        value = parse_quantity(text, quantity, unit=field.unit, decimal=decimal_mark)
    refusal = field.refusal(value)
    if refusal is not None:
        raise DataError(refusal)
    return value


def typed_trial(
    before: BusbarTrial, texts: Mapping[str, str], *, decimal_mark: str
) -> Typed:
    """Make a busbar of what stands in the fields.

    Parameters
    ----------
    before : BusbarTrial
        The busbar that the fields were filled from; a text that still shows its figure
        leaves that figure and how it is known as they are.
    texts : mapping of str to str
        What stands in each field, by attribute.
    decimal_mark : str
        Point or comma.
    """
    values: dict[str, Any] = {}
    errors: dict[str, str] = {}
    known_by = dict(before.known_by)
    for field in TRIAL_FIELDS:
        name, text = field.name, texts[field.name].strip()
        kept = getattr(before, name)
        if text == shown_figure(kept, decimal_mark=decimal_mark):
            continue
        known_by[name] = ENTERED
        try:
            values[name] = read_figure(field, text, decimal_mark=decimal_mark)
        except DataError as error:
            values[name] = math.nan
            errors[name] = said(error.problems[0])
    return Typed(replace(before, **values, known_by=known_by), errors)
