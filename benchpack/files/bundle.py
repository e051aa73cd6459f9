"""A study in one file: a zipped Data Package of what it needs, with its fingerprint."""

from __future__ import annotations

import json
import shutil
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from benchpack import __version__
from benchpack.errors import DataError, Problem, RequestError, Severity
from benchpack.files.atomic import replacing
from benchpack.files.bundle_archive import README, SEAL, UNPACKED, unpack
from benchpack.files.collecting import Reading
from benchpack.files.descriptor import DESCRIPTOR
from benchpack.files.faults import disk_fault, fault
from benchpack.files.pace import Pace
from benchpack.files.package import read_package, write_package
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.fingerprint import (
    CANONICAL_VERSION,
    fingerprint_of,
    short_fingerprint,
)
from benchpack.results.study_scope import library_of_study

BUNDLE_ENDING = ".bundle.zip"
"""How the name of a bundle ends."""

# The same study gives the same bytes: no time, no rights, no system of this machine.
_STAMP = (1980, 1, 1, 0, 0, 0)
_RIGHTS, _UNIX = 0o100644 << 16, 3


@dataclass(frozen=True, slots=True)
class Seal:
    """What a bundle says of itself.

    Parameters
    ----------
    study : str
        Name of its study.
    fingerprint : str
        Of that study when it was written.
    canonical_form : int
        The form of text that was hashed.
    """

    study: str
    fingerprint: str
    canonical_form: int = CANONICAL_VERSION


def check_bundle_name(path: Path) -> None:
    """Refuse a name that no bundle has.

    Raises
    ------
    RequestError
        When it does not end in ``.zip``.
    """
    if path.suffix.lower() != ".zip":
        raise RequestError(f"{path.name}: a bundle is written as NAME{BUNDLE_ENDING}")


def write_bundle(library: Library, study: Study, path: Path) -> str:
    """Write a study with all it needs to one file; equal studies give equal bytes.

    Parameters
    ----------
    library : Library
        All records; those that the study does not need stay out.
    study : Study
        The study.
    path : Path
        The bundle, ``NAME.bundle.zip``.

    Returns
    -------
    str
        The fingerprint of the study.

    Raises
    ------
    RequestError
        When the name does not end in ``.zip``.
    DataError
        When the disk refuses, or a text cannot stand in a text file.
    """
    path = Path(path)
    check_bundle_name(path)
    scope = library_of_study(library, study)
    seal = Seal(study.name, fingerprint_of(scope, study))
    with _folder(path) as folder:
        write_package(scope, folder, currency=study.currency)
        _write_seal(seal, folder / SEAL)
        text = _readme(scope, seal)
        (folder / README).write_bytes(text.encode("utf-8", errors="replace"))
        with replacing(path) as fresh, zipfile.ZipFile(fresh, "w") as archive:
            for name in (SEAL, README, *UNPACKED[1:]):
                _add(archive, folder / name)
    return seal.fingerprint


def read_bundle(path: Path, *, pace: Pace | None = None) -> Reading:
    """Read a bundle, and say so where its data is not what it was sealed with.

    Parameters
    ----------
    path : Path
        The bundle, or any zipped Data Package.
    pace : Pace or None
        Progress and stopping.

    Raises
    ------
    DataError
        When it is no archive, is damaged, would do harm, or holds no Data Package.
    CancelledError
        When the person stopped it.
    """
    path = Path(path)
    with _folder(path) as folder:
        left_out = unpack(path, folder)
        if not (folder / DESCRIPTOR).exists():
            what = f"The archive holds no {DESCRIPTOR} at its top."
            raise fault(path, what, "Choose a bundle, or unpack it and open a table.")
        reading = read_package(folder / DESCRIPTOR, pace=pace)
        problems = [_renamed(problem, folder, path) for problem in reading.problems]
        doubt = _doubt(folder / SEAL, reading.library)
    if left_out:
        named = ", ".join(left_out[:3]) + ", ..." * (len(left_out) > 3)
        doubts = [(f"{named}: left in the archive.", "A bundle holds no such file.")]
    else:
        doubts = []
    doubts += [doubt] if doubt else []
    warnings = [
        Problem(what, remedy, source=str(path), severity=Severity.WARNING)
        for what, remedy in doubts
    ]
    return replace(reading, problems=(*warnings, *problems), source=str(path))


