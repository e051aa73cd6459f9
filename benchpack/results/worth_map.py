"""A map of the value of a programme over two assumptions."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.two_way import break_even_lines
from benchpack.errors import Problem, RequestError
from benchpack.model.worth_words import ValuedMass
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_model import COMMON_KEYS, Assumed, worth_model

FloatArray = NDArray[np.float64]

MAP_KEYS = COMMON_KEYS
"""Keys of the assumptions that a map may have along its sides."""

_LEAST_SIDE = 2


@dataclass(frozen=True, slots=True, eq=False)
class WorthMap:
    """The net present value over two assumptions, all others at their likely figures.

    Parameters
    ----------
    valued : ValuedMass
        Which saving is valued.
    x, y : Assumed
        What runs along the sides.
    x_values, y_values : ndarray, shape (columns,) and (rows,)
        Places of the grid.
    values : ndarray, shape (rows, columns)
        Net present value, each change by its chance of release.
    lines : list of ndarray, shape (points, 2)
        Where it breaks even.
    now : tuple of float
        Where the study stands, and its value.
    """

    valued: ValuedMass
    x: Assumed
    y: Assumed
    x_values: FloatArray
    y_values: FloatArray
    values: FloatArray
    lines: list[FloatArray]
    now: tuple[float, float, float]


def worth_map(
    case: WorthCase, x_key: str, y_key: str, *, size: int = 41
) -> WorthMap | Problem:
    """Give the map of two assumptions.

    Parameters
    ----------
    case : WorthCase
        The case.
    x_key, y_key : str
        Two different keys of `MAP_KEYS`.
    size : int
        Places along each side, 2 or more.

    Returns
    -------
    WorthMap or Problem
        Why there is none, as a sentence.

    Raises
    ------
    RequestError
        For keys that are not known or the same twice, and for too few places.
    """
    if x_key == y_key or not {x_key, y_key} <= set(MAP_KEYS):
        raise RequestError(f"{x_key!r} and {y_key!r} are no two assumptions.")
    if size < _LEAST_SIDE:
        raise RequestError(f"A map of {size} places a side has no cell.")
    model = worth_model(case)
    if isinstance(model, Problem):
        return model
    places = [MAP_KEYS.index(x_key), MAP_KEYS.index(y_key)]
    x, y = (model.inputs[place] for place in places)
    x_values, y_values = (np.linspace(*span_of(one), size) for one in (x, y))
    grid = np.repeat(model.likely[:, np.newaxis], size * size, axis=1)
    grid[places[0]] = np.tile(x_values, size)
    grid[places[1]] = np.repeat(y_values, size)
    values = model.npv(grid).reshape(size, size)
    return WorthMap(
        valued=case.saving.valued,
        x=x,
        y=y,
        x_values=x_values,
        y_values=y_values,
        values=values,
        lines=break_even_lines(x_values, y_values, values=values),
        now=(x.range.likely, y.range.likely, model.base),
    )


def span_of(one: Assumed) -> tuple[float, float]:
    """Give the span that a map shows of an assumption.

    Parameters
    ----------
    one : Assumed
        The assumption.

    Returns
    -------
    tuple of float
        Wider than its range, from zero where that is near; a share from 0 to 1.
    """
    low, likely, high = one.range.ends
    if one.key == "share":
        return 0.0, 1.0
    if one.key == "interest":
        return 0.0, max(0.2, 1.5 * high)
    if one.key == "worth":
        return 0.0, max(1.5 * high, 1.0)
    return min(0.0, 1.2 * low), max(2.0, 1.2 * high, 1.5 * likely)
