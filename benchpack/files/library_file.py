"""The library file: one SQLite database that holds a whole library."""

from __future__ import annotations

import os
import shutil
import sqlite3
import threading
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path, PurePath
from types import TracebackType

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.pool import StaticPool

from benchpack.files import migrations, schema
from benchpack.files.atomic import replacing
from benchpack.files.faults import fault
from benchpack.files.library_changes import store_all, store_changes
from benchpack.files.library_faults import check_head, journal_of, said
from benchpack.files.library_reading import read_library
from benchpack.model.library import Library

BUSY_SECONDS = 2.0
"""How long another program's edit is waited for."""

_CHANGED = (
    "The library was changed elsewhere since it was opened.",
    "Open it again to see the changes, then repeat this one.",
)
_GONE = (
    "The file was moved, deleted or replaced since the library was opened.",
    "Save a copy under another name, then open that.",
)


class LibraryFile:
    """An open library file; make one with `create` or `open`.

    Each write is one transaction: after it returns the change is on disk, and a
    crash in the middle leaves the state before. Reading leaves the file free for
    other programs; of two programs that write, the second is told to open it again.
    """

    def __init__(self, path: Path, *, read_only: bool) -> None:
        self.path = path
        self._lock = threading.RLock()
        self._engine = _engine(path, read_only=read_only)
        self._revision = 0
        self._opened: os.stat_result | None = None

    @classmethod
    def create(
        cls, path: Path, library: Library, *, replace: bool = False
    ) -> LibraryFile:
        """Write a library to a new file and open it.

        Parameters
        ----------
        path : Path
            The file to be.
        library : Library
            What it holds.
        replace : bool
            True to take the place of a file that is there.

        Raises
        ------
        DataError
            When the file is there or the disk refuses; an old file then stays as it
            was.
        """
        path = Path(path)
        if path.exists() and not replace:
            raise fault(path, "The file is there already.", "Choose another name.")
        with said(path), replacing(path) as fresh:
            store = cls(fresh, read_only=False)
            try:
                store._lay_out(library)
            finally:
                store.close()
            # The journal of the old file must not be played back into the new one.
            journal_of(path.resolve()).unlink(missing_ok=True)
        return cls.open(path)

    @classmethod
    def open(cls, path: Path, *, read_only: bool = False) -> LibraryFile:
        """Open a library file, bringing an older one up to date.

        Parameters
        ----------
        path : Path
            The file.
        read_only : bool
            True to leave the file as it is; nothing can be written then.

        Raises
        ------
        DataError
            When it is no library, is damaged, newer than this program, or cannot be
            reached.
        """
        path = Path(path)
        check_head(path)
        store = cls(path, read_only=read_only)
        try:
            with said(path):
                store._check(read_only=read_only)
        except BaseException:
            store.close()
            raise
        return store

    def __enter__(self) -> LibraryFile:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def read(self) -> Library:
        """Give the library that the file holds.

        Raises
        ------
        DataError
            When the file is damaged or holds what a record refuses.
        """
        with self._lock, said(self.path), self._engine.begin() as connection:
            library = read_library(connection, self.path)
            self._revision = _revision(connection)
        return library

    def write(self, old: Library, new: Library) -> None:
        """Store what differs between two libraries in one transaction.

        Parameters
        ----------
        old : Library
            What the file holds.
        new : Library
            What it is to hold.

        Raises
        ------
        DataError
            When it cannot be stored; the file then stays as it was.
        """
        with self._writing() as connection:
            store_changes(connection, old, new)

    def replace_all(self, library: Library) -> None:
        """Store a library in place of everything the file holds.

        Raises
        ------
        DataError
            When it cannot be stored; the file then stays as it was.
        """
        with self._writing() as connection:
            store_all(connection, library)

    def close(self) -> None:
        """Let go of the file."""
        with self._lock:
            self._engine.dispose()

    @contextmanager
    def _writing(self) -> Iterator[Connection]:
        with self._lock, said(self.path):
            self._check_in_place()
            with _edit(self._engine) as connection:
                if _revision(connection) != self._revision:
                    raise fault(self.path, *_CHANGED)
                yield connection
                connection.exec_driver_sql(
                    "UPDATE about SET value = value + 1 WHERE key = 'revision'"
                )
            self._revision += 1

    def _check_in_place(self) -> None:
        """Refuse to write into a file that its path no longer leads to."""
        if self._opened is None:
            return
        try:
            there = os.path.samestat(self._opened, self.path.stat())
        except FileNotFoundError:
            there = False
        if not there:
            raise fault(self.path, *_GONE)

    def _lay_out(self, library: Library) -> None:
        with _edit(self._engine) as connection:
            connection.exec_driver_sql(
                f"PRAGMA application_id = {schema.APPLICATION_ID}"
            )
            _mark_version(connection)
            schema.METADATA.create_all(connection)
            connection.exec_driver_sql("INSERT INTO about VALUES ('revision', '1')")
            store_all(connection, library)

    def _check(self, *, read_only: bool) -> None:
        with self._engine.connect() as connection:
            kind = _pragma(connection, "application_id")
            version = _pragma(connection, "user_version")
            foreign = connection.exec_driver_sql(
                "SELECT name FROM sqlite_master WHERE type IN ('trigger', 'view')"
            ).scalar()
        if kind != schema.APPLICATION_ID or version < 1:
            raise fault(
                self.path,
                "This database is no library.",
                "Open a file that was saved as a library.",
            )
        if foreign is not None:
            raise fault(
                self.path,
                f"The library holds {foreign!r}, which would act on every edit.",
                "Have it removed, or go back to a copy of the file.",
            )
        if version > schema.SCHEMA_VERSION:
            raise fault(
                self.path,
                "The library was saved by a newer version of Benchpack.",
                "Open it with that version.",
            )
        if version < schema.SCHEMA_VERSION:
            self._bring_up_to_date(version, read_only=read_only)
        with self._engine.begin() as connection:
            self._revision = _revision(connection)
        self._opened = self.path.stat()

    def _bring_up_to_date(self, version: int, *, read_only: bool) -> None:
        if read_only:
            self._engine = _copy_in_memory(self._engine)
        else:
            # Before the lock: closing any handle of the file would let it go.
            name = f"{self.path.stem}.version-{version}{self.path.suffix}"
            shutil.copy2(self.path, self.path.with_name(name))
        with _edit(self._engine) as connection:
            found = _pragma(connection, "user_version")
            migrations.migrate(connection, found=found, wanted=schema.SCHEMA_VERSION)
            _mark_version(connection)


