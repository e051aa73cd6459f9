"""Records as columns that are made when they are first asked for."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.model.boundary import Boundary
from benchpack.model.fields import Field, Kind
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.text_index import TextIndex

Array = NDArray[Any]
FloatArray = NDArray[np.float64]


class RecordColumns:
    """The records behind a table, column by column.

    Parameters
    ----------
    keys : ndarray, shape (n,)
        What stays with a record through edits: ids or names.
    makers : mapping of str to callable
        Gives a whole column by key: float64 with NaN, or objects.
    cells : mapping of str to callable
        Gives one cell of a column that is dear to make as a whole.
    stored : mapping of str to callable
        Gives what is recorded in one cell of a column that shows something computed
        where nothing is recorded.
    """

    def __init__(
        self,
        keys: Array,
        makers: Mapping[str, Callable[[], Array]],
        *,
        cells: Mapping[str, Callable[[int], Any]] | None = None,
        stored: Mapping[str, Callable[[int], Any]] | None = None,
    ) -> None:
        self.keys = keys
        self._makers = makers
        self._cells = cells or {}
        self._stored = stored or {}
        self._columns: dict[str, Array] = {}
        self._indexes: dict[str, TextIndex] = {}

    def __len__(self) -> int:
        return len(self.keys)

    def column(self, key: str) -> Array:
        """Give a whole column, shape (n,)."""
        if key not in self._columns:
            self._columns[key] = self._makers[key]()
        return self._columns[key]

    def cell(self, key: str, row: int) -> Any:
        """Give one value: a float with NaN for unknown, or an object."""
        if key in self._cells and key not in self._columns:
            return self._cells[key](row)
        value = self.column(key)[row]
        return float(value) if isinstance(value, np.floating) else value

    def stored(self, key: str, row: int) -> Any:
        """Give what is recorded in a cell, as `cell` gives what is shown there."""
        return self._stored[key](row) if key in self._stored else self.cell(key, row)

    def text_index(self, key: str) -> TextIndex:
        """Give what finds and ranks the texts of a column."""
        if key not in self._indexes:
            self._indexes[key] = TextIndex(self.column(key).tolist())
        return self._indexes[key]

    def sort_keys(self, column: TableColumn) -> FloatArray:
        """Give numbers that sort as the column should, NaN where it is unknown."""
        values = None if column.kind is Kind.TEXT else self.column(column.key)
        if values is None:
            return self.text_index(column.key).ranks()
        if column.is_numeric:
            return values
        if column.kind is Kind.CHOICE and column.field is not None:
            return _choice_ranks(column.field, values)
        if column.kind is Kind.BOUNDARY:
            return np.array([_extent(value) for value in values], dtype=np.float64)
        return values.astype(np.float64)


def _extent(boundary: Boundary) -> float:
    return float(len(boundary.states)) or math.nan


def _choice_ranks(field: Field, values: Array) -> FloatArray:
    unknown = ("", "unknown")
    ranks: dict[Any, float] = {
        str(choice): math.nan if choice in unknown else float(place)
        for place, choice in enumerate(field.choices)
    }
    return np.array([ranks[value] for value in values.tolist()], dtype=np.float64)


def pack_records(
    packs: PackTable,
    derived: Mapping[str, Callable[[], Array]],
    *,
    cells: Mapping[str, Callable[[int], Any]] | None = None,
) -> RecordColumns:
    """Give the packs of a library for a table.

    Parameters
    ----------
    packs : PackTable
        The packs.
    derived : mapping of str to callable
        Further columns by key.
    cells : mapping of str to callable
        As for `RecordColumns`.
    """
    makers: dict[str, Callable[[], Array]] = {
        field.name: _given(packs.columns[field.name]) for field in PACK_FIELDS
    }
    return RecordColumns(packs.ids, {**makers, **derived}, cells=cells)


def listed_records(
    records: Sequence[Any],
    fields: Sequence[Field],
    *,
    derived: Mapping[str, Callable[[], Array]] | None = None,
) -> RecordColumns:
    """Give parts, joints, materials or sources for a table.

    Parameters
    ----------
    records : sequence
        Records with the attributes that `fields` name; their names are the keys,
        together with the pack where they have one.
    fields : sequence of Field
        The recorded columns.
    derived : mapping of str to callable, optional
        Further columns by key.
    """
    keys = np.array(
        [f"{getattr(record, 'pack', '')}\n{record.name}" for record in records],
        dtype=object,
    )
    makers: dict[str, Callable[[], Array]] = {
        field.name: _gathered(records, field) for field in fields
    }
    return RecordColumns(keys, {**makers, **(derived or {})})


def _given(column: Array) -> Callable[[], Array]:
    def give() -> Array:
        return column

    return give


def _gathered(records: Sequence[Any], field: Field) -> Callable[[], Array]:
    def gather() -> Array:
        values = [getattr(record, field.name) for record in records]
        if field.is_numeric:
            numbers = [math.nan if value is None else value for value in values]
            return np.array(numbers, dtype=np.float64)
        if field.kind is Kind.CHOICE:
            values = [str(value) for value in values]
        column = np.empty(len(values), dtype=object)
        column[:] = values
        return column

    return gather
