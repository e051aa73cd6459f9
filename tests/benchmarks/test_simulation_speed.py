"""A proposal of 50 changes simulated, against the bare draws of numpy in one run.

The bare draws are what the trials are made of and no more: two triangular numbers and
a release for each change and trial, three common factors for each trial, block by block
into the processor's own memory, nothing added up or kept.
"""

from __future__ import annotations

import math
import time
import tracemalloc
from collections.abc import Callable

import numpy as np
import pytest

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.distributions import Distribution
from benchpack.calc.simulation import simulate_changes
from benchpack.calc.trials import DEFAULT_BLOCK

pytestmark = pytest.mark.benchmark
MILLION = 1_000_000
WORTH, PRICE, EXCHANGE = (1.0, 3.0, 6.0), (0.8, 1.0, 1.3), (0.9, 1.0, 1.1)
FACTORS = CommonFactors(
    Ranges(*WORTH), price=Ranges(*PRICE), exchange=Ranges(*EXCHANGE)
)


def proposal(count: int, kind: Distribution = Distribution.TRIANGULAR) -> ChangeRanges:
    random = np.random.default_rng(3)
    low = random.uniform(0.0, 3.0, count)
    likely = low + random.uniform(0.1, 2.0, count)
    high = likely + random.uniform(0.1, 4.0, count)
    money = Ranges(-2.0 * high, -2.0 * likely, -2.0 * low, kinds=kind)
    return ChangeRanges(
        Ranges(low, likely, high, kinds=kind),
        money=[MoneyRanges(money, moves_with_price=True, moves_with_exchange=True)],
        release_chance=random.uniform(0.3, 0.95, count),
    )


def bare_draws(changes: ChangeRanges, trials: int) -> None:
    """Draw by numpy what a simulation of triangular ranges needs."""
    generator = np.random.Generator(np.random.PCG64(1))
    ranges = [
        tuple(zip(of.low.tolist(), of.likely.tolist(), of.high.tolist(), strict=True))
        for of in (changes.saved_kg, changes.money[0].ranges)
    ]
    for start in range(0, trials, DEFAULT_BLOCK):
        size = min(DEFAULT_BLOCK, trials - start)
        for mass, money in zip(*ranges, strict=True):
            for low, likely, high in (mass, money):
                generator.triangular(low, likely, high, size)
            generator.random(size)
        for low, likely, high in (WORTH, PRICE, EXCHANGE):
            generator.triangular(low, likely, high, size)


def bare_uniforms(changes: ChangeRanges, trials: int) -> None:
    """Draw as many uniform numbers, not yet of any distribution."""
    generator = np.random.Generator(np.random.PCG64(1))
    room = np.empty(DEFAULT_BLOCK)
    for start in range(0, trials, DEFAULT_BLOCK):
        part = room[: min(DEFAULT_BLOCK, trials - start)]
        for _ in range(3 * changes.count + 3):
            generator.random(out=part)


def seconds(work: Callable[[], object], *, times: int = 3) -> float:
    """Give the best of some runs."""
    best = math.inf
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def exponent(few: float, many: float) -> float:
    return math.log10(many / few)


def test_a_million_trials_cost_at_most_twice_the_bare_draws() -> None:
    changes = proposal(50)
    ours, bare, uniform = math.inf, math.inf, math.inf
    # Turn about, so that a busy machine slows all of them.
    for _ in range(3):
        ours = min(
            ours,
            seconds(
                lambda: simulate_changes(changes, FACTORS, trials=MILLION), times=1
            ),
        )
        bare = min(bare, seconds(lambda: bare_draws(changes, MILLION), times=1))
        uniform = min(
            uniform, seconds(lambda: bare_uniforms(changes, MILLION), times=1)
        )
    print(
        f"\n50 changes x 1,000,000 trials: {ours:.2f} s, {ours / bare:.2f} x the bare "
        f"draws, {ours / uniform:.2f} x the bare uniform numbers"
    )
    assert ours <= 2.0 * bare


@pytest.mark.parametrize("kind", list(Distribution))
def test_the_usual_number_of_trials(kind: Distribution) -> None:
    changes = proposal(50, kind)
    ours = seconds(lambda: simulate_changes(changes, FACTORS, trials=200_000))
    bare = seconds(lambda: bare_draws(proposal(50), 200_000))
    print(
        f"\n50 changes x 200,000 trials, {kind.value}: {ours:.2f} s, "
        f"{ours / bare:.2f} x the bare triangular draws"
    )
    assert ours <= 2.0 * bare


def test_memory_of_a_million_trials_is_bounded() -> None:
    changes = proposal(50)
    tracemalloc.start()
    simulate_changes(changes, FACTORS, trials=MILLION)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    print(f"\n50 changes x 1,000,000 trials: {peak / 1e6:.0f} MB at the most")
    assert peak < 500e6


def test_cost_grows_no_faster_than_trials_and_changes() -> None:
    def cost(count: int, trials: int) -> float:
        changes = proposal(count)
        return seconds(lambda: simulate_changes(changes, FACTORS, trials=trials))

    base = cost(20, 40_000)
    by_trials, by_changes = cost(20, 400_000), cost(200, 40_000)
    print(
        f"\nexponent in trials {exponent(base, by_trials):.2f}, "
        f"in changes {exponent(base, by_changes):.2f}"
    )
    assert by_trials < 16.0 * base
    assert by_changes < 16.0 * base
