"""Data Packages: a library as CSV files with a description, open to any program.

Text is written as it is, also where a spreadsheet would take it for a formula, since
what is written has to come back equal; tables meant for spreadsheets are made
harmless in ``gap_csv`` and ``workbook_writing``.
"""

from __future__ import annotations

import csv
import json
import re
import stat
from collections.abc import Iterable, Iterator, Sequence
from contextlib import ExitStack
from dataclasses import replace
from pathlib import Path
from typing import Any

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.atomic import replacing
from benchpack.files.collecting import Reading, collect
from benchpack.files.delimited import read_delimited
from benchpack.files.descriptor import DESCRIPTOR, RESOURCES, package_descriptor
from benchpack.files.encodings import read_utf8
from benchpack.files.faults import disk_fault, fault, mode_of
from benchpack.files.mapping import known_heads
from benchpack.files.pack_texts import pack_texts
from benchpack.files.record_reading import Pace
from benchpack.files.record_text import record_texts
from benchpack.files.sheet import Sheet
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELDS

_NAMES = tuple(resource.name for resource in RESOURCES)


def read_package(path: Path, *, pace: Pace | None = None) -> Reading:
    """Read a Data Package, or a folder with some of its CSV files.

    Parameters
    ----------
    path : Path
        The description, its folder, or a folder with packs.csv and so on.
    pace : Pace or None
        Progress and stopping.

    Raises
    ------
    DataError
        When it is no package, or a file of it cannot be read.
    CancelledError
        When the person stopped it.
    """
    path = Path(path)
    mode = mode_of(path)
    if mode is None:
        raise fault(path, "There is no such file or folder.", "Check the name.")
    if not stat.S_ISDIR(mode):
        return _read_described(path, pace)
    descriptor = path / DESCRIPTOR
    if stat.S_ISREG(mode_of(descriptor) or 0):
        return _read_described(descriptor, pace)
    return _read_bare(path, pace)


def _read_described(path: Path, pace: Pace | None) -> Reading:
    described = _description(path)
    sheets: dict[str, Sheet] = {}
    problems: list[Problem] = []
    for resource in described["resources"]:
        name = str(resource.get("name", ""))
        if name not in _NAMES:
            problems.append(
                Problem(
                    f"The table {name!r} is none of a library and was left out.",
                    f"Tables of a library are: {', '.join(_NAMES)}.",
                    source=str(path),
                    severity=Severity.WARNING,
                )
            )
            continue
        if name in sheets:
            problems.append(_left_out(f"A second table {name!r}", path))
            continue
        sheets[name] = _sheet(path, resource)
    currency = str(described.get("currency") or "")
    if currency and not re.fullmatch("[A-Z]{3}", currency):
        problems.append(
            Problem(
                f"The currency {currency!r} is no code; that of the heads counts.",
                "Write three capital letters such as EUR.",
                source=str(path),
                column="currency",
                severity=Severity.WARNING,
            )
        )
        currency = ""
    reading = collect(
        sheets,
        source=str(path),
        title=str(described.get("title") or ""),
        note=str(described.get("description") or ""),
        currency=currency,
        pace=pace,
    )
    return replace(reading, problems=(*problems, *reading.problems))


def _left_out(what: str, place: Path) -> Problem:
    return Problem(
        f"{what} was left out.",
        "Join it with the first one, or read it on its own.",
        source=str(place),
        severity=Severity.WARNING,
    )


def _description(path: Path) -> dict[str, Any]:
    data, _ = read_utf8(path)
    try:
        described = json.loads(data)
    except (ValueError, RecursionError) as error:
        remedy = "Correct the description, or delete it to read the tables alone."
        raise fault(path, f"This is no valid JSON: {error}.", remedy) from error
    resources = described.get("resources") if isinstance(described, dict) else None
    if not isinstance(resources, list) or not all(
        isinstance(resource, dict) for resource in resources
    ):
        raise fault(
            path,
            "This describes no Data Package: it lists no resources.",
            "Open the datapackage.json of a package.",
        )
    return dict(described)


