"""Storing what differs in the studies of two libraries, and in their changes."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import Connection

from benchpack.errors import DataError, Problem
from benchpack.files import schema
from benchpack.files.library_rows import record_row
from benchpack.files.library_writing import insert_columns, many, store_list
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.change import Change
from benchpack.model.library import Library


def store_studies(connection: Connection, old: Library, new: Library) -> None:
    """Store the studies and changes of `new`; the tables hold those of `old`.

    Parameters
    ----------
    connection : Connection
        In a transaction.
    old, new : Library
        What the tables hold, and what they are to hold.

    Raises
    ------
    DataError
        When a change belongs to no study.
    """
    if old.studies is new.studies and old.changes is new.changes:
        return
    _check_owners(new)
    before = [study.name for study in old.studies]
    after = [study.name for study in new.studies]
    if before == after:
        sql = 'SELECT "position" FROM "studies" ORDER BY "position"'
        keys = [row[0] for row in connection.exec_driver_sql(sql)]
        _update(connection, keys, old, new)
        for key, name in zip(keys, after, strict=True):
            own = new.changes_of(name)
            if old.changes_of(name) != own:
                sql = 'DELETE FROM "changes" WHERE "study_id" = ?'
                many(connection, sql, [(key,)])
                _insert(connection, key, own)
        return
    # The key of a study is its place, so its changes move along with it.
    connection.exec_driver_sql('DELETE FROM "changes"')
    connection.exec_driver_sql('DELETE FROM "studies"')
    store_list(connection, schema.STUDIES, new.studies)
    for key, name in enumerate(after):
        _insert(connection, key, new.changes_of(name))


def _check_owners(library: Library) -> None:
    studies = {study.name for study in library.studies}
    for name, changes in library.changes.items():
        for change in changes:
            if name not in studies or change.study != name:
                what = f"{change.name} belongs to {change.study!r}, no study here."
                raise DataError(
                    Problem(
                        what,
                        "Add the study first.",
                        column="study",
                        value=change.study,
                        record=change.name,
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


def _insert(connection: Connection, key: int, changes: Sequence[Change]) -> None:
    columns = list(schema.CHANGES.columns.keys())[1:]
    rows = ((key, at, *record_row(change)) for at, change in enumerate(changes))
    insert_columns(connection, schema.CHANGES, columns, rows)
