"""Ranges as three columns of a table: low, likely, high."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.fields import Field, Kind
from benchpack.model.ranges import Range

ENDS = ("low", "likely", "high")
"""The ends of a range in their order in files."""


def range_fields(
    attribute: str,
    title: str,
    *,
    help_text: str,
    unit: str = "",
    quantity: str = "ratio",
    floor: float = 0.0,
    ceiling: float,
    decimals: int = 2,
) -> tuple[Field, Field, Field]:
    """Give the three columns of one range.

    Parameters
    ----------
    attribute : str
        Attribute of the record that holds the range, ``mass_kg`` for instance.
    title : str
        Title without the word for the end.
    help_text : str
        What the figure is, without a full stop.
    unit, quantity, floor, ceiling, decimals
        As in `Field`.

    Examples
    --------
    >>> columns = range_fields(
    ...     "mass_kg", "mass", help_text="Mass", unit="kg", ceiling=9
    ... )
    >>> [column.header() for column in columns]
    ['mass low [kg]', 'mass likely [kg]', 'mass high [kg]']
    """
    low, likely, high = (
        Field(
            f"{attribute}_{end}",
            f"{title} {end}",
            Kind.NUMBER,
            quantity,
            unit,
            ceiling=ceiling,
            floor=floor,
            help=f"{help_text}: {end}.",
            decimals=decimals,
            attribute=attribute,
            end=end,
        )
        for end in ENDS
    )
    return low, likely, high


def with_ranges(fields: Sequence[Field], values: Mapping[str, Any]) -> dict[str, Any]:
    """Give the attributes of a record whose ranges stand in three columns each.

    Parameters
    ----------
    fields : sequence of Field
        The columns of the record.
    values : mapping of str to object
        Values by column; a range may be given by its likely figure alone.

    Returns
    -------
    dict
        Values by attribute.

    Raises
    ------
    DataError
        With one problem per range that has but one end, or runs the wrong way.
    """
    found = dict(values)
    problems: list[Problem] = []
    for first in fields:
        if first.end != ENDS[0]:
            continue
        columns = [f for f in fields if f.attribute == first.attribute]
        ends = [found.pop(column.name, None) for column in columns]
        if all(end is None for end in ends):
            continue
        try:
            found[first.attribute] = _range(ends)
        except DataError as error:
            title = first.title.removesuffix(f" {ENDS[0]}")
            what = error.problems[0].what.replace("The range", f"The {title}")
            remedy = error.problems[0].remedy
            problems.append(Problem(what, remedy, column=columns[1].header()))
    if problems:
        raise DataError(*problems)
    return found


def _range(ends: Sequence[float | None]) -> Range:
    low, likely, high = ends
    if likely is not None and low is None and high is None:
        return Range.exactly(likely)
    if low is None or likely is None or high is None:
        missing = " and ".join(
            end for end, value in zip(ENDS, ends, strict=True) if value is None
        )
        raise DataError(
            Problem(
                f"The range has no {missing}.",
                "Give low, likely and high, or the likely figure alone.",
            )
        )
    return Range(low, likely, high)
