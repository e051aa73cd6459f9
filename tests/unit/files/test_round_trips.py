"""Whatever the model accepts comes back equal from every form it is kept in."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import HealthCheck, given, settings

from benchpack.files.library_file import LibraryFile
from benchpack.files.package import read_package, write_package
from benchpack.model.library import Library
from tests.strategies.records import libraries

_settings = settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)


@_settings
@given(libraries())
def test_any_library_comes_back_from_a_data_package(library: Library) -> None:
    with tempfile.TemporaryDirectory() as folder:
        write_package(library, Path(folder), currency="EUR")
        reading = read_package(Path(folder))
    errors = [p for p in reading.problems if p.severity == "error"]
    assert errors == []
    assert reading.library == library
    assert reading.currency == "EUR"


@_settings
@given(libraries())
def test_any_library_comes_back_from_a_library_file(library: Library) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "library.benchpack"
        with LibraryFile.create(path, library) as store:
            assert store.read() == library
            assert store.read().packs.ids.tolist() == library.packs.ids.tolist()


@_settings
@given(libraries(), libraries())
def test_writing_the_difference_gives_the_new_library(
    old: Library, new: Library
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.benchpack"
        with LibraryFile.create(path, old) as store:
            store.write(old, new)
            assert store.read() == new
            store.write(new, old)
            assert store.read() == old
        with LibraryFile.create(path, new, replace=True) as store:
            assert store.read() == new
