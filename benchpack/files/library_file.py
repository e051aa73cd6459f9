"""The library file: one SQLite database that holds a whole library."""

from __future__ import annotations

import os
import shutil
import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cached_property
from pathlib import Path, PurePath
from types import TracebackType
from typing import TYPE_CHECKING

from benchpack.files.atomic import replacing
from benchpack.files.faults import fault
from benchpack.files.library_faults import check_head, journal_of, said
from benchpack.files.library_reading import read_library
from benchpack.files.stored_columns import APPLICATION_ID, SCHEMA_VERSION
from benchpack.model.library import Library

if TYPE_CHECKING:
    from sqlalchemy import Connection, Engine

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
    What writes is loaded when something is first written: reading needs a fifth of a
    second less without it.
    """

    def __init__(self, path: Path, *, read_only: bool) -> None:
        self.path = path
        self._lock = threading.RLock()
        self._read_only = read_only
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
        with self._lock, said(self.path), _reading(self._driver) as driver:
            library = read_library(driver, self.path)
            self._revision = _revision(driver)
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
        from benchpack.files.library_changes import store_changes

        with self._writing() as connection:
            store_changes(connection, old, new)

    def close(self) -> None:
        """Let go of the file."""
        with self._lock:
            self.__dict__.pop("_engine", None)
            driver = self.__dict__.pop("_driver", None)
            if driver is not None:
                driver.close()

    @cached_property
    def _driver(self) -> sqlite3.Connection:
        return _connected(self.path, read_only=self._read_only)

    @cached_property
    def _engine(self) -> Engine:
        from benchpack.files.library_engine import engine_on

        return engine_on(self._driver)

    @contextmanager
    def _writing(self) -> Iterator[Connection]:
        from benchpack.files.library_engine import drivers_errors, edit

        with self._lock, said(self.path), drivers_errors():
            self._check_in_place()
            with edit(self._engine) as connection:
                if _revision(self._driver) != self._revision:
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
        from benchpack.files.library_changes import store_all
        from benchpack.files.library_engine import drivers_errors, edit
        from benchpack.files.schema import METADATA

        with drivers_errors(), edit(self._engine) as connection:
            connection.exec_driver_sql(f"PRAGMA application_id = {APPLICATION_ID}")
            _mark_version(connection)
            METADATA.create_all(connection)
            connection.exec_driver_sql("INSERT INTO about VALUES ('revision', '1')")
            store_all(connection, library)

    def _check(self, *, read_only: bool) -> None:
        driver = self._driver
        kind = _pragma(driver, "application_id")
        version = _pragma(driver, "user_version")
        foreign = _first(
            driver, "SELECT name FROM sqlite_master WHERE type IN ('trigger', 'view')"
        )
        if kind != APPLICATION_ID or version < 1:
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
        if version > SCHEMA_VERSION:
            raise fault(
                self.path,
                "The library was saved by a newer version of Benchpack.",
                "Open it with that version.",
            )
        if version < SCHEMA_VERSION:
            self._bring_up_to_date(version, read_only=read_only)
        self._revision = _revision(self._driver)
        self._opened = self.path.stat()

    def _bring_up_to_date(self, version: int, *, read_only: bool) -> None:
        from benchpack.files.library_engine import drivers_errors, edit
        from benchpack.files.migrations import migrate

        if read_only:
            self._work_on_a_copy()
        else:
            # Before the lock: closing any handle of the file would let it go.
            name = f"{self.path.stem}.version-{version}{self.path.suffix}"
            shutil.copy2(self.path, self.path.with_name(name))
        with drivers_errors(), edit(self._engine) as connection:
            found = _pragma(self._driver, "user_version")
            migrate(connection, found=found, wanted=SCHEMA_VERSION)
            _mark_version(connection)

    def _work_on_a_copy(self) -> None:
        """Go on with a copy in memory, which can be changed without the file."""
        copy = sqlite3.connect(
            ":memory:", isolation_level=None, check_same_thread=False
        )
        self._driver.backup(copy)
        self.close()
        self.__dict__["_driver"] = copy


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


def _connected(path: Path, *, read_only: bool) -> sqlite3.Connection:
    mode = "ro" if read_only else "rw"
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


@contextmanager
def _reading(driver: sqlite3.Connection) -> Iterator[sqlite3.Connection]:
    """Hold one state of all tables while they are read."""
    driver.execute("BEGIN")
    try:
        yield driver
    finally:
        driver.execute("ROLLBACK")


def _first(driver: sqlite3.Connection, sql: str) -> object:
    row = driver.execute(sql).fetchone()
    return None if row is None else row[0]


def _pragma(driver: sqlite3.Connection, name: str) -> int:
    return int(driver.execute(f"PRAGMA {name}").fetchone()[0])


def _mark_version(connection: Connection) -> None:
    connection.exec_driver_sql(f"PRAGMA user_version = {SCHEMA_VERSION}")


def _revision(driver: sqlite3.Connection) -> int:
    sql = "SELECT CAST(value AS INTEGER) FROM about WHERE key = 'revision'"
    row = driver.execute(sql).fetchone()
    return int(row[0] or 0) if row else 0
