"""Figures that only make sense within a range: NaN wherever they lie outside."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def share_or_nan(values: ArrayLike) -> FloatArray:
    """Give `values` as float64 with NaN wherever they are not above 0, at most 1."""
    floats = positive_or_nan(values)
    return np.where(floats <= 1.0, floats, np.nan)


def not_negative_or_nan(values: ArrayLike) -> FloatArray:
    """Give `values` as float64 with NaN wherever they are below zero."""
    floats = as_floats(values)
    return np.where(floats >= 0.0, floats, np.nan)


def poisson_or_nan(values: ArrayLike) -> FloatArray:
    """Give Poisson's ratios with NaN wherever they are not above -1, at most 0.5."""
    floats = as_floats(values)
    return np.where((floats > -1.0) & (floats <= 0.5), floats, np.nan)


def closed_share_or_nan(values: ArrayLike) -> FloatArray:
    """Give `values` as float64 with NaN wherever they are not from 0 to 1."""
    floats = as_floats(values)
    return np.where((floats >= 0.0) & (floats <= 1.0), floats, np.nan)
