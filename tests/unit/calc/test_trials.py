"""What must hold for the summary of any trials."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc.trials import summarise
from benchpack.errors import RequestError

untimed = settings(deadline=None, max_examples=40)


@st.composite
def samples(draw: st.DrawFn, *, least: int = 2) -> np.ndarray:
    """Draw whole numbers, many of them alike, or figures of any size."""
    random = np.random.default_rng(draw(st.integers(0, 10_000)))
    count = draw(st.integers(least, 200))
    if draw(st.booleans()):
        return random.integers(-20, 20, count).astype(np.float64)
    return random.normal(0.0, 10.0 ** draw(st.integers(-3, 6)), count)


coverages = st.floats(0.01, 0.99)


@untimed
@given(samples(), st.floats(0.0, 1.0))
def test_quantiles_are_those_of_numpy(values: np.ndarray, p: float) -> None:
    assert float(summarise(values).quantile(p)) == pytest.approx(
        float(np.quantile(values, p)), rel=1e-9, abs=1e-6
    )


@untimed
@given(samples())
def test_mean_and_uncertainty_are_those_of_numpy(values: np.ndarray) -> None:
    trials = summarise(values)
    assert trials.mean == pytest.approx(float(values.mean()), rel=1e-12, abs=1e-12)
    size = float(np.abs(values).max())
    assert trials.standard_uncertainty == pytest.approx(
        float(values.std(ddof=1)), rel=1e-9, abs=1e-12 * size
    )
    assert trials.count == values.size
    assert trials.p10 <= trials.p50 <= trials.p90


def test_the_uncertainty_of_more_than_one_block() -> None:
    values = np.random.Generator(np.random.PCG64(5)).normal(3.0, 2.0, 200_001)
    trials = summarise(values)
    assert trials.standard_uncertainty == pytest.approx(values.std(ddof=1), rel=1e-12)


@untimed
@given(st.integers(0, 1000), samples())
def test_the_order_of_trials_does_not_matter(seed: int, values: np.ndarray) -> None:
    other = np.random.default_rng(seed).permutation(values)
    one, two = summarise(values), summarise(other)
    assert np.array_equal(one.ordered, two.ordered)
    assert np.array_equal(two.values, other)


@untimed
@given(samples(least=60), coverages)
def test_intervals_hold_what_they_promise(values: np.ndarray, coverage: float) -> None:
    trials = summarise(values)
    wanted = coverage * values.size
    symmetric = trials.symmetric_interval(coverage)
    shortest = trials.shortest_interval(coverage)
    for low, high in (symmetric, shortest):
        assert low <= high
        assert np.count_nonzero((values >= low) & (values <= high)) >= wanted - 0.5
    assert shortest[1] - shortest[0] <= symmetric[1] - symmetric[0]


@untimed
@given(samples(), st.floats(-1e6, 1e6))
def test_the_chance_of_a_target_counts_the_trials(
    values: np.ndarray, target: float
) -> None:
    trials = summarise(values)
    wanted = np.count_nonzero(values >= target) / values.size
    assert float(trials.chance_of_at_least(target)) == wanted
    assert float(trials.chance_of_at_least(values.min())) == 1.0


def test_an_unknown_target_has_an_unknown_chance() -> None:
    chances = summarise([1.0, 2.0]).chance_of_at_least([math.nan, 2.0])
    assert math.isnan(chances[0])
    assert chances[1] == 0.5


def test_places_of_jcgm_101() -> None:
    """7.7: M = 11, q = 0.5 * 11 = 5.5 taken as 6, r = (11 - 6 + 1)/2 = 3."""
    trials = summarise(np.arange(1.0, 12.0) ** 2)
    assert trials.symmetric_interval(0.5) == (9.0, 81.0)
    assert trials.shortest_interval(0.5) == (1.0, 49.0)
    # With pM whole: q = 8, r = (10 - 8)/2 = 1.
    ten = summarise(np.arange(1.0, 11.0))
    assert ten.symmetric_interval(0.8) == (1.0, 9.0)


def test_what_was_drawn_cannot_be_written_to() -> None:
    trials = summarise([1.0, 2.0])
    for array in (trials.values, trials.ordered):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 5.0


@pytest.mark.parametrize(
    "values", [[], [1.0], [1.0, math.nan], [math.inf, 0.0], [[1.0, 2.0]]]
)
def test_what_is_no_distribution_is_refused(values: list[float]) -> None:
    with pytest.raises(RequestError):
        summarise(values)


def test_shares_and_coverages_have_bounds() -> None:
    trials = summarise([1.0, 2.0, 3.0])
    for share in (-0.1, 1.1, math.nan):
        with pytest.raises(RequestError, match="between 0 and 1"):
            trials.quantile(share)
    for coverage in (0.0, 1.0, math.nan):
        with pytest.raises(RequestError, match="between 0 and 1"):
            trials.shortest_interval(coverage)
    for coverage in (0.05, 0.95):
        with pytest.raises(RequestError, match="too few"):
            trials.symmetric_interval(coverage)
