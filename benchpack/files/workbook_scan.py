"""A look into a workbook before it is loaded: how far it reaches, what went wrong."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from xml.etree import ElementTree as ET

from benchpack.files.faults import disk_fault, fault

MOST_CELLS = 50_000_000
"""Cells that a sheet may span while few of them are filled."""

_MOST_BYTES = 4_000_000_000
_BOMB_BYTES, _BOMB_RATIO = 200_000_000, 200
_CHUNK, _LONGEST_ROW = 4_000_000, 64_000_000
_NEAR_COLUMNS = 26
_FAR_COLUMN = re.compile(rb' r="([A-Z]{2,7})\d')
_ROW = re.compile(rb' r="(\d{1,10})"')
_FAR_ROW = re.compile(rb' r="[A-Z]{1,7}(\d{6,10})"')
_ANY_ROW = re.compile(rb' r="[A-Z]{0,7}(\d{1,10})"')
_ERROR = re.compile(
    rb'<(?:\w+:)?c\s(?=[^<>]*\bt="e")[^<>]*?\br="([A-Z]+)(\d+)"[^<>]*>'
    rb"(?:<(?:\w+:)?f\b[^<>]*/>|<(?:\w+:)?f\b.*?</(?:\w+:)?f>)?"
    rb"<(?:\w+:)?v>([^<]*)</",
    re.DOTALL,
)
_RELATION = (
    "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id",
    "{http://purl.oclc.org/ooxml/officeDocument/relationships}id",
)
_REMEDY = "Save it again in a spreadsheet program, or save the table as CSV."


@dataclass(frozen=True, slots=True)
class SheetScan:
    """What a look into a sheet found.

    Parameters
    ----------
    rows, columns : int
        Last row and last column with a cell, the column at least Z.
    cells : int
        Number of cells.
    errors : mapping of tuple to str
        Texts such as ``#DIV/0!`` of formulas that failed, by row and column from 0.
    """

    rows: int = 0
    columns: int = 0
    cells: int = 0
    errors: Mapping[tuple[int, int], str] = field(default_factory=dict)

    @property
    def is_scattered(self) -> bool:
        """True where loading would fill the memory with empty cells."""
        area = self.rows * self.columns
        return area > MOST_CELLS and area > 20 * self.cells

    @property
    def corner(self) -> str:
        """The last cell as spreadsheets name it, ``XFD1048576``."""
        letters, column = "", self.columns
        while column:
            column, rest = divmod(column - 1, 26)
            letters = chr(65 + rest) + letters
        return f"{letters}{self.rows}"


def check_size(path: Path) -> None:
    """Refuse a packed workbook that unpacks to more than a table can be.

    Raises
    ------
    DataError
        When it is too large.
    """
    if not zipfile.is_zipfile(path):
        return
    try:
        with zipfile.ZipFile(path) as archive:
            sizes = [entry.file_size for entry in archive.infolist()]
        packed = max(path.stat().st_size, 1)
    except (zipfile.BadZipFile, NotImplementedError):
        # The second is zipfile's word for a packing it does not know.
        return
    except OSError as error:
        raise disk_fault(path, error) from error
    total = sum(sizes)
    too_dense = total > _BOMB_BYTES and total > _BOMB_RATIO * packed
    if total > _MOST_BYTES or too_dense:
        what = f"The workbook unpacks to {total / 1e6:.0f} MB, which is no table."
        raise fault(path, what, _REMEDY)


def scan_sheet(path: Path, name: str) -> SheetScan:
    """Look through a sheet of an XLSX workbook without loading it.

    Other kinds of workbook, and what cannot be made out, give an empty result.

    Parameters
    ----------
    path : Path
        The workbook.
    name : str
        The sheet.
    """
    try:
        with zipfile.ZipFile(path) as archive:
            part = _part_of(archive, name)
            return _scanned(archive, part) if part else SheetScan()
    except (
        OSError,
        KeyError,
        ValueError,
        zipfile.BadZipFile,
        NotImplementedError,
        RuntimeError,
        ET.ParseError,
    ):
        # The reader itself says what is wrong with such a file; NotImplementedError is
        # zipfile's word for a packing it does not know.
        return SheetScan()


def _part_of(archive: zipfile.ZipFile, name: str) -> str:
    """Give the file in the archive that holds a sheet, empty where there is none."""
    if "xl/workbook.xml" not in archive.namelist():
        return ""
    book = ET.fromstring(archive.read("xl/workbook.xml"))
    links = ET.fromstring(archive.read("xl/_rels/workbook.xml.rels"))
    targets = {link.get("Id"): link.get("Target", "") for link in links}
    for sheet in book.iter():
        if sheet.tag.endswith("}sheet") and sheet.get("name") == name:
            keys = (sheet.get(relation) for relation in _RELATION)
            target = next((targets[key] for key in keys if key in targets), "")
            return target[1:] if target.startswith("/") else f"xl/{target}"
    return ""


def _scanned(archive: zipfile.ZipFile, part: str) -> SheetScan:
    letters: set[bytes] = set()
    numbers: set[bytes] = set()
    cells = 0
    errors: dict[tuple[int, int], str] = {}
    for piece in _pieces(archive, part):
        cells += piece.count(b"<c ") + piece.count(b":c ")
        letters.update(_FAR_COLUMN.findall(piece))
        numbers.update(_ROW.findall(piece)[-1:], _FAR_ROW.findall(piece))
        if b't="e"' in piece:
            for column, row, text in _ERROR.findall(piece):
                errors[int(row) - 1, _number(column) - 1] = text.decode("utf-8")
    columns = max(map(_number, letters), default=_NEAR_COLUMNS)
    rows = max(map(int, numbers), default=0)
    if columns > _NEAR_COLUMNS:
        # Rows may stand in any order where a sheet is written to do harm.
        for piece in _pieces(archive, part):
            rows = max(rows, *map(int, _ANY_ROW.findall(piece)), 0)
    return SheetScan(rows, columns, cells, errors)


def _pieces(archive: zipfile.ZipFile, part: str) -> Iterator[bytes]:
    """Give a file of the archive piece by piece, cut between rows."""
    left = b""
    with archive.open(part) as stream:
        while fresh := stream.read(_CHUNK):
            block = left + fresh
            # Behind a row, so that no cell is seen in halves.
            cut = block.rfind(b"row>") + 4
            if cut < 4:
                cut = 0 if len(block) < _LONGEST_ROW else len(block)
            yield block[:cut]
            left = block[cut:]
    yield left


def _number(letters: bytes) -> int:
    number = 0
    for letter in letters:
        number = 26 * number + letter - 64
    return number
