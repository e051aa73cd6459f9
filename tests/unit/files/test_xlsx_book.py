"""A workbook on a disk that refuses: nothing half written, and it is said in words."""

from __future__ import annotations

import errno
import gc
import tempfile
from pathlib import Path
from zipfile import ZipFile

import pytest

from benchpack.errors import DataError
from benchpack.files.xlsx_book import new_book


def refuse(*_: object, **__: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


@pytest.mark.parametrize(
    ("owner", "name"),
    [(tempfile, "mkstemp"), (Path, "write_bytes")],
    ids=["passing files", "the file"],
)
def test_a_full_disk_is_said_and_the_old_file_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, owner: object, name: str
) -> None:
    path = tmp_path / "a.xlsx"
    path.write_text("mine")
    monkeypatch.setattr(owner, name, refuse)
    with pytest.raises(DataError, match="disk is full"), new_book(path) as book:
        book.add_worksheet("one")
    gc.collect()  # an archive that was left open would complain now
    assert path.read_text() == "mine"
    assert list(tmp_path.iterdir()) == [path]


def test_what_goes_wrong_inside_leaves_the_old_file(tmp_path: Path) -> None:
    path = tmp_path / "a.xlsx"
    path.write_text("mine")
    with pytest.raises(ZeroDivisionError), new_book(path) as book:
        book.add_worksheet(f"{1 // 0}")
    assert path.read_text() == "mine"
    assert list(tmp_path.iterdir()) == [path]


def test_text_stays_text(tmp_path: Path) -> None:
    path = tmp_path / "a.xlsx"
    with new_book(path) as book:
        book.add_worksheet("one").write(0, 0, "=1+1")
    with ZipFile(path) as archive:
        assert b"<f>" not in archive.read("xl/worksheets/sheet1.xml")
        assert b"=1+1" in archive.read("xl/sharedStrings.xml")
