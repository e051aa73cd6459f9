"""What must hold for every simulation of a proposal."""

from __future__ import annotations

import itertools
import math
import tracemalloc

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.change_sensitivity import proposal_moments
from benchpack.calc.distributions import Distribution, range_draws
from benchpack.calc.simulation import Simulation, simulate_changes
from benchpack.errors import CancelledError, RequestError
from tests.unit.calc.proposals import factors, proposals, some_changes, some_factors

untimed = settings(deadline=None, max_examples=25)
NOTHING = CommonFactors(Ranges.exactly(0.0))


def same(one: Simulation, other: Simulation) -> bool:
    return np.array_equal(one.saved_kg.values, other.saved_kg.values) and (
        np.array_equal(one.value.values, other.value.values)
    )


@untimed
@given(proposals, factors, st.integers(2, 300), st.integers(1, 400))
def test_the_block_changes_nothing(
    changes: ChangeRanges, common: CommonFactors, trials: int, block: int
) -> None:
    whole = simulate_changes(changes, common, trials=trials, seed=5)
    parts = simulate_changes(changes, common, trials=trials, seed=5, block=block)
    assert same(whole, parts)


@untimed
@given(proposals, factors, st.integers(0, 2**40))
def test_a_seed_gives_its_trials_and_more_trials_start_with_them(
    changes: ChangeRanges, common: CommonFactors, seed: int
) -> None:
    few = simulate_changes(changes, common, trials=50, seed=seed)
    assert same(few, simulate_changes(changes, common, trials=50, seed=seed))
    many = simulate_changes(changes, common, trials=80, seed=seed)
    assert np.array_equal(many.value.values[:50], few.value.values)
    other = simulate_changes(changes, common, trials=50, seed=seed + 1)
    assert not np.array_equal(other.value.values, few.value.values)


@pytest.mark.parametrize(
    ("kind", "within"),
    [
        (Distribution.TRIANGULAR, 1e-12),
        (Distribution.RECTANGULAR, 1e-12),
        (Distribution.PERT, 4e-6),
    ],
)
def test_one_change_is_drawn_as_its_range(kind: Distribution, within: float) -> None:
    for low, likely, high in ((1.0, 2.0, 5.0), (1.0, 1.0, 5.0), (1.0, 5.0, 5.0)):
        change = ChangeRanges(Ranges(low, likely, high, kinds=kind))
        result = simulate_changes(change, NOTHING, trials=5000, seed=3)
        drawn = range_draws(5000, low=low, likely=likely, high=high, kind=kind, seed=3)
        assert result.saved_kg.values == pytest.approx(drawn, abs=within)


@untimed
@given(st.integers(0, 1000), st.integers(1, 5))
def test_another_change_leaves_the_draws_of_the_others(seed: int, count: int) -> None:
    changes = some_changes(seed, count + 1)
    mass = changes.saved_kg
    chances = changes.release_chance
    fewer = ChangeRanges(
        Ranges(mass.low[:-1], mass.likely[:-1], mass.high[:-1], kinds=mass.kinds[:-1]),
        release_chance=chances[:-1],
    )
    without_last = ChangeRanges(mass, release_chance=[*chances[:-1], 0.0])
    one = simulate_changes(fewer, NOTHING, trials=100)
    two = simulate_changes(without_last, NOTHING, trials=100)
    assert np.array_equal(one.saved_kg.values, two.saved_kg.values)


@pytest.mark.parametrize("seed", range(6))
def test_mean_and_spread_come_to_the_exact_ones(seed: int) -> None:
    """Within five standard errors of 200,000 trials; the spread within 1.5 %."""
    changes, common = some_changes(seed, 8), some_factors(seed)
    result = simulate_changes(changes, common, seed=seed)
    exact = proposal_moments(changes, common)
    for trials, mean, u in (
        (result.saved_kg, exact.saved_mean_kg, exact.saved_u_kg),
        (result.value, exact.value_mean, exact.value_u),
    ):
        assert trials.mean == pytest.approx(mean, abs=5.0 * u / math.sqrt(200_000))
        assert trials.standard_uncertainty == pytest.approx(u, rel=0.015)


