"""What a lighter pack is worth: per pack, per pound, over a programme."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

KG_PER_LB = 0.45359237


def value_per_pack(
    gap_kg: ArrayLike, worth_per_kg: ArrayLike, *, share_captured: ArrayLike = 1.0
) -> FloatArray:
    """Give the money that a mass is worth, ``w * gap * share captured``.

    Parameters
    ----------
    gap_kg : array_like
        Mass that could be saved per pack, kg; negative where the subject is lighter.
    worth_per_kg : array_like
        Money per kilogram saved.
    share_captured : array_like
        Which share of the gap is saved, 0 to 1.

    Returns
    -------
    ndarray
        Money per pack, of the broadcast shape.

    Examples
    --------
    >>> value_per_pack(48.75, [2.0, 3.0, 6.0], share_captured=0.5)
    array([ 48.75 ,  73.125, 146.25 ])
    """
    saved_kg = as_floats(gap_kg) * as_floats(share_captured)
    return as_floats(worth_per_kg) * saved_kg


def worth_per_lb_from_kg(worth_per_kg: ArrayLike) -> FloatArray:
    """Give money per pound from money per kilogram, ``w * 0.45359237``.

    The pound is exactly that many kilograms (NIST SP 811, appendix B).

    Parameters
    ----------
    worth_per_kg : array_like
        Money per kilogram.

    Returns
    -------
    ndarray
        Money per pound.

    Examples
    --------
    >>> print(worth_per_lb_from_kg(1.0))
    0.45359237
    """
    return as_floats(worth_per_kg) * KG_PER_LB


def worth_per_kg_from_lb(worth_per_lb: ArrayLike) -> FloatArray:
    """Give money per kilogram from money per pound, ``w / 0.45359237``.

    Parameters
    ----------
    worth_per_lb : array_like
        Money per pound.

    Returns
    -------
    ndarray
        Money per kilogram.

    Examples
    --------
    >>> print(worth_per_kg_from_lb(1.3).round(2))
    2.87
    """
    return as_floats(worth_per_lb) / KG_PER_LB


def programme_npv(
    value_per_pack: ArrayLike, volumes: ArrayLike, *, discount_rate: ArrayLike
) -> FloatArray:
    """Give the present value of a programme, ``sum_y n_y W / (1 + i)^y``.

    Cash falls at the end of each year; the first year of supply is year 1, so that it
    is discounted once.

    Parameters
    ----------
    value_per_pack : array_like, shape (...)
        Money per pack ``W``, the same in every year.
    volumes : array_like, shape (..., years)
        Packs per year from the first year of supply.
    discount_rate : array_like, shape (...)
        ``i`` per year as a fraction; at -1 or below the result is NaN.

    Returns
    -------
    ndarray
        Money, of the broadcast shape.

    Examples
    --------
    >>> print(programme_npv(100.0, [10_000, 20_000], discount_rate=0.25))
    2080000.0
    """
    packs = np.atleast_1d(as_floats(volumes))
    growth = 1.0 + as_floats(discount_rate)
    growth = np.where(growth > 0, growth, np.nan)[..., np.newaxis]
    discounted = packs / growth ** np.arange(1.0, packs.shape[-1] + 1.0)
    present_packs = as_floats(discounted.sum(axis=-1))
    return as_floats(value_per_pack) * present_packs
