"""Where a command may write: not over what it reads, and not into nowhere."""

from __future__ import annotations

from pathlib import Path

from benchpack.errors import RequestError
from benchpack.files.descriptor import DESCRIPTOR, RESOURCES
from benchpack.files.faults import check_ordinary, is_folder


def check_output(source: Path, out: Path, *, may_be_folder: bool) -> None:
    """Refuse a place to write to before any work is done.

    Parameters
    ----------
    source : Path
        What is read.
    out : Path
        Where the result is to go.
    may_be_folder : bool
        True where a folder or a name without ending stands for a Data Package.

    Raises
    ------
    RequestError
        When the result would overwrite what is read, or its folder is missing.
    DataError
        When the disk does not say what is there.
    """
    check_ordinary(out)
    whole = may_be_folder and _means_package(out)
    if is_folder(out) and not may_be_folder:
        raise RequestError(f"{out} is a folder: name a file in it")
    if not whole and not is_folder(out.parent):
        raise RequestError(f"there is no folder {out.parent} to write {out.name} to")
    written = _tables(out) if whole else [out]
    for place in _tables(source) if _means_package(source) else [source]:
        if any(_same(place, target) for target in written):
            raise RequestError(
                f"{out} would overwrite {place}, which is being read: name another"
            )


def _means_package(path: Path) -> bool:
    return is_folder(path) or path.name == DESCRIPTOR or not path.suffix


def _tables(path: Path) -> list[Path]:
    """Give the files of the Data Package that a path means, there or not."""
    folder = path.parent if path.name == DESCRIPTOR else path
    names = [
        f"{table.name}{ending}" for table in RESOURCES for ending in (".csv", ".tsv")
    ]
    return [path, folder / DESCRIPTOR, *(folder / name for name in names)]


def _same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except OSError:
        return False