def test_a_change_comes_whole_or_not_at_all() -> None:
    changes = ChangeRanges(
        Ranges.exactly([1.0, 10.0, 100.0]),
        money=[MoneyRanges(Ranges.exactly([2.0, 20.0, 200.0]))],
        release_chance=[0.5, 0.0, 1.0],
    )
    result = simulate_changes(changes, NOTHING, trials=1000)
    assert set(result.saved_kg.values) == {100.0, 101.0}
    assert np.array_equal(result.value.values, 2.0 * result.saved_kg.values)


def test_a_common_factor_is_the_same_for_all_changes_of_a_trial() -> None:
    """Drawn apart, its spread over a hundred changes would shrink to a tenth."""
    each = Ranges.exactly(np.full(100, -1.0))
    changes = ChangeRanges(
        Ranges.exactly(np.zeros(100)), money=[MoneyRanges(each, moves_with_price=True)]
    )
    price = Ranges(0.5, 1.0, 1.5, kinds=Distribution.RECTANGULAR)
    common = CommonFactors(Ranges.exactly(0.0), price=price)
    result = simulate_changes(changes, common, trials=20_000)
    assert result.value.standard_uncertainty == pytest.approx(
        100.0 / math.sqrt(12.0), rel=0.02
    )


def test_each_money_moves_with_its_own_factors() -> None:
    one = Ranges.exactly(1.0)
    common = CommonFactors(
        Ranges.exactly(5.0), price=Ranges.exactly(2.0), exchange=Ranges.exactly(10.0)
    )
    for price, exchange, wanted in (
        (False, False, 1.0),
        (True, False, 2.0),
        (False, True, 10.0),
        (True, True, 20.0),
    ):
        money = MoneyRanges(one, moves_with_price=price, moves_with_exchange=exchange)
        changes = ChangeRanges(Ranges.exactly(3.0), money=[money])
        result = simulate_changes(changes, common, trials=2)
        assert result.value.mean == 15.0 + wanted


@untimed
@given(proposals, factors, st.floats(-20.0, 20.0), st.floats(-50.0, 50.0))
def test_both_targets_are_no_easier_than_either(
    changes: ChangeRanges, common: CommonFactors, least_kg: float, least: float
) -> None:
    result = simulate_changes(changes, common, trials=200)
    both = result.chance_of_both(least_kg, least)
    mass = float(result.saved_kg.chance_of_at_least(least_kg))
    value = float(result.value.chance_of_at_least(least))
    assert max(0.0, mass + value - 1.0) - 1e-12 <= both <= min(mass, value)


def test_the_work_stops_when_asked() -> None:
    calls = itertools.count()
    changes = some_changes(1, 5)
    with pytest.raises(CancelledError):
        simulate_changes(changes, NOTHING, cancelled=lambda: next(calls) == 7)
    assert next(calls) == 8


def test_memory_does_not_grow_with_the_changes() -> None:
    def peak(count: int) -> int:
        changes = some_changes(2, count)
        tracemalloc.start()
        simulate_changes(changes, some_factors(2), trials=100_000, block=1000)
        _, most = tracemalloc.get_traced_memory()
        tracemalloc.stop()
        return most

    # The four arrays of trials, 0.8 MB each, and one more while they are put in order.
    few, many = peak(2), peak(40)
    assert many < 5 * 800_000 + 1_500_000
    assert many - few < 1_500_000


@pytest.mark.parametrize(
    ("trials", "block", "seed"),
    [(1, 10, 1), (10_000_001, 10, 1), (10, 0, 1), (10, 10, -1)],
)
def test_sizes_that_make_no_sense_are_refused(
    trials: int, block: int, seed: int
) -> None:
    changes = some_changes(1, 2)
    with pytest.raises(RequestError):
        simulate_changes(changes, NOTHING, trials=trials, block=block, seed=seed)
