"""Fits of mass over energy through the peers: the trend that a gap is taken to."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc.line import SLOPE_COVERAGE, LinearTrend
from benchpack.calc.slopes import pair_slopes, slope_limits
from benchpack.errors import DataError, Problem, RequestError
from benchpack.model.words import TrendKind

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

__all__ = [
    "LinearTrend",
    "fit_least_squares",
    "fit_power_law",
    "fit_theil_sen",
]

FEWEST_PEERS = 3


def fit_least_squares(energy_kwh: ArrayLike, mass_kg: ArrayLike) -> LinearTrend:
    """Fit ``m = a + b E`` by ordinary least squares.

    Parameters
    ----------
    energy_kwh, mass_kg : array_like, shape (peers,)
        Energies in kWh and masses in kg; peers that lack either are left out.

    Returns
    -------
    LinearTrend
        The line with its standard errors.

    Raises
    ------
    DataError
        For fewer than 3 peers with both values, or all at one energy.

    Examples
    --------
    >>> trend = fit_least_squares([40.0, 60.0, 80.0], [260.0, 380.0, 480.0])
    >>> print(round(trend.slope, 3), round(trend.intercept, 2), trend.n)
    5.5 43.33 3
    """
    x, y = _peers(energy_kwh, mass_kg)
    intercept, slope = _least_squares(x, y)
    return _trend(TrendKind.LEAST_SQUARES, x, y=y, intercept=intercept, slope=slope)


def fit_power_law(energy_kwh: ArrayLike, mass_kg: ArrayLike) -> LinearTrend:
    """Fit ``m = c E^k`` by least squares in logarithms.

    Parameters
    ----------
    energy_kwh, mass_kg : array_like, shape (peers,)
        Energies in kWh and masses in kg; peers that lack either, or where either is
        not above zero, are left out.

    Returns
    -------
    LinearTrend
        With ``slope = k`` and ``intercept = ln c``.

    Raises
    ------
    DataError
        For fewer than 3 peers with both values, or all at one energy.

    Examples
    --------
    >>> trend = fit_power_law([40.0, 60.0, 90.0], [240.0, 340.0, 480.0])
    >>> print(round(trend.slope, 3), trend.predict_kg(60.0).round(1))
    0.855 339.6
    """
    energy, mass = _peers(positive_or_nan(energy_kwh), positive_or_nan(mass_kg))
    x, y = np.log(energy), np.log(mass)
    intercept, slope = _least_squares(x, y)
    fitted = _trend(TrendKind.POWER_LAW, x, y=y, intercept=intercept, slope=slope)
    return replace(
        fitted,
        mean_energy_kwh=float(np.exp(fitted.mean_energy_kwh)),
        least_energy_kwh=float(energy.min()),
        greatest_energy_kwh=float(energy.max()),
    )


def fit_theil_sen(energy_kwh: ArrayLike, mass_kg: ArrayLike) -> LinearTrend:
    """Fit ``m = a + b E`` by the median of the slopes of all pairs of peers.

    The intercept is the median of ``m - b E``. Up to 2,000 peers every pair counts;
    above that a fixed sample of 500,000 pairs does (see `slopes.pair_slopes`), and
    `sampled_pairs` of the result says so.

    Parameters
    ----------
    energy_kwh, mass_kg : array_like, shape (peers,)
        Energies in kWh and masses in kg; peers that lack either are left out.

    Returns
    -------
    LinearTrend
        The line; what its errors and its band mean is said there.

    Raises
    ------
    DataError
        For fewer than 3 peers with both values, or all at one energy.

    Examples
    --------
    >>> trend = fit_theil_sen([40, 50, 60, 70, 80], [260, 310, 360, 900, 460])
    >>> print(trend.slope, trend.intercept)
    5.0 60.0
    """
    x, y = _peers(energy_kwh, mass_kg)
    found = pair_slopes(x, y)
    slope = float(np.median(found.slopes))
    return _trend(
        TrendKind.THEIL_SEN,
        x,
        y=y,
        intercept=float(np.median(y - slope * x)),
        slope=slope,
        rank_limits=slope_limits(found, y, x=x, coverage=SLOPE_COVERAGE),
        sampled_pairs=found.slopes.size if found.sampled else 0,
    )


def _peers(energy_kwh: ArrayLike, mass_kg: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Give the peers that have both values, or say why there is no trend."""
    energy, mass = as_floats(energy_kwh), as_floats(mass_kg)
    if energy.ndim != 1 or energy.shape != mass.shape:
        said = "A trend takes one list of energies and one of masses, equally long."
        raise RequestError(said)
    known = np.isfinite(energy) & np.isfinite(mass)
    energy, mass = energy[known], mass[known]
    if energy.size < FEWEST_PEERS:
        raise DataError(
            Problem(
                f"A trend needs at least {FEWEST_PEERS} peers with energy and mass; "
                f"here {_are(energy.size)}.",
                "Add peers, or choose another basis.",
            )
        )
    if np.ptp(energy) <= np.abs(energy).max() * 1e-12:
        raise DataError(
            Problem(
                f"All {energy.size} peers hold {energy[0]:.6g} kWh, so they show no "
                "trend of mass over energy.",
                "Add peers of another energy, or choose another basis.",
            )
        )
    return energy, mass


def _are(count: int) -> str:
    return "is 1" if count == 1 else f"are {count}"


def _least_squares(x: FloatArray, y: FloatArray) -> tuple[float, float]:
    """Give intercept and slope, about the means so that few digits are lost."""
    off = x - x.mean()
    slope = float(off @ (y - y.mean()) / (off @ off))
    return float(y.mean() - slope * x.mean()), slope


def _trend(
    kind: TrendKind,
    x: FloatArray,
    *,
    y: FloatArray,
    intercept: float,
    slope: float,
    rank_limits: tuple[float, float] | None = None,
    sampled_pairs: int = 0,
) -> LinearTrend:
    """Complete a line with its errors."""
    n, mean = x.size, float(x.mean())
    sxx = float(((x - mean) ** 2).sum())
    residuals = y - (intercept + slope * x)
    # What rounding alone leaves is no scatter: a perfect fit says 0.
    size = max(1.0, float(np.abs(y).max()), abs(slope) * float(np.abs(x).max()))
    if np.abs(residuals).max() <= 16.0 * np.finfo(np.float64).eps * size:
        residuals = np.zeros(n)
    sse = float(residuals @ residuals)
    sst = float(((y - y.mean()) ** 2).sum()) if np.ptp(y) > 0 else np.nan
    s = float(np.sqrt(sse / (n - 2)))
    slope_se = s / float(np.sqrt(sxx))
    return LinearTrend(
        kind=kind,
        n=n,
        intercept=intercept,
        slope=slope,
        intercept_se=s * float(np.sqrt(1.0 / n + mean**2 / sxx)),
        slope_se=slope_se,
        r_squared=1.0 - sse / sst,
        residual_s=s,
        mean_energy_kwh=mean,
        sxx=sxx,
        least_energy_kwh=float(x.min()),
        greatest_energy_kwh=float(x.max()),
        sampled_pairs=sampled_pairs,
        rank_limits=rank_limits,
    )
