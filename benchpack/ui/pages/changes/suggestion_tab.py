"""The changes that go best together, to be taken over or not."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QPushButton, QScrollArea, QVBoxLayout, QWidget

from benchpack.report.proposal_chance import suggestion_text
from benchpack.ui.pages.changes.checks_tab import COMPUTING
from benchpack.ui.pages.changes.desk import CHOICE, ProposalDesk
from benchpack.ui.widgets.controls import text_label, unbroken

_HOW = (
    "The subset with the highest expected net worth under tooling budget, kind of "
    "programme, requirements and conflicts. It changes nothing until it is taken over."
)


class SuggestionTab(QScrollArea):
    """Says which changes to switch on, and does so when asked.

    Signals
    -------
    taken(object)
        Names of the changes that are to be on, no others.
    """

    taken = Signal(object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Suggestion")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self._chosen: tuple[str, ...] = ()
        body = QWidget(self.viewport())
        body.setAccessibleName("Suggested changes")
        self.finding = text_label(role="strong")
        self.names = text_label()
        self.impossible = text_label(role="note")
        self.button = QPushButton("Take over", body)
        self.button.setToolTip("Switch on these changes and no others")
        column = QVBoxLayout(body)
        column.setContentsMargins(8, 8, 8, 8)
        column.setSpacing(8)
        column.addWidget(self.finding)
        column.addWidget(self.names)
        column.addWidget(self.button)
        column.addWidget(text_label(_HOW, "note"))
        column.addWidget(self.impossible)
        column.addStretch(1)
        self.setWidget(body)
        self.setFocusProxy(self.button)
        self.button.clicked.connect(self._on_taken)

    def show_desk(self, desk: ProposalDesk) -> None:
        """Show the suggestion, or that it is being worked out."""
        found = desk.suggestion
        if not desk.has(CHOICE) or found is None:
            self.finding.setText(COMPUTING)
            self.names.setText("")
            self.impossible.setText("")
            self.button.setEnabled(False)
            return
        self._chosen = found.chosen
        results = desk.results
        now = tuple(c.name for c in results.changes if c.is_on) if results else ()
        self.finding.setText(unbroken(suggestion_text(found, now)))
        lines = [
            name if name in now else f"{name} (switched on)" for name in found.chosen
        ]
        lines += [f"{name} (switched off)" for name in now if name not in found.chosen]
        self.names.setText("\n".join(lines))
        self.impossible.setText(
            "\n".join(
                f"{name} cannot count: {problem.what}"
                for name, problem in found.not_possible
            )
        )
        self.button.setEnabled(set(now) != set(found.chosen))

    def _on_taken(self) -> None:
        self.taken.emit(self._chosen)
