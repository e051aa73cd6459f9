"""Any file that holds a library: told apart by contents, written by ending."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from benchpack.errors import DataError, Problem, RequestError, Severity
from benchpack.files.collecting import Reading, collect
from benchpack.files.delimited import read_delimited
from benchpack.files.descriptor import DESCRIPTOR, RESOURCES
from benchpack.files.encodings import kind_of
from benchpack.files.faults import fault, is_folder
from benchpack.files.mapping import known_heads
from benchpack.files.package import read_package, table_texts, write_csv, write_package
from benchpack.files.record_reading import Cancelled, Pace, Progress
from benchpack.files.sheet import Sheet
from benchpack.files.table_kinds import (
    JOINTS,
    PACKS,
    PARTS,
    holds_packs,
    names_packs,
    table_kind,
)
from benchpack.model.library import Library

__all__ = ["Reading", "read_any", "write_any"]

_PACKS = RESOURCES[0]
_ALONE = (
    "Open it in the window to add it to a library; benchpack check and, of joints, "
    "benchpack joints read it as it is."
)


def read_any(
    path: Path,
    *,
    needs: str = "",
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Reading:
    """Read a library from any kind of file, whatever its ending.

    Parameters
    ----------
    path : Path
        A library file, a Data Package or its folder, a study bundle, a table of packs
        as CSV or TSV, or a workbook. A workbook with sheets named packs, parts,
        joints, materials, sources, studies is read whole, of any other the sheet that
        looks like packs.
        A table of parts or joints alone, see `table_kind`, gives these, whatever
        packs they name.
    needs : str
        Name of the table that the file has to hold, ``packs`` for instance.
    progress : callable or None
        Told ``(done, total, words)``; a total of 0 means not known.
    cancelled : callable or None
        Gives True to stop.

    Raises
    ------
    DataError
        When it cannot be read, or holds parts or joints alone and not what is needed.
    CancelledError
        When the person stopped it.
    """
    path = Path(path)
    reading = _read(path, Pace(progress, cancelled))
    if needs and reading.alone and needs not in reading.alone:
        what = f"The file holds {' and '.join(reading.alone)} and no {needs}."
        raise fault(path, what, _ALONE)
    return reading


def _read(path: Path, pace: Pace) -> Reading:
    if is_folder(path):
        return read_package(path, pace=pace)
    kind = kind_of(path)
    if kind == "database":
        return _read_library_file(path)
    from benchpack.files.bundle_archive import is_bundle

    if is_bundle(path):
        from benchpack.files.bundle import read_bundle

        return read_bundle(path, pace=pace)
    if kind == "workbook":
        return _read_workbook(path, pace)
    if kind != "text":
        remedy = "Choose a library, a Data Package, a bundle, CSV, XLSX or ODS."
        raise fault(path, f"This is a {kind}, not a table.", remedy)
    if _looks_like_json(path):
        return read_package(path, pace=pace)
    sheet = read_delimited(path, recognised=known_heads)
    return _collected({table_kind(sheet): sheet}, path, pace)


def _collected(sheets: dict[str, Sheet], path: Path, pace: Pace) -> Reading:
    without_packs = PACKS not in sheets
    for kind, sheet in sheets.items() if without_packs else ():
        if not names_packs(sheet, kind):
            raise DataError(
                Problem(
                    f"The table of {kind} does not say which pack they belong to.",
                    "Add a column pack, or open the file in the window: there it is "
                    "taken for the pack that is selected.",
                    source=sheet.source,
                    row=sheet.header_row,
                )
            )
    return collect(
        sheets,
        source=str(path),
        title=path.stem,
        verbatim=False,
        pace=pace,
        without_packs=without_packs,
    )


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
    if PACKS in known:
        wanted = {named[name]: name for name in known}
        sheets = {wanted[t.name]: t for t in tables if t.name in wanted}
        others = [table for table in tables if table.name not in wanted]
    else:
        sheets = _by_heads(tables)
        used = {id(table) for table in sheets.values()}
        others = [t for t in tables if id(t) not in used and _holds_records(t)]
    reading = _collected(sheets, path, pace)
    left_out = (
        Problem(
            "The sheet was left out.",
            _remedy(table, sheets, whole=PACKS in known),
            source=table.source,
            severity=Severity.WARNING,
        )
        for table in others
    )
    return replace(reading, problems=(*left_out, *reading.problems))


def _by_heads(tables: list[Sheet]) -> dict[str, Sheet]:
    """Give the first table of packs, or where there is none, of parts and of joints."""
    packs = next(filter(holds_packs, tables), None)
    if packs is not None or table_kind(tables[0]) == PACKS:
        return {PACKS: packs or tables[0]}
    found: dict[str, Sheet] = {}
    for table in tables:
        found.setdefault(table_kind(table), table)
    return {kind: found[kind] for kind in (PARTS, JOINTS) if kind in found}


def _holds_records(table: Sheet) -> bool:
    return holds_packs(table) or table_kind(table) != PACKS


def _remedy(table: Sheet, sheets: dict[str, Sheet], *, whole: bool) -> str:
    kind = table_kind(table)
    if whole or kind not in sheets:
        names = ", ".join(resource.name for resource in RESOURCES)
        return f"Sheets of a library are named {names}."
    return f"Copy its rows into the sheet {sheets[kind].name!r}, or save it alone."


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
