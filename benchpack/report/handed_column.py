"""A column of a table that is handed over."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class HandedColumn:
    """One column of a table of parts, joints or changes.

    Parameters
    ----------
    name : str
        Column head with its unit in brackets.
    type : str
        Type of Table Schema.
    unit : str
        The unit, empty where there is none.
    description : str
        What stands in it.
    """

    name: str
    type: str
    unit: str
    description: str
