"""Records as rows of the library's tables, and rows as records."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem
from benchpack.files.pack_texts import boundary_texts
from benchpack.files.stored_columns import own_fields
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumption_fields import SET_FIELDS
from benchpack.model.assumptions import AssumptionSet
from benchpack.model.boundary import parse_boundary
from benchpack.model.change import CHANGE_FIELDS, Change, ChangeKind, ProgrammeKind
from benchpack.model.fields import Field, Kind
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.material import MATERIAL_FIELDS, SOURCE_FIELDS, Material, Source
from benchpack.model.name_lists import (
    counts_text,
    names_text,
    parse_counts,
    parse_names,
    parse_reasons,
    reasons_text,
)
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.range_columns import with_ranges
from benchpack.model.study import Study
from benchpack.model.words import Basis, KnownBy, Subsystem, TrendKind
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from benchpack.units.number_text import shortened

GO_BACK = "Go back to a copy of the file."
"""What is left to do where another program spoilt a library."""

Row = tuple[Any, ...]
RecordT = TypeVar("RecordT")

RECORD_FIELDS: dict[type, tuple[Field, ...]] = {
    Part: own_fields(PART_FIELDS),
    Joint: own_fields(JOINT_FIELDS),
    Material: MATERIAL_FIELDS,
    Source: SOURCE_FIELDS,
    Study: STUDY_FIELDS,
    Change: own_fields(CHANGE_FIELDS),
    AssumptionSet: own_fields(SET_FIELDS),
}
"""The stored columns of each record that is not a pack."""

_FROM_TEXT: dict[tuple[type, str], Callable[[Any], Any]] = {
    (Part, "subsystem"): Subsystem,
    (Part, "known_by"): KnownBy,
    (Joint, "subsystem"): Subsystem,
    (Joint, "known_by"): KnownBy,
    (Study, "basis"): Basis,
    (Study, "trend"): TrendKind,
    **{
        (kind, name): word
        for kind in (Study, AssumptionSet)
        for name, word in (
            ("programme", ProgrammeKind),
            ("valued_mass", ValuedMass),
            ("energy_from", EnergyFrom),
            ("sizing", Sizing),
        )
    },
    (Change, "kind"): ChangeKind,
    (Change, "subsystem"): Subsystem,
    (Change, "programme"): ProgrammeKind,
}
_LISTS: dict[Kind, Callable[[str], Any]] = {
    Kind.NAMES: parse_names,
    Kind.REASONS: parse_reasons,
    Kind.COUNTS: parse_counts,
}


def column_cells(field: Field, column: NDArray[Any]) -> list[Any]:
    """Give a column of packs as SQL values, None for unknown.

    Parameters
    ----------
    field : Field
        The column.
    column : array, shape (n,)
        As in a `PackTable`.
    """
    if field.is_numeric:
        known = ~np.isnan(column)
        cells = np.full(len(column), None, dtype=object)
        count = field.kind is Kind.COUNT
        cells[known] = column[known].astype(np.int64) if count else column[known]
        return cells.tolist()
    if field.kind is Kind.BOUNDARY:
        return boundary_texts(column)
    return [str(x) for x in column] if field.kind is Kind.CHOICE else column.tolist()


def pack_rows(packs: PackTable, positions: Sequence[int]) -> Iterable[Row]:
    """Give the packs as rows: id, position, then the columns in order."""
    columns = [column_cells(f, packs.columns[f.name]) for f in PACK_FIELDS]
    return zip(packs.ids.tolist(), positions, *columns, strict=True)


def packs_from_rows(rows: Sequence[Row]) -> PackTable:
    """Give the packs from rows as `pack_rows` makes them."""
    if not rows:
        return PackTable({})
    ids, _, *columns = zip(*rows, strict=True)
    table = {
        field.name: _column(field, cells)
        for field, cells in zip(PACK_FIELDS, columns, strict=True)
    }
    return PackTable(table, np.array(ids, dtype=np.int64))


def _column(field: Field, cells: Sequence[Any]) -> NDArray[Any]:
    try:
        return _made(field, cells)
    except (DataError, KeyError, TypeError, ValueError):
        for cell in cells:
            _check_cell(field, cell)
        raise


def _check_cell(field: Field, cell: Any) -> None:
    try:
        _made(field, (cell,))
    except (KeyError, TypeError, ValueError) as error:
        what = f"{field.title} cannot be {shortened(repr(cell))}."
        raise DataError(Problem(what, GO_BACK, column=field.header())) from error


def _made(field: Field, cells: Sequence[Any]) -> NDArray[Any]:
    if field.is_numeric:
        return np.array(cells, dtype=np.float64)
    if set(map(type, cells)) - {str}:
        raise TypeError(field.name)
    column = np.empty(len(cells), dtype=object)
    if field.kind is Kind.BOUNDARY:
        known = {text: parse_boundary(text) for text in set(cells)}
        column[:] = [known[text] for text in cells]
    elif field.kind is Kind.CHOICE:
        words = {str(word): str(word) for word in field.choices}
        column[:] = [words[text] for text in cells]
    else:
        column[:] = cells
    return column


def record_row(record: object) -> Row:
    """Give a record that is no pack as SQL values."""
    cells = []
    for field in RECORD_FIELDS[type(record)]:
        value = field.value_of(record)
        if field.kind is Kind.NAMES:
            value = names_text(value)
        elif field.kind is Kind.REASONS:
            value = reasons_text(value)
        elif field.kind is Kind.COUNTS:
            value = counts_text(value)
        elif field.kind is Kind.CHOICE:
            value = str(value)
        elif field.kind is Kind.NUMBER and value is not None:
            value = float(value)
        cells.append(value)
    return tuple(cells)


def record_from_row(kind: type[RecordT], row: Sequence[Any], **more: str) -> RecordT:
    """Give the record that a row holds.

    Parameters
    ----------
    kind : type
        Any record that is no pack.
    row : sequence
        As `record_row` makes it.
    more : str
        Further attributes, the pack of a part for instance.

    Raises
    ------
    DataError
        When the row holds what the record refuses.
    """
    fields = RECORD_FIELDS[kind]
    values: dict[str, Any] = dict(more)
    for field, cell in zip(fields, row, strict=True):
        make = _FROM_TEXT.get((kind, field.name)) or _LISTS.get(field.kind)
        try:
            values[field.name] = make(cell) if make else cell
        except ValueError:
            values[field.name] = cell
        if field.kind is Kind.FLAG:
            values[field.name] = bool(cell)
        elif not field.is_numeric and not isinstance(cell, str):
            _check_cell(field, cell)
    try:
        return kind(**with_ranges(fields, values))
    except (TypeError, ValueError) as error:
        what = f"A row of {kind.__name__.lower()}s holds what cannot be: {error}."
        raise DataError(Problem(what, GO_BACK)) from error


def table_insert(table: str, columns: Sequence[str]) -> str:
    """Give the SQL that inserts one row, with question marks for the values."""
    names = ", ".join(f'"{name}"' for name in columns)
    marks = ", ".join("?" * len(columns))
    return f'INSERT INTO "{table}" ({names}) VALUES ({marks})'
