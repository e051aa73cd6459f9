"""Faults of the disk and of file contents, said as problems a person can mend."""

from __future__ import annotations

import errno
from pathlib import Path

from benchpack.errors import DataError, Problem

_SAID = {
    errno.ENOENT: ("There is no such file or folder.", "Check the name and the place."),
    errno.EACCES: ("Access is denied.", "Check the rights of the file and its folder."),
    errno.EPERM: ("Access is denied.", "Check the rights of the file and its folder."),
    errno.EROFS: ("The place is read-only.", "Choose another place."),
    errno.ENOSPC: ("The disk is full.", "Free some space, then try again."),
    errno.EISDIR: ("This is a folder, not a file.", "Name a file in it."),
    errno.ENOTDIR: ("A part of the path is no folder.", "Check the path."),
    errno.ENAMETOOLONG: ("The file name is too long.", "Choose a shorter one."),
}


def fault(path: Path, what: str, remedy: str = "") -> DataError:
    """Give the error that says what is wrong with a file as a whole."""
    return DataError(Problem(what, remedy, source=str(path)))


def disk_fault(path: Path, error: OSError) -> DataError:
    """Give the error that says why the disk refused a file."""
    what, remedy = _SAID.get(
        error.errno or 0,
        (f"It cannot be used: {error.strerror or error}.", "Check the file."),
    )
    return fault(path, what, remedy)
