"""What SQLite refuses, said as problems a person can mend."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from benchpack.errors import DataError
from benchpack.files.atomic import unwritable
from benchpack.files.faults import check_ordinary, disk_fault, fault

_HEAD = b"SQLite format 3\0"

_SAID = {
    sqlite3.SQLITE_BUSY: (
        "The library is open elsewhere.",
        "Close it in the other program, then try again.",
    ),
    sqlite3.SQLITE_READONLY: (
        "The library is read-only.",
        "Change the rights of the file and its folder, or work on a copy.",
    ),
    sqlite3.SQLITE_FULL: ("The disk is full.", "Free some space, then try again."),
    sqlite3.SQLITE_IOERR: ("The disk gave an error.", "Try a copy on another disk."),
    sqlite3.SQLITE_CORRUPT: (
        "The library is damaged.",
        "Go back to a copy of the file.",
    ),
    sqlite3.SQLITE_NOTADB: (
        "This is no library, or it is damaged.",
        "Open a file that was saved as a library.",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        "The library cannot be opened.",
        "Check that the folder is there and may be written to.",
    ),
}
_SAID[sqlite3.SQLITE_LOCKED] = _SAID[sqlite3.SQLITE_BUSY]


def sqlite_fault(path: Path, error: BaseException) -> DataError:
    """Give the error that says what SQLite complained of."""
    code = getattr(error, "sqlite_errorcode", 0) or 0
    what, remedy = _SAID.get(
        code & 0xFF,
        (f"The library refuses this: {error}.", "Go back to a copy of the file."),
    )
    return fault(path, what, remedy)


@contextmanager
def said(path: Path) -> Iterator[None]:
    """Turn complaints of SQLite and of the disk into a DataError."""
    try:
        yield
    except sqlite3.Error as error:
        raise sqlite_fault(path, error) from error
    except UnicodeEncodeError as error:
        raise unwritable(path, error) from error
    except OSError as error:
        raise disk_fault(path, error) from error


def check_head(path: Path) -> None:
    """Refuse a file that is missing, empty, of another kind, or cut short.

    Raises
    ------
    DataError
        With the file as its place.
    """
    check_ordinary(path)
    with said(path):
        size = path.stat().st_size
        with path.open("rb") as stream:
            head = stream.read(100)
    if size == 0:
        raise fault(path, "The file is empty.", "Go back to a copy of the library.")
    if not head.startswith(_HEAD):
        raise fault(path, *_SAID[sqlite3.SQLITE_NOTADB])
    page = int.from_bytes(head[16:18], "big")
    expected = int.from_bytes(head[28:32], "big") * (65536 if page == 1 else page)
    # A journal beside the file means SQLite has yet to bring the size in order.
    if size < expected and not journal_of(path.resolve()).exists():
        raise fault(path, "The library is cut short.", "Go back to a copy of the file.")


def journal_of(path: Path) -> Path:
    """Give the file in which SQLite keeps what an unfinished edit overwrote."""
    return path.with_name(path.name + "-journal")