@contextmanager
def _folder(path: Path) -> Iterator[Path]:
    """Give a passing folder; problems with files in it are said of the bundle."""
    try:
        with tempfile.TemporaryDirectory(
            prefix="benchpack-", ignore_cleanup_errors=True
        ) as place:
            folder = Path(place)
            try:
                yield folder
            except DataError as error:
                found = (_renamed(problem, folder, path) for problem in error.problems)
                raise DataError(*found) from error
    except OSError as error:
        (problem,) = disk_fault(path, error).problems
        what = f"In the folder for passing files: {problem.what}"
        raise fault(path, what, problem.remedy) from error


def _renamed(problem: Problem, folder: Path, path: Path) -> Problem:
    source = problem.source
    if source == str(path):
        return problem
    inner = source.removeprefix(str(folder)).lstrip("/\\")
    return problem.at(source=f"{path.name}, {inner}" if inner else str(path))


def _add(archive: zipfile.ZipFile, file: Path) -> None:
    entry = zipfile.ZipInfo(file.name, _STAMP)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.create_system = _UNIX
    entry.external_attr = _RIGHTS
    entry.file_size = file.stat().st_size
    with file.open("rb") as plain, archive.open(entry, "w") as packed:
        shutil.copyfileobj(plain, packed)


def _write_seal(seal: Seal, file: Path) -> None:
    described = {
        "study": seal.study,
        "fingerprint": seal.fingerprint,
        "canonical form": seal.canonical_form,
        "written by": f"Benchpack {__version__}",
    }
    text = json.dumps(described, indent=2) + "\n"
    file.write_bytes(text.encode("ascii"))


def _read_seal(file: Path) -> Seal | None:
    try:
        found: Any = json.loads(file.read_bytes())
        return Seal(
            str(found["study"]), str(found["fingerprint"]), int(found["canonical form"])
        )
    except (OSError, KeyError, TypeError, ValueError, RecursionError):
        return None


def _doubt(file: Path, library: Library) -> tuple[str, str] | None:
    """Say why the data cannot be taken for what was sealed; None where it can."""
    seal = _read_seal(file)
    if seal is None:
        return (
            "The archive says no fingerprint, so nothing tells whether it was changed.",
            "Ask for a bundle, or compare the figures.",
        )
    study = library.study(seal.study)
    if study is None:
        what = f"The study {seal.study!r} of the bundle is not in it."
        return what, "Have it written once more."
    if seal.canonical_form != CANONICAL_VERSION:
        what = "The bundle was sealed by a version with other fingerprints."
        return what, "Open it with that version to compare."
    found = fingerprint_of(library, study)
    if found == seal.fingerprint:
        return None
    said, has = short_fingerprint(seal.fingerprint), short_fingerprint(found)
    what = f"The bundle says fingerprint {said}, its data has {has}: it was changed."
    return what, "Ask who sent it which of the two counts."


def _readme(scope: Library, seal: Seal) -> str:
    counts = (
        (len(scope.packs), "packs"),
        (scope.part_count, "parts"),
        (scope.joint_count, "joints"),
        (len(scope.materials), "materials"),
        (len(scope.sources), "sources"),
        (len(scope.changes_of(seal.study)), "changes"),
    )
    held = ", ".join(f"{number} {kind}" for number, kind in counts)
    lines = [
        f"Study: {' '.join(seal.study.split())}",
        f"Holds: {held}",
        f"Fingerprint: {short_fingerprint(seal.fingerprint)}",
        f"In full: {seal.fingerprint}",
        *([f"Note: {' '.join(scope.note.split())}"] if scope.note.strip() else []),
        "",
        "This is a study bundle: one study of battery packs with every record that it",
        "is answered from, as an open Data Package (datapackage.json, CSV tables with",
        "Table Schema). Open it with Benchpack (benchpack FILE, benchpack check FILE),",
        "or unpack it and read the tables with any program. Benchpack works the",
        "fingerprint out again and says so where the data is no longer the same.",
    ]
    return "\n".join(lines) + "\n"
