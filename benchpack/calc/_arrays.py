"""What every calculation does with its arrays before it computes."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray: TypeAlias = NDArray[np.float64]


def as_floats(values: ArrayLike) -> FloatArray:
    """Give `values` as float64, without a copy where they already are; None is NaN."""
    return np.asarray(values, dtype=np.float64)


def positive_or_nan(values: ArrayLike) -> FloatArray:
    """Give `values` as float64 with NaN wherever they are not above zero."""
    floats = as_floats(values)
    # One cheap pass settles the usual case; a NaN fails it and takes the long way.
    if floats.min(initial=np.inf) > 0:
        return floats
    return np.where(floats > 0, floats, np.nan)


def power(base: FloatArray, exponent: ArrayLike) -> FloatArray:
    """Raise to a power; a single exponent stays a float, which numpy does faster."""
    exponents = as_floats(exponent)
    raised = base ** exponents.item() if exponents.ndim == 0 else base**exponents
    return as_floats(raised)
