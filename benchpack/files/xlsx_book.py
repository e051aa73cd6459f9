"""A new XLSX file: written whole or not at all."""

from __future__ import annotations

import io
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from benchpack.files.atomic import replacing, unwritable
from benchpack.files.faults import disk_fault

# What people wrote stays text: nothing is taken for a formula or a link.
_OPTIONS = {"strings_to_formulas": False, "strings_to_urls": False}


@contextmanager
def new_book(path: Path) -> Iterator[Any]:
    """Give a new workbook that takes the place of a file when the block ends.

    Parameters
    ----------
    path : Path
        The file; its folder has to be there.

    Raises
    ------
    DataError
        When the disk refuses or a text cannot be encoded; what is there then stays.
    """
    import xlsxwriter

    # Packed in memory: a disk that is full meets bytes, not an open archive.
    packed = io.BytesIO()
    with replacing(path) as fresh:
        book = xlsxwriter.Workbook(packed, _OPTIONS)
        try:
            yield book
        except UnicodeEncodeError as error:
            raise unwritable(path, error) from error
        finally:
            _close(book, path)
        fresh.write_bytes(packed.getvalue())


def _close(book: Any, path: Path) -> None:
    from xlsxwriter.exceptions import FileCreateError

    try:
        book.close()
    except FileCreateError as error:  # where its passing files find no room
        book.fileclosed = True  # or it is closed once more when it is let go
        cause = error.__context__
        if not isinstance(cause, OSError):
            raise
        # Lets go of the open archive while what it is packed into is still there.
        traceback.clear_frames(cause.__traceback__)
        raise disk_fault(path, cause) from error
