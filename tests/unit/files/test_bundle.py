"""A study in one file: what is in it, the way back, and what was changed since."""

from __future__ import annotations

import errno
import json
import os
import subprocess
import sys
import tempfile
import warnings
import zipfile
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from benchpack.errors import DataError, Problem, RequestError, Severity
from benchpack.files.bundle import read_bundle, write_bundle
from benchpack.files.demo import demo_library
from benchpack.files.library_file import LibraryFile
from benchpack.files.reading import read_any
from benchpack.model.library import Library
from benchpack.results.fingerprint import fingerprint_of, short_fingerprint
from benchpack.results.study_scope import library_of_study
from tests.strategies.records import libraries
from tests.unit.files.libraries import small_library

ROOT = Path(__file__).parents[3]


def bundled(tmp_path: Path, library: Library | None = None) -> Path:
    path = tmp_path / "study.bundle.zip"
    library = library or demo_library()
    write_bundle(library, library.studies[0], path)
    return path


def entries_of(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def packed(path: Path, entries: dict[str, bytes]) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in entries.items():
            archive.writestr(name, data)
    return path


def warned(problems: tuple[Problem, ...]) -> list[str]:
    assert all(problem.severity is Severity.WARNING for problem in problems)
    return [problem.what for problem in problems]


def test_it_holds_the_study_and_what_it_needs(tmp_path: Path) -> None:
    library = demo_library()
    study = library.studies[1]
    path = tmp_path / "a.bundle.zip"
    said = write_bundle(library, study, path)
    reading = read_any(path)
    assert reading.problems == ()
    assert reading.library == library_of_study(library, study)
    assert (reading.source, reading.currency) == (str(path), "EUR")
    assert fingerprint_of(reading.library, study) == said
    entries = entries_of(path)
    assert list(entries)[:3] == ["bundle.json", "README.txt", "datapackage.json"]
    text = entries["README.txt"].decode("utf-8")
    assert said in text
    assert short_fingerprint(said) in text
    assert "All data is invented" in text
    assert json.loads(entries["bundle.json"])["study"] == study.name


@settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
@given(libraries())
def test_any_study_comes_back_with_its_fingerprint(library: Library) -> None:
    for study in library.studies:
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "a.zip"
            said = write_bundle(library, study, path)
            reading = read_bundle(path)
        errors = [p for p in reading.problems if p.severity is Severity.ERROR]
        assert errors == []
        assert not [p for p in reading.problems if "fingerprint" in p.what]
        assert reading.library == library_of_study(library, study)
        assert fingerprint_of(reading.library, reading.library.studies[0]) == said


def test_the_same_study_gives_the_same_bytes(tmp_path: Path) -> None:
    path = bundled(tmp_path)
    before = path.read_bytes()
    write_bundle(demo_library(), demo_library().studies[0], path)
    assert path.read_bytes() == before
    code = (
        "import sys\nfrom pathlib import Path\n"
        "from benchpack.files.bundle import write_bundle\n"
        "from benchpack.files.demo import demo_library as d\n"
        "write_bundle(d(), d().studies[0], Path(sys.argv[1]))"
    )
    again = tmp_path / "again.bundle.zip"
    subprocess.run(
        [sys.executable, "-c", code, str(again)],
        check=True,
        cwd=ROOT,
        env={**os.environ, "PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo"},
    )
    assert again.read_bytes() == before


def test_it_survives_a_library_file_and_is_bundled_alike(tmp_path: Path) -> None:
    path = bundled(tmp_path)
    store = LibraryFile.create(tmp_path / "a.benchpack", read_any(path).library)
    with store:
        library = store.read()
    again = tmp_path / "again.bundle.zip"
    write_bundle(library, library.studies[0], again)
    assert again.read_bytes() == path.read_bytes()


def test_it_is_a_data_package_for_others(tmp_path: Path) -> None:
    # Independent package: frictionless.
    path = bundled(tmp_path)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import frictionless

        with zipfile.ZipFile(path) as archive:
            archive.extractall(tmp_path / "plain")
        report = frictionless.validate(str(tmp_path / "plain" / "datapackage.json"))
    assert report.valid, report.flatten(["title", "message"])
    assert report.stats["tasks"] >= 8


def test_a_figure_that_was_changed_is_said_with_both_fingerprints(
    tmp_path: Path,
) -> None:
    path = bundled(tmp_path)
    entries = entries_of(path)
    before = json.loads(entries["bundle.json"])["fingerprint"]
    entries["packs.csv"] = entries["packs.csv"].replace(b"498.1", b"489.1", 1)
    library = read_any(packed(path, entries)).library
    has = fingerprint_of(library, library.studies[0])
    (said,) = warned(read_any(path).problems)
    assert has != before
    assert short_fingerprint(before) in said
    assert short_fingerprint(has) in said


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"bundle.json": b"{"}, "says no fingerprint"),
        ({"bundle.json": None}, "says no fingerprint"),
        ({"canonical form": 2}, "other fingerprints"),
        ({"study": "Other"}, "study 'Other' of the bundle is not in it"),
        ({"notes.txt": b"x"}, "notes.txt: left in the archive."),
        ({"deep/parts.csv": b"x"}, "deep/parts.csv: left in the archive."),
    ],
)
def test_what_cannot_be_compared_or_is_foreign_is_said(
    tmp_path: Path, change: dict[str, object], said: str
) -> None:
    path = bundled(tmp_path)
    entries = entries_of(path)
    for name, value in change.items():
        if isinstance(value, bytes):
            entries[name] = value
        elif value is None:
            del entries[name]
        else:
            described = json.loads(entries["bundle.json"])
            entries["bundle.json"] = json.dumps({**described, name: value}).encode()
    reading = read_any(packed(path, entries))
    (found,) = warned(reading.problems)
    assert said in found
    assert len(reading.library.packs) == 18


