"""What matters: analytical indices, an independent package, and swings by hand."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from SALib.analyze import sobol as salib_analysis
from SALib.sample import sobol as salib_sample
from SALib.test_functions import Ishigami, Sobol_G
from scipy.special import betaincinv

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.change_sensitivity import (
    proposal_moments,
    saved_indices,
    value_indices,
    value_swings,
)
from benchpack.calc.distributions import Distribution, quantile_of_range
from benchpack.calc.sensitivity import SobolIndices, sobol_indices, swing_table

Array = NDArray[np.float64]
RECTANGULAR = Distribution.RECTANGULAR
G_WEIGHTS = np.array([0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0])


def near(indices: SobolIndices, first: Any, total: Any) -> None:
    """Hold indices to analytical ones: 0.01, and five of their standard errors."""
    for given, error, wanted in (
        (indices.first, indices.first_error, np.asarray(first)),
        (indices.total, indices.total_error, np.asarray(total)),
    ):
        assert given == pytest.approx(wanted, abs=0.01)
        assert np.all(np.abs(given - wanted) <= 5.0 * error + 1e-3)


def test_ishigami() -> None:
    """a = 7, b = 0.1: the analytical indices (Ishigami and Homma 1990)."""
    angle = quantile_of_range(-math.pi, math.pi, likely=0.0, kind=RECTANGULAR)
    indices = sobol_indices(
        lambda x: np.asarray(Ishigami.evaluate(x.T)), [angle] * 3, points=4096
    )
    near(indices, [0.313905, 0.442411, 0.0], [0.557589, 0.442411, 0.243684])
    variance = 49.0 / 8.0 + 0.1 * math.pi**4 / 5.0 + 0.01 * math.pi**8 / 18.0 + 0.5
    assert indices.variance == pytest.approx(variance, rel=0.005)


def test_the_g_function() -> None:
    """Sobol's g function of eight inputs: S_i = 1 / (3 (1 + a_i)^2) / V, and totals.

    V = prod(1 + V_i) - 1 with V_i = 1 / (3 (1 + a_i)^2) (Saltelli and Sobol 1995); the
    same as the package SALib carries.
    """
    own = 1.0 / (3.0 * (1.0 + G_WEIGHTS) ** 2)
    variance = float(np.prod(1.0 + own)) - 1.0
    first = own / variance
    total = own * np.prod(1.0 + own) / (1.0 + own) / variance
    assert first == pytest.approx(Sobol_G.sensitivity_index(G_WEIGHTS))
    assert total == pytest.approx(Sobol_G.total_sensitivity_index(G_WEIGHTS))
    unit = quantile_of_range(0.0, 1.0, likely=0.5, kind=RECTANGULAR)
    indices = sobol_indices(
        lambda x: np.asarray(Sobol_G.evaluate(x.T, a=G_WEIGHTS)), [unit] * 8
    )
    near(indices, first, total)
    assert indices.variance == pytest.approx(variance, rel=0.005)


def by_salib(
    evaluate: Any, inputs: int, groups: list[str]
) -> tuple[dict[str, Array], Array]:
    """Give the indices of groups of inputs on 0 to 1, and the values, by SALib."""
    problem = {
        "num_vars": inputs,
        "names": [f"x{place}" for place in range(inputs)],
        "bounds": [[0.0, 1.0]] * inputs,
        "groups": groups,
    }
    sample = salib_sample.sample(problem, 8192, calc_second_order=False, seed=8)
    values = evaluate(sample.T)
    found = salib_analysis.analyze(problem, values, calc_second_order=False, seed=8)
    return found, values


def test_groups_against_salib() -> None:
    """A product and a sum, two inputs in one group."""

    def model(x: Array) -> Array:
        return np.asarray((1.0 + x[0]) * (1.0 + 2.0 * x[1]) + 3.0 * x[2] ** 2 * x[3])

    found, _ = by_salib(model, 4, ["one", "one", "two", "three"])
    unit = quantile_of_range(0.0, 1.0, likely=0.5, kind=RECTANGULAR)
    indices = sobol_indices(model, [unit] * 4, groups=[[0, 1], [2], [3]])
    assert indices.first == pytest.approx(found["S1"], abs=0.01)
    assert indices.total == pytest.approx(found["ST"], abs=0.01)


# Three changes; the chance of each is below 1, their masses triangular, the money PERT.
LOW, LIKELY, HIGH = (np.array(x) for x in ([1, 2, 0.5], [3, 4, 1.5], [4, 9, 2.0]))
CHANCES = np.array([0.9, 0.5, 0.7])
CHANGES = ChangeRanges(
    Ranges(LOW, LIKELY, HIGH),
    money=[
        MoneyRanges(
            Ranges(-4.0 * HIGH, -4.0 * LIKELY, -4.0 * LOW, kinds=Distribution.PERT),
            moves_with_price=True,
            moves_with_exchange=True,
        )
    ],
    release_chance=CHANCES,
)
FACTORS = CommonFactors(
    Ranges(2.0, 5.0, 11.0),
    price=Ranges(0.6, 1.0, 1.8),
    exchange=Ranges(0.8, 1.0, 1.2, kinds=RECTANGULAR),
)
NAMES = ["1", "2", "3"] * 3 + ["worth", "price", "exchange"]


def triangle(u: Array, low: float, likely: float, high: float) -> Array:
    turn = (likely - low) / (high - low)
    rising = low + np.sqrt(u * (high - low) * (likely - low))
    falling = high - np.sqrt((1.0 - u) * (high - low) * (high - likely))
    return np.where(u < turn, rising, falling)


def masses_and_money(u: Array) -> tuple[Array, Array]:
    """Give what the three changes save and cost, written out apart from the program."""
    mass, money = np.zeros(u.shape[1]), np.zeros(u.shape[1])
    for place in range(3):
        a, m, b = LOW[place], LIKELY[place], HIGH[place]
        released = u[place + 6] < CHANCES[place]
        mass += released * triangle(u[place], a, m, b)
        rise = 1.0 + 4.0 * (b - m) / (b - a)
        share = betaincinv(rise, 6.0 - rise, u[place + 3])
        money += released * -4.0 * (b - (b - a) * share)
    return mass, money


def value(u: Array) -> Array:
    mass, money = masses_and_money(u)
    worth, price = triangle(u[9], 2.0, 5.0, 11.0), triangle(u[10], 0.6, 1.0, 1.8)
    return np.asarray(worth * mass + price * (0.8 + 0.4 * u[11]) * money)


def test_indices_of_a_proposal_against_salib() -> None:
    found, values = by_salib(value, 12, NAMES)
    indices = value_indices(CHANGES, FACTORS)
    assert indices.first == pytest.approx(found["S1"], abs=0.01)
    assert indices.total == pytest.approx(found["ST"], abs=0.01)
    moments = proposal_moments(CHANGES, FACTORS)
    assert moments.value_mean == pytest.approx(values.mean(), rel=0.005)
    assert moments.value_u == pytest.approx(values.std(), rel=0.01)
    assert indices.variance == pytest.approx(values.var(), rel=0.02)


def test_indices_of_the_mass_saved_against_salib() -> None:
    found, values = by_salib(lambda u: masses_and_money(u)[0], 12, NAMES)
    indices = saved_indices(CHANGES)
    assert indices.first == pytest.approx(found["S1"][:3], abs=0.01)
    assert indices.total == pytest.approx(found["ST"][:3], abs=0.01)
    moments = proposal_moments(CHANGES, FACTORS)
    assert moments.saved_mean_kg == pytest.approx(values.mean(), rel=0.005)
    assert moments.saved_u_kg == pytest.approx(values.std(), rel=0.01)


def test_swings_by_hand() -> None:
    """Practice, no source: 20 kg at 3 per kg less 25 for the new part is 35.

    Mass 15 to 22 kg: 20 to 41; worth 1 to 6: -5 to 95; cost 40 to 20: 20 to 40.
    """
    low, likely, high = [15.0, 1.0, -40.0], [20.0, 3.0, -25.0], [22.0, 6.0, -20.0]
    table = swing_table(lambda x: x[0] * x[1] + x[2], low=low, likely=likely, high=high)
    assert table.base == 35.0
    assert table.at_low.tolist() == [20.0, -5.0, 20.0]
    assert table.at_high.tolist() == [41.0, 95.0, 40.0]
    assert table.order == [1, 0, 2]
    # The same as a proposal of one change; then its release, price and exchange rate.
    change = ChangeRanges(
        Ranges(15.0, 20.0, 22.0), money=[MoneyRanges(Ranges(-40.0, -25.0, -20.0))]
    )
    swings = value_swings(change, CommonFactors(Ranges(1.0, 3.0, 6.0)))
    assert swings.base == 35.0
    assert swings.at_low.tolist() == [20.0, 20.0, 0.0, -5.0, 35.0, 35.0]
    assert swings.at_high.tolist() == [41.0, 40.0, 35.0, 95.0, 35.0, 35.0]
