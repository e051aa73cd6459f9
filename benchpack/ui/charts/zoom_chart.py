"""A chart of two measured axes that one zooms into and comes home from."""

from __future__ import annotations

import math

from PySide6.QtWidgets import QWidget

from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.view import ZoomView, shows_range

_LEAST_LEFT, _BOTTOM = 36.0, 42
_STEP = 8
"""Pixels in which margins grow, so that the plot does not creep with every figure."""


class ZoomChart(Chart):
    """Base: shows its home, the whole of its data, until one zooms.

    Parameters
    ----------
    kind : str
        What the chart is, for the screen reader.
    parent : QWidget, optional
        Owner.

    Attributes
    ----------
    top_margin : int
        Pixels above the plot.
    """

    top_margin = 28

    def __init__(self, kind: str, parent: QWidget | None = None) -> None:
        super().__init__(kind, view=ZoomView(), parent=parent)

    def home(self) -> tuple[float, ...]:
        """Give the range across and upwards that holds all data, () for none."""
        raise NotImplementedError

    def right_room(self) -> float:
        """Give the pixels that are kept free right of the plot."""
        raise NotImplementedError

    def reset_view(self) -> None:
        """Show everything again."""
        home = self.home()
        if home:
            self.view.setRange(xRange=home[:2], yRange=home[2:], padding=0)

    def is_zoomed(self) -> bool:
        """Whether the view is another than the first one."""
        return not shows_range(self.view, self.home())

    def fit_margins(self) -> None:
        """Give the ticks at the left and what stands at the right their room."""
        left = max(_LEAST_LEFT, in_steps(self.frame.y_tick_width()) + _STEP)
        right = self.right_room()
        self.plot.set_margins(left, self.top_margin, right=right, bottom=_BOTTOM)


def in_steps(pixels: float) -> float:
    """Round pixels up to the steps in which margins grow.

    Parameters
    ----------
    pixels : float
        What is needed.

    Examples
    --------
    >>> in_steps(41.2), in_steps(48.0)
    (48.0, 48.0)
    """
    return float(math.ceil(pixels / _STEP) * _STEP)
