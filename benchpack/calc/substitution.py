"""A part in another material, by every function that sizes it: the heaviest governs.

Where a wall cannot be made as thin as its function asks, the mass rises with the wall.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc.equal_function import (
    MaterialValues,
    mass_ratio,
    size_ratio,
    wall_ratio,
)
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import ArrayLike, NDArray

_SAME = 1e-12


@dataclass(frozen=True, slots=True, eq=False)
class Substitution:
    """A part in its new material, by each function and by the heaviest of them.

    Parameters
    ----------
    size_ratios : ndarray, shape (functions, ...)
        Thickness or area ratio that each function asks for.
    mass_ratios : ndarray, shape (functions, ...)
        Mass ratio by each function, with the minimum wall and the ribs.
    governing : ndarray of int, shape (...)
        Index of the function that makes the part heaviest; -1 where any is unknown.
    mass_ratio : ndarray, shape (...)
        Mass ratio by the governing function; above 1 the new part is heavier.
    wall_mm : ndarray, shape (...)
        Wall by the governing function, mm; NaN where the old wall is unknown.
    wall_is_minimum : ndarray of bool, shape (...)
        Whether what can be made sets that wall, and not the function.
    """

    size_ratios: FloatArray
    mass_ratios: FloatArray
    governing: NDArray[np.intp]
    mass_ratio: FloatArray
    wall_mm: FloatArray
    wall_is_minimum: NDArray[np.bool_]


def substitute(
    governs: Sequence[str],
    *,
    old: MaterialValues,
    new: MaterialValues,
    wall_mm: ArrayLike = np.nan,
    minimum_wall_mm: ArrayLike = np.nan,
    stiffness_shape: ArrayLike = 1.0,
    strength_shape: ArrayLike = 1.0,
    rib_allowance: ArrayLike = 0.0,
) -> Substitution:
    """Give the part in its new material; of several functions the heaviest governs.

    Parameters
    ----------
    governs : sequence of str
        One or more words of ``model.words.GOVERNS``.
    old, new : MaterialValues
        Design values, or those of the data sheets to be shown beside.
    wall_mm : array_like
        Wall of the old part, mm; where unknown, the minimum wall is not looked at.
    minimum_wall_mm : array_like
        Minimum wall that can be made in the new material, mm; NaN for no limit.
    stiffness_shape, strength_shape
        As in `size_ratio`.
    rib_allowance
        As in `mass_ratio`.

    Returns
    -------
    Substitution
        All arrays of the broadcast shape. One unknown function leaves the heaviest
        unknown, since it might be that one.

    Raises
    ------
    RequestError
        When no function is given, or one that nobody knows.

    Examples
    --------
    >>> from benchpack.calc.equal_function import MaterialValues

    A tray floor of 2 mm aluminium in long-glass PP, hot and in the long term:

    >>> part = substitute(
    ...     ["panel bending stiffness", "panel bending strength"],
    ...     old=MaterialValues(2700.0, 69.5, 170.0),
    ...     new=MaterialValues(1210.0, 3.6, 35.0),
    ...     wall_mm=2.0,
    ...     minimum_wall_mm=2.5,
    ... )
    >>> print(part.mass_ratio.round(2), part.governing, part.wall_mm.round(1))
    1.2 0 5.4
    """
    if not governs:
        raise RequestError("No function is named that sizes the part.")
    shapes = {"stiffness_shape": stiffness_shape, "strength_shape": strength_shape}
    wall, minimum = positive_or_nan(wall_mm), positive_or_nan(minimum_wall_mm)
    rows = []
    for word in governs:
        size = size_ratio(word, old=old, new=new, **shapes)
        asked = mass_ratio(size, old=old, new=new, rib_allowance=rib_allowance)
        needed = wall * wall_ratio(word, size)
        # Comparing with an unknown wall is False: the limit then does nothing.
        short = as_floats(minimum > needed)
        mass = asked * np.where(short > 0, minimum / needed, 1.0)
        made = as_floats(np.where(short > 0, minimum, needed))
        rows.append((size, asked, mass, made, short))
    return _heaviest(rows)


def _heaviest(rows: Sequence[tuple[FloatArray, ...]]) -> Substitution:
    """Give each function's figures and those of the heaviest function."""
    shape = np.broadcast_shapes(*(values.shape for row in rows for values in row))
    size, asked, mass, wall, short = (
        np.stack([np.broadcast_to(values, shape) for values in column])
        for column in zip(*rows, strict=True)
    )
    known = ~np.isnan(mass).any(axis=0)
    # Where the minimum wall makes functions equal, the one that asks for most is named.
    heaviest = mass >= mass.max(axis=0) * (1.0 - _SAME)
    chosen = np.where(heaviest, asked, -np.inf).argmax(axis=0)

    def of_chosen(values: FloatArray) -> FloatArray:
        taken = np.take_along_axis(values, chosen[np.newaxis], axis=0)[0]
        return np.where(known, taken, np.nan)

    return Substitution(
        size_ratios=size,
        mass_ratios=mass,
        governing=np.where(known, chosen, -1),
        mass_ratio=of_chosen(mass),
        wall_mm=of_chosen(wall),
        wall_is_minimum=of_chosen(short) > 0,
    )
