"""Small files for the tests of loose tables."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from benchpack.errors import Problem, Severity
from benchpack.files.tables import TableReading, read_packs, read_sheet


def written(folder: Path, text: str, *, encoding: str = "utf-8") -> Path:
    """Write a text exactly as it is and give its path."""
    path = folder / "packs.csv"
    path.write_bytes(text.encode(encoding))
    return path


def packs_of(folder: Path, text: str, **options: Any) -> TableReading:
    """Read packs from a text."""
    return read_packs(read_sheet(written(folder, text)), **options)


def errors(reading: TableReading) -> list[Problem]:
    """Give the problems that refuse a row."""
    return [p for p in reading.problems if p.severity is Severity.ERROR]


def places(reading: TableReading) -> list[tuple[int | None, str, str]]:
    """Give row, column and value of each error."""
    return [(p.row, p.column, p.value) for p in errors(reading)]


def names(reading: TableReading) -> list[str]:
    """Give the names of the accepted packs."""
    return [str(name) for name in reading.packs.names]
