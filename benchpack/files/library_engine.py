"""What writes to a library file: SQLAlchemy on the connection that reads it."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import StaticPool


def engine_on(driver: sqlite3.Connection) -> Engine:
    """Give an engine on a connection, whose transactions are begun in plain words.

    Parameters
    ----------
    driver : sqlite3.Connection
        With no isolation level of its own.
    """

    def connect() -> sqlite3.Connection:
        return driver

    engine = create_engine("sqlite://", creator=connect, poolclass=StaticPool)

    def start(connection: Connection) -> None:
        begin = connection.get_execution_options().get("begin", "BEGIN")
        connection.exec_driver_sql(begin)

    event.listen(engine, "begin", start)
    return engine


def edit(engine: Engine) -> AbstractContextManager[Connection]:
    """Begin a transaction that holds off other writers from its start."""
    return engine.execution_options(begin="BEGIN IMMEDIATE").begin()


@contextmanager
def drivers_errors() -> Iterator[None]:
    """Turn an error of SQLAlchemy into that of the driver beneath it."""
    try:
        yield
    except DBAPIError as error:
        if isinstance(error.orig, sqlite3.Error):
            raise error.orig from error
        raise
