"""Many packs held as columns, so that a million of them stay quick."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from types import MappingProxyType
from typing import Any, TypeAlias, overload

import numpy as np
from numpy.typing import NDArray

from benchpack.model.boundary import UNKNOWN_BOUNDARY
from benchpack.model.fields import Field, Kind
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS, Pack
from benchpack.model.words import EnergyBasis, KnownBy

Column: TypeAlias = NDArray[Any]
"""One column: float64 with NaN for numbers, objects for text and boundaries."""

_CHOICE_TYPES = {"energy_basis": EnergyBasis, "mass_known_by": KnownBy}


def column_value(field: Field, value: Any) -> Any:
    """Give an attribute of a pack as it is stored in a column."""
    if field.is_numeric:
        return math.nan if value is None else float(value)
    return str(value) if field.kind is Kind.CHOICE else value


def _attribute(field: Field, stored: Any) -> Any:
    if field.kind is Kind.COUNT:
        return None if math.isnan(stored) else int(stored)
    if field.kind is Kind.NUMBER:
        return None if math.isnan(stored) else float(stored)
    if field.kind is Kind.CHOICE:
        return _CHOICE_TYPES[field.name](stored)
    return stored


def empty_column(field: Field, length: int) -> Column:
    """Give a column in which nothing is known.

    Parameters
    ----------
    field : Field
        The column.
    length : int
        Number of packs.
    """
    if field.is_numeric:
        return np.full(length, np.nan)
    default: Any = UNKNOWN_BOUNDARY if field.kind is Kind.BOUNDARY else ""
    if field.kind is Kind.CHOICE:
        default = str(field.choices[0])
    return np.full(length, default, dtype=object)


class PackTable(Sequence[Pack]):
    """An immutable table of packs with unique names.

    Parameters
    ----------
    columns : mapping of str to array, shape (n,)
        Columns by attribute name; those left out are unknown throughout. The arrays
        become read-only and are shared between tables.
    ids : array of int64, shape (n,), optional
        Keys that stay with a pack through edits; 1, 2, ... by default.

    Notes
    -----
    The columns are taken as valid: readers and edits validate, see `Pack`.
    """

    def __init__(
        self, columns: Mapping[str, Column], ids: NDArray[np.int64] | None = None
    ) -> None:
        length = len(next(iter(columns.values()))) if columns else 0
        full = {
            field.name: columns[field.name]
            if field.name in columns
            else empty_column(field, length)
            for field in PACK_FIELDS
        }
        if any(len(column) != length for column in full.values()):
            raise ValueError("columns differ in length")
        self.ids = np.arange(1, length + 1, dtype=np.int64) if ids is None else ids
        self.ids.setflags(write=False)
        for column in full.values():
            column.setflags(write=False)
        self.columns: Mapping[str, Column] = MappingProxyType(full)

    @classmethod
    def from_packs(cls, packs: Iterable[Pack]) -> PackTable:
        """Make a table of records."""
        rows = list(packs)
        columns = {}
        for field in PACK_FIELDS:
            values = [column_value(field, getattr(pack, field.name)) for pack in rows]
            columns[field.name] = _filled(field, values)
        return cls(columns)

    def __len__(self) -> int:
        return len(self.ids)

    @overload
    def __getitem__(self, index: int) -> Pack: ...
    @overload
    def __getitem__(self, index: slice) -> list[Pack]: ...
    def __getitem__(self, index: int | slice) -> Pack | list[Pack]:
        if isinstance(index, slice):
            return [self[i] for i in range(*index.indices(len(self)))]
        return Pack(
            **{
                field.name: _attribute(field, self.columns[field.name][index])
                for field in PACK_FIELDS
            }
        )

    def __iter__(self) -> Iterator[Pack]:
        return (self[i] for i in range(len(self)))

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, PackTable):
            return NotImplemented
        return len(self) == len(other) and all(
            same_column(PACK_FIELD[name], column, other.columns[name])
            for name, column in self.columns.items()
        )

    # Compared by content, of a million rows too, it has no hash: the linter asks for
    # the line, and mypy knows of no class without one.
    __hash__ = None  # type: ignore[assignment]

    @property
    def names(self) -> Column:
        """The packs' names, shape (n,)."""
        return self.columns["name"]

    @cached_property
    def _positions(self) -> dict[str, int]:
        return {name: i for i, name in enumerate(self.names.tolist())}

    def position(self, name: str) -> int:
        """Give the row of a pack.

        Raises
        ------
        KeyError
            When no pack has that name.
        """
        return self._positions[name]

    def has(self, name: str) -> bool:
        """Tell whether a pack of that name is in the table."""
        return name in self._positions

    def get(self, name: str) -> Pack | None:
        """Give the pack of that name, None where there is none."""
        position = self._positions.get(name)
        return None if position is None else self[position]

    def with_cells(self, name: str, rows: Sequence[int], values: Any) -> PackTable:
        """Give a table in which some cells of one column are replaced.

        Parameters
        ----------
        name : str
            Attribute name of the column.
        rows : sequence of int
            Rows to change.
        values : sequence
            The new values as stored in a column, one per row.
        """
        column = self.columns[name].copy()
        for row, value in zip(rows, values, strict=True):
            column[row] = value
        return PackTable({**self.columns, name: column}, self.ids)

    def joined(self, other: PackTable) -> PackTable:
        """Give this table with the packs of another below it, under new ids."""
        first = int(self.ids.max(initial=0)) + 1
        ids = np.arange(first, first + len(other), dtype=np.int64)
        columns = {
            name: np.concatenate((column, other.columns[name]))
            for name, column in self.columns.items()
        }
        return PackTable(columns, np.concatenate((self.ids, ids)))

    def selected(self, rows: NDArray[Any]) -> PackTable:
        """Give a table of some rows, chosen by a mask or by row numbers."""
        columns = {name: column[rows] for name, column in self.columns.items()}
        return PackTable(columns, self.ids[rows])

    def without(self, rows: Sequence[int]) -> PackTable:
        """Give a table that lacks some rows."""
        keep = np.ones(len(self), dtype=bool)
        keep[list(rows)] = False
        return self.selected(keep)


def _filled(field: Field, values: list[Any]) -> Column:
    if field.is_numeric:
        return np.array(values, dtype=np.float64)
    column = np.empty(len(values), dtype=object)
    column[:] = values
    return column


def same_column(field: Field, one: Column, other: Column) -> bool:
    """Tell whether two columns hold the same values, unknown equal to unknown."""
    if one is other:
        return True
    if field.is_numeric:
        return bool(np.array_equal(one, other, equal_nan=True))
    return bool(np.all(one == other))
