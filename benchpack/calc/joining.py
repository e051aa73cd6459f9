"""What joints cost and how many stations they need."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

SECONDS_PER_HOUR = 3600.0
# A sum of seconds that is a whole number of takts but for rounding needs no more.
_ROUNDING = 1e-9


def joint_money(
    count: ArrayLike,
    *,
    piece_cost: ArrayLike,
    time_each_s: ArrayLike,
    labour_rate_per_h: ArrayLike,
    station_rate_per_h: ArrayLike,
) -> FloatArray:
    """Give the money of joints, ``n [c + t (labour + station) / 3600]``.

    Parameters
    ----------
    count : array_like
        Number of pieces, or length of a line joint in the unit of the other two.
    piece_cost : array_like
        Money for one, without labour.
    time_each_s : array_like
        Seconds to make one.
    labour_rate_per_h, station_rate_per_h : array_like
        Money per hour of the person and of the station.

    Returns
    -------
    ndarray
        Money, of the broadcast shape; NaN where cost or time is unknown.

    Examples
    --------
    >>> money = joint_money(
    ...     16,
    ...     piece_cost=0.07,
    ...     time_each_s=6.0,
    ...     labour_rate_per_h=45.0,
    ...     station_rate_per_h=60.0,
    ... )
    >>> print(money.round(2))
    3.92
    """
    rate_per_s = as_floats(labour_rate_per_h) + as_floats(station_rate_per_h)
    work = as_floats(time_each_s) * rate_per_s / SECONDS_PER_HOUR
    return as_floats(count) * (as_floats(piece_cost) + work)


def station_count(seconds: ArrayLike, takt_time_s: ArrayLike) -> FloatArray:
    """Give how many stations the work fills, the sum over the takt rounded up.

    Work is taken as free to be split, so a real line needs as many or more.

    Parameters
    ----------
    seconds : array_like, shape (..., joints)
        Seconds of all pieces of each joint; one unknown makes the result unknown.
    takt_time_s : array_like, shape (...)
        Seconds between two packs.

    Returns
    -------
    ndarray, shape (...)
        Whole numbers as floats.

    Raises
    ------
    RequestError
        When a takt time is not above zero.

    Examples
    --------
    >>> print(station_count([420.0, 96.0, 177.6], 60.0))
    12.0
    """
    takt = as_floats(takt_time_s)
    if not (takt > 0.0).all():
        raise RequestError("The takt time has to be above zero seconds.")
    takts = np.atleast_1d(as_floats(seconds)).sum(axis=-1) / takt
    return as_floats(np.ceil(takts * (1.0 - _ROUNDING)))


def cumulative_share(values: ArrayLike) -> FloatArray:
    """Give the running share of the whole, for a pareto with the largest first.

    Parameters
    ----------
    values : array_like, shape (..., n)
        What is summed up, in the order in which it is drawn. Unknown and negative
        ones add nothing: the share is that of what is known.

    Returns
    -------
    ndarray, shape (..., n)
        Shares from above 0 to 1; all NaN where there is nothing to share.

    Examples
    --------
    >>> cumulative_share([60.0, 30.0, 10.0])
    array([0.6, 0.9, 1. ])
    """
    listed = np.atleast_1d(as_floats(values))
    running = np.where(listed > 0.0, listed, 0.0).cumsum(axis=-1)
    if running.shape[-1] == 0:
        return running
    whole = running[..., -1:]
    return running / np.where(whole > 0.0, whole, np.nan)
