"""Break-even lines against lines, a circle and a hyperbola in closed form."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.calc.two_way import break_even_lines

SIDE = np.linspace(-1.5, 1.5, 61)


@pytest.mark.parametrize(
    ("a", "b", "c"), [(1.0, 0.0, 0.31), (0.0, -2.0, 0.7), (1.0, 0.5, -0.2)]
)
def test_straight_lines(a: float, b: float, c: float) -> None:
    """a x + b y = c: every point on it, and from edge to edge."""
    values = a * SIDE + b * SIDE[:, np.newaxis]
    (line,) = break_even_lines(SIDE, SIDE, values=values, level=c)
    assert_allclose(line @ [a, b], c, atol=1e-12)
    ends = np.abs(line[[0, -1]]).max(axis=1)
    assert_allclose(ends, 1.5, atol=1e-12)


def test_a_circle() -> None:
    """Chords of the unit circle: its radius to h2/8, length and area."""
    radius = np.hypot(SIDE, SIDE[:, np.newaxis])
    (line,) = break_even_lines(SIDE, SIDE, values=radius, level=1.0)
    step = SIDE[1] - SIDE[0]
    assert_allclose(np.hypot(*line.T), 1.0, atol=step**2 / 8.0)
    assert_allclose(line[0], line[-1])
    x, y = line.T
    around = np.hypot(np.diff(x), np.diff(y)).sum()
    assert around == pytest.approx(2.0 * np.pi, rel=1e-3)
    area = 0.5 * abs(float(np.sum(x[:-1] * y[1:] - x[1:] * y[:-1])))
    assert area == pytest.approx(np.pi, rel=1e-3)


def test_a_hyperbola_of_worth_and_share() -> None:
    """w s dm = c on 40 kg and 60 of money: s = 1.5 / w at every point."""
    worth, share = np.linspace(1.0, 6.0, 41), np.linspace(0.0, 1.0, 31)
    values = 40.0 * worth * share[:, np.newaxis] - 60.0
    (line,) = break_even_lines(worth, share, values=values)
    # Along the side of a cell a product changes evenly, so that this is exact.
    assert_allclose(line[:, 0] * line[:, 1], 1.5, rtol=1e-12)
    assert {1.5, 6.0} == {round(float(place), 9) for place in line[[0, -1], 0]}
