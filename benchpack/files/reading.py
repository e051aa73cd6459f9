"""Any file that holds a library: told apart by contents, written by ending."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from benchpack.errors import Problem, RequestError, Severity
from benchpack.files.collecting import Reading, collect
from benchpack.files.delimited import read_delimited
from benchpack.files.descriptor import DESCRIPTOR, RESOURCES
from benchpack.files.encodings import kind_of
from benchpack.files.faults import fault, is_folder
from benchpack.files.mapping import known_heads, suggest_mapping
from benchpack.files.package import read_package, table_texts, write_csv, write_package
from benchpack.files.record_reading import Cancelled, Pace, Progress
from benchpack.files.sheet import Sheet
from benchpack.model.library import Library

__all__ = ["Reading", "read_any", "write_any"]


_PACKS = RESOURCES[0]


def read_any(
    path: Path,
    *,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Reading:
    """Read a library from any kind of file, whatever its ending.

    Parameters
    ----------
    path : Path
        A library file, a Data Package or its folder, a table of packs as CSV or TSV,
        or a workbook. A workbook with sheets named packs, parts, joints, materials,
        sources, studies is read whole, of any other the sheet that looks like packs.
    progress : callable or None
        Told ``(done, total, words)``; a total of 0 means not known.
    cancelled : callable or None
        Gives True to stop.

    Raises
    ------
    DataError
        When it cannot be read.
    CancelledError
        When the person stopped it.
    """
    path = Path(path)
    pace = Pace(progress, cancelled)
    if is_folder(path):
        return read_package(path, pace=pace)
    kind = kind_of(path)
    if kind == "database":
        return _read_library_file(path)
    if kind == "workbook":
        return _read_workbook(path, pace)
    if kind != "text":
        remedy = "Choose a library, a Data Package, CSV, XLSX or ODS."
        raise fault(path, f"This is a {kind}, not a table.", remedy)
    if _looks_like_json(path):
        return read_package(path, pace=pace)
    sheet = read_delimited(path, recognised=known_heads)
    return _collected({"packs": sheet}, path, pace)


def _collected(sheets: dict[str, Sheet], path: Path, pace: Pace) -> Reading:
    return collect(sheets, source=str(path), title=path.stem, verbatim=False, pace=pace)


def _read_library_file(path: Path) -> Reading:
    from benchpack.files.library_file import LibraryFile

    with LibraryFile.open(path, read_only=True) as store:
        library = store.read()
    currency = library.studies[0].currency if library.studies else ""
    return Reading(library, source=str(path), currency=currency)


def _looks_like_json(path: Path) -> bool:
    with path.open("rb") as stream:
        head = stream.read(64)
    return head.removeprefix(b"\xef\xbb\xbf").lstrip()[:1] == b"{"


def _read_workbook(path: Path, pace: Pace) -> Reading:
    from benchpack.files.workbook_reading import Workbook

    pace.step(0, 0, f"Loading {path.name}")
    book = Workbook(path)
    named = {name.strip().casefold(): name for name in book.names}
    known = [r.name for r in RESOURCES if r.name in named]
    tables = book.tables(recognised=known_heads)
    if _PACKS.name in known:
        wanted = {named[name]: name for name in known}
        sheets = {wanted[t.name]: t for t in tables if t.name in wanted}
        others = [table for table in tables if table.name not in wanted]
        remedy = (
            f"Sheets of a library are named {', '.join(r.name for r in RESOURCES)}."
        )
    else:
        sheets = {_PACKS.name: tables[0]}
        others = [table for table in tables[1:] if _holds_packs(table)]
        remedy = f"Copy its rows into the sheet {tables[0].name!r}, or save it alone."
    reading = _collected(sheets, path, pace)
    left_out = (
        Problem(
            "The sheet was left out.",
            remedy,
            source=table.source,
            severity=Severity.WARNING,
        )
        for table in others
    )
    return replace(reading, problems=(*left_out, *reading.problems))


def _holds_packs(table: Sheet) -> bool:
    meant = suggest_mapping(table, _PACKS.fields)
    return all(
        meant.column_of(field.name) is not None
        for field in _PACKS.fields
        if field.required
    )


def write_any(library: Library, path: Path, *, currency: str) -> None:
    """Write a library in the form that the ending of a path asks for.

    Parameters
    ----------
    library : Library
        What to write.
    path : Path
        ``NAME.benchpack`` for a library file, ``datapackage.json`` or a folder for a
        Data Package, ``NAME.xlsx`` for a workbook, ``NAME.csv`` for the packs alone.
        What is there already is replaced.
    currency : str
        Code of the currency of all money.

    Raises
    ------
    RequestError
        For an ending that means no form.
    DataError
        When it cannot be written.
    """
    path = Path(path)
    ending = path.suffix.lower()
    if is_folder(path) or not ending:
        write_package(library, path, currency=currency)
    elif path.name == DESCRIPTOR:
        write_package(library, path.parent, currency=currency)
    elif ending == ".benchpack":
        from benchpack.files.library_file import LibraryFile

        LibraryFile.create(path, library, replace=True).close()
    elif ending == ".xlsx":
        from benchpack.files.workbook_writing import write_workbook

        write_workbook(library, path, currency=currency)
    elif ending == ".csv":
        _write_packs(library, path, currency)
    else:
        raise RequestError(
            f"{path.name}: nothing is written with the ending {ending}. Use "
            "NAME.benchpack, datapackage.json, a folder, NAME.xlsx or NAME.csv."
        )


def _write_packs(library: Library, path: Path, currency: str) -> None:
    from benchpack.files.atomic import replacing

    heads = [field.header(currency=currency) for field in _PACKS.fields]
    with replacing(path) as fresh:
        write_csv(fresh, path, heads, table_texts(library, _PACKS.name))
