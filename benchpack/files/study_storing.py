"""Storing what differs in the studies of two libraries, and in what is theirs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from sqlalchemy import Connection

from benchpack.errors import DataError, Problem
from benchpack.files import schema
from benchpack.files.library_rows import record_row
from benchpack.files.library_writing import insert_columns, many, store_list
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumptions import AssumptionSet
from benchpack.model.change import Change
from benchpack.model.library import Library

_OWNED: tuple[tuple[str, str], ...] = (
    ("changes", "changes"),
    ("assumption_sets", "assumption_sets"),
)
"""Attribute of a library and table of what belongs to its studies."""


def store_studies(connection: Connection, old: Library, new: Library) -> None:
    """Store the studies of `new` and what is theirs; the tables hold those of `old`.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    old, new : Library
        What the tables hold, and what they are to hold.

    Raises
    ------
    DataError
        When a change or a set of assumptions belongs to no study.
    """
    same = all(getattr(old, name) is getattr(new, name) for name, _ in _OWNED)
    if old.studies is new.studies and same:
        return
    _check_owners(new)
    before = [study.name for study in old.studies]
    after = [study.name for study in new.studies]
    if before == after:
        sql = 'SELECT "position" FROM "studies" ORDER BY "position"'
        keys = [row[0] for row in connection.exec_driver_sql(sql)]
        _update(connection, keys, old, new)
        for attribute, table in _OWNED:
            _replace_owned(
                connection,
                table,
                dict(zip(after, keys, strict=True)),
                getattr(old, attribute),
                getattr(new, attribute),
            )
        return
    # The key of a study is its place, so what is its own moves along with it.
    for _, table in _OWNED:
        connection.exec_driver_sql(f'DELETE FROM "{table}"')
    connection.exec_driver_sql('DELETE FROM "studies"')
    store_list(connection, schema.STUDIES, new.studies)
    for attribute, table in _OWNED:
        for key, name in enumerate(after):
            _insert(connection, table, key, getattr(new, attribute).get(name, ()))


def _replace_owned(
    connection: Connection,
    table: str,
    keys: Mapping[str, int],
    old: Mapping[str, Sequence[object]],
    new: Mapping[str, Sequence[object]],
) -> None:
    for name, key in keys.items():
        own = new.get(name, ())
        if old.get(name, ()) != own:
            sql = f'DELETE FROM "{table}" WHERE "study_id" = ?'
            many(connection, sql, [(key,)])
            _insert(connection, table, key, own)


def _check_owners(library: Library) -> None:
    studies = {study.name for study in library.studies}
    owned: Iterable[tuple[str, Change | AssumptionSet]] = (
        (name, record)
        for groups in (library.changes, library.assumption_sets)
        for name, records in groups.items()
        for record in records
    )
    for name, record in owned:
        if name not in studies or record.study != name:
            raise DataError(
                Problem(
                    f"{record.name} belongs to {record.study!r}, no study here.",
                    "Add the study first.",
                    column="study",
                    value=record.study,
                    record=record.name,
                )
            )


def _update(
    connection: Connection, keys: Sequence[int], old: Library, new: Library
) -> None:
    names = ", ".join(f'"{field.name}" = ?' for field in STUDY_FIELDS)
    sql = f'UPDATE "studies" SET {names} WHERE "position" = ?'
    differing = [
        (*record_row(study), key)
        for key, was, study in zip(keys, old.studies, new.studies, strict=True)
        if was is not study and was != study
    ]
    many(connection, sql, differing)


def _insert(
    connection: Connection, table: str, key: int, records: Sequence[object]
) -> None:
    made = schema.METADATA.tables[table]
    columns = list(made.columns.keys())[1:]
    rows = ((key, at, *record_row(record)) for at, record in enumerate(records))
    insert_columns(connection, made, columns, rows)
