"""Where on a map of two assumptions a value breaks even."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def break_even_lines(
    x: ArrayLike, y: ArrayLike, *, values: ArrayLike, level: float = 0.0
) -> list[FloatArray]:
    """Give the lines along which a value on a grid is at a level.

    Along each side of a cell the value is taken to change evenly (marching squares,
    package contourpy); what is bilinear meets that exactly.

    Parameters
    ----------
    x, y : array_like, shape (columns,) and (rows,)
        Finite places of the grid, rising.
    values : array_like, shape (rows, columns)
        The value at each; unknown or infinite ones leave gaps.
    level : float
        Level of the line; where it is not finite there is none.

    Returns
    -------
    list of ndarray, shape (points, 2)
        x and y of the points of each line; a closed one ends where it starts. None
        where the value does not cross the level, or the grid has no cells.

    Raises
    ------
    RequestError
        For values that are not one for each place, and places that do not rise.

    Examples
    --------
    >>> lines = break_even_lines([0.0, 1.0], [0.0, 1.0], values=[[-1, 1], [-3, 1]])
    >>> [line.tolist() for line in lines]
    [[[0.75, 1.0], [0.5, 0.0]]]
    """
    columns, rows, heights = as_floats(x), as_floats(y), as_floats(values)
    if columns.ndim != 1 or rows.ndim != 1:
        raise RequestError("A grid has one row of places along each side.")
    if heights.shape != (rows.size, columns.size):
        raise RequestError("A map has one value for each place of its grid.")
    for side in (columns, rows):
        if not (np.isfinite(side).all() and (np.diff(side) > 0.0).all()):
            raise RequestError("The places along the side of a map are known and rise.")
    if min(heights.shape) < 2 or not np.isfinite(level):
        return []
    # Loads in a twentieth of a second, which no start of the program need pay for.
    from contourpy import LineType, contour_generator

    generator = contour_generator(
        columns,
        rows,
        np.ma.masked_invalid(heights),
        name="serial",
        corner_mask=False,
        line_type=LineType.Separate,
    )
    # Of this kind of line it gives one array for each.
    return cast("list[FloatArray]", generator.lines(float(level)))
