"""Several files that belong together: all of them are there at the end, or none."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from benchpack.errors import DataError, Problem
from benchpack.files.faults import check_ordinary, disk_fault, fault, is_folder


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
    try:
        stage = Path(tempfile.mkdtemp(prefix=".benchpack-", dir=folder))
    except OSError as error:
        raise disk_fault(folder, error) from error
    try:
        yield stage
        _move_all(sorted(stage.iterdir()), folder)
    except DataError as error:
        found = (_said_of(problem, stage, folder) for problem in error.problems)
        raise DataError(*found) from error
    except OSError as error:
        raise disk_fault(folder, error) from error
    finally:
        shutil.rmtree(stage, ignore_errors=True)


def _move_all(files: Sequence[Path], folder: Path) -> None:
    for file in files:
        target = folder / file.name
        check_ordinary(target)
        if is_folder(target):
            what = "A folder of this name is in the way."
            raise fault(target, what, "Rename it, or choose another place.")
    for file in files:
        target = folder / file.name
        try:
            file.replace(target)
        except OSError as error:
            raise disk_fault(target, error) from error


def _said_of(problem: Problem, stage: Path, folder: Path) -> Problem:
    """Give a problem of a file as that of the place where it would have gone."""
    source = problem.source
    if not source.startswith(str(stage)):
        return problem
    return problem.at(source=str(folder / Path(source).relative_to(stage)))
