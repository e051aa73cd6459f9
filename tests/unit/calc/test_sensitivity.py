"""What must hold for what matters, sampled or exact."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc.change_ranges import ChangeRanges, CommonFactors, Ranges
from benchpack.calc.change_sensitivity import (
    proposal_moments,
    saved_indices,
    value_indices,
    value_swings,
)
from benchpack.calc.distributions import Distribution, quantile_of_range
from benchpack.calc.sensitivity import sobol_indices, swing_table
from benchpack.errors import CancelledError, RequestError
from tests.unit.calc.proposals import factors, proposals

untimed = settings(deadline=None, max_examples=40)
UNIT = quantile_of_range(0.0, 1.0, likely=0.5, kind=Distribution.RECTANGULAR)


def weighted(inputs: np.ndarray) -> np.ndarray:
    return np.asarray(inputs[0] + 2.0 * inputs[1] + 4.0 * inputs[0] * inputs[2])


def test_indices_are_the_same_for_a_seed() -> None:
    one, two, other = (
        sobol_indices(weighted, [UNIT] * 3, points=64, repeats=2, seed=seed)
        for seed in (4, 4, 5)
    )
    assert np.array_equal(one.first, two.first)
    assert not np.array_equal(one.first, other.first)


def test_a_group_of_all_inputs_is_everything() -> None:
    indices = sobol_indices(weighted, [UNIT] * 3, groups=[[0, 1, 2], [1], []])
    assert indices.first[0] == pytest.approx(1.0, abs=0.01)
    assert indices.total[0] == pytest.approx(1.0, abs=0.01)
    assert indices.first[2] == indices.total[2] == 0.0
    alone = sobol_indices(weighted, [UNIT] * 3)
    assert indices.first[1] == pytest.approx(alone.first[1], abs=1e-12)


def test_a_quantity_that_never_changes_has_no_indices() -> None:
    indices = sobol_indices(zeros, [UNIT] * 2)
    assert indices.variance == 0.0
    assert np.isnan(indices.first).all()
    assert np.isnan(indices.total).all()


def zeros(inputs: np.ndarray) -> np.ndarray:
    return np.zeros(inputs.shape[1])


def test_what_cannot_be_sampled_is_refused() -> None:
    with pytest.raises(RequestError, match="without inputs"):
        sobol_indices(zeros, [])
    with pytest.raises(RequestError, match="power of two"):
        sobol_indices(weighted, [UNIT] * 3, points=1000)
    with pytest.raises(RequestError, match="repeats"):
        sobol_indices(weighted, [UNIT] * 3, repeats=1)
    with pytest.raises(RequestError, match="no input 3"):
        sobol_indices(weighted, [UNIT] * 3, groups=[[0], [3]])
    with pytest.raises(RequestError, match="finite"):
        sobol_indices(lambda x: x[0] * np.nan, [UNIT], points=2)
    calls = itertools.count()
    with pytest.raises(CancelledError):
        sobol_indices(weighted, [UNIT] * 3, cancelled=lambda: next(calls) == 2)


@untimed
@given(st.integers(1, 5), st.integers(0, 1000))
def test_swings_of_a_sum_are_its_terms(count: int, seed: int) -> None:
    random = np.random.default_rng(seed)
    low, likely, high = np.sort(random.normal(size=(3, count)), axis=0)
    weights = random.normal(size=count)
    table = swing_table(lambda x: weights @ x, low=low, likely=likely, high=high)
    assert table.base == pytest.approx(weights @ likely, abs=1e-12)
    assert table.at_low - table.base == pytest.approx(weights * (low - likely))
    assert table.at_high - table.base == pytest.approx(weights * (high - likely))
    widths = np.abs(weights * (high - low))
    assert np.all(np.diff(widths[table.order]) <= 1e-12)


def test_swings_need_three_values_for_each_input() -> None:
    with pytest.raises(RequestError, match="Every input"):
        swing_table(zeros, low=[1.0], likely=[1.0, 2.0], high=[3.0, 3.0])


def value_of(changes: ChangeRanges, inputs: np.ndarray) -> np.ndarray:
    """Give the value of a proposal from its inputs in the order of the swings."""
    n = changes.count
    *money, released = np.split(inputs[n:-3], len(changes.money) + 1)
    worth, price, exchange = inputs[-3:]
    value = worth * (inputs[:n] * released).sum(axis=0)
    for kind, amounts in zip(changes.money, money, strict=True):
        factor = np.ones_like(worth)
        factor = factor * (price if kind.moves_with_price else 1.0)
        factor = factor * (exchange if kind.moves_with_exchange else 1.0)
        value = value + factor * (amounts * released).sum(axis=0)
    return np.asarray(value)


@untimed
@given(proposals, factors)
def test_swings_of_a_proposal_are_those_of_its_value(
    changes: ChangeRanges, common: CommonFactors
) -> None:
    quantities = [changes.saved_kg, *(kind.ranges for kind in changes.money)]
    given = [common.worth_per_kg, common.price, common.exchange]
    n = changes.count
    low, likely, high = (
        np.concatenate(
            [
                *(getattr(ranges, end) for ranges in quantities),
                release,
                *(getattr(factor, end) for factor in given),
            ]
        )
        for end, release in (
            ("low", np.zeros(n)),
            ("likely", changes.release_chance),
            ("high", np.ones(n)),
        )
    )
    table = swing_table(
        lambda x: value_of(changes, x), low=low, likely=likely, high=high
    )
    swings = value_swings(changes, common)
    assert swings.base == pytest.approx(table.base, rel=1e-9, abs=1e-9)
    assert swings.at_low == pytest.approx(table.at_low, rel=1e-9, abs=1e-9)
    assert swings.at_high == pytest.approx(table.at_high, rel=1e-9, abs=1e-9)


@untimed
@given(proposals, factors)
def test_exact_indices_share_the_variance_out(
    changes: ChangeRanges, common: CommonFactors
) -> None:
    indices = value_indices(changes, common)
    assert np.all(indices.first >= 0.0)
    assert np.all(indices.first <= indices.total + 1e-12)
    assert indices.first.sum() <= 1.0 + 1e-12
    assert indices.total.sum() >= 1.0 - 1e-12
    moments = proposal_moments(changes, common)
    assert indices.variance == pytest.approx(moments.value_u**2)
    if moments.saved_u_kg > 0.0:
        assert saved_indices(changes).total.sum() == pytest.approx(1.0)


@untimed
@given(proposals)
def test_without_common_factors_every_index_is_its_own(changes: ChangeRanges) -> None:
    fixed = CommonFactors(Ranges.exactly(3.0))
    indices = value_indices(changes, fixed)
    assert indices.first == pytest.approx(indices.total, abs=1e-12, nan_ok=True)
    assert indices.total[-3:] == pytest.approx([0.0] * 3, abs=0.0, nan_ok=True)


def test_a_proposal_without_spread_has_no_indices() -> None:
    changes = ChangeRanges(Ranges.exactly([1.0, 2.0]))
    fixed = CommonFactors(Ranges.exactly(3.0))
    assert np.isnan(saved_indices(changes).total).all()
    assert np.isnan(value_indices(changes, fixed).first).all()
    assert proposal_moments(changes, fixed).value_u == 0.0
