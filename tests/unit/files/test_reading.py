"""One door for every form a library may have on disk."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from benchpack.errors import CancelledError, DataError, RequestError
from benchpack.files.demo import demo_library
from benchpack.files.reading import read_any, write_any
from tests.unit.files.libraries import small_library


@pytest.mark.parametrize(
    ("name", "read_from"),
    [
        ("a.benchpack", "a.benchpack"),
        ("folder", "folder"),
        ("folder", "folder/datapackage.json"),
        ("b/datapackage.json", "b"),
        ("a.xlsx", "a.xlsx"),
    ],
)
def test_every_form_holds_the_whole_library(
    tmp_path: Path, name: str, read_from: str
) -> None:
    library = demo_library()
    write_any(library, tmp_path / name, currency="EUR")
    reading = read_any(tmp_path / read_from)
    assert reading.library.packs == library.packs
    assert reading.library.parts == library.parts
    assert reading.library.joints == library.joints
    assert reading.library.studies == library.studies
    assert reading.source.startswith(str(tmp_path / read_from))


def test_a_csv_holds_the_packs(tmp_path: Path) -> None:
    library = small_library()
    write_any(library, tmp_path / "packs.csv", currency="EUR")
    reading = read_any(tmp_path / "packs.csv")
    assert reading.library.packs == library.packs
    assert reading.library.title == "packs"
    assert reading.rows_read == 2


def test_contents_count_and_not_the_ending(tmp_path: Path) -> None:
    library = small_library()
    write_any(library, tmp_path / "a.xlsx", currency="EUR")
    write_any(library, tmp_path / "a.benchpack", currency="EUR")
    (tmp_path / "a.xlsx").rename(tmp_path / "one.csv")
    (tmp_path / "a.benchpack").rename(tmp_path / "two.json")
    (tmp_path / "three.xlsx").write_text("pack\tenergy\tmass\nc\t50\t300\n")
    assert read_any(tmp_path / "one.csv").library.packs == library.packs
    assert read_any(tmp_path / "two.json").library == library
    assert read_any(tmp_path / "three.xlsx").library.packs.names.tolist() == ["c"]


def test_writing_replaces_what_is_there(tmp_path: Path) -> None:
    for name in ("a.benchpack", "a.xlsx", "a.csv", "folder"):
        write_any(demo_library(), tmp_path / name, currency="EUR")
        write_any(small_library(), tmp_path / name, currency="EUR")
        assert len(read_any(tmp_path / name).library.packs) == 2


def test_an_unknown_ending_names_the_known_ones(tmp_path: Path) -> None:
    with pytest.raises(RequestError, match=r"\.benchpack.*\.xlsx.*\.csv"):
        write_any(small_library(), tmp_path / "a.docx", currency="EUR")
    assert list(tmp_path.iterdir()) == []


def test_what_is_no_library_is_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="no such file"):
        read_any(tmp_path / "none.csv")
    (tmp_path / "a.pdf").write_bytes(b"%PDF-1.7")
    with pytest.raises(DataError, match="PDF"):
        read_any(tmp_path / "a.pdf")
    with pytest.raises(DataError, match="neither"):
        read_any(tmp_path)


def test_reading_can_be_stopped(tmp_path: Path) -> None:
    write_any(small_library(), tmp_path / "a.csv", currency="EUR")
    with pytest.raises(CancelledError):
        read_any(tmp_path / "a.csv", cancelled=lambda: True)


def test_opening_a_library_or_the_demo_loads_no_more_than_it_uses(
    tmp_path: Path,
) -> None:
    path = tmp_path / "a.benchpack"
    write_any(small_library(), path, currency="EUR")
    code = (
        "import sys\nfrom pathlib import Path\n"
        "from benchpack.files.demo import demo_library\n"
        "from benchpack.files.reading import read_any\n"
        f"demo_library()\nread_any(Path({str(path)!r}))\n"
        "print(' '.join(sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    loaded = set(done.stdout.split())
    assert "sqlite3" in loaded
    unused = {"pandas", "pint", "python_calamine", "scipy", "sqlalchemy", "xlsxwriter"}
    assert not loaded & unused
