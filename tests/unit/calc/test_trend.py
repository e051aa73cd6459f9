"""Trends: what is refused, what is perfect, what many packs cost."""

from __future__ import annotations

import tracemalloc
from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.calc import slopes
from benchpack.calc.trend import (
    LinearTrend,
    fit_least_squares,
    fit_power_law,
    fit_theil_sen,
)
from benchpack.errors import DataError, RequestError
from benchpack.model.words import TrendKind

if TYPE_CHECKING:
    from collections.abc import Callable

    Fit = Callable[..., LinearTrend]

NAN = float("nan")
every_fit = pytest.mark.parametrize(
    "fit", [fit_least_squares, fit_power_law, fit_theil_sen]
)


@every_fit
@pytest.mark.parametrize(
    ("energy", "mass", "said"),
    [
        ([], [], "at least 3 peers with energy and mass; here are 0"),
        ([50.0], [400.0], "here is 1"),
        ([50.0, 60.0, NAN], [400.0, 410.0, 420.0], "here are 2"),
        ([50.0, 60.0, 70.0], [400.0, NAN, 420.0], "here are 2"),
        ([75.0, 75.0, 75.0], [400.0, 410.0, 420.0], "All 3 peers hold 75 kWh"),
    ],
)
def test_too_few_peers_are_refused_with_a_remedy(
    fit: Fit, energy: list[float], mass: list[float], said: str
) -> None:
    with pytest.raises(DataError, match=said) as caught:
        fit(energy, mass)
    (problem,) = caught.value.problems
    assert problem.what.endswith(".")
    assert problem.remedy.endswith(".")


@every_fit
def test_lists_of_unequal_length_are_refused(fit: Fit) -> None:
    with pytest.raises(RequestError, match="equally long"):
        fit([50.0, 60.0, 70.0], [400.0, 410.0])


@every_fit
@pytest.mark.parametrize("coverage", [0.0, 1.0, 95.0, NAN])
def test_a_coverage_that_is_no_share_is_refused(fit: Fit, coverage: float) -> None:
    fitted = fit([50.0, 60.0, 70.0], [400.0, 450.0, 490.0])
    with pytest.raises(RequestError, match="between 0 and 1"):
        fitted.prediction_interval_kg(60.0, coverage=coverage)


@pytest.mark.parametrize(
    ("fit", "masses"),
    [
        (fit_least_squares, lambda energy: 41.7 + 5.3 * energy),
        (fit_theil_sen, lambda energy: 41.7 + 5.3 * energy),
        (fit_power_law, lambda energy: 9.1 * energy**0.87),
    ],
)
@pytest.mark.parametrize("count", [3, 4, 50, 3000])
def test_a_perfect_fit_has_no_scatter(
    fit: Fit, masses: Callable[[np.ndarray], np.ndarray], count: int
) -> None:
    energy = np.linspace(33.3, 111.1, count)
    fitted = fit(energy, masses(energy))
    assert fitted.residual_s == 0.0
    assert fitted.slope_se == 0.0
    assert fitted.r_squared == 1.0
    assert_allclose(fitted.predict_kg(energy), masses(energy), rtol=1e-12)
    low, high = fitted.prediction_interval_kg(200.0)
    assert low == high == fitted.predict_kg(200.0)


@every_fit
def test_equal_masses_have_no_r_squared(fit: Fit) -> None:
    fitted = fit([50.0, 60.0, 70.0], [410.1, 410.1, 410.1])
    assert fitted.residual_s == 0.0
    assert fitted.slope == pytest.approx(0.0, abs=1e-12)
    assert np.isnan(fitted.r_squared)


@every_fit
def test_peers_that_lack_a_value_are_left_out(fit: Fit) -> None:
    energy = [50.0, 60.0, NAN, 70.0, 85.0, 90.0]
    mass = [400.0, 430.0, 999.0, 500.0, float("inf"), 600.0]
    full = fit([50.0, 60.0, 70.0, 90.0], [400.0, 430.0, 500.0, 600.0])
    assert fit(energy, mass) == full
    assert full.n == 4
    assert (full.least_energy_kwh, full.greatest_energy_kwh) == (50.0, 90.0)


def test_the_power_law_leaves_out_what_has_no_logarithm() -> None:
    fitted = fit_power_law([0.0, 50.0, 60.0, 70.0], [10.0, 400.0, 430.0, 500.0])
    assert fitted.n == 3
    assert np.isnan(fitted.predict_kg([0.0, -1.0, NAN])).all()
    assert fitted.mean_energy_kwh == pytest.approx((50.0 * 60.0 * 70.0) ** (1 / 3))


def test_an_outlier_moves_least_squares_but_not_theil_sen() -> None:
    energy = np.arange(40.0, 100.0, 5.0)
    mass = 60.0 + 5.0 * energy
    mass[-1] += 400.0
    assert fit_theil_sen(energy, mass).slope == pytest.approx(5.0)
    assert fit_least_squares(energy, mass).slope > 7.0


def test_the_band_of_theil_sen_is_not_narrower_than_least_squares_scatter() -> None:
    draws = np.random.Generator(np.random.PCG64(5))
    energy = draws.uniform(40.0, 110.0, 12)
    mass = 60.0 + 5.0 * energy + draws.normal(0.0, 25.0, 12)
    robust, least = fit_theil_sen(energy, mass), fit_least_squares(energy, mass)
    assert robust.residual_s >= least.residual_s
    assert robust.kind is TrendKind.THEIL_SEN
    assert robust.slope_low < robust.slope < robust.slope_high


def test_the_band_widens_away_from_the_peers() -> None:
    fitted = fit_least_squares([50, 60, 70, 90], [400, 430, 500, 600])
    low, high = fitted.prediction_interval_kg([fitted.mean_energy_kwh, 120.0, 200.0])
    assert (np.diff(high - low) > 0).all()
    wide = fitted.prediction_interval_kg(60.0, coverage=0.99)
    assert wide[0] < fitted.prediction_interval_kg(60.0)[0]


def test_many_peers_are_sampled_the_same_each_time_and_say_so() -> None:
    draws = np.random.Generator(np.random.PCG64(6))
    energy = draws.uniform(40.0, 110.0, 20_000)
    mass = 60.0 + 5.0 * energy + draws.normal(0.0, 25.0, energy.size)
    fitted = fit_theil_sen(energy, mass)
    order = draws.permutation(energy.size)
    assert fitted.sampled_pairs == slopes.SAMPLED_PAIRS
    again = fit_theil_sen(energy[order], mass[order])
    assert again.slope == fitted.slope
    assert fitted.slope_low < 5.0 < fitted.slope_high
    assert fit_theil_sen(energy[:2000], mass[:2000]).sampled_pairs == 0


def test_a_sample_finds_the_few_pairs_that_differ_in_energy() -> None:
    energy = np.full(600_000, 75.0)
    energy[1000] = 85.0
    mass = np.full(energy.size, 400.0)
    mass[1000] = 450.0
    found = slopes.pair_slopes(energy, mass)
    assert found.pairs == energy.size - 1
    assert found.sampled
    assert_allclose(found.slopes, 5.0)


@pytest.mark.parametrize("count", [2_000, 200_000])
def test_theil_sen_stays_within_bounded_memory(count: int) -> None:
    draws = np.random.Generator(np.random.PCG64(7))
    energy, mass = draws.uniform(40.0, 110.0, (2, count))
    fit_theil_sen(energy[:10], mass[:10])
    tracemalloc.start()
    try:
        fit_theil_sen(energy, mass)
        _, peak = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert peak < 80e6
