"""Telling what kind of file lies before one, and how its text is encoded."""

from __future__ import annotations

import codecs
from pathlib import Path

from benchpack.errors import DataError
from benchpack.files.faults import check_ordinary, disk_fault, fault

_KINDS = {
    b"PK\x03\x04": "workbook",
    b"\xd0\xcf\x11\xe0": "workbook",
    b"SQLite format 3\0": "database",
    b"%PDF": "PDF file",
    b"\x89PNG": "picture",
    b"\xff\xd8\xff": "picture",
    b"GIF8": "picture",
    b"\x1f\x8b": "compressed file",
    b"7z\xbc\xaf": "compressed file",
}
_MARKUP = (b"<html", b"<!doctype", b"<?xml", b"<table", b"<meta", b"<div")
_CONTROL = frozenset(range(32)) - frozenset(b"\t\n\v\f\r\x1a\x1b")


def kind_of(path: Path) -> str:
    """Tell what a file is by how it begins: text, workbook, database or other.

    Raises
    ------
    DataError
        When it cannot be read.
    """
    check_ordinary(path)
    try:
        with path.open("rb") as stream:
            head = stream.read(64)
    except OSError as error:
        raise disk_fault(path, error) from error
    if head.removeprefix(codecs.BOM_UTF8).lstrip().lower().startswith(_MARKUP):
        return "web page or XML file"
    return next(
        (kind for mark, kind in _KINDS.items() if head.startswith(mark)), "text"
    )


def read_utf8(path: Path) -> tuple[bytes, str]:
    """Read a text file as UTF-8 without byte order mark, and tell its encoding.

    UTF-8 and UTF-16 are recognised by their marks and by their contents; what is
    neither is taken as cp1252.

    Raises
    ------
    DataError
        When the file cannot be read, is empty, or holds no text.
    """
    check_ordinary(path)
    try:
        data = path.read_bytes()
    except OSError as error:
        raise disk_fault(path, error) from error
    if not data or data.isspace():
        raise fault(path, "The file is empty.", "Choose a file with a table.")
    data, encoding = _as_utf8(path, data)
    if b"\0" in data:
        raise _no_text(path)
    return data, encoding


def _as_utf8(path: Path, data: bytes) -> tuple[bytes, str]:
    if data.startswith(codecs.BOM_UTF8):
        body = data.removeprefix(codecs.BOM_UTF8)
        return _recoded(path, body, "utf-8"), "utf-8-sig"
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return _recoded(path, data, "utf-16"), "utf-16"
    wide = _wide_encoding(data[:4096])
    if wide:
        return _recoded(path, data, wide), wide
    try:
        return _recoded(path, data, "utf-8"), "utf-8"
    except DataError:
        sample = data[:65536]
        if sum(byte in _CONTROL for byte in sample) > len(sample) // 200:
            raise
        return _recoded(path, data, "cp1252"), "cp1252"


def _recoded(path: Path, data: bytes, encoding: str) -> bytes:
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError as error:
        raise _no_text(path) from error
    return data if encoding == "utf-8" else text.encode("utf-8")


def _wide_encoding(sample: bytes) -> str:
    """Tell UTF-16 without a mark: every second byte of western text is zero."""
    half = max(len(sample) // 2, 1)
    if sample[1::2].count(0) > 0.6 * half:
        return "utf-16-le"
    return "utf-16-be" if sample[::2].count(0) > 0.6 * half else ""


def _no_text(path: Path) -> DataError:
    return fault(
        path,
        "The file is no table: it holds bytes that are no text.",
        "Save the table as CSV or XLSX and open that.",
    )
