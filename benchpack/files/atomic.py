"""Files that are either written whole or not at all."""

from __future__ import annotations

import os
import secrets
import shutil
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from benchpack.errors import DataError
from benchpack.files.faults import check_ordinary, disk_fault, fault, is_folder


@contextmanager
def replacing(path: Path) -> Iterator[Path]:
    """Give a new empty file beside `path` that takes its place when the block ends.

    A link stays a link: the file it leads to is replaced.

    Parameters
    ----------
    path : Path
        The file to be; its folder has to be there.

    Raises
    ------
    DataError
        When the disk refuses, or a folder or a device stands there; what is there
        then stays as it was.
    """
    check_ordinary(path)
    if is_folder(path):
        raise fault(path, "This is a folder, not a file.", "Name a file in it.")
    target = Path(os.path.realpath(path))
    token = secrets.token_hex(4)
    fresh = target.with_name(f".{path.stem[:60]}.{token}{path.suffix}")
    try:
        fresh.open("xb").close()
        yield fresh
        _flush(fresh)
        with suppress(FileNotFoundError):
            shutil.copymode(target, fresh)
        fresh.replace(target)
    except OSError as error:
        raise disk_fault(path, error) from error
    except UnicodeEncodeError as error:
        raise unwritable(path, error) from error
    finally:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)


def unwritable(path: Path, error: UnicodeEncodeError) -> DataError:
    """Give the error for a text that no file can hold."""
    bad = str(error.object)[error.start : error.end]
    return fault(path, f"A text holds {bad!r}, which is no character.", "Remove it.")


def write_text(path: Path, text: str) -> None:
    """Write a UTF-8 text file whole, line ends as they are in the text.

    Raises
    ------
    DataError
        When the disk refuses or a text cannot be encoded.
    """
    with replacing(path) as fresh:
        fresh.write_bytes(text.encode("utf-8"))


def _flush(path: Path) -> None:
    with path.open("rb+") as stream:
        os.fsync(stream.fileno())
