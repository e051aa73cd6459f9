"""Faults of the disk and of file contents, said as problems a person can mend."""

from __future__ import annotations

import errno
import stat
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
    errno.ELOOP: ("The link leads round in a circle.", "Name the file itself."),
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


def mode_of(path: Path) -> int | None:
    """Give what stands at a path as `os.stat` codes it, None where nothing does.

    Raises
    ------
    DataError
        When the disk does not say, or no file can have that name.
    """
    try:
        return path.stat().st_mode
    except FileNotFoundError:
        return None
    except OSError as error:
        raise disk_fault(path, error) from error
    except ValueError as error:
        what = "No file can have this name."
        raise fault(path, what, "Remove the odd characters.") from error


def is_folder(path: Path) -> bool:
    """Tell whether a folder stands at a path.

    Raises
    ------
    DataError
        When the disk does not say.
    """
    return stat.S_ISDIR(mode_of(path) or 0)


def check_ordinary(path: Path) -> None:
    """Refuse what is neither file nor folder: it may never end, or must not go.

    Raises
    ------
    DataError
        For a device, a pipe or a socket.
    """
    mode = mode_of(path)
    if mode is not None and not (stat.S_ISREG(mode) or stat.S_ISDIR(mode)):
        what = "This is a device or a pipe, not a file."
        raise fault(path, what, "Name a file.")
