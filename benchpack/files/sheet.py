"""One table as it stands in a file, before anything is made of it."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Protocol, TypeAlias

import numpy as np
from numpy.typing import NDArray

Column: TypeAlias = NDArray[Any]
"""float64 with NaN for empty cells, or objects: text, empty text, or float."""


@dataclass(frozen=True, eq=False, slots=True)
class Cells:
    """The body of a table, empty rows left out.

    Parameters
    ----------
    columns : tuple of array, shape (n,)
        One for each cell of the header.
    rows : array of int64, shape (n,)
        Row of the file each record stands in, as a spreadsheet counts.
    overlong : mapping of int to int
        Number of cells of each record that has more of them than the header, by its
        place in `rows`.
    swallowed : mapping of int to int
        Number of lines of each record that holds what look like records of their own,
        by its place in `rows`.
    """

    columns: tuple[Column, ...]
    rows: NDArray[np.int64]
    overlong: Mapping[int, int] = field(default_factory=dict)
    swallowed: Mapping[int, int] = field(default_factory=dict)


class Body(Protocol):
    """Where the records of a table come from."""

    def load(self, numeric: Collection[int], /) -> Cells:
        """Give all records; columns of these indices may come as numbers."""

    def texts(self, rows: Collection[int]) -> Mapping[int, list[str]]:
        """Give the cells of some rows of the file as they are written there."""

    def head(self, count: int) -> list[list[str]]:
        """Give the first records as text."""


@dataclass(frozen=True, eq=False)
class Sheet:
    """One table of a file.

    Parameters
    ----------
    source : str
        Name of the file, and of the sheet where it has several.
    header : tuple of str
        The column heads as written.
    header_row : int
        Row of the heads, as a spreadsheet counts: the first is 1. A record of a CSV
        file that runs over several lines counts as one row.
    body : Body
        Where the records come from.
    encoding, delimiter : str
        How a text file is written; empty for workbooks.
    name : str
        Name of the sheet in a workbook.
    sheet_names : tuple of str
        All sheets of the workbook.
    """

    source: str
    header: tuple[str, ...]
    header_row: int
    body: Body
    encoding: str = ""
    delimiter: str = ""
    name: str = ""
    sheet_names: tuple[str, ...] = ()

    @cached_property
    def columns(self) -> tuple[Column, ...]:
        """All columns, text as text, numbers of a workbook as numbers."""
        return self.body.load(()).columns

    def head(self, count: int = 20) -> list[list[str]]:
        """Give the first records as text, for a preview."""
        return self.body.head(count)

    @cached_property
    def decimal_marks(self) -> tuple[str | None, ...]:
        """The decimal mark that each column's first cells speak for, None if none."""
        from benchpack.units.parsing import detect_decimal

        rows = self.head(200)
        return tuple(
            detect_decimal([row[i] for row in rows if i < len(row) and row[i]])
            for i in range(len(self.header))
        )


def number_text(value: float) -> str:
    """Give a number of a workbook as its cell shows it."""
    return str(int(value)) if value == int(value) else repr(value)


def without_empty(columns: list[Column], rows: NDArray[np.int64]) -> Cells:
    """Give the records in which at least one cell is filled."""
    empty = np.ones(len(rows), dtype=bool)
    # Numbers first: few rows are then left to look at text by text.
    for column in sorted(columns, key=lambda column: column.dtype != np.float64):
        if column.dtype == np.float64:
            empty &= np.isnan(column)
        else:
            at = np.flatnonzero(empty)
            empty[at] = [not str(cell).strip() for cell in column[at]]
        if not empty.any():
            return Cells(tuple(columns), rows)
    keep = ~empty
    return Cells(tuple(column[keep] for column in columns), rows[keep])
