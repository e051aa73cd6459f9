"""The sums of the proposal as figures that can be asked about."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from benchpack.report.display import Display
from benchpack.report.proposal_text import mass_text, money_text
from benchpack.results.proposal import ProposalResults
from benchpack.ui.pages.changes.change_lines import gap_left_texts, totals_worth
from benchpack.ui.pages.changes.desk import ProposalDesk
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.figure_button import FigureButton

SAVED, LEFT, WORTH = "proposal saved", "proposal gap left", "proposal net worth"
_ROOM = 16
_WORDS = {SAVED: "Saved", LEFT: "Gap left", WORTH: "Net worth a pack"}


class TotalsBar(QWidget):
    """Mass saved, gap left and net worth, each change as if it were released.

    Signals
    -------
    explain_requested(str, str)
        Key of the figure that was clicked, and an empty record.
    """

    explain_requested = Signal(str, str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Sums of the proposal")
        self.figures: dict[str, FigureButton] = {}
        self._labels: dict[str, QLabel] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(4, 4, 0, 4)
        grid.setHorizontalSpacing(2)
        grid.setVerticalSpacing(0)
        for place, (key, words) in enumerate(_WORDS.items()):
            label, button = QLabel(words, self), FigureButton(key, self, role="body")
            set_text_role(label, "note")
            label.setContentsMargins(6, 0, 0, 0)
            label.setBuddy(button)
            button.clicked.connect(self._on_figure_clicked)
            button.setToolTip("Each change as if it were released. Click: from where")
            grid.addWidget(label, 0, place)
            grid.addWidget(button, 1, place)
            self._labels[key], self.figures[key] = label, button
        grid.setColumnStretch(len(_WORDS), 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave out what is left of the gap where the figures would be cut."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        pairs = ((one, self._labels[key]) for key, one in self.figures.items())
        wanted = sum(
            max(widget.sizeHint().width() for widget in pair) for pair in pairs
        )
        fits = wanted + _ROOM <= self.width()
        for one in (self.figures[LEFT], self._labels[LEFT]):
            if one.isHidden() == fits:
                one.setVisible(fits)

    def show_desk(self, desk: ProposalDesk) -> None:
        """Show the sums of the proposal."""
        results = desk.results
        if results is None:
            return
        display = Display(desk.study)
        self._show(SAVED, mass_text(results.totals.saved_kg, display))
        label, left = gap_left_texts(results, display)
        self._labels[LEFT].setText(label)
        self._show(LEFT, left)
        self._show_worth(results, desk)
        self._fit()

    def show_worth(self, desk: ProposalDesk) -> None:
        """Take over a worth that passes by."""
        if desk.results is not None:
            self._show_worth(desk.results, desk)

    def _show_worth(self, results: ProposalResults, desk: ProposalDesk) -> None:
        worth = totals_worth(results, desk.study)
        self._show(WORTH, money_text(worth, Display(desk.study)))

    def _show(self, key: str, text: str) -> None:
        self.figures[key].setText(text)
        self.figures[key].setAccessibleName(f"{self._labels[key].text()}: {text}")

    def _on_figure_clicked(self) -> None:
        button = self.sender()
        if isinstance(button, FigureButton):
            self.explain_requested.emit(button.explain_key, "")
