"""What is written replaces files alone, and never what is being read."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from benchpack.errors import DataError, RequestError
from benchpack.files.atomic import write_text
from benchpack.files.library_file import LibraryFile
from benchpack.files.outputs import check_output
from benchpack.files.reading import read_any, write_any
from benchpack.model.library import Library
from tests.unit.files.libraries import small_library

needs_posix = pytest.mark.skipif(sys.platform == "win32", reason="Windows has no FIFO")


def test_a_folder_is_not_replaced(tmp_path: Path) -> None:
    for place in (tmp_path, Path(), tmp_path / ".."):
        with pytest.raises(DataError, match="folder"):
            write_text(place, "x")


@needs_posix
def test_a_device_is_neither_replaced_nor_read(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.benchpack"
    os.mkfifo(pipe)
    with pytest.raises(DataError, match="device or a pipe"):
        write_text(pipe, "x")
    with pytest.raises(DataError, match="device or a pipe"):
        read_any(pipe)
    with pytest.raises(DataError, match="device or a pipe"):
        LibraryFile.open(pipe)
    with pytest.raises(DataError, match="device or a pipe"):
        LibraryFile.create(pipe, Library(), replace=True)
    assert pipe.is_fifo()
    assert list(tmp_path.iterdir()) == [pipe]


@needs_posix
def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    for name in ("a.csv", "a.benchpack"):
        link, target = tmp_path / name, tmp_path / "real" / name
        link.symlink_to(target)
        for title in ("one", "two"):
            write_any(small_library(), link, currency="EUR")
            assert link.is_symlink(), title
        assert len(read_any(target).library.packs) == len(small_library().packs)
    with LibraryFile.open(tmp_path / "a.benchpack") as store:
        old = store.read()
        store.write(old, Library())
    assert read_any(tmp_path / "real" / "a.benchpack").library == Library()


@pytest.mark.parametrize(
    ("source", "out", "may_be_folder"),
    [
        ("packs.csv", "packs.csv", False),
        ("packs.csv", "./sub/../packs.csv", True),
        ("packs.csv", ".", True),
        ("packs.csv", "datapackage.json", True),
        (".", "packs.csv", False),
        ("datapackage.json", "parts.csv", False),
        ("datapackage.json", ".", True),
        ("other.csv", ".", False),
        ("other.csv", "none/gaps.csv", False),
        ("other.csv", "none/a.benchpack", True),
    ],
)
def test_a_place_that_costs_something_is_refused(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    source: str,
    out: str,
    may_be_folder: bool,
) -> None:
    write_any(small_library(), tmp_path, currency="EUR")
    (tmp_path / "other.csv").write_text("x")
    (tmp_path / "sub").mkdir()
    monkeypatch.chdir(tmp_path)
    with pytest.raises(RequestError):
        check_output(Path(source), Path(out), may_be_folder=may_be_folder)


@pytest.mark.parametrize("out", ["new", "new/deeper", "gaps.csv", "b.benchpack"])
def test_a_new_place_is_free(tmp_path: Path, out: str) -> None:
    write_any(small_library(), tmp_path, currency="EUR")
    check_output(tmp_path, tmp_path / out, may_be_folder=True)
