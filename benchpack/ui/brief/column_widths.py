"""How the columns of a table share the width of the paper."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]

_STEP = 0.01
_MOST_STEPS = 60
_REACHES = (1, 2, 4, 8)
_RAGGED = 1.04
"""Words do not fill a line to its end."""


def column_widths(
    texts: FloatArray, least: FloatArray, *, room: float, beside: float = 0.0
) -> FloatArray:
    """Give the columns widths with which a table has few lines.

    A column whose texts fit gets what they need; the others share the rest by the
    square root of their longest text. Then room moves from column to column as long
    as the table loses lines.

    Parameters
    ----------
    texts : ndarray, shape (rows, columns)
        Width of each text, set on one line.
    least : ndarray, shape (columns,)
        Width below which a column does not go, unless all of them are too wide.
    room : float
        Width of all columns together.
    beside : float
        Width in each column that no text may take.

    Returns
    -------
    ndarray, shape (columns,)
        Widths that fill the room; what is left over goes to the widest column.

    Examples
    --------
    >>> column_widths(np.array([[10.0, 20.0]]), np.array([5.0, 5.0]), room=50.0)
    array([10., 40.])
    >>> texts = np.array([[10.0, 400.0, 90.0]])
    >>> column_widths(texts, np.full(3, 5.0), room=100.0).round()
    array([10., 61., 29.])
    """
    least = least + beside
    if least.sum() >= room:
        return np.asarray(room * least / least.sum())
    natural = texts.max(axis=0) + beside
    widths = _shared(natural, least, room)
    if natural.sum() > room:
        widths = _moved(widths, texts * _RAGGED, least, room=room, beside=beside)
    return widths


def _shared(natural: FloatArray, least: FloatArray, room: float) -> FloatArray:
    """Give the narrow columns their natural width and the others a fair share."""
    widths = np.zeros(len(natural))
    order = np.argsort(natural, kind="stable")
    weights = np.sqrt(natural[order])
    left = room
    for count, place in enumerate(order.tolist()):
        fair = left * weights[count] / (weights[count:].sum() or 1.0)
        widths[place] = max(least[place], min(natural[place], fair))
        left -= widths[place]
    if left > 0:
        widths[order[-1]] += left
        return widths
    spare = widths - least
    return np.asarray(widths + left * spare / (spare.sum() or 1.0))


def _moved(
    widths: FloatArray,
    texts: FloatArray,
    least: FloatArray,
    *,
    room: float,
    beside: float,
) -> FloatArray:
    """Move room between columns, each time where most lines are lost."""

    def lines(tried: FloatArray) -> float:
        inside = np.maximum(tried - beside, 1e-9)
        return float(np.ceil(np.maximum(texts / inside, 1e-9)).max(axis=1).sum())

    count = len(widths)
    moves = [(a, b, k) for a in range(count) for b in range(count) for k in _REACHES]
    now = lines(widths)
    for _ in range(_MOST_STEPS):
        best, chosen = now, widths
        for a, b, steps in moves:
            tried = widths.copy()
            tried[a] += steps * _STEP * room
            tried[b] -= steps * _STEP * room
            if a == b or tried[b] < least[b]:
                continue
            found = lines(tried)
            if found < best:
                best, chosen = found, tried
        if best == now:
            break
        now, widths = best, chosen
    return widths
