"""The figures at the top: worth, target, programme, headroom, worth by the vehicle."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from benchpack.report.worth_figures import (
    Shown,
    gain_shown,
    payback_shown,
    payback_words,
    programme_shown,
    worth_shown,
)
from benchpack.report.worth_price import headroom_shown
from benchpack.report.worth_target import chance_shown, share_shown, target_shown
from benchpack.report.worth_vehicle import derived_shown, driver_shown
from benchpack.ui.pages.worth.asked_figure import AskedFigure
from benchpack.ui.pages.worth.desk import CHANCE, WorthDesk
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.steady import Steady

_GAP = 16
_INSET = 6
_SLIM = "padding: 0 4px;"


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
        first.addWidget(Steady(self.main, parent=self))
        self._beside_place = Steady(self.beside, parent=self)
        first.addWidget(self._beside_place)
        first.addStretch(1)
        last = QHBoxLayout()
        last.setSpacing(0)
        for button in self.small:
            last.addWidget(Steady(button, parent=self))
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

    def wanted_width(self) -> int:
        """Give the width with the range beside the figure."""
        first = self.main.sizeHint().width() + self.beside.sizeHint().width()
        last = sum(one.sizeHint().width() for one in self.small)
        return max(first, last, self.label.sizeHint().width())

    def put_range_below(self, *, below: bool) -> None:
        """Show the range under the figure, or beside it."""
        if self.below.isHidden() == below:
            self.below.setVisible(below)
            self._beside_place.setVisible(not below)


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
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(_GAP)
        self.worth, self.programme, self.headroom, self.derived = (
            FigureGroup(1, self) for _ in range(4)
        )
        self.target = FigureGroup(2, self)
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
        gain = gain_shown(case)
        self.worth.show_figures(worth_shown(case), (gain, "{} after costs"))
        chance = chance_shown(case, desk.chance, is_known=desk.has(CHANCE))
        self.target.show_figures(
            target_shown(case),
            (share_shown(case), "{} of the gap"),
            (chance, "chance {}"),
        )
        back = payback_words(case) or "paid back {}"
        self.programme.show_figures(programme_shown(case), (payback_shown(case), back))
        headroom, per_unit = headroom_shown(case)
        self.headroom.show_figures(headroom, (per_unit, "{} of new parts"))
        driver = driver_shown(case)
        self.derived.show_figures(derived_shown(case), (driver, "driver saves {}"))
        self._fit()

    def _fit(self) -> None:
        wanted = sum(one.wanted_width() + _GAP for one in self.groups)
        below = wanted > self.width()
        for group in self.groups:
            group.put_range_below(below=below)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the ranges where there is room for them."""
        super().resizeEvent(event)
        self._fit()
