"""Direct labels beside points, placed so that they do not cover each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from operator import itemgetter

import numpy as np

from benchpack.report.chart_specs import FloatArray

# Directions in which a label may stand, the preferred ones first.
_SIDES = ((1, -1), (-1, -1), (1, 1), (-1, 1), (1, 0), (-1, 0), (0, -1), (0, 1))
_FARTHER = 2.2
_ANY_OVERLAP = 100.0
_FAR_COST = 120.0
_LEFT_OUT = 1000.0


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle in pixels."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The right edge."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """The lower edge."""
        return self.top + self.height

    def overlap(self, other: Box) -> float:
        """Give the area shared with another box."""
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        return max(across, 0.0) * max(down, 0.0)


def _candidates(x: float, y: float, width: float, height: float) -> list[Box]:
    boxes = []
    for distance in (1.0, _FARTHER):
        for across, down in _SIDES:
            gap = (9.0 if across and down else 13.0) * distance
            left = x + across * gap - (width if across < 0 else 0)
            left -= width / 2 if across == 0 else 0
            top = y + down * gap - (height if down < 0 else 0)
            top -= height / 2 if down == 0 else 0
            boxes.append(Box(left, top, width, height))
    return boxes


def _cost(
    box: Box,
    bounds: Box,
    taken: Sequence[Box],
    *,
    x: FloatArray,
    y: FloatArray,
    weight: float,
) -> float:
    outside = box.width * box.height - box.overlap(bounds)
    overlaps = [area for other in taken if (area := box.overlap(other)) > 0]
    covered = sum(overlaps) + _ANY_OVERLAP * len(overlaps)
    inside = (x > box.left - 8) & (x < box.right + 8)
    inside &= (y > box.top - 6) & (y < box.bottom + 6)
    return 20 * outside + 8 * covered + weight * float(np.count_nonzero(inside))


def place_labels(
    anchors: Sequence[tuple[float, float, float, float]],
    *,
    bounds: Box,
    x: FloatArray,
    y: FloatArray,
    taken: Sequence[Box] = (),
    weight: float = 150.0,
    worst: float = np.inf,
) -> list[Box | None]:
    """Find a place beside each anchor, the first anchors choosing first.

    Parameters
    ----------
    anchors : sequence of tuple
        Pixel across, pixel down, width and height of each label.
    bounds : Box
        Where labels may stand.
    x, y : FloatArray
        Pixels (n,) of the points that labels should not cover.
    taken : sequence of Box
        Places that are not free, for instance other texts.
    weight : float
        How bad it is to cover a point, against 1 for the next best side.
    worst : float
        A label is left out where even the best place is worse than this.

    Returns
    -------
    list of Box or None
        One box per anchor, inside the bounds; None where all places are too bad.
    """
    used = list(taken)
    used += [Box(left - 7, top - 7, 14, 14) for left, top, _, _ in anchors]

    def place(order: Sequence[int]) -> tuple[float, list[Box | None]]:
        total, now = 0.0, list(used)
        placed: list[Box | None] = [None] * len(anchors)
        for index in order:
            options = _candidates(*anchors[index])
            costs = [
                _cost(one, bounds, now, x=x, y=y, weight=weight)
                + rank
                + (_FAR_COST if rank >= len(_SIDES) else 0.0)
                for rank, one in enumerate(options)
            ]
            total += min(*costs, _LEFT_OUT)
            if min(costs) <= worst:
                best = _moved_inside(options[int(np.argmin(costs))], bounds)
                placed[index] = best
                now.append(best)
        return total, placed

    forwards = range(len(anchors))
    # With two labels the other order is worth a look; with more it costs a frame.
    orders = (forwards, forwards[::-1]) if len(anchors) == 2 else (forwards,)
    return min((place(order) for order in orders), key=itemgetter(0))[1]


def _moved_inside(box: Box, bounds: Box) -> Box:
    left = max(bounds.left, min(box.left, bounds.right - box.width))
    top = max(bounds.top, min(box.top, bounds.bottom - box.height))
    return Box(left, top, box.width, box.height)
