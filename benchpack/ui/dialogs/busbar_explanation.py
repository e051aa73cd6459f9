"""Where does this come from? Asked of a figure of the busbar calculator."""

from __future__ import annotations

from benchpack.report.busbar_text import figure_text
from benchpack.results.figure import Figure
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.units.formatting import NumberStyle


class BusbarExplanation(ExplanationPanel):
    """Shows the figure with as many digits as the calculator does."""

    def show_figure(self, figure: Figure, *, style: NumberStyle) -> None:
        """Show a figure that is already worked out.

        Parameters
        ----------
        figure : Figure
            The figure.
        style : NumberStyle
            How numbers are shown.
        """
        super().show_figure(figure, style=style)
        self._value.setText(figure_text(figure, style=style))