def database_uri(path: PurePath) -> str:
    """Give the address of a database file as SQLite takes it.

    Parameters
    ----------
    path : PurePath
        An absolute path; one on a network share gets an empty authority, since
        SQLite takes no other.
    """
    uri = path.as_uri()
    return (
        uri if uri.startswith("file:///") else f"file:////{uri.removeprefix('file://')}"
    )


def _engine(path: Path, *, read_only: bool) -> Engine:
    mode = "ro" if read_only else "rw"

    def connect() -> sqlite3.Connection:
        connection = sqlite3.connect(
            f"{database_uri(path.absolute())}?mode={mode}",
            uri=True,
            timeout=BUSY_SECONDS,
            isolation_level=None,
            check_same_thread=False,
        )
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA trusted_schema = OFF")
        connection.execute("PRAGMA synchronous = FULL")
        if not read_only:
            connection.execute("PRAGMA journal_mode = DELETE")
        return connection

    return _with_begin(connect)


def _with_begin(connect: Callable[[], sqlite3.Connection]) -> Engine:
    engine = create_engine("sqlite://", creator=connect, poolclass=StaticPool)

    def start(connection: Connection) -> None:
        begin = connection.get_execution_options().get("begin", "BEGIN")
        connection.exec_driver_sql(begin)

    event.listen(engine, "begin", start)
    return engine


def _edit(engine: Engine) -> AbstractContextManager[Connection]:
    """Begin a transaction that holds off other writers from its start."""
    return engine.execution_options(begin="BEGIN IMMEDIATE").begin()


def _copy_in_memory(engine: Engine) -> Engine:
    """Give an engine on a copy that can be changed without touching the file."""
    copy = sqlite3.connect(":memory:", isolation_level=None, check_same_thread=False)
    with engine.connect() as connection:
        source = connection.connection.driver_connection
        if not isinstance(source, sqlite3.Connection):
            raise TypeError(source)
        connection.rollback()
        source.backup(copy)
    engine.dispose()

    def connect() -> sqlite3.Connection:
        return copy

    return _with_begin(connect)


def _pragma(connection: Connection, name: str) -> int:
    return int(connection.exec_driver_sql(f"PRAGMA {name}").scalar_one())


def _mark_version(connection: Connection) -> None:
    connection.exec_driver_sql(f"PRAGMA user_version = {schema.SCHEMA_VERSION}")


def _revision(connection: Connection) -> int:
    sql = "SELECT CAST(value AS INTEGER) FROM about WHERE key = 'revision'"
    found = connection.exec_driver_sql(sql)
    return int(found.scalar() or 0)
