"""Trends against scipy and statsmodels, and their bands against simulation."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
import scipy.stats
import statsmodels.api as sm
from numpy.testing import assert_allclose

from benchpack.calc.line import student_quantile
from benchpack.calc.slopes import pair_slopes, slope_limits
from benchpack.calc.trend import (
    LinearTrend,
    fit_least_squares,
    fit_power_law,
    fit_theil_sen,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

WANTED = np.array([30.0, 57.0, 75.0, 82.0, 140.0])


def packs(count: int, *, seed: int = 11) -> tuple[Floats, Floats]:
    """Draw packs with scatter, and with ties in energy and in mass."""
    draws = np.random.Generator(np.random.PCG64(seed))
    energy = draws.uniform(40.0, 110.0, count).round()
    mass = (9.0 * energy**0.88 * np.exp(draws.normal(0.0, 0.06, count))).round()
    return energy, mass


@pytest.mark.parametrize("count", [3, 5, 14, 400])
def test_least_squares_against_linregress(count: int) -> None:
    energy, mass = packs(count)
    given, wanted = (
        fit_least_squares(energy, mass),
        scipy.stats.linregress(energy, mass),
    )
    assert given.slope == pytest.approx(wanted.slope, rel=1e-10)
    assert given.intercept == pytest.approx(wanted.intercept, rel=1e-9)
    assert given.slope_se == pytest.approx(wanted.stderr, rel=1e-8)
    assert given.intercept_se == pytest.approx(wanted.intercept_stderr, rel=1e-8)
    assert given.r_squared == pytest.approx(wanted.rvalue**2, rel=1e-8)


@pytest.mark.parametrize("count", [3, 5, 14, 400])
def test_power_law_against_linregress_of_logarithms(count: int) -> None:
    energy, mass = packs(count)
    given = fit_power_law(energy, mass)
    wanted = scipy.stats.linregress(np.log(energy), np.log(mass))
    assert given.slope == pytest.approx(wanted.slope, rel=1e-10)
    assert given.intercept == pytest.approx(wanted.intercept, rel=1e-9)
    assert given.slope_se == pytest.approx(wanted.stderr, rel=1e-8)
    assert given.r_squared == pytest.approx(wanted.rvalue**2, rel=1e-8)


@pytest.mark.parametrize("coverage", [0.5, 0.8, 0.95, 0.99])
@pytest.mark.parametrize("count", [4, 14, 400])
def test_least_squares_band_against_statsmodels(count: int, coverage: float) -> None:
    energy, mass = packs(count)
    given = fit_least_squares(energy, mass)
    fitted = sm.OLS(mass, sm.add_constant(energy)).fit()
    wanted = fitted.get_prediction(sm.add_constant(WANTED))
    assert_allclose(given.predict_kg(WANTED), wanted.predicted_mean, rtol=1e-9)
    low, high = given.prediction_interval_kg(WANTED, coverage=coverage)
    ends = wanted.conf_int(obs=True, alpha=1.0 - coverage)
    assert_allclose(np.column_stack([low, high]), ends, rtol=1e-8)
    error = given.prediction_uncertainty_kg(WANTED)
    assert_allclose(error, wanted.se_obs, rtol=1e-8)
    slopes = fitted.conf_int(alpha=0.05)[1]
    assert_allclose([given.slope_low, given.slope_high], slopes, rtol=1e-8)


@pytest.mark.parametrize("coverage", [0.8, 0.95])
def test_power_law_band_against_statsmodels(coverage: float) -> None:
    """The band of statsmodels in logarithms, raised back."""
    energy, mass = packs(14)
    given = fit_power_law(energy, mass)
    fitted = sm.OLS(np.log(mass), sm.add_constant(np.log(energy))).fit()
    wanted = fitted.get_prediction(sm.add_constant(np.log(WANTED)))
    predicted = np.exp(wanted.predicted_mean)
    assert_allclose(given.predict_kg(WANTED), predicted, rtol=1e-9)
    low, high = given.prediction_interval_kg(WANTED, coverage=coverage)
    ends = np.exp(wanted.conf_int(obs=True, alpha=1.0 - coverage))
    assert_allclose(np.column_stack([low, high]), ends, rtol=1e-8)
    error = given.prediction_uncertainty_kg(WANTED)
    assert_allclose(error, wanted.se_obs * predicted, rtol=1e-8)


@pytest.mark.parametrize("count", [3, 4, 5, 14, 101, 2000])
def test_theil_sen_against_theilslopes(count: int) -> None:
    energy, mass = packs(count)
    given = fit_theil_sen(energy, mass)
    wanted = scipy.stats.theilslopes(mass, energy, 0.95, method="joint")
    assert given.slope == pytest.approx(wanted.slope, rel=1e-12)
    assert given.intercept == pytest.approx(wanted.intercept, rel=1e-12)
    assert given.slope_low == pytest.approx(wanted.low_slope, rel=1e-12)
    assert given.slope_high == pytest.approx(wanted.high_slope, rel=1e-12)


@pytest.mark.parametrize("coverage", [0.5, 0.9, 0.99])
@pytest.mark.parametrize(("steps_kwh", "steps_kg"), [(0, 0), (20, 0), (0, 200)])
def test_pair_slopes_and_their_limits_against_theilslopes(
    coverage: float, steps_kwh: int, steps_kg: int
) -> None:
    """Without ties, with many in energy, with many in mass: each moves the limits."""
    draws = np.random.Generator(np.random.PCG64(14))
    energy = draws.uniform(40.0, 110.0, 60)
    mass = 60.0 + 5.0 * energy + draws.normal(0.0, 25.0, 60)
    energy = (energy / steps_kwh).round() * steps_kwh if steps_kwh else energy
    mass = (mass / steps_kg).round() * steps_kg if steps_kg else mass
    found = pair_slopes(energy, mass)
    wanted = scipy.stats.theilslopes(mass, energy, coverage)
    assert np.median(found.slopes) == pytest.approx(wanted.slope, rel=1e-12)
    limits = slope_limits(found, mass, x=energy, coverage=coverage)
    assert limits == pytest.approx((wanted.low_slope, wanted.high_slope), rel=1e-12)


def test_sampled_theil_sen_is_near_every_pair() -> None:
    """3,000 packs against theilslopes, which takes all of their 4.5 million pairs.

    5 standard errors of the sampled median are 0.35 % of the ranks; the confidence
    interval spans 2.4 % of them, so the sample may be off by 0.15 of its width.
    """
    draws = np.random.Generator(np.random.PCG64(12))
    energy = draws.uniform(40.0, 110.0, 3000)
    mass = 60.0 + 5.0 * energy + draws.normal(0.0, 25.0, energy.size)
    given = fit_theil_sen(energy, mass)
    assert given.sampled_pairs > 0
    wanted = scipy.stats.theilslopes(mass, energy, 0.95)
    width = wanted.high_slope - wanted.low_slope
    assert given.slope == pytest.approx(wanted.slope, abs=0.15 * width)
    assert given.slope_low == pytest.approx(wanted.low_slope, abs=0.15 * width)
    assert given.slope_high == pytest.approx(wanted.high_slope, abs=0.15 * width)


@pytest.mark.parametrize(
    ("dof", "quantile"),
    [(1, 12.71), (2, 4.30), (3, 3.18), (5, 2.57), (10, 2.23), (20, 2.09), (50, 2.01)],
)
def test_student_quantile_against_the_table_of_the_gum(
    dof: int, quantile: float
) -> None:
    """JCGM 100:2008, table G.2, column 95 % (from memory), and scipy.stats.t."""
    assert student_quantile(0.95, dof=dof) == pytest.approx(quantile, abs=0.005)
    for coverage in (0.5, 0.95, 0.999):
        wanted = scipy.stats.t.ppf(0.5 + coverage / 2.0, dof)
        assert student_quantile(coverage, dof=dof) == pytest.approx(wanted, rel=1e-10)


@pytest.mark.parametrize(
    ("fit", "nominal", "margin"),
    [
        (fit_least_squares, 0.95, 0.012),
        (fit_least_squares, 0.80, 0.020),
        (fit_theil_sen, 0.95, 0.015),
        (fit_power_law, 0.95, 0.012),
    ],
)
def test_bands_hold_what_they_promise(
    fit: Callable[[Floats, Floats], LinearTrend], nominal: float, margin: float
) -> None:
    """Simulation: 4,000 sets of 12 peers and one more pack with normal scatter."""
    draws = np.random.Generator(np.random.PCG64(13))
    energy = np.linspace(42.0, 108.0, 12)
    trials, held = 4000, 0
    law = fit is fit_power_law
    for _ in range(trials):
        scatter = draws.normal(0.0, 1.0, 13)
        at = np.append(energy, 82.0)
        made = (
            at**0.9 * 8.0 * np.exp(0.05 * scatter)
            if law
            else (60.0 + 5.0 * at + 20.0 * scatter)
        )
        low, high = fit(energy, made[:-1]).prediction_interval_kg(
            82.0, coverage=nominal
        )
        held += int(low <= made[-1] <= high)
    assert held / trials == pytest.approx(nominal, abs=margin)
