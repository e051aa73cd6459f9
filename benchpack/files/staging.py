"""Several files that belong together: all of them are there at the end, or none."""

from __future__ import annotations

import os
import shutil
import tempfile
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path

from benchpack.errors import DataError, Problem
from benchpack.files.faults import check_ordinary, disk_fault, fault, is_folder

_PREFIX, _KEPT = ".benchpack-", ".kept"
_LEFT_OVER_S = 86_400.0


@contextmanager
def staged(folder: Path) -> Iterator[Path]:
    """Give a hidden folder whose files go to `folder` when the block ends.

    Files of the same name are replaced. When the block raises, nothing has changed.

    Parameters
    ----------
    folder : Path
        Where the files are to be; it has to be there.

    Raises
    ------
    DataError
        When the disk refuses, or a folder or a device has the name of a file.
    """
    _clear_left_over(folder)
    try:
        stage = Path(tempfile.mkdtemp(prefix=_PREFIX, dir=folder))
    except OSError as error:
        raise disk_fault(folder, error) from error
    try:
        yield stage
        files = sorted(stage.iterdir())
        _check_targets(files, folder)
        _move_all(files, folder, stage / _KEPT)
    except DataError as error:
        found = (_said_of(problem, stage, folder) for problem in error.problems)
        raise DataError(*found) from error
    except OSError as error:
        raise disk_fault(folder, error) from error
    finally:
        shutil.rmtree(stage, ignore_errors=True)


def _clear_left_over(folder: Path) -> None:
    """Remove what a program that was killed has left; none writes for a day."""
    with suppress(OSError):
        for stage in folder.glob(f"{_PREFIX}*"):
            if stage.is_dir() and time.time() - stage.stat().st_mtime > _LEFT_OVER_S:
                shutil.rmtree(stage, ignore_errors=True)


def _check_targets(files: Sequence[Path], folder: Path) -> None:
    for file in files:
        target = folder / file.name
        check_ordinary(target)
        if is_folder(target):
            what = "A folder of this name is in the way."
            raise fault(target, what, "Rename it, or choose another place.")


def _move_all(files: Sequence[Path], folder: Path, kept: Path) -> None:
    """Move all files, or put back what stood there before."""
    kept.mkdir()
    moved: list[Path] = []
    for file in files:
        target, old = folder / file.name, kept / file.name
        try:
            # It stays in its place until the new one takes it, should all stop here.
            if target.exists():
                _keep(target, old)
            file.replace(target)
        except OSError as error:
            _put_back(moved, kept)
            raise disk_fault(target, error) from error
        moved.append(target)


def _keep(file: Path, place: Path) -> None:
    """Keep the content of a file under a second name."""
    try:
        os.link(file, place)
    except OSError:  # a disk without links, a file that is not the person's own
        shutil.copy2(file, place)


def _put_back(moved: Sequence[Path], kept: Path) -> None:
    for target in moved:
        old = kept / target.name
        with suppress(OSError):
            if old.exists():
                old.replace(target)
            else:
                target.unlink()


def _said_of(problem: Problem, stage: Path, folder: Path) -> Problem:
    """Give a problem of a file as that of the place where it would have gone."""
    source = problem.source
    if not source.startswith(str(stage)):
        return problem
    return problem.at(source=str(folder / Path(source).relative_to(stage)))
