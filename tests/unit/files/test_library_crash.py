"""A library file outlives the program that is killed over it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from benchpack.files.library_file import LibraryFile
from tests.unit.files.libraries import small_library

_START = """
import sys, time
from dataclasses import replace
from pathlib import Path
from benchpack.files import library_changes
from benchpack.files.library_file import LibraryFile

store = LibraryFile.open(Path(sys.argv[1]))
old = store.read()
new = replace(old, title="after", packs=old.packs.with_cells("mass_kg", [0], [400.0]))

def wait_for_the_end():
    print("ready", flush=True)
    time.sleep(60)
"""

_AFTER = _START + "store.write(old, new)\nwait_for_the_end()\n"

_AMID = (
    _START
    + """
real = library_changes.store_changes

def half(connection, old, new):
    real(connection, old, new)
    connection.exec_driver_sql("PRAGMA cache_spill = 1")
    connection.exec_driver_sql("PRAGMA cache_size = 1")
    connection.exec_driver_sql(
        "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n LIMIT 2000) "
        "INSERT INTO sources (position, name, kind, date, reference, note) "
        "SELECT 100 + i, hex(randomblob(200)), '', '', '', '' FROM n"
    )
    wait_for_the_end()

library_changes.store_changes = half
store.write(old, new)
"""
)


def _killed(path: Path, code: str) -> None:
    """Run a program on a file and kill it, with no time to clean up, when it waits."""
    command = [sys.executable, "-c", code, str(path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as program:
        assert program.stdout is not None
        said = program.stdout.readline()
        program.kill()
    assert said == "ready\n"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A library file with the small library."""
    path = tmp_path / "small.benchpack"
    LibraryFile.create(path, small_library()).close()
    return path


def test_a_write_that_returned_is_kept(path: Path) -> None:
    _killed(path, _AFTER)
    with LibraryFile.open(path) as store:
        library = store.read()
    assert library.title == "after"
    assert library.packs[0].mass_kg == 400


def test_a_write_that_did_not_return_leaves_the_old_state(path: Path) -> None:
    size = path.stat().st_size
    _killed(path, _AMID)
    # Part of the edit has reached the file; the journal beside it undoes that.
    assert path.stat().st_size > size
    assert path.with_name(path.name + "-journal").exists()
    with LibraryFile.open(path) as store:
        assert store.read() == small_library()
    assert not path.with_name(path.name + "-journal").exists()
