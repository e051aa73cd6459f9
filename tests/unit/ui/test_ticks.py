from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.ui.charts.ticks import nice_step, tick_texts, ticks


@pytest.mark.parametrize(
    ("span", "most", "step"),
    [(100, 5, 20), (100, 4, 50), (1, 10, 0.1), (0.07, 7, 0.01), (90_000, 5, 20_000)],
)
def test_step_is_round_and_fits(span: float, most: int, step: float) -> None:
    assert nice_step(span, most=most) == pytest.approx(step)


@pytest.mark.parametrize("span", [0.0, -3.0, math.nan, math.inf])
def test_a_span_without_length_has_a_step(span: float) -> None:
    assert nice_step(span, most=5) == 1.0


@given(
    low=st.floats(-1e6, 1e6),
    span=st.floats(1e-3, 1e6),
    most=st.integers(1, 12),
)
def test_ticks_lie_in_the_range_and_are_few(low: float, span: float, most: int) -> None:
    high = low + span
    values, step = ticks(low, high, most=most)
    assert len(values) <= most + 1
    room = 1e-6 * step + 1e-9 * max(abs(low), abs(high))
    assert np.all(values >= low - room)
    assert np.all(values <= high + room)
    mantissa = step / 10 ** math.floor(math.log10(step) + 1e-9)
    assert min(abs(mantissa - one) for one in (1, 2, 5)) < 1e-6


def test_texts_use_true_minus_thin_space_and_equal_decimals() -> None:
    values = np.array([-1500.0, -0.0, 0.0, 12500.0])
    assert tick_texts(values, step=500) == ["−1\u2009500", "0", "0", "12\u2009500"]
    assert tick_texts(np.array([-0.5, 0.0, 0.5]), step=0.5) == ["−0.5", "0.0", "0.5"]


def test_texts_take_a_decimal_comma() -> None:
    texts = tick_texts(np.array([1000.2, -0.2]), step=0.2, decimal_mark=",")
    assert texts == ["1\u2009000,2", "−0,2"]
