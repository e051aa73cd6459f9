"""Packs as rows of text, column by column for speed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchpack.model.fields import Field, Kind
from benchpack.model.pack_table import Column, PackTable


def pack_texts(packs: PackTable, fields: Sequence[Field]) -> Iterator[tuple[str, ...]]:
    """Give packs as rows of text: point, hyphen, full precision, empty for unknown.

    Parameters
    ----------
    packs : PackTable
        The packs.
    fields : sequence of Field
        The columns to give.
    """
    return zip(*(_texts(packs, field) for field in fields), strict=True)


def _texts(packs: PackTable, field: Field) -> list[str]:
    cells = packs.columns[field.name].tolist()
    if field.kind is Kind.COUNT:
        return ["" if cell != cell else str(int(cell)) for cell in cells]
    if field.kind is Kind.NUMBER:
        return ["" if cell != cell else repr(cell) for cell in cells]
    if field.kind is Kind.BOUNDARY:
        return boundary_texts(packs.columns[field.name])
    return [str(cell) for cell in cells]


def boundary_texts(column: Column) -> list[str]:
    """Give boundaries as text; packs often share one, which is written once.

    Parameters
    ----------
    column : array of Boundary, shape (n,)
        As in a `PackTable`.
    """
    cells = column.tolist()
    different = {id(cell): cell for cell in cells}
    texts = {key: cell.to_text() for key, cell in different.items()}
    return [texts[id(cell)] for cell in cells]
