"""The parts of packs as a table: one row per part, every column as recorded."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from benchpack.model.fields import Field, Kind
from benchpack.model.library import Library
from benchpack.model.part import PART_FIELDS, Part
from benchpack.report.handed_column import HandedColumn

PartCell = str | int | float | bool | None
"""A cell: text, number or yes and no; None where nothing is known."""

_TYPES = {Kind.NUMBER: "number", Kind.COUNT: "integer", Kind.FLAG: "boolean"}


def part_columns() -> tuple[HandedColumn, ...]:
    """Give the columns, those of a part in every file."""
    return tuple(
        HandedColumn(
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
