"""Slopes between pairs of points, for the Theil-Sen line."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats

if TYPE_CHECKING:
    from typing import TypeAlias

    from numpy.typing import ArrayLike, NDArray

    Ranks: TypeAlias = NDArray[np.intp]

EVERY_PAIR_UP_TO = 2_000
SAMPLED_PAIRS = 500_000
SAMPLE_SEED = 20_090_101


@dataclass(frozen=True, slots=True, eq=False)
class PairSlopes:
    """Sorted slopes between pairs of points that differ in x.

    Parameters
    ----------
    slopes : ndarray, shape (m,)
        In rising order.
    pairs : int
        How many pairs differ in x; more than `m` where the slopes are a sample.
    sampled : bool
        Whether the slopes are a random sample of the pairs.
    """

    slopes: FloatArray
    pairs: int
    sampled: bool


def pair_slopes(x: ArrayLike, y: ArrayLike) -> PairSlopes:
    """Give the slopes of all pairs of points, or of a sample where there are many.

    Up to 2,000 points every pair counts. Above that, 500,000 pairs are drawn with
    replacement, each pair alike, from a generator with a fixed seed (PCG64): memory
    stays bounded, the answer is the same each time, and the median of the sample lies
    within 0.22 % of the pairs around the exact middle (three standard errors).

    Parameters
    ----------
    x, y : array_like, shape (n,)
        Finite coordinates.

    Returns
    -------
    PairSlopes
        Without any slope where all points share one x.

    Examples
    --------
    >>> pair_slopes([0.0, 1.0, 1.0], [0.0, 2.0, 5.0]).slopes
    array([2., 5.])
    """
    across, up = as_floats(x), as_floats(y)
    # By x and then y: the sample then does not depend on the order of the points.
    order = np.lexsort((up, across))
    across, up = across[order], up[order]
    first = np.searchsorted(across, across, side="left")
    after = np.searchsorted(across, across, side="right")
    partners = across.size - (after - first)
    pairs = int(partners.sum()) // 2
    sampled = across.size > EVERY_PAIR_UP_TO and pairs > SAMPLED_PAIRS
    if sampled:
        slopes = _sampled(across, up, first=first, after=after)
    else:
        slopes = _every(across, up, first_greater=after, pairs=pairs)
    slopes.sort()
    return PairSlopes(slopes=slopes, pairs=pairs, sampled=sampled)


def slope_limits(
    found: PairSlopes, y: ArrayLike, *, x: ArrayLike, coverage: float = 0.95
) -> tuple[float, float]:
    """Give the confidence limits of the median slope.

    Rank limits by Sen, J. Am. Stat. Assoc. 63 (1968) 1379, with the variance of
    Kendall's tau corrected for ties; no distribution of the scatter is assumed.

    Parameters
    ----------
    found : PairSlopes
        What `pair_slopes` gave for the same points.
    y, x : array_like, shape (n,)
        The points.
    coverage : float
        Confidence of the interval, between 0 and 1.

    Returns
    -------
    tuple of float
        Low and high limit; NaN where there are too few pairs to say.

    Examples
    --------
    >>> x, y = [1.0, 2.0, 3.0, 4.0, 5.0], [1.0, 2.5, 2.9, 4.2, 4.8]
    >>> low, high = slope_limits(pair_slopes(x, y), y, x=x, coverage=0.9)
    >>> print(round(low, 3), round(high, 3))
    0.6 1.3
    """
    from scipy.special import ndtri

    if found.slopes.size == 0:
        return math.nan, math.nan
    z = float(ndtri(0.5 + coverage / 2.0))
    n = as_floats(y).size
    variance = (_tie_term(n) - _ties(x) - _ties(y)) / 18.0
    reach = z * math.sqrt(max(variance, 0.0))
    low_rank = max(round((found.pairs - reach) / 2.0) - 1, 0)
    high_rank = min(round((found.pairs + reach) / 2.0), found.pairs - 1)
    # In a sample the same share of the slopes lies below the limit.
    stride = (found.slopes.size - 1) / max(found.pairs - 1, 1)
    low = found.slopes[round(low_rank * stride)]
    return float(low), float(found.slopes[round(high_rank * stride)])


def _every(
    x: FloatArray, y: FloatArray, *, first_greater: Ranks, pairs: int
) -> FloatArray:
    """Give the slope from each point to every point with a greater x."""
    slopes = np.empty(pairs)
    end = 0
    for point, start in enumerate(first_greater):
        begin, end = end, end + x.size - int(start)
        slopes[begin:end] = (y[start:] - y[point]) / (x[start:] - x[point])
    return slopes


def _sampled(x: FloatArray, y: FloatArray, *, first: Ranks, after: Ranks) -> FloatArray:
    """Give slopes of pairs drawn with equal chance among those that differ in x."""
    draws = np.random.Generator(np.random.PCG64(SAMPLE_SEED))
    partners = x.size - (after - first)
    chance = partners / partners.sum()
    one = draws.choice(x.size, size=SAMPLED_PAIRS, p=chance)
    # A partner is any point outside the run of equal x that holds the first point.
    other = draws.integers(0, partners[one])
    other += np.where(other >= first[one], (after - first)[one], 0)
    slopes: FloatArray = (y[other] - y[one]) / (x[other] - x[one])
    return slopes


def _tie_term(count: int) -> int:
    return count * (count - 1) * (2 * count + 5)


def _ties(values: ArrayLike) -> int:
    """Give the correction of the variance for values that occur more than once."""
    _, counts = np.unique(as_floats(values), return_counts=True)
    return sum(_tie_term(int(count)) for count in counts if count > 1)
