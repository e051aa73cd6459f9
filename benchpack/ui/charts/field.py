"""Values on a grid: read between its places, coloured, parted by sign. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.report.chart_specs import FloatArray
from benchpack.ui.palette import mix

_LOOKED_AT = 20


@dataclass(frozen=True, slots=True)
class Between:
    """Places between those of a grid, along one of its axes.

    `before` and `after` (m,) are the places of the grid on both sides, `share` (m,) is
    how far each lies from the first to the second.
    """

    before: NDArray[np.intp]
    after: NDArray[np.intp]
    share: FloatArray


def between(places: FloatArray, wanted: FloatArray) -> Between:
    """Find where wanted places lie among those of a grid.

    Parameters
    ----------
    places : FloatArray
        Rising places of the grid (n,), two at least.
    wanted : FloatArray
        Where values are wanted (m,); beyond the grid its ends count.
    """
    after = np.clip(np.searchsorted(places, wanted), 1, len(places) - 1)
    before = after - 1
    share = (wanted - places[before]) / (places[after] - places[before])
    return Between(before, after, np.clip(share, 0.0, 1.0))


def sampled(values: FloatArray, *, down: Between, across: Between) -> FloatArray:
    """Read values between the places of a grid, bilinearly.

    Parameters
    ----------
    values : FloatArray
        Values (ny, nx), nan where there is none.
    down, across : Between
        Where to read, along y (my,) and along x (mx,).

    Returns
    -------
    FloatArray
        Values (my, mx), nan where one of the four about a place is not known.
    """
    share = down.share[:, None]
    rows = values[down.before] * (1.0 - share) + values[down.after] * share
    begin, end = rows[:, across.before], rows[:, across.after]
    return np.asarray(begin + (end - begin) * across.share)


def middle_of(mask: NDArray[np.bool_]) -> tuple[float, float] | None:
    """Find a place well inside a region, for a word that names it.

    The region is peeled from its edges until nothing would be left.

    Parameters
    ----------
    mask : ndarray of bool
        Where the region is (n, m).

    Returns
    -------
    tuple or None
        Shares of the height and of the width, 0 to 1; None without a region.
    """
    left = np.pad(mask, 1)
    if not left.any():
        return None
    while True:
        inner = np.zeros_like(left)
        inner[1:-1, 1:-1] = (
            left[1:-1, 1:-1]
            & (left[:-2, 1:-1] & left[2:, 1:-1])
            & (left[1:-1, :-2] & left[1:-1, 2:])
        )
        if not inner.any():
            break
        left = inner
    rows, columns = np.nonzero(left[1:-1, 1:-1])
    middle = np.hypot(rows - rows.mean(), columns - columns.mean()).argmin()
    height, width = mask.shape
    return (float(rows[middle]) + 0.5) / height, (float(columns[middle]) + 0.5) / width


def region(values: FloatArray, *, is_gain: bool) -> NDArray[np.bool_]:
    """Give where a coarse part of some values is above zero, or below it."""
    rows, columns = (
        np.linspace(0, size - 1, min(size, _LOOKED_AT)).astype(np.intp)
        for size in values.shape
    )
    coarse = values[np.ix_(rows, columns)]
    return coarse > 0 if is_gain else coarse < 0


def pixel(text: str) -> np.uint32:
    """Give a colour written ``#rrggbb`` as the pixel ``0xffrrggbb``."""
    return np.uint32(0xFF000000 | int(text[1:], 16))


def two_sided(low: str, middle: str, high: str) -> NDArray[np.uint32]:
    """Give 511 colours from one over a middle to another, as ``0xffrrggbb``.

    Parameters
    ----------
    low, middle, high : str
        Colours as ``#rrggbb``.
    """
    shares = np.linspace(0.0, 1.0, 256)
    texts = [mix(low, middle, share=float(one)) for one in shares[:0:-1]]
    texts += [mix(high, middle, share=float(one)) for one in shares]
    return np.array([pixel(text) for text in texts], dtype=np.uint32)


def coloured(
    values: FloatArray, *, limit: float, colours: NDArray[np.uint32]
) -> NDArray[np.uint32]:
    """Give the colour of each value, nothing (0) where it is not known.

    Parameters
    ----------
    values : FloatArray
        Values of any shape.
    limit : float
        Size of the value with the strongest colour, above 0.
    colours : ndarray of uint32
        As `two_sided` gives them.
    """
    known = np.isfinite(values)
    scaled = np.clip(np.where(known, values, 0.0) / limit, -1.0, 1.0)
    half = len(colours) // 2
    places = np.rint(scaled * half).astype(np.intp) + half
    found = colours[places]
    return found if known.all() else np.where(known, found, np.uint32(0))
