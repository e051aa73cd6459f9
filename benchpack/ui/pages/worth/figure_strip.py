"""Figures beside each other, in as many rows as they need."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QWidget

from benchpack.report.worth_figures import Shown
from benchpack.ui.pages.worth.asked_figure import AskedFigure
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.steady import Steady

_GAP = 16
_INSET = 6


class FigureStrip(QWidget):
    """Labels with figures under them; the number of columns follows the width.

    Signals
    -------
    asked(object)
        The `Shown` that was asked about.

    Parameters
    ----------
    name : str
        What screen readers call it.
    parent : QWidget
        Owner.
    count : int
        Figures to make at once: Tab goes as things were made.
    """

    asked = Signal(object)

    def __init__(self, name: str, parent: QWidget, *, count: int) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.figures: list[AskedFigure] = []
        self._labels: list[QLabel] = []
        self._holders: list[Steady] = []
        self._columns = 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(8, 8, 8, 0)
        self._grid.setHorizontalSpacing(_GAP)
        self._grid.setVerticalSpacing(0)
        for _ in range(count):
            self._add()

    def show_figures(self, shown: Sequence[Shown]) -> None:
        """Show figures; as many as there were the last time need no new widgets."""
        while len(self.figures) < len(shown):
            self._add()
        for label, button, one in zip(self._labels, self.figures, shown, strict=False):
            if label.text() != one.label:
                label.setText(one.label)
            button.show_figure(one, one.whole)
        self._fit()

    def figure(self, key: str) -> AskedFigure:
        """Give the button of a figure by its key."""
        return next(one for one in self.figures if one.shown.key == key)

    def _add(self) -> None:
        label, button = QLabel(self), AskedFigure(self)
        set_text_role(label, "note")
        label.setContentsMargins(_INSET, 0, 0, 0)
        label.setBuddy(button)
        button.asked.connect(self.asked)
        self._labels.append(label)
        self.figures.append(button)
        self._holders.append(Steady(button, parent=self))

    def _fit(self) -> None:
        """Lay the figures out in the columns that fit."""
        if not self.figures:
            return
        widths = [
            max(label.sizeHint().width(), button.sizeHint().width())
            for label, button in zip(self._labels, self.figures, strict=True)
        ]
        count = len(widths)
        columns = next(
            (
                n
                for n in range(count, 1, -1)
                if sum(max(widths[i::n]) for i in range(n)) + _GAP * n
                <= max(self.width(), 1)
            ),
            1,
        )
        if columns == self._columns and self._grid.count() == 2 * count:
            return
        self._columns = columns
        top = Qt.AlignmentFlag.AlignLeft
        for place, (label, holder) in enumerate(
            zip(self._labels, self._holders, strict=True)
        ):
            row, column = divmod(place, columns)
            self._grid.addWidget(label, 2 * row, column)
            self._grid.addWidget(holder, 2 * row + 1, column, top)
        for column in range(count + 1):
            self._grid.setColumnStretch(column, int(column == columns))
        self.updateGeometry()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Take more or fewer columns."""
        super().resizeEvent(event)
        self._fit()
