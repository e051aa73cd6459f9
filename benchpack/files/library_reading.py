"""Reading a whole library out of its tables."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any, TypeVar

import numpy as np
from sqlalchemy import Connection, Table

from benchpack.errors import DataError, Problem
from benchpack.files import schema
from benchpack.files.library_rows import (
    GO_BACK,
    Row,
    packs_from_rows,
    record_from_row,
)
from benchpack.files.pack_reading import impossible
from benchpack.model.fields import Field
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.library import Library
from benchpack.model.material import Material, Source
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.study import Study

RecordT = TypeVar("RecordT")


def read_library(connection: Connection, path: Path) -> Library:
    """Give the library that a database holds.

    Parameters
    ----------
    connection : Connection
        In a transaction, so that all tables are of one state.
    path : Path
        The file, for the problems.

    Raises
    ------
    DataError
        When a row holds what its record refuses.
    """
    columns = ["id", "position", *(field.name for field in PACK_FIELDS)]
    about = dict(_select(connection, schema.ABOUT, ["key", "value"], order="key"))
    try:
        packs = packs_from_rows(_select(connection, schema.PACKS, columns))
        _check_packs(packs)
        names = dict(zip(packs.ids.tolist(), packs.names.tolist(), strict=True))
        return Library(
            packs=packs,
            parts=_groups(connection, schema.PARTS, PART_FIELDS, Part, names),
            joints=_groups(connection, schema.JOINTS, JOINT_FIELDS, Joint, names),
            materials=_records(connection, schema.MATERIALS, Material),
            sources=_records(connection, schema.SOURCES, Source),
            studies=_records(connection, schema.STUDIES, Study),
            title=about.get("title", ""),
            note=about.get("note", ""),
        )
    except DataError as error:
        problems = (problem.at(source=str(path)) for problem in error.problems)
        raise DataError(*problems) from error


def _check_packs(packs: PackTable) -> None:
    """Refuse what another program may have put into the table of packs."""
    names = packs.names.tolist()
    if len(set(names)) < len(names):
        twice = next(name for name, times in Counter(names).items() if times > 1)
        what = f"Two packs are called {twice!r}."
        raise DataError(Problem(what, GO_BACK, column="pack", record=twice))
    for at in np.flatnonzero(impossible(packs.columns)).tolist():
        for name, column in packs.columns.items():
            field = PACK_FIELD[name]
            known = field.is_numeric and column[at] == column[at]
            refusal = field.refusal(float(column[at])) if known else None
            if refusal is not None:
                raise DataError(refusal.at(record=names[at]))
        # Making the record raises what is wrong with two figures together.
        packs[at]


def _select(
    connection: Connection,
    table: Table,
    columns: Sequence[str],
    *,
    order: str = '"position"',
) -> list[Any]:
    # A bare name that is no column would be read as a text in quotation marks.
    names = ", ".join(f'"{table.name}"."{name}"' for name in columns)
    sql = f'SELECT {names} FROM "{table.name}" ORDER BY {order}'
    # The driver's own tuples: a million rows need no wrapping.
    cursor: Any = connection.exec_driver_sql(sql).cursor
    return list(cursor.fetchall())


def _records(
    connection: Connection, table: Table, kind: type[RecordT]
) -> tuple[RecordT, ...]:
    columns = [c.name for c in table.columns if c.name != "position"]
    rows: list[Row] = _select(connection, table, columns)
    return tuple(record_from_row(kind, row) for row in rows)


def _groups(
    connection: Connection,
    table: Table,
    fields: tuple[Field, ...],
    kind: type[RecordT],
    names: Mapping[int, str],
) -> Mapping[str, tuple[RecordT, ...]]:
    columns = ["pack_id", *(f.name for f in schema.own_fields(fields))]
    rows = _select(connection, table, columns, order='"pack_id", "position"')
    groups: dict[str, list[RecordT]] = {}
    for key, *row in rows:
        if key not in names:
            what = f"A row of {table.name} belongs to a pack that is not there."
            raise DataError(Problem(what, GO_BACK, value=str(key)))
        record = record_from_row(kind, row, pack=names[key])
        groups.setdefault(names[key], []).append(record)
    return MappingProxyType({name: tuple(group) for name, group in groups.items()})
