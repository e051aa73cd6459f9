"""Opening: a library file as it is, anything else as a new library file."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from pathlib import Path

from benchpack.errors import DataError, Problem
from benchpack.files.library_file import LibraryFile
from benchpack.model.library import Library
from benchpack.places import data_folder
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import State

LIBRARY_ENDING = ".benchpack"
"""Ending of a library file."""

_MOST_LETTERS, _MOST_BYTES = 80, 160
_DEVICES = {"CON", "PRN", "AUX", "NUL"}
_DEVICES |= {f"{port}{number}" for port in ("COM", "LPT") for number in range(1, 10)}


@dataclass(frozen=True, slots=True)
class Opened:
    """A document and what was noticed while it was opened.

    Parameters
    ----------
    document : Document
        The open document.
    problems : tuple of Problem
        What could not be opened or taken over.
    """

    document: Document
    problems: tuple[Problem, ...] = ()


def is_library_file(path: Path) -> bool:
    """Tell by its contents whether a file is a database that can be a library."""
    try:
        with path.open("rb") as file:
            return file.read(16) == b"SQLite format 3\x00"
    except OSError:
        return path.suffix == LIBRARY_ENDING


def open_library(path: Path) -> Document:
    """Open a library file.

    Raises
    ------
    DataError
        When it is missing, not a library, newer than the program or locked.
    """
    store = LibraryFile.open(path)
    try:
        library = store.read()
    except DataError:
        store.close()
        raise
    return Document(State(library, library.first_study().name), store, path=path)


def new_library(library: Library, path: Path) -> Document:
    """Write a library to a new file and open it.

    Raises
    ------
    DataError
        When the file exists or cannot be written.
    """
    LibraryFile.create(path, library).close()
    return open_library(path)


def file_stem(name: str) -> str:
    """Give a name that can stand at the head of a file's name, on any system.

    Parameters
    ----------
    name : str
        Any name.

    Examples
    --------
    >>> file_stem("../81: kWh?"), file_stem("con"), file_stem("...")
    ('81 kWh', '_con', 'Library')
    """
    plain = re.sub(r"[^\w.()+-]+", " ", unicodedata.normalize("NFC", name))
    # A name may take 255 bytes with what stands behind it; a letter takes up to four.
    cut = plain.strip(" .")[:_MOST_LETTERS].encode()[:_MOST_BYTES]
    stem = cut.decode(errors="ignore").rstrip(" .")
    if stem.partition(".")[0].rstrip().upper() in _DEVICES:
        return f"_{stem}"
    return stem or "Library"


def free_path(name: str) -> Path:
    """Give a path in the person's data folder that no file has yet.

    Parameters
    ----------
    name : str
        What the library is called.
    """
    stem = file_stem(name)
    folder = data_folder()
    path = folder / f"{stem}{LIBRARY_ENDING}"
    number = 2
    while path.exists():
        path = folder / f"{stem} {number}{LIBRARY_ENDING}"
        number += 1
    return path


def demo_path() -> Path:
    """Give where the person's own copy of the demo lies."""
    return data_folder() / f"Demo{LIBRARY_ENDING}"


def open_demo() -> Document:
    """Open the person's copy of the demo, made on first need.

    Raises
    ------
    DataError
        When it cannot be written or read.
    """
    path = demo_path()
    if path.exists():
        return open_library(path)
    from benchpack.files.demo import demo_library

    return new_library(demo_library(), path)


def open_last(settings: Settings) -> Opened:
    """Open the library that was open last, or the demo.

    Parameters
    ----------
    settings : Settings
        With the recent files.

    Returns
    -------
    Opened
        With a problem when the last library could not be opened.

    Raises
    ------
    DataError
        When the demo cannot be opened either.
    """
    problems: tuple[Problem, ...] = ()
    for text in settings.recent_files[:1]:
        path = Path(text)
        try:
            return Opened(open_library(path))
        except DataError as error:
            note = Problem(
                "The library that was open last could not be opened; this is the demo.",
                "Open it with Ctrl+O when it is back.",
                source=str(path),
            )
            problems = (*error.problems, note)
    return Opened(open_demo(), problems)
