"""Storing what differs between two libraries."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import count
from typing import Any

import numpy as np
from numpy.typing import NDArray
from sqlalchemy import Connection

from benchpack.errors import DataError, Problem
from benchpack.files import schema
from benchpack.files.library_rows import (
    Row,
    column_cells,
    pack_rows,
    record_row,
)
from benchpack.files.library_writing import insert, insert_columns, many, store_list
from benchpack.files.study_storing import store_studies
from benchpack.model.fields import Field
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part

_LISTS = {"materials": schema.MATERIALS, "sources": schema.SOURCES}
_OF_PACK = {"parts": schema.PARTS, "joints": schema.JOINTS}


def store_all(connection: Connection, library: Library) -> None:
    """Store a library in place of whatever the tables hold."""
    for table in reversed(schema.METADATA.sorted_tables):
        if table is not schema.ABOUT:
            connection.exec_driver_sql(f'DELETE FROM "{table.name}"')
    rows = pack_rows(library.packs, range(len(library.packs)))
    insert(connection, schema.PACKS, rows)
    for name in _OF_PACK:
        _store_groups(connection, name, Library(), library)
    for name, table in _LISTS.items():
        store_list(connection, table, getattr(library, name))
    store_studies(connection, Library(), library)
    _store_about(connection, library)


def store_changes(connection: Connection, old: Library, new: Library) -> None:
    """Store what differs from `old`, which is what the tables hold, in `new`."""
    if old.packs is not new.packs:
        _store_packs(connection, old.packs, new.packs)
    for name in _OF_PACK:
        _store_groups(connection, name, old, new)
    for name, table in _LISTS.items():
        records = getattr(new, name)
        if getattr(old, name) is not records and getattr(old, name) != records:
            connection.exec_driver_sql(f'DELETE FROM "{table.name}"')
            store_list(connection, table, records)
    store_studies(connection, old, new)
    if (old.title, old.note) != (new.title, new.note):
        _store_about(connection, new)


def _store_about(connection: Connection, library: Library) -> None:
    sql = 'INSERT OR REPLACE INTO "about" ("key", "value") VALUES (?, ?)'
    many(connection, sql, [("title", library.title), ("note", library.note)])


def _store_packs(connection: Connection, old: PackTable, new: PackTable) -> None:
    if np.array_equal(old.ids, new.ids):
        rows = np.arange(len(new))
        _update_cells(connection, old, new, rows, rows)
        return
    gone = old.ids[~np.isin(old.ids, new.ids)]
    many(connection, 'DELETE FROM "packs" WHERE "id" = ?', _ones(gone))
    _, old_rows, new_rows = np.intersect1d(
        old.ids, new.ids, assume_unique=True, return_indices=True
    )
    _update_cells(connection, old, new, old_rows, new_rows)
    is_new = ~np.isin(new.ids, old.ids)
    added = np.flatnonzero(is_new)
    positions: Sequence[int] = added.tolist()
    if _only_appended(old, new, is_new):
        sql = 'SELECT coalesce(max("position"), -1) FROM "packs"'
        first = connection.exec_driver_sql(sql).scalar_one() + 1
        positions = range(first, first + len(added))
    else:
        sql = 'UPDATE "packs" SET "position" = ? WHERE "id" = ?'
        many(connection, sql, zip(count(), new.ids.tolist(), strict=False))
    insert(connection, schema.PACKS, pack_rows(new.selected(added), positions))


def _only_appended(old: PackTable, new: PackTable, is_new: NDArray[Any]) -> bool:
    kept = new.ids[~is_new]
    in_order = np.array_equal(old.ids[np.isin(old.ids, kept)], kept)
    return bool(in_order and not is_new[: len(kept)].any())


def _ones(values: NDArray[Any]) -> list[Row]:
    return [(value,) for value in values.tolist()]


def _update_cells(
    connection: Connection,
    old: PackTable,
    new: PackTable,
    old_rows: NDArray[np.intp],
    new_rows: NDArray[np.intp],
) -> None:
    """Write the columns that differ, in the packs in which any of them does."""
    changed: list[Field] = []
    touched = np.zeros(len(new_rows), dtype=bool)
    aligned = np.array_equal(old_rows, new_rows) and len(old) == len(new)
    for field in PACK_FIELDS:
        before, after = old.columns[field.name], new.columns[field.name]
        if before is after and aligned:
            continue
        differs = _differs(field, before[old_rows], after[new_rows])
        if differs.any():
            changed.append(field)
            touched |= differs
    if not changed:
        return
    rows = new_rows[touched]
    columns = [column_cells(f, new.columns[f.name][rows]) for f in changed]
    names = ", ".join(f'"{field.name}" = ?' for field in changed)
    sql = f'UPDATE "packs" SET {names} WHERE "id" = ?'
    many(connection, sql, zip(*columns, new.ids[rows].tolist(), strict=True))


def _differs(
    field: Field, before: NDArray[Any], after: NDArray[Any]
) -> NDArray[np.bool_]:
    differs = np.asarray(before != after, dtype=bool)
    if field.is_numeric:
        differs &= ~(np.isnan(before) & np.isnan(after))
    return differs


def _store_groups(
    connection: Connection, name: str, old: Library, new: Library
) -> None:
    """Write the parts or joints of each pack whose tuple, or whose key, differs."""
    before: Mapping[str, tuple[Part | Joint, ...]] = getattr(old, name)
    after: Mapping[str, tuple[Part | Joint, ...]] = getattr(new, name)
    if before is after and (
        old.packs is new.packs
        or (old.packs.ids is new.packs.ids and old.packs.names is new.packs.names)
    ):
        return
    gone: list[Row] = []
    rows: list[Row] = []
    for pack in {**before, **after}:
        was = (_key(old.packs, pack), before.get(pack, ()))
        now = (_key(new.packs, pack), after.get(pack, ()))
        if was[0] == now[0] and (was[1] is now[1] or was[1] == now[1]):
            continue
        if was[0] is not None and was[1]:
            gone.append((was[0],))
        if now[1]:
            rows.extend(_group_rows(pack, now[0], now[1]))
    table = _OF_PACK[name]
    many(connection, f'DELETE FROM "{table.name}" WHERE "pack_id" = ?', gone)
    insert_columns(connection, table, list(table.columns.keys())[1:], rows)


def _key(packs: PackTable, name: str) -> int | None:
    return int(packs.ids[packs.position(name)]) if packs.has(name) else None


def _group_rows(
    pack: str, key: int | None, records: Sequence[Part | Joint]
) -> Iterable[Row]:
    for position, record in enumerate(records):
        if key is None or record.pack != pack:
            raise DataError(
                Problem(
                    f"{record.name} belongs to {record.pack!r}, which is no pack here.",
                    "Add the pack first.",
                    column="pack",
                    value=record.pack,
                    record=record.name,
                )
            )
        yield (key, position, *record_row(record))
