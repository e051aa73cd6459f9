"""The rate at which what a programme brings is worth just what it costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

_HALVINGS = 30
_STEPS = 3
_WIDEST = 20.0
_GREATEST_EXPONENT = 600.0


def internal_rate_of_return(cash: ArrayLike) -> FloatArray:
    """Give the rate ``i`` at which ``sum_y c_y / (1 + i)^y`` is zero.

    Cash that changes its sign once has one such rate (Descartes' rule of signs); it
    is found in ``ln(1 + i)`` by halving, then by Newton's steps.

    Parameters
    ----------
    cash : array_like, shape (..., years + 1)
        Money of each year from year 0, as `ProgrammeCash.yearly`.

    Returns
    -------
    ndarray, shape (...)
        Per year as a fraction, above -1. NaN where cash never changes its sign, so
        that there is none; where it does so more than once, so that there may be
        several; and where any of it is unknown.

    Examples
    --------
    >>> internal_rate_of_return([[-100.0, 60.0, 72.0], [100.0, 60.0, 72.0]]).round(6)
    array([0.2, nan])
    """
    flows = np.atleast_1d(as_floats(cash))
    if flows.shape[-1] < 2:
        return as_floats(np.full(flows.shape[:-1], np.nan)[()])
    years = np.arange(float(flows.shape[-1]))
    sound = _single_change(flows)
    greatest = np.abs(flows).max(axis=-1, initial=0.0)
    flows = flows / np.where(sound, greatest, np.nan)[..., np.newaxis]
    # Positive at low rates, so that halving knows its side.
    flows = flows * _last_sign(flows)[..., np.newaxis]
    end = min(_WIDEST, _GREATEST_EXPONENT / years.size)
    low, high = np.full(sound.shape, -end), np.full(sound.shape, end)
    inside = (_present(flows, years, low) > 0.0) & (_present(flows, years, high) < 0.0)
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        above = _present(flows, years, middle) > 0.0
        low, high = np.where(above, middle, low), np.where(above, high, middle)
    root = 0.5 * (low + high)
    for _ in range(_STEPS):
        slope = -_present(flows * years, years, root)
        step = _present(flows, years, root) / np.where(slope < 0.0, slope, np.nan)
        root = np.where(np.isnan(step), root, np.clip(root - step, low, high))
    return as_floats(np.where(inside, np.expm1(root), np.nan))


def _single_change(flows: FloatArray) -> NDArray[np.bool_]:
    """Say where known flows change their sign just once, zeros left out."""
    signs = np.sign(flows)
    # Each zero takes the sign before it, so that only changes are left.
    places = np.where(signs != 0.0, np.arange(flows.shape[-1]), 0)
    carried = np.take_along_axis(signs, np.maximum.accumulate(places, axis=-1), axis=-1)
    changes = (carried[..., 1:] * carried[..., :-1] < 0.0).sum(axis=-1)
    known = np.isfinite(flows).all(axis=-1)
    return np.asarray(known & (changes == 1))


def _last_sign(flows: FloatArray) -> FloatArray:
    """Give the sign of the last flow that is not zero."""
    signs = np.sign(flows)[..., ::-1]
    place = np.argmax(signs != 0.0, axis=-1)[..., np.newaxis]
    return as_floats(np.take_along_axis(signs, place, axis=-1)[..., 0])


def _present(flows: FloatArray, years: FloatArray, log_rate: FloatArray) -> FloatArray:
    discounts = np.exp(-log_rate[..., np.newaxis] * years)
    return as_floats((flows * discounts).sum(axis=-1))
