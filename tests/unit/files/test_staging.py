"""Files that belong together: all of them are there at the end, or none."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from benchpack.errors import CancelledError, DataError, Problem
from benchpack.files.staging import staged


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def stage_files(folder: Path, *files: str, error: BaseException | None = None) -> None:
    with staged(folder) as stage:
        for name in files:
            (stage / name).write_text("new")
        if error is not None:
            raise error


def test_all_files_arrive_and_replace_those_of_their_names(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text("old")
    (tmp_path / "other").write_text("stays")
    with staged(tmp_path) as stage:
        (stage / "a.csv").write_text("new")
        (stage / "b.csv").write_text("new too")
        assert (tmp_path / "a.csv").read_text() == "old"
    assert names(tmp_path) == ["a.csv", "b.csv", "other"]
    assert (tmp_path / "a.csv").read_text() == "new"


@pytest.mark.parametrize("error", [CancelledError("stopped"), ValueError("a bug")])
def test_nothing_changes_when_the_block_raises(
    tmp_path: Path, error: Exception
) -> None:
    (tmp_path / "a.csv").write_text("old")
    with pytest.raises(type(error)):
        stage_files(tmp_path, "a.csv", error=error)
    assert names(tmp_path) == ["a.csv"]
    assert (tmp_path / "a.csv").read_text() == "old"


def test_a_folder_in_the_way_is_named_and_nothing_is_moved(tmp_path: Path) -> None:
    (tmp_path / "b.csv").mkdir()
    with pytest.raises(DataError) as caught:
        stage_files(tmp_path, "a.csv", "b.csv")
    (problem,) = caught.value.problems
    assert problem.source == str(tmp_path / "b.csv")
    assert "in the way" in problem.what
    assert problem.remedy
    assert names(tmp_path) == ["b.csv"]


def test_a_problem_names_the_place_where_the_file_was_to_go(tmp_path: Path) -> None:
    with pytest.raises(DataError) as caught, staged(tmp_path) as stage:
        raise DataError(Problem("No room.", source=str(stage / "a.csv")))
    assert caught.value.problems[0].source == str(tmp_path / "a.csv")


def test_a_folder_that_is_missing_is_named(tmp_path: Path) -> None:
    gone = tmp_path / "gone"
    with pytest.raises(DataError) as caught, staged(gone):
        pytest.fail("it must not begin")
    assert caught.value.problems[0].source == str(gone)


def test_what_a_killed_program_left_is_cleared_after_a_day(tmp_path: Path) -> None:
    old, new = tmp_path / ".benchpack-old", tmp_path / ".benchpack-new"
    for folder in (old, new):
        folder.mkdir()
        (folder / "a.txt").write_text("half")
    os.utime(old, (0, time.time() - 90_000))
    stage_files(tmp_path, "a.txt")
    assert names(tmp_path) == [".benchpack-new", "a.txt"]


@pytest.mark.parametrize("has_links", [True, False])
def test_what_stood_there_comes_back_where_a_file_cannot_be_moved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, has_links: bool
) -> None:
    (tmp_path / "a.txt").write_text("old a")
    (tmp_path / "c.txt").write_text("old c")
    move = Path.replace

    def locked(file: Path, target: Path) -> Path:
        if Path(target) == tmp_path / "c.txt":
            raise PermissionError(13, "Permission denied")
        return move(file, target)

    def no_link(*_: object) -> None:
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(Path, "replace", locked)
    if not has_links:
        monkeypatch.setattr(os, "link", no_link)
    with pytest.raises(DataError) as caught:
        stage_files(tmp_path, "a.txt", "b.txt", "c.txt")
    assert caught.value.problems[0].source == str(tmp_path / "c.txt")
    left = {path.name: path.read_text() for path in tmp_path.iterdir()}
    assert left == {"a.txt": "old a", "c.txt": "old c"}
