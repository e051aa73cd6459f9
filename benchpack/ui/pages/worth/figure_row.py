"""The figures at the top: worth, target, programme, headroom, worth by the vehicle."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from benchpack.model.worth_words import ValuedMass
from benchpack.report.worth_figures import (
    Shown,
    gain_shown,
    payback_shown,
    payback_words,
    programme_shown,
    worth_shown,
)
from benchpack.report.worth_price import NONE, SAVING_OUT_OF_REACH, headroom_shown
from benchpack.report.worth_target import chance_shown, share_shown, target_shown
from benchpack.report.worth_vehicle import derived_shown, driver_shown
from benchpack.ui.pages.worth.asked_figure import AskedFigure, is_known
from benchpack.ui.pages.worth.desk import CHANCE, WorthDesk
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.steady import Steady

_GAPS = (16, 8, 4)
_INSET = 6
_SLIM = "padding: 0 4px;"
_VALUED = {
    ValuedMass.PROPOSAL: "proposal",
    ValuedMass.SHARE: "share captured",
    ValuedMass.TARGET: "target",
}
"""What the worth per pack is of, in few letters."""


class FigureGroup(QWidget):
    """One figure with its range, and smaller ones under it.

    Signals
    -------
    asked(object)
        The `Shown` that was asked about.
    """

    asked = Signal(object)

    def __init__(self, count: int, parent: QWidget) -> None:
        super().__init__(parent)
        self.label = QLabel(self)
        set_text_role(self.label, "note")
        self.label.setContentsMargins(_INSET, 0, 0, 0)
        self.main = AskedFigure(self, role="section")
        self.label.setBuddy(self.main)
        self.beside, self.below = QLabel(self), QLabel(self)
        for span in (self.beside, self.below):
            set_text_role(span, "note")
            span.setContentsMargins(_INSET, 0, 0, 0)
        self.small = [AskedFigure(self, role="note") for _ in range(count)]
        for button in (self.main, *self.small):
            button.setStyleSheet(_SLIM)
            button.asked.connect(self.asked)
        first = QHBoxLayout()
        first.setSpacing(0)
        self._beside_place = Steady(self.beside, parent=self)
        self._places = [Steady(self.main, parent=self), self._beside_place]
        for place in self._places:
            first.addWidget(place)
        first.addStretch(1)
        last = QHBoxLayout()
        last.setSpacing(0)
        for button in self.small:
            place = Steady(button, parent=self)
            self._places.append(place)
            last.addWidget(place)
        last.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.label)
        column.addLayout(first)
        column.addWidget(self.below)
        column.addLayout(last)
        self.below.hide()

    def show_figures(self, main: Shown, *small: tuple[Shown, str]) -> None:
        """Show the figure, and the smaller ones in the words given with each."""
        if self.label.text() != main.label:
            self.label.setText(main.label)
        self.main.show_figure(main, main.text)
        for span in (self.beside, self.below):
            if span.text() != main.span:
                span.setText(main.span)
        for button, (shown, words) in zip(self.small, small, strict=True):
            button.show_figure(shown, words.format(shown.text))

    def wanted_width(self, *, below: bool) -> int:
        """Give the width with the range under the figure, or beside it."""
        first, span = self.main.sizeHint().width(), self.beside.sizeHint().width()
        last = sum(one.sizeHint().width() for one in self.small)
        line = max(first, span) if below else first + span
        return max(line, last, self.label.sizeHint().width())

    def put_range_below(self, *, below: bool) -> None:
        """Show the range under the figure, or beside it."""
        if self.below.isHidden() == below:
            self.below.setVisible(below)
            self._beside_place.setVisible(not below)

    def is_cut(self) -> bool:
        """Tell whether a figure has less room than its text takes."""
        return any(
            one.isVisible() and one.width() < one.sizeHint().width()
            for one in self._places
        )

    def give_back_room(self) -> None:
        """Take no more room than the present texts need."""
        for one in self._places:
            one.updateGeometry()


class FigureRow(QWidget):
    """The five figures that the page is about.

    Signals
    -------
    asked(object)
        The `Shown` that was asked about.
    """

    asked = Signal(object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("What the saving is worth")
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(_GAPS[0])
        # Made in the order of their places, which is that of the Tab key.
        self.worth, self.target = FigureGroup(1, self), FigureGroup(2, self)
        self.programme, self.headroom, self.derived = (
            FigureGroup(1, self) for _ in range(3)
        )
        self.groups = (
            self.worth,
            self.target,
            self.programme,
            self.headroom,
            self.derived,
        )
        for group in self.groups:
            row.addWidget(group)
            group.asked.connect(self.asked)
        row.addStretch(1)

    def show_desk(self, desk: WorthDesk) -> None:
        """Show the figures of the present case."""
        case = desk.case
        gain, has_costs = gain_shown(case), case.saving.valued is ValuedMass.PROPOSAL
        costs = "{} after costs" if has_costs else "costs not known"
        worth = worth_shown(case)
        if is_known(worth):
            label = f"{worth.label}: {_VALUED[case.saving.valued]}"
            worth = replace(worth, label=label)
        self.worth.show_figures(worth, (gain, costs))
        chance = chance_shown(case, desk.chance, is_known=desk.has(CHANCE))
        self.target.show_figures(
            target_shown(case),
            (share_shown(case), "{} of the gap"),
            (chance, "chance {}"),
        )
        back = payback_words(case) or "paid back {}"
        self.programme.show_figures(programme_shown(case), (payback_shown(case), back))
        headroom, per_unit = headroom_shown(case)
        words = SAVING_OUT_OF_REACH if per_unit.text == NONE else "{} of new parts"
        self.headroom.show_figures(headroom, (per_unit, words))
        driver = driver_shown(case)
        self.derived.show_figures(derived_shown(case), (driver, "driver saves {}"))
        self._fit()

    def _fit(self) -> None:
        """Find room for all texts: ranges go below, then the gaps become narrower."""
        count, room = len(self.groups), self.width()
        beside, under = (
            sum(one.wanted_width(below=below) for one in self.groups)
            for below in (False, True)
        )
        below = beside + count * _GAPS[0] > room
        wanted = under if below else beside
        gap = next((one for one in _GAPS if wanted + count * one <= room), _GAPS[-1])
        is_new = gap != self._row.spacing()
        if is_new:
            self._row.setSpacing(gap)
        for group in self.groups:
            is_new |= group.below.isHidden() == below
            group.put_range_below(below=below)
        # A place keeps the room of a longer text until another one lacks it.
        if is_new or any(group.is_cut() for group in self.groups):
            for group in self.groups:
                group.give_back_room()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the ranges where there is room for them."""
        super().resizeEvent(event)
        self._fit()
