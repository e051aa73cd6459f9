"""What must hold for the propagation of distributions through any model."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc.distributions import Distribution, quantile_of_range
from benchpack.calc.monte_carlo import propagate
from benchpack.errors import CancelledError, RequestError

INPUTS = [
    quantile_of_range(0.0, 4.0, likely=1.0),
    quantile_of_range(2.0, 3.0, likely=2.5, kind=Distribution.RECTANGULAR),
]


def total(inputs: np.ndarray) -> np.ndarray:
    return np.asarray(inputs[0] * inputs[1])


@settings(deadline=None, max_examples=25)
@given(st.integers(2, 300), st.integers(1, 400), st.integers(0, 2**40))
def test_the_block_changes_nothing(trials: int, block: int, seed: int) -> None:
    whole = propagate(total, INPUTS, trials=trials, seed=seed)
    parts = propagate(total, INPUTS, trials=trials, seed=seed, block=block)
    assert np.array_equal(whole.values, parts.values)


def test_independent_inputs_multiply_their_means() -> None:
    result = propagate(total, INPUTS)
    assert result.mean == pytest.approx(5.0 / 3.0 * 2.5, rel=0.005)
    assert result.count == 200_000


def test_a_model_has_to_give_a_number_for_each_trial() -> None:
    with pytest.raises(RequestError, match="one value"):
        propagate(lambda x: x, INPUTS, trials=10)
    with pytest.raises(RequestError, match="finite"):
        propagate(lambda x: x[0] + np.inf, INPUTS, trials=10)
    with pytest.raises(RequestError, match="trials"):
        propagate(total, INPUTS, trials=0)


def test_the_work_stops_when_asked() -> None:
    calls = itertools.count()
    with pytest.raises(CancelledError):
        propagate(total, INPUTS, block=10, cancelled=lambda: next(calls) == 3)
