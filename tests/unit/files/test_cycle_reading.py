"""Drive cycles from tables that people have."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import xlsxwriter
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.errors import CancelledError, DataError, Problem, Severity
from benchpack.files.cycle_reading import CycleReading, read_cycle
from benchpack.model.drive_cycle import MOST_SAMPLES, parse_cycle


def written(folder: Path, text: str, name: str = "hill road.csv") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def read(folder: Path, text: str, name: str = "hill road.csv") -> CycleReading:
    return read_cycle(written(folder, text, name))


def refused(folder: Path, text: str) -> Problem:
    with pytest.raises(DataError) as caught:
        read(folder, text)
    return caught.value.problems[0]


def test_even_steps_stay_and_the_name_is_the_stem_of_the_file(tmp_path: Path) -> None:
    found = read(tmp_path, "time [s],speed [km/h]\n0,0\n0.5,12.3\n1,20\n1.5,0\n")
    assert found.cycle.name == "hill road"
    assert found.cycle.step_s == 0.5
    assert found.cycle.speed_kmh == (0.0, 12.3, 20.0, 0.0)
    assert (found.rows_read, found.notes) == (4, ())
    assert parse_cycle(found.cycle.to_text()) == found.cycle


@pytest.mark.parametrize(
    ("head", "factor"),
    [
        ("speed [km/h]", 1.0),
        ("v [m/s]", 3.6),
        ("Speed (mph)", 1.609344),
        ("velocity [kph]", 1.0),
        ("vehicle speed", 1.0),
    ],
)
def test_units_of_the_heads_are_followed(
    tmp_path: Path, head: str, factor: float
) -> None:
    """A mile is 1,609.344 m: the international yard of 1959."""
    found = read(tmp_path, f"t [s],{head}\n0,0\n1,10\n2,20\n")
    assert_allclose(found.cycle.speed_kmh, [0, 10 * factor, 20 * factor], atol=5e-4)


def test_minutes_other_columns_and_lines_above_do_no_harm(tmp_path: Path) -> None:
    head = "logged by hand\n\nno;time [min];gear;speed [km/h]\n"
    text = head + "1;0;1;0\n2;0,5;2;30,5\n3;1;2;0\n"
    found = read(tmp_path, text, "log.txt")
    assert found.cycle.step_s == 30
    assert found.cycle.speed_kmh == (0.0, 30.5, 0.0)


def test_a_workbook_is_read_on_whatever_sheet_it_stands(tmp_path: Path) -> None:
    path = tmp_path / "town.xlsx"
    with xlsxwriter.Workbook(path) as book:
        book.add_worksheet("about").write_row(0, 0, ["who", "when"])
        sheet = book.add_worksheet("trace")
        sheet.write_row(0, 0, ["time [s]", "speed [m/s]"])
        for row, cells in enumerate([(0, 0), (1, 5), (2, 0)], start=1):
            sheet.write_row(row, 0, cells)
    found = read_cycle(path)
    assert (found.cycle.name, found.cycle.speed_kmh) == ("town", (0.0, 18.0, 0.0))


def test_uneven_times_are_brought_to_a_second_and_it_is_said(tmp_path: Path) -> None:
    found = read(tmp_path, "time,speed\n0,0\n1,10\n3,30\n4.5,0\n")
    assert found.cycle.step_s == 1.0
    assert found.cycle.speed_kmh == (0.0, 10.0, 20.0, 30.0, 10.0)
    (note,) = found.notes
    assert note.severity is Severity.WARNING
    assert "uneven" in note.what
    assert "linear interpolation" in note.what
    assert note.source == "hill road.csv"


def test_a_clock_that_rounds_is_even(tmp_path: Path) -> None:
    rows = "".join(f"{0.1 * i:.4f},{i % 7}\n" for i in range(50))
    assert read(tmp_path, "time [s],speed [km/h]\n" + rows).notes == ()


@pytest.mark.parametrize(
    ("text", "row", "column", "value"),
    [
        ("time [s],speed [km/h]\n0,0\n1,fast\n2,3\n", 3, "speed [km/h]", "fast"),
        ("time [s],speed [km/h]\n0,0\n1,\n2,3\n", 3, "speed [km/h]", ""),
        ("time [s],speed [km/h]\n0,0\n1,-4\n2,3\n", 3, "speed [km/h]", "-4"),
        ("time [s],speed [km/h]\n0,0\n1,900\n2,3\n", 3, "speed [km/h]", "900"),
        ("time [s],speed [km/h]\n0,0\n2,1\n1,3\n", 4, "time [s]", "1"),
        ("time [s],speed [km/h]\n0,0\n2,1\n2,3\n", 4, "time [s]", "2"),
        ("time [s],speed [km/h]\n0,0\n1,5 kg\n", 3, "speed [km/h]", "5 kg"),
    ],
)
def test_a_fault_names_file_row_column_value_and_remedy(
    tmp_path: Path, text: str, row: int, column: str, value: str
) -> None:
    problem = refused(tmp_path, text)
    assert problem.source == "hill road.csv"
    assert (problem.row, problem.column, problem.value) == (row, column, value)
    assert problem.remedy


def test_what_is_no_cycle_is_refused_with_a_remedy(tmp_path: Path) -> None:
    no_speed = refused(tmp_path, "time [s],force\n0,1\n")
    assert "no column for speed [km/h]" in no_speed.what
    assert no_speed.row == 1
    one = refused(tmp_path, "time [s],speed [km/h]\n0,10\n")
    assert "two samples" in one.what
    still = refused(tmp_path, "time [s],speed [km/h]\n0,0\n1,0\n2,0\n")
    assert "stands still" in still.what
    slow = refused(tmp_path, "time [s],speed [km/h]\n0,0\n100,5\n200,0\n")
    assert "step of a drive cycle is 100 s" in slow.what
    for problem in (one, still, slow):
        assert problem.source == "hill road.csv"
        assert problem.remedy


def test_more_samples_than_can_be_kept_are_refused(tmp_path: Path) -> None:
    rows = "".join(f"{i},{i % 3}\n" for i in range(MOST_SAMPLES + 1))
    problem = refused(tmp_path, "time [s],speed [km/h]\n" + rows)
    assert f"{MOST_SAMPLES + 1} samples" in problem.what
    assert "longer steps" in problem.remedy


def test_a_long_cycle_keeps_the_digits_there_is_room_for(tmp_path: Path) -> None:
    speeds = 60 + 50 * np.sin(np.arange(5000) / 30)
    rows = "".join(f"{i},{speed:.5f}\n" for i, speed in enumerate(speeds))
    found = read(tmp_path, "time [s],speed [km/h]\n" + rows)
    assert_allclose(found.cycle.speed_kmh, speeds, atol=0.051)
    (note,) = found.notes
    assert "rounded to 0.1 km/h" in note.what


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("photo.png", b"\x89PNG\r\n\x1a\n" + bytes(50)),
        ("empty.csv", b""),
        ("blank.csv", b"\n \n"),
        ("book.xlsx", b"PK\x03\x04 cut short"),
        ("nowhere.csv", None),
    ],
)
def test_what_is_no_table_is_refused_by_the_name_of_its_file(
    tmp_path: Path, name: str, content: bytes | None
) -> None:
    path = tmp_path / name
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(DataError) as error:
        read_cycle(path)
    (problem,) = error.value.problems
    assert problem.source == name
    assert problem.what
    assert problem.remedy


def test_it_can_be_stopped(tmp_path: Path) -> None:
    path = written(tmp_path, "time [s],speed [km/h]\n0,0\n1,5\n")
    with pytest.raises(CancelledError):
        read_cycle(path, cancelled=_at_once)


def _at_once() -> bool:
    return True


@settings(max_examples=40, deadline=None)
@given(
    gaps=st.lists(st.floats(0.05, 5), min_size=1, max_size=40),
    speeds=st.lists(st.floats(0, 200), min_size=41, max_size=41),
)
def test_any_trace_keeps_its_speeds_within_their_span(
    tmp_path_factory: pytest.TempPathFactory, gaps: list[float], speeds: list[float]
) -> None:
    times = np.concatenate(([0.0], np.cumsum(gaps)))
    speeds[0] = 50.0
    pairs = zip(times.tolist(), speeds, strict=False)
    text = "time [s],speed [km/h]\n" + "".join(f"{t!r},{v!r}\n" for t, v in pairs)
    path = written(tmp_path_factory.mktemp("any"), text)
    if times[-1] < 1.0 and len(gaps) > 1:
        return
    found = read_cycle(path).cycle
    driven = speeds[: len(times)]
    assert min(driven) - 1e-3 <= min(found.speed_kmh)
    assert max(found.speed_kmh) <= max(driven) + 1e-3
    covered = found.step_s * (len(found.speed_kmh) - 1)
    assert times[-1] - 1.0 - 1e-2 <= covered <= times[-1] + 1e-2