def test_problems_are_said_of_the_bundle_not_of_a_passing_folder(
    tmp_path: Path,
) -> None:
    path = bundled(tmp_path, small_library())
    entries = entries_of(path)
    entries["packs.csv"] = entries["packs.csv"].replace(b"498.1", b"heavy", 1)
    reading = read_any(packed(path, entries))
    refused = [p for p in reading.problems if p.severity is Severity.ERROR]
    assert refused[0].source == "study.bundle.zip, packs.csv"
    entries["datapackage.json"] = b"{}"
    with pytest.raises(DataError, match="lists no resources") as caught:
        read_any(packed(path, entries))
    assert caught.value.problems[0].source == "study.bundle.zip, datapackage.json"


def test_a_name_without_zip_and_a_text_with_nul_are_refused(tmp_path: Path) -> None:
    library = small_library()
    study = library.studies[0]
    with pytest.raises(RequestError, match=r"NAME\.bundle\.zip"):
        write_bundle(library, study, tmp_path / "a.csv")
    spoilt = replace(study, worth_reason="a\0b")
    with pytest.raises(DataError, match="character NUL"):
        write_bundle(library, spoilt, tmp_path / "a.zip")
    with pytest.raises(DataError, match="no such file"):
        write_bundle(library, study, tmp_path / "none" / "a.zip")
    assert list(tmp_path.iterdir()) == []


def read_the_bundle(tmp_path: Path) -> object:
    return read_bundle(tmp_path / "study.bundle.zip")


def test_without_a_folder_for_passing_files_it_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = bundled(tmp_path)
    before = path.read_bytes()
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "gone"))
    for act in (bundled, read_the_bundle):
        with pytest.raises(DataError) as caught:
            act(tmp_path)
        (problem,) = caught.value.problems
        assert problem.what.startswith("In the folder for passing files: ")
        assert problem.source == str(path)
        assert problem.remedy
    assert path.read_bytes() == before


@pytest.mark.parametrize("name", ["bundle.json", "README.txt"])
def test_a_full_disk_is_said_and_no_bundle_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    write = Path.write_bytes

    def full(self: Path, data: bytes) -> int:
        if self.name == name:
            raise OSError(errno.ENOSPC, "No space left on device")
        return write(self, data)

    monkeypatch.setattr(Path, "write_bytes", full)
    with pytest.raises(DataError, match="The disk is full") as caught:
        bundled(tmp_path)
    assert "Free some space" in caught.value.problems[0].remedy
    assert list(tmp_path.iterdir()) == []
