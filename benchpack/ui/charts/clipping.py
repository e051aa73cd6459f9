"""Lines and bands cut at the edges of a plot, as drawings have no clip. No Qt here.

Qt's SVG generator ignores clipping, so what is drawn must end at the edge.
"""

from __future__ import annotations

import numpy as np

from benchpack.report.chart_specs import FloatArray


def with_crossings(
    x: FloatArray, lines: tuple[FloatArray, ...], *, low: float, high: float
) -> tuple[FloatArray, tuple[FloatArray, ...]]:
    """Add the places where any of some lines crosses a level.

    Parameters
    ----------
    x : FloatArray
        Rising places (k,).
    lines : tuple of FloatArray
        Values at these places, each (k,).
    low, high : float
        The two levels.

    Returns
    -------
    tuple
        More places (m,) and the lines there, each (m,).
    """
    if all(low <= line.min() and line.max() <= high for line in lines):
        return x, lines
    found = [x]
    for line in lines:
        for level in (low, high):
            above = line - level
            at = np.flatnonzero(above[:-1] * above[1:] < 0)
            share = above[at] / (above[at] - above[at + 1])
            found.append(x[at] + share * (x[at + 1] - x[at]))
    places = np.unique(np.concatenate(found))
    return places, tuple(np.interp(places, x, line) for line in lines)


def cut_line(
    x: FloatArray, y: FloatArray, *, low: float, high: float
) -> tuple[FloatArray, FloatArray]:
    """Cut a line at two levels; what is beyond them becomes nan.

    Parameters
    ----------
    x, y : FloatArray
        The line (k,), x rising.
    low, high : float
        The levels.

    Returns
    -------
    tuple
        The line (m,) with its crossings.
    """
    places, (line,) = with_crossings(x, (y,), low=low, high=high)
    room = 1e-9 * max(abs(low), abs(high), high - low)
    beyond = (line < low - room) | (line > high + room)
    return places, np.where(beyond, np.nan, line)


def cut_places(x: FloatArray, *, low: float, high: float) -> FloatArray:
    """Keep the places of a grid (k,) within a range and add the range's ends."""
    first, last = max(low, float(x[0])), min(high, float(x[-1]))
    if last <= first:
        return np.empty(0)
    inner = x[(x > first) & (x < last)]
    return np.concatenate(([first], inner, [last]))


def cut_segments(
    points: FloatArray, *, x: tuple[float, float], y: tuple[float, float]
) -> FloatArray:
    """Cut a line of any course at the edges of a rectangle.

    The clipping of Liang and Barsky, all segments at once.

    Parameters
    ----------
    points : FloatArray
        The line (k, 2); a place of nan parts it.
    x, y : tuple of float
        Lower and upper edge of the rectangle.

    Returns
    -------
    FloatArray
        The pieces inside (m, 2, 2): begin and end, each as x and y.
    """
    begin, step = points[:-1], np.diff(points, axis=0)
    known = np.isfinite(begin).all(axis=1) & np.isfinite(step).all(axis=1)
    begin, step = begin[known], step[known]
    first, last = np.zeros(len(begin)), np.ones(len(begin))
    for axis, (low, high) in enumerate((x, y)):
        at, by = begin[:, axis], step[:, axis]
        still = by == 0
        safe = np.where(still, 1.0, by)
        ends = np.stack(((low - at) / safe, (high - at) / safe))
        inside = (at >= low) & (at <= high)
        enters = np.where(still, np.where(inside, 0.0, np.inf), ends.min(axis=0))
        leaves = np.where(still, 1.0, ends.max(axis=0))
        first, last = np.maximum(first, enters), np.minimum(last, leaves)
    kept = first < last
    begin, step = begin[kept], step[kept]
    cut = [begin + step * share[kept, None] for share in (first, last)]
    return np.stack(cut, axis=1)
