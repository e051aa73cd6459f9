"""Putting rows into the library's tables."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sqlalchemy import Connection, Table

from benchpack.files.library_rows import Row, record_row, table_insert


def insert(connection: Connection, table: Table, rows: Iterable[Row]) -> None:
    """Insert rows that hold every column of a table in order."""
    insert_columns(connection, table, list(table.columns.keys()), rows)


def insert_columns(
    connection: Connection, table: Table, columns: Sequence[str], rows: Iterable[Row]
) -> None:
    """Insert rows that hold some columns of a table."""
    many(connection, table_insert(table.name, columns), rows)


def many(connection: Connection, sql: str, rows: Iterable[Row]) -> None:
    """Run one statement for each row; nothing is run where there are none."""
    ready = list(rows)
    if ready:
        connection.exec_driver_sql(sql, ready)


def store_list(connection: Connection, table: Table, records: Sequence[object]) -> None:
    """Insert records with their place as the key."""
    rows = ((i, *record_row(record)) for i, record in enumerate(records))
    insert(connection, table, rows)
