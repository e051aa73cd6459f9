"""Tooling: its share of each pack, the volume from which it pays, and how soon.

Money is in one currency throughout, rates are per year as a fraction, cash falls at
the end of each year. All functions broadcast; what is unknown gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import not_negative_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

_LEAST_INTEREST = 1e-100


def capital_recovery_factor(rate: ArrayLike, years: ArrayLike) -> FloatArray:
    """Give the yearly payment on a sum of 1, ``i (1+i)^n / ((1+i)^n - 1)``.

    Without interest ``1 / n``. Textbooks of engineering economy (from memory).

    Parameters
    ----------
    rate : array_like
        Interest ``i`` per year as a fraction; at -1 or below the result is NaN.
    years : array_like
        Years ``n`` over which it is paid back, above 0.

    Returns
    -------
    ndarray
        Per year, of the broadcast shape.

    Examples
    --------
    >>> capital_recovery_factor([0.0, 0.08], 5.0).round(8)
    array([0.2       , 0.25045645])
    """
    interest = as_floats(rate)
    interest = np.where(interest > -1.0, interest, np.nan)
    spans = positive_or_nan(years)
    # Like this, a rate near zero does not lose its digits.
    with np.errstate(over="ignore"):
        paid = -np.expm1(-spans * np.log1p(interest))
    return as_floats(np.where(_none(interest), 1.0 / spans, _over(interest, paid)))


def tooling_per_pack(
    tooling: ArrayLike,
    *,
    yearly_volume: ArrayLike,
    years: ArrayLike,
    rate: ArrayLike,
) -> FloatArray:
    """Give the tooling's share of each pack, ``tooling * CRF / V``.

    Parameters
    ----------
    tooling : array_like
        Money spent once.
    yearly_volume : array_like
        Packs per year ``V``, the same in every year.
    years, rate
        As in `capital_recovery_factor`.

    Returns
    -------
    ndarray
        Money per pack, of the broadcast shape.

    Examples
    --------
    >>> supply = {"yearly_volume": 50_000, "years": 5}
    >>> tooling_per_pack(800_000.0, **supply, rate=[0.0, 0.08]).round(2)
    array([3.2 , 4.01])
    """
    yearly = as_floats(tooling) * capital_recovery_factor(rate, years)
    return yearly / positive_or_nan(yearly_volume)


def break_even_volume(
    extra_tooling: ArrayLike,
    saving_per_pack: ArrayLike,
    *,
    years: ArrayLike,
    rate: ArrayLike,
) -> FloatArray:
    """Give the yearly volume from which dearer tooling pays, ``dI CRF / dc``.

    Parameters
    ----------
    extra_tooling : array_like
        ``dI``, what the tooling costs more, 0 or more; below 0 gives NaN.
    saving_per_pack : array_like
        ``dc``, what each pack then costs less without its share of the tooling.
    years, rate
        As in `capital_recovery_factor`.

    Returns
    -------
    ndarray
        Packs per year, of the broadcast shape; infinite where it never pays.

    Examples
    --------
    >>> supply = {"years": 5, "rate": 0.08}
    >>> break_even_volume(700_000.0, [10.0, 0.0], **supply).round()
    array([17532.,    inf])
    """
    yearly = not_negative_or_nan(extra_tooling) * capital_recovery_factor(rate, years)
    saving = as_floats(saving_per_pack)
    never = (saving <= 0.0) & ~np.isnan(yearly)
    return np.where(never, np.inf, yearly / positive_or_nan(saving))


def payback_years(
    investment: ArrayLike, yearly_saving: ArrayLike, *, rate: ArrayLike = 0.0
) -> FloatArray:
    """Give the years until savings have paid back an investment, with interest.

    ``-ln(1 - i I / S) / ln(1 + i)``; without interest ``I / S``. Between two whole
    years it is what the formula gives.

    Parameters
    ----------
    investment : array_like
        ``I``, money spent once, 0 or more; below 0 gives NaN.
    yearly_saving : array_like
        ``S``, money saved per year at the end of each.
    rate : array_like
        Interest ``i`` per year as a fraction, 0 or more; below 0 gives NaN.

    Returns
    -------
    ndarray
        Years, of the broadcast shape; infinite where it is never paid back.

    Examples
    --------
    >>> payback_years(700_000.0, [250_000.0, 50_000.0], rate=0.08).round(2)
    array([3.3, inf])
    """
    spent, interest = not_negative_or_nan(investment), not_negative_or_nan(rate)
    saved = as_floats(yearly_saving)
    plain = spent / positive_or_nan(saved)
    left = 1.0 - interest * plain
    logarithm = np.log1p(-np.where(left > 0.0, interest * plain, np.nan))
    years = np.where(_none(interest), plain, _over(-logarithm, np.log1p(interest)))
    known = ~np.isnan(spent) & ~np.isnan(interest)
    never = known & ((saved <= 0.0) | (left <= 0.0))
    nothing = known & (spent == 0.0) & ~np.isnan(saved)
    return np.where(nothing, 0.0, np.where(never, np.inf, years))


def _none(interest: FloatArray) -> NDArray[np.bool_]:
    """Say where interest is none, or so little that its digits would be lost."""
    return np.asarray(np.abs(interest) < _LEAST_INTEREST)


def _over(numerator: FloatArray, denominator: FloatArray) -> FloatArray:
    """Divide, with NaN where the denominator is zero."""
    return numerator / np.where(denominator == 0, np.nan, denominator)
