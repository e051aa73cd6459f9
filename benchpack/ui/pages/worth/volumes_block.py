"""Packs by year from a pasted block."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.model.entry import parse_value
from benchpack.model.fields import Field, Kind
from benchpack.ui.tables.clipboard import Block
from benchpack.units.formatting import NumberStyle
from benchpack.units.parsing import detect_decimal

PACKS = Field(
    "packs", "packs", Kind.COUNT, "count", ceiling=1e9, help="Packs in the year."
)
"""What stands in one year."""

_FIRST, _LAST = 1900, 2200
_WIDEST = 2


def read_packs(text: str, *, decimal: str) -> int:
    """Read a number of packs.

    Parameters
    ----------
    text : str
        What was entered or pasted.
    decimal : str
        Decimal mark.

    Raises
    ------
    DataError
        When it is no whole number from 0 to a thousand million.
    """
    found = parse_value(PACKS, text.strip(), decimal=decimal)
    if found is None:
        raise DataError(
            Problem("There are no packs.", "Give a whole number, 0 at least.")
        )
    return int(found)


@dataclass(frozen=True, slots=True)
class PastedVolumes:
    """Packs by year from a pasted block.

    Parameters
    ----------
    packs : tuple of int
        Packs in order.
    first_year : int or None
        Calendar year of the first, where the block names the years.
    """

    packs: tuple[int, ...]
    first_year: int | None = None


def read_block(block: Block, *, style: NumberStyle) -> PastedVolumes:
    """Read a column or a row of packs, with the years beside or above where they are.

    Parameters
    ----------
    block : Block
        The pasted cells; a head over them is passed over.
    style : NumberStyle
        The study's decimal mark, where the block speaks for none.

    Raises
    ------
    DataError
        For a cell that is no number of packs, by its place in the block, and for a
        block that is neither a row nor a column.
    """
    cells = block.cells
    if cells and len(cells[0]) > len(cells):
        cells = [list(column) for column in zip(*cells, strict=True)]
    if not cells or len(cells[0]) > _WIDEST:
        what = "The block is no row and no column of packs."
        raise DataError(Problem(what, "Copy packs alone, or years and packs."))
    texts = [row[-1] for row in cells]
    mark = block.decimal or detect_decimal(texts) or style.decimal_mark
    if len(cells) > 1 and not any(c.isdigit() for c in texts[0]):
        cells, texts = cells[1:], texts[1:]
    packs = []
    for place, text in enumerate(texts, start=1):
        try:
            packs.append(read_packs(text, decimal=mark))
        except DataError as error:
            raise DataError(
                *(p.at(source="pasted block", row=place) for p in error.problems)
            ) from error
    return PastedVolumes(tuple(packs), _first_year(cells))


def _first_year(cells: Sequence[Sequence[str]]) -> int | None:
    """Give the year of the first row where the first column counts calendar years."""
    words = [row[0].strip() for row in cells]
    if len(cells[0]) < _WIDEST or not all(word.isdigit() for word in words):
        return None
    years = [int(word) for word in words]
    is_counted = years == list(range(years[0], years[0] + len(years)))
    return years[0] if is_counted and _FIRST <= years[0] <= _LAST else None
