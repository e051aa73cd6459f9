"""The archive that a bundle is: unpacked by known names alone, within limits."""

from __future__ import annotations

import struct
import zipfile
import zlib
from pathlib import Path

from benchpack.errors import DataError
from benchpack.files.descriptor import DESCRIPTOR, RESOURCES
from benchpack.files.faults import check_ordinary, disk_fault, fault

SEAL = "bundle.json"
"""The file that says which study a bundle holds, with its fingerprint."""

README = "README.txt"
"""The file that says what a bundle is."""

UNPACKED = (SEAL, DESCRIPTOR, *(f"{resource.name}.csv" for resource in RESOURCES))
"""The files that are taken out of an archive; no other is touched."""

MOST_FILES = 1000
"""Files that an archive may list."""

MOST_BYTES = 4_000_000_000
"""Bytes that it may unpack to."""

_BOMB_BYTES, _BOMB_RATIO = 200_000_000, 200
_CHUNK = 1_000_000
_HEAD = struct.Struct("<4s22xHH")
_WORKBOOKS = ("xl/workbook.xml", "xl/workbook.bin", "content.xml")
# NotImplementedError is zipfile's word for a packing it does not know, RuntimeError
# for a locked entry.
_DAMAGED = (
    zipfile.BadZipFile,
    zlib.error,
    EOFError,
    NotImplementedError,
    RuntimeError,
    ValueError,
    struct.error,
)
_AGAIN = "Have the study written as a bundle once more."


def is_bundle(path: Path) -> bool:
    """Tell whether a file is to be read as a bundle, a damaged one too.

    Parameters
    ----------
    path : Path
        A file that is there. An archive whose first file is one of a bundle is one;
        another zip file is taken for one unless it is a workbook.

    Raises
    ------
    DataError
        When it cannot be read.
    """
    check_ordinary(path)
    try:
        with path.open("rb") as stream:
            head = stream.read(_HEAD.size + 255)
    except OSError as error:
        raise disk_fault(path, error) from error
    if _first_name(head) in UNPACKED:
        return True
    if path.suffix.lower() != ".zip":
        return False
    try:
        with zipfile.ZipFile(path) as archive:
            return not any(name in _WORKBOOKS for name in archive.namelist())
    except (OSError, *_DAMAGED):
        return True


def _first_name(head: bytes) -> str:
    if len(head) < _HEAD.size or not head.startswith(b"PK\x03\x04"):
        return ""
    _, length, _ = _HEAD.unpack_from(head)
    return head[_HEAD.size : _HEAD.size + length].decode("utf-8", errors="replace")


def unpack(path: Path, folder: Path) -> tuple[str, ...]:
    """Take the files of a bundle out of its archive.

    Parameters
    ----------
    path : Path
        The archive.
    folder : Path
        An empty folder; nothing is written anywhere else, whatever the archive says.

    Returns
    -------
    tuple of str
        Names of files that no bundle has, which were left in the archive.

    Raises
    ------
    DataError
        When it is no archive, is damaged or locked, names a file twice or one outside,
        or unpacks to more than a study can be.
    """
    check_ordinary(path)
    try:
        with zipfile.ZipFile(path) as archive:
            listed = archive.infolist()
            _check(path, listed)
            entries = [entry for entry in listed if not entry.is_dir()]
            for entry in entries:
                if entry.filename in UNPACKED:
                    _write(archive, entry, folder / entry.filename)
    except DataError:
        raise
    except OSError as error:
        raise disk_fault(path, error) from error
    except _DAMAGED as error:
        what = "The file is no zip archive, or it is damaged or cut off."
        raise fault(
            path, what, "Copy it again, or have it written once more."
        ) from error
    known = (*UNPACKED, README)
    return tuple(e.filename for e in entries if e.filename not in known)


def _check(path: Path, entries: list[zipfile.ZipInfo]) -> None:
    if len(entries) > MOST_FILES:
        what = f"The archive lists {len(entries)} files, which is no bundle."
        raise fault(path, what, _AGAIN)
    seen: set[str] = set()
    for entry in entries:
        name = entry.orig_filename
        if _leads_outside(name):
            what = f"The archive names {name!r}, a place outside of it."
            raise fault(path, what, "Do not use it; ask who sent it.")
        if name.casefold() in seen:
            raise fault(path, f"The archive holds {name!r} twice.", _AGAIN)
        seen.add(name.casefold())
        if entry.flag_bits & 1:
            what = "The archive is locked by a password."
            raise fault(path, what, "Save a copy without one and open that.")
        if entry.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            what = f"{name} is packed in a way that is not read here."
            raise fault(path, what, "Pack it as an ordinary zip file.")
    total = sum(entry.file_size for entry in entries)
    packed = max(path.stat().st_size, 1)
    too_dense = total > _BOMB_BYTES and total > _BOMB_RATIO * packed
    if total > MOST_BYTES or too_dense:
        what = f"The archive unpacks to {total / 1e6:.0f} MB, which is no study."
        raise fault(path, what, _AGAIN)


def _leads_outside(name: str) -> bool:
    steps = name.replace("\\", "/").split("/")
    return steps[0] == "" or ".." in steps or ":" in name or "\0" in name


def _write(archive: zipfile.ZipFile, entry: zipfile.ZipInfo, target: Path) -> None:
    # The archive gives no more bytes of a file than it says, which was checked.
    with archive.open(entry) as packed, target.open("xb") as plain:
        while piece := packed.read(_CHUNK):
            plain.write(piece)
