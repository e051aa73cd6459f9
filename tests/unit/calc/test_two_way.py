"""Lines on a map: gaps where it is unknown, none where nothing crosses."""

from __future__ import annotations

import subprocess
import sys

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.calc.two_way import break_even_lines
from benchpack.errors import RequestError

NAN = float("nan")
SIDE = np.linspace(0.0, 4.0, 5)


def test_an_unknown_cell_leaves_a_gap() -> None:
    values = np.tile(SIDE - 1.5, (5, 1))
    (whole,) = break_even_lines(SIDE, SIDE, values=values)
    assert sorted(whole[:, 1]) == [0.0, 1.0, 2.0, 3.0, 4.0]
    for unknown in (NAN, float("inf"), -float("inf")):
        values[2, 2] = unknown
        lines = break_even_lines(SIDE, SIDE, values=values)
        assert sorted(sorted(line[:, 1]) for line in lines) == [[0.0, 1.0], [3.0, 4.0]]
        for line in lines:
            assert_allclose(line[:, 0], 1.5)


def test_places_need_not_be_even() -> None:
    x = np.array([0.0, 1.0, 10.0])
    (line,) = break_even_lines(x, [0.0, 5.0], values=[x - 4.0, x - 4.0])
    assert_allclose(line[:, 0], 4.0)


def test_several_lines_come_apart() -> None:
    x = np.linspace(0.0, 1.0, 50)
    values = np.tile(np.sin(4.0 * np.pi * x + 0.3), (3, 1))
    lines = break_even_lines(x, [0.0, 1.0, 2.0], values=values)
    places = sorted(float(line[:, 0].mean()) for line in lines)
    wanted = (np.arange(1, 5) * np.pi - 0.3) / (4.0 * np.pi)
    assert_allclose(places, wanted, atol=1e-3)
    assert all(line.shape == (3, 2) for line in lines)


@pytest.mark.parametrize("fill", [1.0, -1.0, NAN])
def test_what_does_not_cross_has_no_line(fill: float) -> None:
    assert break_even_lines(SIDE, SIDE, values=np.full((5, 5), fill)) == []


def test_a_grid_without_cells_or_a_level_unknown_has_no_line() -> None:
    assert break_even_lines([], [], values=np.zeros((0, 0))) == []
    assert break_even_lines([1.0], SIDE, values=SIDE[:, np.newaxis] - 1.5) == []
    values = np.tile(SIDE, (5, 1))
    for level in (NAN, float("inf")):
        assert break_even_lines(SIDE, SIDE, values=values, level=level) == []


@pytest.mark.parametrize(
    ("x", "shape", "said"),
    [
        (SIDE, (4, 5), "one value for each place"),
        (SIDE[::-1], (5, 5), "are known and rise"),
        ([0.0, 1.0, 1.0, 2.0, 3.0], (5, 5), "are known and rise"),
        ([0.0, 1.0, NAN, 2.0, 3.0], (5, 5), "are known and rise"),
        ([[0.0, 1.0]], (5, 5), "one row of places"),
    ],
)
def test_a_map_that_is_none_is_refused(
    x: list[float], shape: tuple[int, int], said: str
) -> None:
    with pytest.raises(RequestError, match=said):
        break_even_lines(x, SIDE, values=np.zeros(shape))


def test_the_package_behind_it_loads_on_first_need() -> None:
    script = (
        "import sys, benchpack.calc.two_way as two_way\n"
        "assert 'contourpy' not in sys.modules\n"
        "two_way.break_even_lines([0, 1], [0, 1], values=[[-1, 1], [-1, 1]])\n"
        "assert 'contourpy' in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", script], check=True)
