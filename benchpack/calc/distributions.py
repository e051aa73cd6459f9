"""Three-point estimates as distributions: triangular, PERT-beta, rectangular.

All functions broadcast. Low, likely and high that are unknown or out of order give NaN;
all three equal are one exact value.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._pert_table import PERT_WEIGHT, pert_exponents
from benchpack.calc._streams import random_stream
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


class Distribution(StrEnum):
    """How the values between low and high are spread."""

    TRIANGULAR = "triangular"
    PERT = "pert"
    RECTANGULAR = "rectangular"


def range_mean(
    low: ArrayLike,
    high: ArrayLike,
    *,
    likely: ArrayLike,
    kind: Distribution = Distribution.TRIANGULAR,
) -> FloatArray:
    """Give the mean of a range.

    ``(a + m + b) / 3`` triangular, ``(a + 4 m + b) / 6`` PERT-beta (Malcolm, Roseboom,
    Clark and Fazar, Operations Research 7, 1959, from memory), ``(a + b) / 2``
    rectangular.

    Parameters
    ----------
    low, high : array_like
        The ends ``a`` and ``b``, in any unit.
    likely : array_like
        The most likely value ``m``; counts for nothing where rectangular.
    kind : Distribution
        How the values are spread.

    Returns
    -------
    ndarray
        In the unit of the range, of the broadcast shape.

    Examples
    --------
    >>> print(range_mean(1.0, 6.0, likely=2.0))
    3.0
    >>> print(range_mean(1.0, 6.0, likely=2.0, kind=Distribution.PERT))
    2.5
    """
    a, m, b = _in_order(low, likely, high)
    if kind is Distribution.RECTANGULAR:
        return (a + b) / 2.0
    if kind is Distribution.PERT:
        return (a + PERT_WEIGHT * m + b) / (PERT_WEIGHT + 2.0)
    return (a + m + b) / 3.0


def range_variance(
    low: ArrayLike,
    high: ArrayLike,
    *,
    likely: ArrayLike,
    kind: Distribution = Distribution.TRIANGULAR,
) -> FloatArray:
    """Give the variance of a range, the square of its standard uncertainty.

    ``(p^2 + p q + q^2) / 18`` with ``p = m - a``, ``q = b - m`` triangular;
    ``(mean - a) (b - mean) / 7`` PERT-beta; ``(b - a)^2 / 12`` rectangular (JCGM
    101:2008, 6.4.2 and 6.4.5; JCGM 100:2008, 4.3.9).

    Parameters
    ----------
    low, high : array_like
        The ends ``a`` and ``b``, in any unit.
    likely : array_like
        The most likely value ``m``; counts for nothing where rectangular.
    kind : Distribution
        How the values are spread.

    Returns
    -------
    ndarray
        In the unit of the range squared, of the broadcast shape.

    Examples
    --------
    >>> print(np.sqrt(range_variance(0.0, 2.0, likely=1.0)).round(6))
    0.408248
    """
    a, m, b = _in_order(low, likely, high)
    if kind is Distribution.RECTANGULAR:
        return (b - a) ** 2 / 12.0
    if kind is Distribution.PERT:
        mean = a + (b - a + PERT_WEIGHT * (m - a)) / (PERT_WEIGHT + 2.0)
        return (mean - a) * (b - mean) / (PERT_WEIGHT + 3.0)
    below, above = m - a, b - m
    return (below**2 + below * above + above**2) / 18.0


def range_quantile(
    probability: ArrayLike,
    *,
    low: ArrayLike,
    likely: ArrayLike,
    high: ArrayLike,
    kind: Distribution = Distribution.TRIANGULAR,
) -> FloatArray:
    """Give the value below which a share of a range lies, the inverse of its CDF.

    Triangular ``a + sqrt(p (b - a)(m - a))`` up to the likely value and
    ``b - sqrt((1 - p)(b - a)(b - m))`` above it; rectangular ``a + p (b - a)``;
    PERT-beta the inverse of the incomplete beta function with exponents
    ``1 + 4 (m - a)/(b - a)`` and ``1 + 4 (b - m)/(b - a)``.

    Parameters
    ----------
    probability : array_like
        Share ``p``, 0 to 1; anything else gives NaN.
    low, likely, high : array_like
        The range, in any unit.
    kind : Distribution
        How the values are spread.

    Returns
    -------
    ndarray
        In the unit of the range, of the broadcast shape.

    Examples
    --------
    >>> range_quantile([0.05, 0.5, 0.95], low=0.0, likely=1.0, high=2.0).round(6)
    array([0.316228, 1.      , 1.683772])
    """
    a, m, b = _in_order(low, likely, high)
    given = as_floats(probability)
    p = np.where((given >= 0.0) & (given <= 1.0), given, np.nan)
    if kind is Distribution.RECTANGULAR:
        return a + p * (b - a)
    if kind is Distribution.PERT:
        return as_floats(a + (b - a) * _beta_quantile(p, *pert_exponents(a, m, b)))
    from_low = a + np.sqrt(p * (b - a) * (m - a))
    from_high = b - np.sqrt((1.0 - p) * (b - a) * (b - m))
    return np.where(p * (b - a) < m - a, from_low, from_high)


def range_draws(
    trials: int,
    *,
    low: ArrayLike,
    likely: ArrayLike,
    high: ArrayLike,
    kind: Distribution = Distribution.TRIANGULAR,
    seed: int,
) -> FloatArray:
    """Give random values of ranges, drawn through the inverse of their CDF.

    Each range has a stream of random numbers of its own (PCG64), so that the first
    trials stay the same when there are more of them or more ranges.

    Parameters
    ----------
    trials : int
        How many values of each range.
    low, likely, high : array_like, shape (...)
        The ranges, in any unit.
    kind : Distribution
        How the values are spread.
    seed : int
        Zero or more; the same seed gives the same values.

    Returns
    -------
    ndarray, shape (..., trials)
        In the unit of the ranges.

    Raises
    ------
    RequestError
        For a negative seed or number of trials.

    Examples
    --------
    >>> few = range_draws(3, low=[0, 5], likely=[1, 5], high=[2, 5], seed=1)
    >>> many = range_draws(1000, low=0, likely=1, high=2, seed=1)
    >>> print(few.shape, few[1], (few[0] == many[:3]).all())
    (2, 3) [5. 5. 5.] True
    """
    if trials < 0:
        said = f"{trials} trials cannot be drawn."
        raise RequestError(said)
    a, m, b = (
        part[..., np.newaxis]
        for part in np.broadcast_arrays(*map(as_floats, (low, likely, high)))
    )
    uniform = np.empty((*a.shape[:-1], trials))
    for index, row in enumerate(uniform.reshape(a.size, trials)):
        random_stream(seed, 0, index).random(out=row)
    return range_quantile(uniform, low=a, likely=m, high=b, kind=kind)


def quantile_of_range(
    low: float,
    high: float,
    *,
    likely: float,
    kind: Distribution = Distribution.TRIANGULAR,
) -> Callable[[FloatArray], FloatArray]:
    """Give one range as a function from probabilities to values.

    Parameters
    ----------
    low, high, likely : float
        The range, in any unit.
    kind : Distribution
        How the values are spread.

    Returns
    -------
    callable
        Takes an array of probabilities and gives values of the same shape.

    Examples
    --------
    >>> mass = quantile_of_range(0.0, 4.0, likely=2.0, kind=Distribution.RECTANGULAR)
    >>> mass(np.array([0.25, 0.5]))
    array([1., 2.])
    """

    def quantile(probability: FloatArray) -> FloatArray:
        return range_quantile(probability, low=low, likely=likely, high=high, kind=kind)

    return quantile


def _in_order(
    low: ArrayLike, likely: ArrayLike, high: ArrayLike
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Give the three as arrays, NaN wherever they do not rise."""
    a, m, b = np.broadcast_arrays(as_floats(low), as_floats(likely), as_floats(high))
    known = (a <= m) & (m <= b)
    if known.all():
        return a, m, b
    return (
        np.where(known, a, np.nan),
        np.where(known, m, np.nan),
        np.where(known, b, np.nan),
    )


def _beta_quantile(p: FloatArray, rise: FloatArray, fall: FloatArray) -> FloatArray:
    # Only special functions: the whole of scipy.stats takes two seconds to load.
    from scipy.special import betaincinv

    # Below this the inverse finds nothing; there it is a plain power of p.
    least = 1e-60
    at_least = betaincinv(rise, fall, np.maximum(p, least))
    return as_floats(at_least * np.minimum(p / least, 1.0) ** (1.0 / rise))
