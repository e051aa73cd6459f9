"""What has to be validated again; it cannot be hidden."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from benchpack.report.proposal_text import rule_text
from benchpack.results.proposal import ReopenedDuty
from benchpack.results.wording import listed
from benchpack.ui.theme import TextRole
from benchpack.ui.widgets.controls import text_label, unbroken


class DutiesTab(QScrollArea):
    """The functions that the proposal reopens, those of the current change first."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("To be validated again")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self._shown: tuple[tuple[TextRole, str], ...] = ()
        self._wanted: tuple[tuple[TextRole, str], ...] = ()

    def show_duties(self, duties: tuple[ReopenedDuty, ...], change: str) -> None:
        """Show what has to be validated again.

        Parameters
        ----------
        duties : tuple of ReopenedDuty
            All functions that the proposal reopens.
        change : str
            Name of the current change, empty for none.
        """
        own = [one for one in duties if change in one.changes]
        others = [one for one in duties if change not in one.changes]
        lines: list[tuple[TextRole, str]] = []
        if change:
            said = "By this change" if own else "This change reopens no function."
            lines.append(("strong", said))
        lines += _lines(own)
        if others:
            lines.append(
                ("strong", "By other changes" if change else "By the proposal")
            )
            lines += _lines(others)
        if not duties and not change:
            lines.append(("body", "No change reopens a function yet."))
        self._wanted = tuple(lines)
        if self.isVisible():
            self._show()

    def text(self) -> str:
        """Give everything that is shown, line by line."""
        return "\n".join(text for _, text in self._wanted)

    def _show(self) -> None:
        if self._wanted == self._shown:
            return
        self._shown = self._wanted
        body = QWidget(self.viewport())
        body.setAccessibleName("Functions to validate again")
        column = QVBoxLayout(body)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(4)
        for role, text in self._shown:
            column.addWidget(text_label(unbroken(text), role))
        column.addStretch(1)
        self.setWidget(body)

    def showEvent(self, event: QShowEvent) -> None:
        """Write what has come since the tab was last seen."""
        self._show()
        super().showEvent(event)


def _lines(duties: Iterable[ReopenedDuty]) -> list[tuple[TextRole, str]]:
    lines: list[tuple[TextRole, str]] = []
    for reopened in duties:
        key = reopened.duty.key
        lines.append(("body", f"{key[:1].upper()}{key[1:]}"))
        rules = "; ".join(rule_text(rule) for rule in reopened.duty.rules)
        names = listed(reopened.changes, most=3)
        lines.append(("note", f"{rules}. Reopened by {names}."))
    return lines
