"""Propagation and summaries against the examples of JCGM 101:2008 and exact results."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import pytest
import scipy.stats
from scipy.special import ndtri

from benchpack.calc.distributions import Distribution, quantile_of_range
from benchpack.calc.monte_carlo import propagate
from benchpack.calc.trials import summarise

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import NDArray

    Quantile = Callable[[NDArray[np.float64]], NDArray[np.float64]]

MILLION = 1_000_000


def normal(mean: float, u: float) -> Quantile:
    def quantile(p: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.asarray(mean + u * ndtri(p))

    return quantile


def rectangle(low: float, high: float) -> Quantile:
    kind = Distribution.RECTANGULAR
    return quantile_of_range(low, high, likely=low, kind=kind)


def added(inputs: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(inputs.sum(axis=0))


def test_four_normal_inputs_of_jcgm_101() -> None:
    """9.2.2: u = 2.00, 95 % within +-3.92; exactly 2 * 1.95996 = 3.91993."""
    result = propagate(added, [normal(0.0, 1.0)] * 4, trials=MILLION, seed=922)
    assert result.mean == pytest.approx(0.0, abs=0.01)
    assert result.standard_uncertainty == pytest.approx(2.0, abs=0.005)
    exact = 2.0 * float(ndtri(0.975))
    assert exact == pytest.approx(3.92, abs=0.005)
    for low, high in (result.symmetric_interval(), result.shortest_interval()):
        # The shortest may shift along a density that is flat at its middle.
        assert high - low == pytest.approx(2.0 * exact, abs=0.02)
    assert result.symmetric_interval() == pytest.approx((-exact, exact), abs=0.02)


def test_four_rectangular_inputs_of_jcgm_101() -> None:
    """9.2.3: unit variance each, 95 % within +-3.88; 2 sqrt(3) (2 - 0.6^0.25)."""
    half = math.sqrt(3.0)
    result = propagate(added, [rectangle(-half, half)] * 4, trials=MILLION, seed=923)
    exact = 2.0 * half * (2.0 - 0.6**0.25)
    assert exact == pytest.approx(3.88, abs=0.005)
    assert result.standard_uncertainty == pytest.approx(2.0, abs=0.005)
    assert result.symmetric_interval() == pytest.approx((-exact, exact), abs=0.02)


def test_mass_calibration_of_jcgm_101() -> None:
    """9.3: dm = 1.2340 mg, u = 0.0754 mg, shortest 95 % [1.0834, 1.3825] mg.

    The inputs and results are recalled from memory, and agree with a computation.
    First order (the GUM's own way) gives 0.0539 mg only.
    """

    def deviation(inputs: NDArray[np.float64]) -> NDArray[np.float64]:
        reference, small, air, weight, standard = inputs
        buoyancy = (air - 1.2) * (1.0 / weight - 1.0 / standard)
        return np.asarray((reference + small) * (1.0 + buoyancy) - 100_000.0)

    inputs = [
        normal(100_000.0, 0.050),
        normal(1.234, 0.020),
        rectangle(1.10, 1.30),
        rectangle(7000.0, 9000.0),
        rectangle(7950.0, 8050.0),
    ]
    result = propagate(deviation, inputs, trials=MILLION, seed=93)
    assert result.mean == pytest.approx(1.2340, abs=4e-4)
    assert result.standard_uncertainty == pytest.approx(0.0754, abs=2e-4)
    assert result.shortest_interval() == pytest.approx((1.0834, 1.3825), abs=2e-3)


# Y = ln X with X rectangular on (0.1, 1.1): the density of Y is exp(y) on its range.
LOG_MEAN, LOG_U = -0.66490, 0.60623
LOG_SHORTEST, LOG_SYMMETRIC = (-1.89712, 0.09531), (-2.07944, 0.07232)


def test_a_logarithm_of_a_rectangle() -> None:
    """Exact: mean 1.1 ln 1.1 - 0.1 ln 0.1 - 1, and so on; a million trials."""
    result = propagate(
        lambda x: np.log(x[0]), [rectangle(0.1, 1.1)], trials=MILLION, seed=11
    )
    assert 1.1 * math.log(1.1) - 0.1 * math.log(0.1) - 1.0 == pytest.approx(
        LOG_MEAN, abs=5e-6
    )
    assert result.mean == pytest.approx(LOG_MEAN, abs=3e-3)
    assert result.standard_uncertainty == pytest.approx(LOG_U, abs=3e-3)
    assert result.shortest_interval() == pytest.approx(LOG_SHORTEST, abs=0.01)
    assert result.symmetric_interval() == pytest.approx(LOG_SYMMETRIC, abs=0.01)


def test_summaries_of_evenly_spread_trials_are_exact() -> None:
    """The same logarithm without chance: trials at the middles of a million steps."""
    even = 0.1 + (np.arange(MILLION) + 0.5) / MILLION
    trials = summarise(np.log(even))
    assert trials.mean == pytest.approx(LOG_MEAN, abs=6e-6)
    assert trials.standard_uncertainty == pytest.approx(LOG_U, abs=6e-6)
    assert trials.shortest_interval(0.95) == pytest.approx(LOG_SHORTEST, abs=1e-5)
    assert trials.symmetric_interval(0.95) == pytest.approx(LOG_SYMMETRIC, abs=1e-5)
    # P(Y >= 0) = P(X >= 1) = 0.1, and the median of X is 0.6.
    assert float(trials.chance_of_at_least(0.0)) == pytest.approx(0.1, abs=1e-6)
    assert float(trials.quantile(0.5)) == pytest.approx(math.log(0.6), abs=1e-6)


def test_quantiles_and_chances_against_scipy() -> None:
    """A triangle of 0, 1, 4 spread evenly, against scipy.stats.triang."""
    law = scipy.stats.triang(0.25, scale=4.0)
    trials = summarise(law.ppf((np.arange(MILLION) + 0.5) / MILLION))
    shares = [0.1, 0.5, 0.9]
    assert trials.quantile(shares) == pytest.approx(law.ppf(shares), abs=1e-5)
    assert (trials.p10, trials.p50, trials.p90) == pytest.approx(
        tuple(law.ppf(shares)), abs=1e-5
    )
    targets = [0.3, 1.0, 2.5]
    assert trials.chance_of_at_least(targets) == pytest.approx(
        law.sf(targets), abs=2e-6
    )
