"""A programme year by year: its cash, when it pays back, and from which volume.

Money spent once falls into year 0, cash of the packs at the end of each year; the first
year of supply is year 1. One value per pack holds in every year, volumes differ. All
functions broadcast over what stands before the years; what is unknown, or outside of
its range, gives NaN. Without packs or without years a programme is worth 0.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import not_negative_or_nan
from benchpack.calc.worth import programme_npv

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_LAST_DIGIT = 1e-12


@dataclass(frozen=True, slots=True, eq=False)
class ProgrammeCash:
    """Cash of a programme from year 0, in which the money is spent.

    Parameters
    ----------
    yearly : ndarray, shape (..., years + 1)
        Money at the end of each year, negative where it is spent.
    discounted : ndarray, shape (..., years + 1)
        The same at its present value.
    cumulative : ndarray, shape (..., years + 1)
        Sum of the present values up to each year; the last is the net present value.
    """

    yearly: FloatArray
    discounted: FloatArray
    cumulative: FloatArray


def programme_cash(
    value_per_pack: ArrayLike,
    volumes: ArrayLike,
    *,
    discount_rate: ArrayLike,
    spend: ArrayLike = 0.0,
) -> ProgrammeCash:
    """Give the cash of a programme, ``n_y W / (1 + i)^y`` less what is spent at first.

    Parameters
    ----------
    value_per_pack : array_like, shape (...)
        Money per pack ``W``; negative where a pack costs more than it gains.
    volumes : array_like, shape (..., years)
        Packs per year ``n_y`` from the first year of supply, 0 or more.
    discount_rate : array_like, shape (...)
        ``i`` per year as a fraction, above -1.
    spend : array_like, shape (...)
        Money spent once in year 0, tooling and validation, 0 or more.

    Returns
    -------
    ProgrammeCash
        Year 0 first.

    Examples
    --------
    >>> cash = programme_cash(
    ...     100.0, [10_000, 20_000], discount_rate=0.25, spend=1_000_000
    ... )
    >>> cash.cumulative
    array([-1000000.,  -200000.,  1080000.])
    """
    packs = not_negative_or_nan(np.atleast_1d(as_floats(volumes)))
    gained = as_floats(value_per_pack)[..., np.newaxis] * packs
    outlay = 0.0 - not_negative_or_nan(spend)[..., np.newaxis]
    growth = positive_or_nan(1.0 + as_floats(discount_rate))[..., np.newaxis]
    shape = np.broadcast_shapes(outlay.shape[:-1], gained.shape[:-1], growth.shape[:-1])
    years = packs.shape[-1]
    yearly = np.concatenate(
        (
            np.broadcast_to(outlay, (*shape, 1)),
            np.broadcast_to(gained, (*shape, years)),
        ),
        axis=-1,
    )
    discounted = yearly / growth ** np.arange(years + 1.0)
    return ProgrammeCash(yearly, discounted, np.cumsum(discounted, axis=-1))


def discounted_payback_years(
    value_per_pack: ArrayLike,
    volumes: ArrayLike,
    *,
    discount_rate: ArrayLike,
    spend: ArrayLike,
) -> FloatArray:
    """Give the years after which discounted cash has paid back what was spent.

    Within the year that does it, cash is taken to come in evenly.

    Parameters
    ----------
    value_per_pack, volumes, discount_rate, spend
        As in `programme_cash`.

    Returns
    -------
    ndarray, shape (...)
        Years; 0 where nothing is spent, infinite where it is never paid back. An
        unknown volume makes it unknown, in whichever year.

    Examples
    --------
    >>> plan = {"volumes": [10_000, 20_000], "discount_rate": 0.25}
    >>> discounted_payback_years([100.0, 10.0], **plan, spend=1_440_000).round(2)
    array([1.5, inf])
    """
    cash = programme_cash(
        value_per_pack, volumes, discount_rate=discount_rate, spend=spend
    )
    # What pays back at the very end of a year must not fail by its last digit.
    last_digit = _LAST_DIGIT * cash.yearly[..., :1]
    reached = cash.cumulative >= last_digit
    year = np.argmax(reached, axis=-1)[..., np.newaxis]
    last = np.take_along_axis(cash.cumulative, np.maximum(year - 1, 0), axis=-1)
    brought = np.take_along_axis(cash.discounted, year, axis=-1)
    within = -last / np.where(brought > 0.0, brought, np.nan)
    years = np.where(year == 0, 0.0, year - 1.0 + np.minimum(within, 1.0))[..., 0]
    years = np.where(reached.any(axis=-1), years, np.inf)
    return np.where(np.isnan(cash.cumulative).any(axis=-1), np.nan, years)


def break_even_scale(
    value_per_pack: ArrayLike,
    volumes: ArrayLike,
    *,
    discount_rate: ArrayLike,
    spend: ArrayLike,
) -> FloatArray:
    """Give the share of the planned volumes from which it pays, ``spend / NPV``.

    Parameters
    ----------
    value_per_pack, volumes, discount_rate, spend
        As in `programme_cash`.

    Returns
    -------
    ndarray, shape (...)
        1 is the plan; 0 where nothing is spent, infinite where no volume pays.

    Examples
    --------
    >>> plan = {"volumes": [10_000, 20_000], "discount_rate": 0.25}
    >>> break_even_scale([100.0, 0.0], **plan, spend=1_040_000)
    array([0.5, inf])
    """
    packs = not_negative_or_nan(np.atleast_1d(as_floats(volumes)))
    gained = programme_npv(value_per_pack, packs, discount_rate=discount_rate)
    spent = not_negative_or_nan(spend)
    scale = spent / positive_or_nan(gained)
    known = ~np.isnan(spent) & ~np.isnan(gained)
    scale = np.where(known & (gained <= 0.0), np.inf, scale)
    return np.where(known & (spent == 0.0), 0.0, scale)


def break_even_packs_per_year(
    value_per_pack: ArrayLike,
    volumes: ArrayLike,
    *,
    discount_rate: ArrayLike,
    spend: ArrayLike,
) -> FloatArray:
    """Give the yearly packs, on average over the plan, from which it pays.

    The plan keeps its shape: its mean volume times `break_even_scale`.

    Parameters
    ----------
    value_per_pack, volumes, discount_rate, spend
        As in `programme_cash`.

    Returns
    -------
    ndarray, shape (...)
        Packs per year; 0 where nothing is spent, infinite where no volume pays.

    Examples
    --------
    >>> plan = {"volumes": [10_000, 20_000], "discount_rate": 0.25}
    >>> print(break_even_packs_per_year(100.0, **plan, spend=1_040_000))
    7500.0
    """
    scale = break_even_scale(
        value_per_pack, volumes, discount_rate=discount_rate, spend=spend
    )
    packs = not_negative_or_nan(np.atleast_1d(as_floats(volumes)))
    mean = packs.sum(axis=-1) / max(packs.shape[-1], 1)
    # No scale makes packs of none: infinite stays infinite.
    finite = np.where(np.isinf(scale), 0.0, scale)
    return np.where(np.isinf(scale), np.inf, mean * finite)