def _sheet(path: Path, resource: dict[str, Any]) -> Sheet:
    place = resource.get("path")
    if isinstance(place, list) and len(place) == 1:
        place = place[0]
    if not isinstance(place, str) or not _is_inside(path.parent, place):
        raise fault(
            path,
            f"The table {resource['name']!r} names no file beside the description.",
            "Give its path relative to the description.",
        )
    dialect = resource.get("dialect")
    delimiter = dialect.get("delimiter", ",") if isinstance(dialect, dict) else ","
    if not isinstance(delimiter, str) or not re.fullmatch(r"[^\r\n\"]?", delimiter):
        raise fault(
            path,
            f"The delimiter of the table {resource['name']!r} is {delimiter!r}.",
            "Give it as one character, such as a comma.",
        )
    return read_delimited(
        path.parent / place, recognised=known_heads, delimiter=delimiter
    )


def _is_inside(folder: Path, place: str) -> bool:
    # A description may come from anywhere: it must not reach other files.
    steps = place.replace("\\", "/").split("/")
    if not place or steps[0] == "" or ".." in steps or ":" in place:
        return False
    try:
        return (folder / place).resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError, ValueError):
        return False


def _read_bare(folder: Path, pace: Pace | None) -> Reading:
    try:
        listed = sorted(folder.iterdir())
    except OSError as error:
        raise disk_fault(folder, error) from error
    files: dict[str, Path] = {}
    problems = []
    for found in listed:
        name = found.stem.lower()
        if name not in _NAMES or found.suffix.lower() not in (".csv", ".tsv"):
            continue
        if files.setdefault(name, found) is not found:
            problems.append(_left_out(f"{found.name}, a second table {name!r},", found))
    if not files:
        raise fault(
            folder,
            "The folder holds neither datapackage.json nor any table of a library.",
            f"Tables are named {', '.join(f'{name}.csv' for name in _NAMES)}.",
        )
    sheets = {
        name: read_delimited(found, recognised=known_heads)
        for name, found in files.items()
    }
    reading = collect(
        sheets, source=str(folder), title=folder.name, verbatim=False, pace=pace
    )
    return replace(reading, problems=(*problems, *reading.problems))


def write_package(library: Library, folder: Path, *, currency: str) -> None:
    """Write a library as a Data Package.

    Parameters
    ----------
    library : Library
        What to write.
    folder : Path
        Where to; made when it is missing. Files of the same names are replaced, all
        of them or none.
    currency : str
        Code of the currency of all money.

    Raises
    ------
    DataError
        When the disk refuses, or a text cannot stand in a text file.
    """
    folder = Path(folder)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise disk_fault(folder, error) from error
    description = json.dumps(
        package_descriptor(library, currency), ensure_ascii=False, indent=2
    )
    with ExitStack() as stack:
        # First in is last out: the description appears when its tables are there.
        fresh = stack.enter_context(replacing(folder / DESCRIPTOR))
        fresh.write_bytes(description.encode("utf-8") + b"\n")
        for resource in RESOURCES:
            path = folder / f"{resource.name}.csv"
            fresh = stack.enter_context(replacing(path))
            heads = [field.header(currency=currency) for field in resource.fields]
            write_csv(fresh, path, heads, table_texts(library, resource.name))


def table_texts(library: Library, name: str) -> Iterator[Sequence[str]]:
    """Give one table of a library as rows of text.

    Parameters
    ----------
    library : Library
        The library.
    name : str
        Name of the table, one of `RESOURCES`.
    """
    if name == "packs":
        yield from pack_texts(library.packs, PACK_FIELDS)
        return
    held = getattr(library, name)
    if isinstance(held, tuple):
        records: Iterable[object] = held
    else:
        records = (record for group in held.values() for record in group)
    fields = next(r.fields for r in RESOURCES if r.name == name)
    for record in records:
        yield record_texts(fields, record)


def write_csv(
    fresh: Path, path: Path, heads: Sequence[str], rows: Iterable[Sequence[str]]
) -> None:
    """Write rows of text as CSV (RFC 4180), UTF-8 without mark.

    Parameters
    ----------
    fresh : Path
        The file to write to.
    path : Path
        The file it will be, for the message.
    heads : sequence of str
        The column heads.
    rows : iterable of sequence of str
        The rows.

    Raises
    ------
    DataError
        When a text holds a character that text files cannot hold.
    """
    with fresh.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.writer(stream, lineterminator="\r\n")
        writer.writerow(heads)
        for row in rows:
            if any("\0" in text for text in row):
                raise DataError(
                    Problem(
                        "A text holds the character NUL.",
                        "Remove it.",
                        source=str(path),
                        record=row[0].replace("\0", ""),
                    )
                )
            writer.writerow(row)
