"""Simulated proposals against JCGM 101, the binomial law, and other simulations."""

from __future__ import annotations

import math

import numpy as np
import pytest
import scipy.stats

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.distributions import Distribution
from benchpack.calc.simulation import simulate_changes

NOTHING = CommonFactors(Ranges.exactly(0.0))
MILLION = 1_000_000


def test_four_rectangular_changes_of_jcgm_101() -> None:
    """9.2.3: unit variance each: u = 2.00, 95 % within +-3.88 (exactly 3.87941)."""
    half = np.full(4, math.sqrt(3.0))
    kind = Distribution.RECTANGULAR
    changes = ChangeRanges(Ranges(-half, 0.0 * half, half, kinds=kind))
    saved = simulate_changes(changes, NOTHING, trials=MILLION, seed=9).saved_kg
    exact = 2.0 * math.sqrt(3.0) * (2.0 - 0.6**0.25)
    assert exact == pytest.approx(3.87941, abs=5e-6)
    assert saved.standard_uncertainty == pytest.approx(2.0, abs=0.005)
    assert saved.symmetric_interval() == pytest.approx((-exact, exact), abs=0.02)


@pytest.mark.parametrize("chance", [0.2, 0.5, 0.9])
def test_releases_are_binomial(chance: float) -> None:
    """Twelve changes of 1 kg each: the mass saved counts the releases."""
    changes = ChangeRanges(Ranges.exactly(np.ones(12)), release_chance=chance)
    saved = simulate_changes(changes, NOTHING, seed=12).saved_kg
    law = scipy.stats.binom(12, chance)
    # A chance near 1/2 of 200,000 trials has a standard error of 0.0011.
    counts = np.arange(13.0)
    assert saved.chance_of_at_least(counts) == pytest.approx(
        law.sf(counts - 1.0), abs=0.005
    )


def test_both_targets_at_once_in_closed_form() -> None:
    """One mass k, rectangular on 0 to 10, and worth 2: P(k >= 4 and 2 k >= 14)."""
    kind = Distribution.RECTANGULAR
    changes = ChangeRanges(Ranges(0.0, 5.0, 10.0, kinds=kind), release_chance=0.8)
    result = simulate_changes(changes, CommonFactors(Ranges.exactly(2.0)), seed=2)
    assert result.chance_of_both(4.0, 14.0) == pytest.approx(0.8 * 0.3, abs=0.005)
    assert result.chance_of_both(9.0, 14.0) == pytest.approx(0.8 * 0.1, abs=0.005)


def test_the_worth_of_one_mass_in_closed_form() -> None:
    """Two rectangles on 0 to 1 multiplied: P(w k >= t) = 1 - t + t ln t."""
    kind = Distribution.RECTANGULAR
    changes = ChangeRanges(Ranges(0.0, 0.5, 1.0, kinds=kind))
    common = CommonFactors(Ranges(0.0, 0.5, 1.0, kinds=kind))
    value = simulate_changes(changes, common, seed=4).value
    targets = np.array([0.01, 0.1, 0.3, 0.7])
    exact = 1.0 - targets + targets * np.log(targets)
    assert value.chance_of_at_least(targets) == pytest.approx(exact, abs=0.005)


def test_a_proposal_against_the_generators_of_numpy() -> None:
    """Ten changes by Generator.triangular and .beta: the two samples are alike.

    Numpy draws these without inverting a distribution, so nothing is in common.
    """
    random = np.random.Generator(np.random.PCG64(31))
    low = random.uniform(-1.0, 3.0, 10)
    likely = low + random.uniform(0.1, 2.0, 10)
    high = likely + random.uniform(0.1, 3.0, 10)
    chances = random.uniform(0.3, 1.0, 10)
    pert = Distribution.PERT
    changes = ChangeRanges(
        Ranges(low, likely, high),
        money=[
            MoneyRanges(
                Ranges(-3.0 * high, -3.0 * likely, -3.0 * low, kinds=pert),
                moves_with_price=True,
                moves_with_exchange=True,
            )
        ],
        release_chance=chances,
    )
    common = CommonFactors(
        Ranges(2.0, 4.0, 7.0),
        price=Ranges(0.8, 1.0, 1.5),
        exchange=Ranges(0.9, 1.0, 1.1, kinds=Distribution.RECTANGULAR),
    )
    trials = 100_000
    result = simulate_changes(changes, common, trials=trials, seed=5)
    saved, money = np.zeros(trials), np.zeros(trials)
    for a, m, b, p in zip(low, likely, high, chances, strict=True):
        released = random.random(trials) < p
        saved += released * random.triangular(a, m, b, trials)
        rise = 1.0 + 4.0 * (b - m) / (b - a)
        money += released * -3.0 * (b - (b - a) * random.beta(rise, 6 - rise, trials))
    factor = random.triangular(0.8, 1.0, 1.5, trials) * random.uniform(0.9, 1.1, trials)
    value = random.triangular(2.0, 4.0, 7.0, trials) * saved + factor * money
    for given, wanted in ((result.saved_kg, saved), (result.value, value)):
        found = scipy.stats.ks_2samp(given.values, wanted)
        assert found.pvalue > 0.001
