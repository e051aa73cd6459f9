"""What a tried seal line comes to, in words."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from benchpack.report.seal_text import TrialText
from benchpack.results.closure import Grade
from benchpack.ui.assets import icon
from benchpack.ui.theme import SPACE_BETWEEN, theme
from benchpack.ui.widgets.controls import text_label

_SIGNS = {
    Grade.GOOD: ("good", "good"),
    Grade.LOOK: ("warning", "look"),
    Grade.FAIL: ("fail", "fail"),
}
_SIGN_SIDE = 16


class SealOutcome(QWidget):
    """Name of the line, what is recorded, and what the trial comes to."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.title = text_label("Seal line", "section")
        self.recorded = text_label(role="note")
        self.headline = text_label(role="strong")
        self.sign = QLabel()
        self.verdict = text_label()
        self.details = text_label()
        self._grade = Grade.NONE
        self._keep_still()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(SPACE_BETWEEN)
        for label in (self.title, self.recorded, self.headline):
            column.addWidget(label)
        judged = QHBoxLayout()
        judged.setSpacing(SPACE_BETWEEN)
        judged.addWidget(self.sign, 0, Qt.AlignmentFlag.AlignTop)
        judged.addWidget(self.verdict, 1)
        column.addLayout(judged)
        column.addWidget(self.details)
        column.addStretch(1)
        theme().theme_changed.connect(self._draw_sign)

    def _keep_still(self) -> None:
        """Leave room for usual texts: the form stays where it is while one types."""
        for label, lines in ((self.headline, 2), (self.verdict, 3), (self.details, 3)):
            label.setAlignment(Qt.AlignmentFlag.AlignTop)
            label.setMinimumHeight(lines * label.fontMetrics().lineSpacing())

    def show_line(self, name: str, recorded: str) -> None:
        """Show which line it is and what is recorded of it.

        Parameters
        ----------
        name : str
            Name of the line, empty where there is none.
        recorded : str
            What is recorded, or why there is no line.
        """
        self.title.setText(f"Seal line: {name}" if name else "Seal line")
        self.recorded.setText(recorded)
        for label in (self.headline, self.verdict, self.details):
            label.setVisible(bool(name))

    def show_text(self, text: TrialText) -> None:
        """Show what a trial comes to."""
        self._grade = text.grade
        self.headline.setText(text.headline)
        self.verdict.setText(text.verdict)
        self.details.setText("\n".join(text.details))
        self.sign.setVisible(text.grade in _SIGNS and bool(text.verdict))
        self._draw_sign()

    def clear(self) -> None:
        """Show no trial."""
        self.show_text(TrialText(""))

    def _draw_sign(self) -> None:
        if self._grade in _SIGNS:
            size = QSize(_SIGN_SIDE, _SIGN_SIDE)
            sign = icon(*_SIGNS[self._grade])
            self.sign.setPixmap(sign.pixmap(size, self.devicePixelRatioF()))
