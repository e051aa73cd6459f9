"""Audit workbooks worked out again by LibreOffice, and compared cell by cell."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path

import openpyxl
from numpy.testing import assert_allclose

Content = str | float | None


def without_figures(
    path: Path, out: Path, inputs: Mapping[tuple[str, str], Content]
) -> None:
    """Write a workbook again without the figures of its formulas, with other inputs."""
    book = openpyxl.load_workbook(path)
    for (sheet, cell), value in inputs.items():
        book[sheet][cell] = value
    book.save(out)


def office() -> str | None:
    """Give the program, None where it is not installed."""
    return shutil.which("soffice") or shutil.which("libreoffice")


def work_out(paths: list[Path], folder: Path, *, into: str = "xlsx") -> None:
    """Let LibreOffice open workbooks, work them out and write them to a folder."""
    program = office()
    assert program is not None
    profile = folder / "profile"
    done = subprocess.run(
        [
            program,
            f"-env:UserInstallation={profile.as_uri()}",
            "--headless",
            "--convert-to",
            into,
            "--outdir",
            str(folder),
            *map(str, paths),
        ],
        capture_output=True,
        text=True,
        check=False,
        timeout=110,
    )
    assert done.returncode == 0, done.stderr


def figures_of(
    path: Path, cells: Mapping[tuple[str, str], Content]
) -> dict[tuple[str, str], Content]:
    """Give what a workbook holds in some cells."""
    book = openpyxl.load_workbook(path, data_only=True)
    found = {place: book[place[0]][place[1]].value for place in cells}
    book.close()
    return found


def assert_same(
    found: Mapping[tuple[str, str], Content],
    expected: Mapping[tuple[str, str], Content],
) -> int:
    """Compare cells to 1e-9 relative, and give how many were numbers."""
    numbers = [(place, value) for place, value in expected.items() if _is_number(value)]
    words = {p: v or None for p, v in expected.items() if not _is_number(v)}
    assert {place: found[place] or None for place in words} == words
    odd = [place for place, _ in numbers if not _is_number(found[place])]
    assert not odd
    for place, value in numbers:
        # What differences of like figures leave is no smaller than their rounding.
        assert_allclose(found[place], value, rtol=1e-9, atol=1e-9, err_msg=str(place))  # type: ignore[arg-type]
    return len(numbers)


def _is_number(value: Content) -> bool:
    return isinstance(value, int | float)
