"""What must hold for every three-point estimate."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc._pert_table import cubics, invert_pert
from benchpack.calc.distributions import (
    Distribution,
    quantile_of_range,
    range_draws,
    range_mean,
    range_quantile,
    range_variance,
)
from benchpack.errors import RequestError

untimed = settings(deadline=None, max_examples=30)
every_kind = pytest.mark.parametrize("kind", list(Distribution))
Three = tuple[float, float, float]


@st.composite
def ranges(draw: st.DrawFn) -> Three:
    """Draw low, likely and high, one hundredth apart or more, or all the same."""
    low = draw(st.integers(-10_000, 10_000))
    width = draw(st.integers(0, 10_000))
    likely = low + draw(st.integers(0, width))
    return low / 100.0, likely / 100.0, (low + width) / 100.0


def quantiles(probability: object, three: Three, kind: Distribution) -> np.ndarray:
    low, likely, high = three
    return range_quantile(
        np.asarray(probability, dtype=np.float64),
        low=low,
        likely=likely,
        high=high,
        kind=kind,
    )


@every_kind
@untimed
@given(three=ranges())
def test_quantiles_rise_from_low_to_high(kind: Distribution, three: Three) -> None:
    values = quantiles(np.linspace(0.0, 1.0, 101), three, kind)
    low, _, high = three
    tiny = 1e-12 * max(1.0, abs(low), abs(high))
    assert values[0] == pytest.approx(low, abs=tiny)
    assert values[-1] == pytest.approx(high, abs=tiny)
    assert np.all(np.diff(values) >= -tiny)


@every_kind
@untimed
@given(three=ranges())
def test_a_mirrored_range_has_mirrored_quantiles(
    kind: Distribution, three: Three
) -> None:
    low, likely, high = three
    p = np.linspace(0.001, 0.999, 37)
    mirrored = -quantiles(1.0 - p, (-high, -likely, -low), kind)
    assert mirrored == pytest.approx(quantiles(p, three, kind), abs=1e-9)


@every_kind
@untimed
@given(three=ranges(), shift=st.integers(-100, 100), factor=st.floats(0.1, 10.0))
def test_another_unit_and_zero_point_change_nothing_else(
    kind: Distribution, three: Three, shift: int, factor: float
) -> None:
    moved = tuple(factor * end + shift for end in three)
    # Rounding may not put the likely value outside.
    low, high = moved[0], max(moved)
    likely = min(max(moved[1], low), high)
    mean = range_mean(three[0], three[2], likely=three[1], kind=kind)
    variance = range_variance(three[0], three[2], likely=three[1], kind=kind)
    assert float(range_mean(low, high, likely=likely, kind=kind)) == pytest.approx(
        factor * float(mean) + shift, abs=1e-9
    )
    assert float(range_variance(low, high, likely=likely, kind=kind)) == pytest.approx(
        factor**2 * float(variance), rel=1e-6, abs=1e-9
    )


@every_kind
@untimed
@given(three=ranges())
def test_moments_are_those_of_the_quantiles(kind: Distribution, three: Three) -> None:
    low, likely, high = three
    width = high - low
    values = quantiles((np.arange(2000) + 0.5) / 2000, three, kind)
    mean = range_mean(low, high, likely=likely, kind=kind)
    variance = range_variance(low, high, likely=likely, kind=kind)
    assert values.mean() == pytest.approx(float(mean), abs=1e-4 * width + 1e-12)
    assert values.var() == pytest.approx(float(variance), abs=1e-4 * width**2 + 1e-12)


@every_kind
@given(value=st.floats(-1e6, 1e6))
def test_a_range_without_width_is_its_value(kind: Distribution, value: float) -> None:
    assert range_mean(value, value, likely=value, kind=kind) == pytest.approx(value)
    assert range_variance(value, value, likely=value, kind=kind) == 0.0
    same = (value, value, value)
    assert np.all(quantiles([0.0, 0.3, 1.0], same, kind) == value)
    drawn = range_draws(5, low=value, likely=value, high=value, kind=kind, seed=3)
    assert np.all(drawn == value)


@every_kind
@pytest.mark.parametrize(
    "three",
    [(2.0, 1.0, 3.0), (1.0, 4.0, 3.0), (3.0, 3.0, 1.0), (1.0, math.nan, 2.0)],
)
def test_what_is_unknown_or_out_of_order_stays_unknown(
    kind: Distribution, three: Three
) -> None:
    low, likely, high = three
    assert np.isnan(range_mean(low, high, likely=likely, kind=kind))
    assert np.isnan(range_variance(low, high, likely=likely, kind=kind))
    assert np.isnan(quantiles(0.5, three, kind))
    # Its neighbours stay what they are.
    pair = range_mean([low, 1.0], [high, 1.0], likely=[likely, 1.0], kind=kind)
    assert np.isnan(pair).tolist() == [True, False]


@every_kind
def test_no_share_outside_zero_to_one_has_a_quantile(kind: Distribution) -> None:
    values = quantiles([-1e-9, 0.5, 1.0 + 1e-9, math.nan], (0.0, 1.0, 2.0), kind)
    assert np.isnan(values).tolist() == [True, False, True, True]


def test_the_likely_value_counts_for_nothing_in_a_rectangle() -> None:
    kind = Distribution.RECTANGULAR
    values = range_mean(0.0, 4.0, likely=[0.0, 1.0, 4.0], kind=kind)
    assert values.tolist() == [2.0, 2.0, 2.0]


@every_kind
def test_draws_are_the_same_for_a_seed_and_start_the_same(kind: Distribution) -> None:
    low, likely, high = [0.0, 5.0], [1.0, 6.0], [3.0, 9.0]
    many = range_draws(500, low=low, likely=likely, high=high, kind=kind, seed=7)
    assert many.shape == (2, 500)
    again = range_draws(20, low=low, likely=likely, high=high, kind=kind, seed=7)
    assert np.array_equal(again, many[:, :20])
    first = range_draws(20, low=0.0, likely=1.0, high=3.0, kind=kind, seed=7)
    assert np.array_equal(first, many[0, :20])
    other = range_draws(20, low=low, likely=likely, high=high, kind=kind, seed=8)
    assert not np.array_equal(other, again)
    assert np.all((many >= np.array(low)[:, None]) & (many <= np.array(high)[:, None]))
    # Streams of their own: two like ranges do not move together.
    twins = range_draws(4000, low=[0, 0], likely=[1, 1], high=[2, 2], kind=kind, seed=7)
    assert abs(np.asarray(np.corrcoef(twins))[0, 1]) < 0.08


def test_draws_that_make_no_sense_are_refused() -> None:
    with pytest.raises(RequestError, match="-1 trials"):
        range_draws(-1, low=0.0, likely=1.0, high=2.0, seed=1)
    with pytest.raises(RequestError, match="seed"):
        range_draws(1, low=0.0, likely=1.0, high=2.0, seed=-1)


@untimed
@given(three=ranges(), p=st.lists(st.floats(0.0, 1.0), min_size=1, max_size=9))
def test_a_range_as_a_function_gives_its_quantiles(
    three: Three, p: list[float]
) -> None:
    low, likely, high = three
    kind = Distribution.PERT
    function = quantile_of_range(low, high, likely=likely, kind=kind)
    assert np.array_equal(function(np.array(p)), quantiles(p, three, kind))


@untimed
@given(
    share=st.floats(0.0, 1.0),
    exponent=st.lists(st.floats(1.0, 33.0), min_size=1, max_size=40),
)
def test_the_pert_table_keeps_to_its_bound(share: float, exponent: list[float]) -> None:
    """Within 1e-6 of the width, in the middle and far out in both tails."""
    tail = 0.5 ** np.array(exponent)
    p = np.concatenate((tail, 1.0 - tail, [0.5, np.nextafter(0.5, 1.0)]))
    values, work = p.copy(), np.empty_like(p)
    table = cubics(1.0 + 4.0 * share, 1.0 + 4.0 * (1.0 - share))
    invert_pert(table, values, work)
    exact = quantiles(p, (0.0, share, 1.0), Distribution.PERT)
    assert values == pytest.approx(exact, abs=1e-6)


def test_the_pert_table_takes_the_ends() -> None:
    values = np.array([0.0, 1.0])
    invert_pert(cubics(3.0, 3.0), values, np.empty(2))
    assert values == pytest.approx([0.0, 1.0], abs=1e-3)
