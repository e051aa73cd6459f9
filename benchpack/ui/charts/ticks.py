"""Where an axis has its ticks and what stands beside them. No Qt here."""

from __future__ import annotations

import math

import numpy as np

from benchpack.report.chart_specs import FloatArray

_STEPS = (1.0, 2.0, 5.0, 10.0)
_MOST = 200


def nice_step(span: float, *, most: int) -> float:
    """Give the smallest of 1, 2, 5 times a power of ten that fits a span.

    Parameters
    ----------
    span : float
        Length of the axis in its unit, above 0.
    most : int
        How many steps the span may hold, at least 1.

    Returns
    -------
    float
        The step; 1.0 for a span without length.
    """
    if not (math.isfinite(span) and span > 0):
        return 1.0
    rough = span / max(most, 1)
    power = 10.0 ** math.floor(math.log10(rough))
    return next(step * power for step in _STEPS if step * power >= rough * (1 - 1e-9))


def ticks(low: float, high: float, *, most: int) -> tuple[FloatArray, float]:
    """Give the multiples of a nice step within a range.

    Parameters
    ----------
    low, high : float
        The range.
    most : int
        As for `nice_step`.

    Returns
    -------
    tuple
        The ticks (k,), rising, and the step between them.
    """
    step = nice_step(high - low, most=most)
    first = math.ceil(low / step - 1e-9)
    last = min(math.floor(high / step + 1e-9), first + _MOST)
    return np.arange(first, last + 1, dtype=np.float64) * step, step


def rounded_range(values: FloatArray, *, most: int = 5) -> tuple[float, float]:
    """Widen the range of some values to round ends, so that small changes keep it.

    Parameters
    ----------
    values : FloatArray
        The values (n,), at least one of them known.
    most : int
        As for `nice_step`.

    Returns
    -------
    tuple
        Lower and upper end, the upper the greater.
    """
    low, high = float(np.nanmin(values)), float(np.nanmax(values))
    step = nice_step(high - low, most=most)
    first, last = np.floor(low / step + 1e-9), np.ceil(high / step - 1e-9)
    return float(first * step), float(max(last, first + 1) * step)


def tick_texts(
    values: FloatArray, *, step: float, decimal_mark: str = "."
) -> list[str]:
    """Write ticks with the decimals their step needs.

    Parameters
    ----------
    values : FloatArray
        The ticks (k,).
    step : float
        Distance between them.
    decimal_mark : str
        Point or comma.

    Returns
    -------
    list of str
        With the true minus and thin spaces between thousands.
    """
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    return [_tick_text(float(value), decimals, decimal_mark) for value in values]


def _tick_text(value: float, decimals: int, decimal_mark: str) -> str:
    whole, point, rest = f"{abs(value):,.{decimals}f}".partition(".")
    is_negative = value < 0 and any(digit in "123456789" for digit in whole + rest)
    grouped = whole.replace(",", "\u2009")
    return (
        ("−" if is_negative else "") + grouped + (decimal_mark if point else "") + rest
    )
