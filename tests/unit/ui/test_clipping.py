from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.ui.charts.clipping import cut_line, cut_places, with_crossings


def test_a_line_ends_exactly_at_the_levels() -> None:
    x, y = cut_line(np.array([0.0, 10.0]), np.array([-5.0, 15.0]), low=0.0, high=10.0)
    known = np.isfinite(y)
    assert x[known].tolist() == pytest.approx([2.5, 7.5])
    assert y[known].tolist() == pytest.approx([0.0, 10.0])


def test_a_line_inside_stays_as_it_is() -> None:
    x, y = np.array([0.0, 1.0, 2.0]), np.array([3.0, 5.0, 4.0])
    across, down = cut_line(x, y, low=0.0, high=10.0)
    assert across.tolist() == x.tolist()
    assert down.tolist() == y.tolist()


def test_crossings_are_added_for_every_line() -> None:
    x = np.array([0.0, 10.0])
    places, lines = with_crossings(
        x, (np.array([0.0, 10.0]), np.array([10.0, 0.0])), low=-1.0, high=8.0
    )
    assert places.tolist() == pytest.approx([0.0, 2.0, 8.0, 10.0])
    assert lines[0].tolist() == pytest.approx([0.0, 2.0, 8.0, 10.0])
    assert lines[1].tolist() == pytest.approx([10.0, 8.0, 2.0, 0.0])


def test_places_are_cut_at_the_range() -> None:
    x = np.array([0.0, 10.0, 20.0, 30.0])
    assert cut_places(x, low=5.0, high=25.0).tolist() == [5.0, 10.0, 20.0, 25.0]
    assert cut_places(x, low=-5.0, high=50.0).tolist() == x.tolist()
    assert cut_places(x, low=40.0, high=50.0).tolist() == []


@given(
    y=st.lists(st.floats(-100, 100), min_size=2, max_size=20),
    low=st.floats(-50, 0),
    span=st.floats(1, 50),
)
def test_nothing_is_drawn_beyond_the_levels(
    y: list[float], low: float, span: float
) -> None:
    x = np.arange(len(y), dtype=np.float64)
    _, down = cut_line(x, np.array(y), low=low, high=low + span)
    known = down[np.isfinite(down)]
    assert np.all(known >= low - 1e-6)
    assert np.all(known <= low + span + 1e-6)
