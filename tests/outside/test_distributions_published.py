"""Three-point estimates against closed forms and the distributions of scipy."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
import scipy.stats

from benchpack.calc.distributions import (
    Distribution,
    quantile_of_range,
    range_draws,
    range_mean,
    range_quantile,
    range_variance,
)

# Low, likely, high; also with the likely value at an end, and far from zero.
RANGES = [
    (2.0, 3.0, 6.0),
    (2.0, 2.0, 6.0),
    (2.0, 6.0, 6.0),
    (-5.0, -1.0, 0.5),
    (1000.0, 1000.2, 1001.0),
]
SHARES = np.array([1e-9, 1e-4, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.9999, 1 - 1e-9])

cases = pytest.mark.parametrize("three", RANGES)
kinds = pytest.mark.parametrize("kind", list(Distribution))


def by_scipy(three: tuple[float, float, float], kind: Distribution) -> Any:
    """Give the distribution as scipy.stats knows it.

    PERT: beta exponents ``1 + 4 (m - a)/(b - a)`` and ``1 + 4 (b - m)/(b - a)``
    (Malcolm, Roseboom, Clark and Fazar 1959 in the usual later form, from memory).
    """
    low, likely, high = three
    width = high - low
    if kind is Distribution.RECTANGULAR:
        return scipy.stats.uniform(loc=low, scale=width)
    if kind is Distribution.PERT:
        rise = 1.0 + 4.0 * (likely - low) / width
        fall = 1.0 + 4.0 * (high - likely) / width
        return scipy.stats.beta(rise, fall, loc=low, scale=width)
    return scipy.stats.triang((likely - low) / width, loc=low, scale=width)


@cases
@kinds
def test_moments_against_scipy(
    three: tuple[float, float, float], kind: Distribution
) -> None:
    low, likely, high = three
    law = by_scipy(three, kind)
    mean = range_mean(low, high, likely=likely, kind=kind)
    assert float(mean) == pytest.approx(law.mean(), rel=1e-12)
    variance = range_variance(low, high, likely=likely, kind=kind)
    assert float(variance) == pytest.approx(law.var(), rel=1e-9)


@cases
@kinds
def test_quantiles_against_scipy(
    three: tuple[float, float, float], kind: Distribution
) -> None:
    low, likely, high = three
    wanted = by_scipy(three, kind).ppf(SHARES)
    given = range_quantile(SHARES, low=low, likely=likely, high=high, kind=kind)
    assert given == pytest.approx(wanted, abs=1e-9 * (high - low))
    function = quantile_of_range(low, high, likely=likely, kind=kind)
    assert function(SHARES) == pytest.approx(wanted, abs=1e-9 * (high - low))


@cases
@kinds
def test_draws_against_scipy(
    three: tuple[float, float, float], kind: Distribution
) -> None:
    """Kolmogorov and Smirnov: 50,000 draws do not tell the two apart."""
    low, likely, high = three
    drawn = range_draws(50_000, low=low, likely=likely, high=high, kind=kind, seed=17)
    found = scipy.stats.kstest(drawn, by_scipy(three, kind).cdf)
    assert found.pvalue > 0.001


def test_a_triangle_in_closed_form() -> None:
    """(0, 1, 2): u = 0.408248, 5 % and 95 % at 0.316228 and 1.683772, exactly.

    ``1 / sqrt(6)``, ``sqrt(0.1)`` and ``2 - sqrt(0.1)``; JCGM 100:2008, 4.3.9.
    """
    assert float(range_mean(0.0, 2.0, likely=1.0)) == 1.0
    u = np.sqrt(range_variance(0.0, 2.0, likely=1.0))
    assert float(u) == pytest.approx(0.408248, abs=5e-7)
    ends = range_quantile([0.05, 0.95], low=0.0, likely=1.0, high=2.0)
    assert ends == pytest.approx([0.316228, 1.683772], abs=5e-7)
    # Lopsided, (0, 1, 4), by hand: F(1) = 1/4, F(x) = 1 - (4 - x)^2 / 12.
    skewed = range_quantile([1 / 16, 0.25, 11 / 12], low=0.0, likely=1.0, high=4.0)
    assert skewed == pytest.approx([0.5, 1.0, 3.0], rel=1e-14)


def test_a_pert_estimate_of_the_textbooks() -> None:
    """(a + 4 m + b)/6: 2, 5 and 14 days are 6 (taught with every PERT network).

    The textbook's ((b - a)/6)^2 is another variance; that of the beta distribution with
    this mean is (mean - a)(b - mean)/7 = 32/7. From memory.
    """
    kind = Distribution.PERT
    assert float(range_mean(2.0, 14.0, likely=5.0, kind=kind)) == 6.0
    variance = range_variance(2.0, 14.0, likely=5.0, kind=kind)
    assert float(variance) == pytest.approx(32.0 / 7.0, rel=1e-14)
