"""The order of rows as integers."""

from __future__ import annotations

from enum import Enum

import numpy as np
from numpy.typing import NDArray

Rows = NDArray[np.int64]


class Direction(Enum):
    """Which way a column is sorted."""

    RISING = "rising"
    FALLING = "falling"


def sorted_rows(keys: NDArray[np.float64], direction: Direction) -> Rows:
    """Give the rows in the order of their keys.

    Parameters
    ----------
    keys : ndarray, shape (n,)
        What is sorted by, NaN for unknown.
    direction : Direction
        Rising or falling; equal keys keep their order and NaN comes last in both.

    Returns
    -------
    ndarray of int64, shape (n,)
    """
    wanted = keys if direction is Direction.RISING else -keys
    return np.argsort(wanted, kind="stable").astype(np.int64, copy=False)


def runs(rows: Rows) -> list[tuple[int, int]]:
    """Give rising numbers as runs of neighbours, each as first and last."""
    if len(rows) == 0:
        return []
    breaks = np.flatnonzero(np.diff(rows) != 1)
    firsts = np.concatenate(([0], breaks + 1))
    lasts = np.concatenate((breaks, [len(rows) - 1]))
    return list(zip(rows[firsts].tolist(), rows[lasts].tolist(), strict=True))
