"""The parts of packs as a table: one row per part, every column as recorded."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from benchpack.model.fields import Field, Kind
from benchpack.model.library import Library
from benchpack.model.part import PART_FIELDS, Part

PartCell = str | int | float | bool | None
"""A cell: text, number or yes and no; None where nothing is known."""

_TYPES = {Kind.NUMBER: "number", Kind.COUNT: "integer", Kind.FLAG: "boolean"}


@dataclass(frozen=True, slots=True)
class PartColumn:
    """One column of the table of parts.

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


def part_columns() -> tuple[PartColumn, ...]:
    """Give the columns, those of a part in every file."""
    return tuple(
        PartColumn(
            name=field.header(),
            type=_TYPES.get(field.kind, "string"),
            unit=field.unit,
            description=field.help,
        )
        for field in PART_FIELDS
    )


def part_rows(library: Library, packs: Iterable[str]) -> Iterator[list[PartCell]]:
    """Give one row per part of some packs.

    Parameters
    ----------
    library : Library
        The records.
    packs : iterable of str
        Names of the packs, in the order of the table.

    Yields
    ------
    list
        Cells in the order of `part_columns`, full precision.
    """
    for pack in packs:
        for part in library.parts_of(pack):
            yield [_cell(part, field) for field in PART_FIELDS]


def _cell(part: Part, field: Field) -> PartCell:
    value: PartCell = field.value_of(part)
    return str(value) if field.kind is Kind.CHOICE else value
