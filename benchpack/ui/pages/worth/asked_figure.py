"""A figure that is asked about by click and by F1 alike."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from benchpack.report.worth_figures import Shown
from benchpack.report.worth_target import COMPUTING
from benchpack.ui.theme import TextRole
from benchpack.ui.widgets.figure_button import AskedButton
from benchpack.units.formatting import UNKNOWN

ASK = "Click, or F1: where it comes from."


class AskedFigure(AskedButton):
    """Shows a figure; one that is not known says why when it is asked about.

    Signals
    -------
    asked(object)
        The `Shown`, when it was clicked or F1 was pressed on it.
    """

    def __init__(self, parent: QWidget, *, role: TextRole = "strong") -> None:
        super().__init__("", parent, role=role)
        self.shown = Shown("", "")

    def show_figure(self, shown: Shown, text: str) -> None:
        """Show a figure.

        Parameters
        ----------
        shown : Shown
            The figure.
        text : str
            What of it stands on the button.
        """
        if shown == self.shown and text == self.text():
            return
        self.shown, self.explain_key = shown, shown.key
        if text != self.text():
            self.setText(text)
        known = is_known(shown)
        self.setToolTip(f"{shown.why} {ASK}".strip() if known else shown.why)
        self.setAccessibleName(f"{shown.label}: {shown.whole}")

    def asked_about(self) -> Shown:
        """Give the figure itself."""
        return self.shown


def is_known(shown: Shown) -> bool:
    """Tell whether a figure is there."""
    return shown.text not in (UNKNOWN, COMPUTING)
