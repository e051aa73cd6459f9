"""The figures of a busbar beside its fields; each answers where it comes from."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from benchpack.report.busbar_text import BusbarLine
from benchpack.results.closure import Grade
from benchpack.results.figure import Figure
from benchpack.ui.assets import icon
from benchpack.ui.dialogs.frame import in_a_row
from benchpack.ui.theme import set_text_role, theme
from benchpack.ui.widgets.controls import named, text_label

_SIGNS = {Grade.LOOK: ("warning", "look"), Grade.FAIL: ("fail", "fail")}
_SIGN_SIDE = 14
_LABEL_WIDTH = 156


class BusbarLines(QWidget):
    """Shows lines in groups: what it is, the figure, and a remark under it.

    Signals
    -------
    explain_requested(object)
        The `Figure` of the line that was clicked.
    """

    explain_requested = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        named(self, "Figures of the busbar")
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnMinimumWidth(0, _LABEL_WIDTH)
        self._grid.setColumnStretch(1, 1)
        self._rows: list[_Row] = []
        self._lines: tuple[BusbarLine, ...] = ()
        theme().theme_changed.connect(self._on_theme_changed)

    @property
    def figures(self) -> list[QPushButton]:
        """The figures as buttons, in their order."""
        return [row.value for row in self._rows]

    def show_lines(self, lines: Sequence[BusbarLine]) -> None:
        """Show lines; there have to be as many as the first time.

        Parameters
        ----------
        lines : sequence of BusbarLine
            The lines, those of one heading after each other.
        """
        self._lines = tuple(lines)
        if not self._rows:
            self._build()
        for row, line in zip(self._rows, self._lines, strict=True):
            row.show_line(line)

    def _build(self) -> None:
        heading = ""
        for line in self._lines:
            if line.heading != heading:
                heading = line.heading
                words = text_label(heading, "strong")
                words.setContentsMargins(0, 8 if self._rows else 0, 0, 4)
                self._grid.addWidget(words, self._grid.rowCount(), 0, 1, 2)
            row = _Row(self._grid)
            row.value.clicked.connect(self._on_value_clicked)
            self._rows.append(row)
        self._grid.setRowStretch(self._grid.rowCount(), 1)

    def _on_value_clicked(self) -> None:
        figure = self.figure_of(self.sender())
        if figure is not None:
            self.explain_requested.emit(figure)

    def figure_of(self, widget: object) -> Figure | None:
        """Give the figure that a button shows, None for anything else."""
        for row, line in zip(self._rows, self._lines, strict=True):
            if row.value is widget:
                return line.figure
        return None

    def button_of(self, key: str) -> QWidget:
        """Give the button that shows a figure, or the whole where none does."""
        for row, line in zip(self._rows, self._lines, strict=True):
            if line.figure.key == key:
                return row.value
        return self

    def _on_theme_changed(self, _roles: object) -> None:
        for row, line in zip(self._rows, self._lines, strict=True):
            row.show_line(line)


class _Row:
    """The widgets of one line."""

    def __init__(self, grid: QGridLayout) -> None:
        self.label = text_label()
        self.label.setContentsMargins(0, 4, 0, 0)
        self.value = QPushButton()
        self.value.setProperty("look", "figure")
        self.value.setAutoDefault(False)
        self.value.setCursor(Qt.CursorShape.PointingHandCursor)
        self.value.setToolTip("Where does this come from? (F1)")
        set_text_role(self.value, "strong")
        self.sign = QLabel()
        self.note = text_label("", "note")
        self.note.setContentsMargins(6, 0, 0, 6)
        at, top = grid.rowCount(), Qt.AlignmentFlag.AlignTop
        grid.addWidget(self.label, at, 0, 2, 1, top)
        grid.addWidget(in_a_row(self.value, self.sign), at, 1)
        grid.addWidget(self.note, at + 1, 1, top)

    def show_line(self, line: BusbarLine) -> None:
        """Show a line."""
        self.label.setText(line.label)
        self.value.setText(line.value)
        self.value.setAccessibleName(f"{line.label}: {line.value}")
        self.value.setAccessibleDescription(line.note)
        self.note.setText(line.note)
        sign = _SIGNS.get(line.grade)
        self.sign.setVisible(sign is not None)
        if sign is not None:
            size = QSize(_SIGN_SIDE, _SIGN_SIDE)
            ratio = self.sign.devicePixelRatioF()
            self.sign.setPixmap(icon(*sign).pixmap(size, ratio))
