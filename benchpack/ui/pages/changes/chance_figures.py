"""The chance of the target, what is saved and the net worth, never out of date."""

from __future__ import annotations

import math

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from benchpack.report.display import Display
from benchpack.results.explained_chance import CHANCE_KEYS
from benchpack.ui.pages.changes.checks_tab import COMPUTING
from benchpack.ui.pages.changes.desk import CHANCE, ProposalDesk
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.figure_button import AskedButton
from benchpack.units.formatting import UNKNOWN, format_chance

TARGET, SAVED, VALUE = CHANCE_KEYS
_ASK = "Click, or F1: where it comes from."
_MIDDLE = "Middle of the trials (P50); eight in ten lie between P10 and P90."
_TIPS = {
    TARGET: f"Share of the trials that save the target or more. {_ASK}",
    SAVED: f"{_MIDDLE} {_ASK}",
    VALUE: f"{_MIDDLE} {_ASK}",
}
_SLIM = "text-align: right; padding: 0 4px;"
_FLAT = "text-align: left; padding: 0;"
_BRACKETS = "P10 to P90 of the trials in brackets"


class ChanceFigures(QWidget):
    """Three figures of the trials, under each other or in one line.

    Signals
    -------
    asked(object)
        Key of a figure that was asked about.
    """

    asked = Signal(object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Chance of the proposal")
        self._labels: dict[str, QLabel] = {}
        self.figures: dict[str, AskedButton] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(2)
        self._grid.setVerticalSpacing(0)
        for key in CHANCE_KEYS:
            label, button = QLabel(self), AskedButton(key, self, role="body")
            set_text_role(label, "note")
            label.setBuddy(button)
            button.asked.connect(self.asked)
            self._labels[key], self.figures[key] = label, button
        self._note = QLabel(_BRACKETS, self)
        self._note.setWordWrap(True)
        set_text_role(self._note, "note")
        self.lie_flat(flat=False)

    def lie_flat(self, *, flat: bool) -> None:
        """Stand in one line, each figure below its label, or under each other.

        Parameters
        ----------
        flat : bool
            True for one line.
        """
        grid, align = self._grid, Qt.AlignmentFlag
        while grid.count():
            grid.takeAt(0)
        for place, key in enumerate(CHANCE_KEYS):
            label, button = self._labels[key], self.figures[key]
            button.setStyleSheet(_FLAT if flat else _SLIM)
            grid.setColumnStretch(place, 0)
            if flat:
                grid.addWidget(label, 0, place)
                grid.addWidget(button, 1, place, align.AlignLeft)
            else:
                grid.addWidget(label, place, 0)
                grid.addWidget(button, place, 1, align.AlignRight)
        last = len(CHANCE_KEYS)
        self._note.setAlignment(align.AlignLeft if flat else align.AlignRight)
        if flat:
            grid.addWidget(self._note, 0, last, 2, 1, align.AlignBottom)
        else:
            grid.addWidget(self._note, last, 0, 1, 2)
        grid.setColumnStretch(last if flat else 0, 1)
        grid.setHorizontalSpacing(16 if flat else 2)

    def show_desk(self, desk: ProposalDesk) -> None:
        """Show the chance, or that it is being worked out."""
        display = Display(desk.study)
        target_kg = desk.study.target_kg
        self._labels[TARGET].setText(
            "Chance of the target, none is set"
            if target_kg is None
            else f"Chance of {display.mass_text(target_kg)}"
        )
        self._labels[SAVED].setText("Saved, P50")
        self._labels[VALUE].setText("Net worth, P50")
        texts = self._texts(desk, display)
        for key, text in texts.items():
            button = self.figures[key]
            known = text not in (COMPUTING, UNKNOWN)
            button.setText(text)
            button.setEnabled(known)
            label = self._labels[key].text()
            button.setAccessibleName(f"{label}: {text}")
            button.setToolTip(_TIPS[key] if known else "")

    def _texts(self, desk: ProposalDesk, display: Display) -> dict[str, str]:
        if not desk.has(CHANCE):
            return dict.fromkeys(CHANCE_KEYS, COMPUTING)
        chance = desk.chance
        if chance is None:
            return dict.fromkeys(CHANCE_KEYS, UNKNOWN)
        saved, value = chance.saved_kg, chance.value
        reached = chance.chance_of_target
        money = display.money_range_text(value.p50, value.p10, value.p90)
        return {
            TARGET: UNKNOWN if math.isnan(reached) else format_chance(reached),
            SAVED: display.ranged_mass_text(saved.p50, saved.p10, saved.p90),
            VALUE: COMPUTING if desk.worth_is_passing else money,
        }
