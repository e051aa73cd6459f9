"""Reading a whole library out of its tables."""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any, TypeVar

import numpy as np

from benchpack.errors import DataError, Problem
from benchpack.files.library_rows import (
    GO_BACK,
    Row,
    packs_from_rows,
    record_from_row,
)
from benchpack.files.pack_reading import impossible
from benchpack.files.stored_columns import own_fields
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumption_fields import SET_FIELDS
from benchpack.model.assumptions import AssumptionSet
from benchpack.model.change import CHANGE_FIELDS, Change
from benchpack.model.fields import Field
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.library import Library
from benchpack.model.material import (
    MATERIAL_FIELDS,
    SOURCE_FIELDS,
    Material,
    Source,
)
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.study import Study

RecordT = TypeVar("RecordT")


def read_library(connection: sqlite3.Connection, path: Path) -> Library:
    """Give the library that a database holds.

    Parameters
    ----------
    connection : sqlite3.Connection
        In a transaction, so that all tables are of one state.
    path : Path
        The file, for the problems.

    Raises
    ------
    DataError
        When a row holds what its record refuses.
    """
    columns = ["id", "position", *(field.name for field in PACK_FIELDS)]
    about = dict(_select(connection, "about", ["key", "value"], order="key"))
    try:
        packs = packs_from_rows(_select(connection, "packs", columns))
        _check_packs(packs)
        names = dict(zip(packs.ids.tolist(), packs.names.tolist(), strict=True))
        of_pack = _Owners("pack", names)
        studies = _select(connection, "studies", ["position", "name"])
        _check_once("studies", [name for _, name in studies])
        of_study = _Owners("study", dict(studies))
        return Library(
            packs=packs,
            parts=_groups(connection, "parts", PART_FIELDS, Part, of_pack),
            joints=_groups(connection, "joints", JOINT_FIELDS, Joint, of_pack),
            materials=_records(connection, "materials", MATERIAL_FIELDS, Material),
            sources=_records(connection, "sources", SOURCE_FIELDS, Source),
            studies=_records(connection, "studies", STUDY_FIELDS, Study),
            changes=_groups(connection, "changes", CHANGE_FIELDS, Change, of_study),
            assumption_sets=_groups(
                connection, "assumption_sets", SET_FIELDS, AssumptionSet, of_study
            ),
            title=about.get("title", ""),
            note=about.get("note", ""),
        )
    except DataError as error:
        problems = (problem.at(source=str(path)) for problem in error.problems)
        raise DataError(*problems) from error


def _check_packs(packs: PackTable) -> None:
    """Refuse what another program may have put into the table of packs."""
    names = packs.names.tolist()
    _check_once("packs", names)
    for at in np.flatnonzero(impossible(packs.columns)).tolist():
        for name, column in packs.columns.items():
            field = PACK_FIELD[name]
            known = field.is_numeric and column[at] == column[at]
            refusal = field.refusal(float(column[at])) if known else None
            if refusal is not None:
                raise DataError(refusal.at(record=names[at]))
        # Making the record raises what is wrong with two figures together.
        packs[at]


def _check_once(kind: str, names: Sequence[str]) -> None:
    if len(set(names)) < len(names):
        twice = next(name for name, times in Counter(names).items() if times > 1)
        what = f"Two {kind} are called {twice!r}."
        raise DataError(Problem(what, GO_BACK, column="name", record=twice))


def _select(
    connection: sqlite3.Connection,
    table: str,
    columns: Sequence[str],
    *,
    order: str = '"position"',
) -> list[Any]:
    # A bare name that is no column would be read as a text in quotation marks.
    names = ", ".join(f'"{table}"."{name}"' for name in columns)
    sql = f'SELECT {names} FROM "{table}" ORDER BY {order}'
    return connection.execute(sql).fetchall()


def _records(
    connection: sqlite3.Connection,
    table: str,
    fields: tuple[Field, ...],
    kind: type[RecordT],
) -> tuple[RecordT, ...]:
    rows: list[Row] = _select(connection, table, [field.name for field in fields])
    return tuple(record_from_row(kind, row) for row in rows)


@dataclass(frozen=True, slots=True)
class _Owners:
    """What the rows of a table belong to: ``pack`` or ``study``, names by key."""

    kind: str
    names: Mapping[int, str]


def _groups(
    connection: sqlite3.Connection,
    table: str,
    fields: tuple[Field, ...],
    kind: type[RecordT],
    owners: _Owners,
) -> Mapping[str, tuple[RecordT, ...]]:
    owner = f"{owners.kind}_id"
    columns = [owner, *(f.name for f in own_fields(fields))]
    rows = _select(connection, table, columns, order=f'"{owner}", "position"')
    groups: dict[str, list[RecordT]] = {}
    for key, *row in rows:
        name = owners.names.get(key)
        if name is None:
            what = f"A row of {table} belongs to a {owners.kind} that is not there."
            raise DataError(Problem(what, GO_BACK, value=str(key)))
        record = record_from_row(kind, row, **{owners.kind: name})
        groups.setdefault(name, []).append(record)
    return MappingProxyType({name: tuple(group) for name, group in groups.items()})
