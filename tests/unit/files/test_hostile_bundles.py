"""Archives that are damaged, or made to do harm: refused, and nothing is written."""

from __future__ import annotations

import io
import struct
import tempfile
import warnings
import zipfile
from pathlib import Path

import pytest

from benchpack.errors import DataError
from benchpack.files import bundle_archive
from benchpack.files.bundle import read_bundle, write_bundle
from benchpack.files.bundle_archive import is_bundle
from benchpack.files.reading import read_any, write_any
from benchpack.results.study_scope import library_of_study
from tests.unit.files.libraries import small_library


@pytest.fixture
def passing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give the folder in which passing folders are made; it has to end up empty."""
    folder = tmp_path / "passing"
    folder.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(folder))
    return folder


def good(tmp_path: Path) -> bytes:
    path = tmp_path / "good.zip"
    library = small_library()
    write_bundle(library, library.studies[0], path)
    data = path.read_bytes()
    path.unlink()
    return data


def archive_of(*entries: tuple[str | zipfile.ZipInfo, bytes]) -> bytes:
    stream = io.BytesIO()
    with warnings.catch_warnings(), zipfile.ZipFile(stream, "w", 8) as archive:
        warnings.simplefilter("ignore")
        for name, data in entries:
            archive.writestr(name, data)
    return stream.getvalue()


def refused(tmp_path: Path, data: bytes, said: str) -> None:
    """Read an archive: it is refused, and no file is left anywhere."""
    path = tmp_path / "bad.bundle.zip"
    path.write_bytes(data)
    before = sorted(tmp_path.rglob("*"))
    for read in (read_bundle, read_any):
        with pytest.raises(DataError, match=said) as caught:
            read(path)
        assert str(path) in caught.value.problems[0].source
        assert caught.value.problems[0].remedy
    assert sorted(tmp_path.rglob("*")) == before


@pytest.mark.usefixtures("passing")
@pytest.mark.parametrize(
    "name",
    [
        "../packs.csv",
        "a/../../packs.csv",
        "/tmp/packs.csv",
        "..\\packs.csv",
        "\\\\server\\packs.csv",
        "C:\\packs.csv",
        "C:packs.csv",
        "../",
    ],
)
def test_a_way_out_is_refused(tmp_path: Path, name: str) -> None:
    data = archive_of(("datapackage.json", b"{}"), (name, b"x"))
    refused(tmp_path, data, "a place outside")


@pytest.mark.usefixtures("passing")
def test_a_table_may_not_be_described_as_lying_outside(tmp_path: Path) -> None:
    outside = tmp_path / "secret.csv"
    outside.write_text("pack,energy [kWh],mass [kg]\nHeron 70,70,460\n")
    text = f'{{"resources": [{{"name": "packs", "path": "{outside.as_posix()}"}}]}}'
    path = tmp_path / "a.zip"
    path.write_bytes(archive_of(("datapackage.json", text.encode())))
    with pytest.raises(DataError, match="names no file beside the description"):
        read_any(path)


@pytest.mark.usefixtures("passing")
@pytest.mark.parametrize("second", ["packs.csv", "Packs.CSV"])
def test_two_files_of_one_name_are_refused(tmp_path: Path, second: str) -> None:
    data = archive_of(("packs.csv", b"a"), (second, b"b"))
    refused(tmp_path, data, "twice")


@pytest.mark.usefixtures("passing")
def test_a_locked_archive_is_refused(tmp_path: Path) -> None:
    data = bytearray(archive_of(("datapackage.json", b"{}")))
    data[6] |= 1
    data[data.index(b"PK\x01\x02") + 8] |= 1
    refused(tmp_path, bytes(data), "locked by a password")


@pytest.mark.usefixtures("passing")
def test_other_kinds_of_packing_are_refused(tmp_path: Path) -> None:
    entry = zipfile.ZipInfo("packs.csv")
    entry.compress_type = zipfile.ZIP_LZMA
    refused(tmp_path, archive_of((entry, b"x" * 99)), "a way that is not read here")


@pytest.mark.usefixtures("passing")
def test_a_bomb_is_refused_before_it_is_unpacked(tmp_path: Path) -> None:
    zeros = bytes(bundle_archive._BOMB_BYTES // 20 + 1)
    entries = [(f"{number}.csv", zeros) for number in range(20)]
    refused(tmp_path, archive_of(*entries), "unpacks to 200 MB")


@pytest.mark.usefixtures("passing")
def test_an_archive_that_lies_about_a_size_is_refused(tmp_path: Path) -> None:
    """Both heads say one byte, the data unpacks to a million."""
    data = bytearray(archive_of(("datapackage.json", bytes(1_000_000))))
    central = data.index(b"PK\x01\x02")
    data[22:26] = data[central + 24 : central + 28] = struct.pack("<I", 1)
    refused(tmp_path, bytes(data), "damaged or cut off")


@pytest.mark.usefixtures("passing")
def test_more_files_than_a_bundle_can_have_are_refused(tmp_path: Path) -> None:
    entries = [(f"{number}", b"") for number in range(bundle_archive.MOST_FILES + 1)]
    refused(tmp_path, archive_of(*entries), "lists 1001 files")


@pytest.mark.usefixtures("passing")
def test_an_archive_without_a_package_says_so(tmp_path: Path) -> None:
    refused(tmp_path, archive_of(("a/datapackage.json", b"{}")), "no datapackage.json")
    refused(tmp_path, archive_of(), "no datapackage.json")


@pytest.mark.usefixtures("passing")
@pytest.mark.parametrize("data", [b"", b"pack,energy\n", b"PK\x03\x04", bytes(500)])
def test_what_is_no_archive_says_so(tmp_path: Path, data: bytes) -> None:
    refused(tmp_path, data, "no zip archive")


@pytest.mark.usefixtures("passing")
def test_wherever_it_is_cut_off_it_is_refused(tmp_path: Path) -> None:
    data = good(tmp_path)
    for end in range(30, len(data), len(data) // 40):
        refused(tmp_path, data[:end], "damaged or cut off")


@pytest.mark.usefixtures("passing")
def test_a_changed_byte_never_gives_other_data_in_silence(tmp_path: Path) -> None:
    data = good(tmp_path)
    path = tmp_path / "bad.bundle.zip"
    library = small_library()
    sound = library_of_study(library, library.studies[0])
    for place in range(0, len(data), len(data) // 150):
        spoilt = bytearray(data)
        spoilt[place] ^= 0x15
        path.write_bytes(bytes(spoilt))
        try:
            reading = read_bundle(path)
        except DataError:
            continue
        assert reading.problems or reading.library == sound, place


def test_passing_folders_are_gone_afterwards(tmp_path: Path, passing: Path) -> None:
    path = tmp_path / "a.zip"
    path.write_bytes(good(tmp_path))
    assert len(read_any(path).library.packs) == 2
    path.write_bytes(path.read_bytes()[:-50])
    with pytest.raises(DataError):
        read_any(path)
    assert list(passing.iterdir()) == []


def test_a_workbook_stays_one_whatever_its_name(tmp_path: Path) -> None:
    book = tmp_path / "a.xlsx"
    write_any(small_library(), book, currency="EUR")
    named = book.rename(tmp_path / "a.zip")
    assert not is_bundle(named)
    assert read_any(named).library.packs == small_library().packs
    bundle = tmp_path / "b.zip"
    bundle.write_bytes(good(tmp_path))
    renamed = bundle.rename(tmp_path / "b.xlsx")
    assert is_bundle(renamed)
    assert read_any(renamed).library.packs == small_library().packs
