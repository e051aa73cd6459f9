"""The demo library that is shipped with the program; its data is invented."""

from __future__ import annotations

from benchpack.errors import DataError, Severity
from benchpack.files.package import read_package
from benchpack.model.library import Library
from benchpack.places import datasets_folder


def demo_library() -> Library:
    """Give the demo library.

    Raises
    ------
    DataError
        When the shipped files are missing or damaged.
    """
    reading = read_package(datasets_folder() / "demo")
    errors = [p for p in reading.problems if p.severity is Severity.ERROR]
    if errors:
        raise DataError(*errors)
    return reading.library
