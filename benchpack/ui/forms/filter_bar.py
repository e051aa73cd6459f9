"""The line in which a filter is typed."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from benchpack.ui.assets import icon
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.theme import set_text_role

_PAUSE_MS = 120
_HELP = (
    "Words are looked for in names and texts. A condition names a column: "
    "{examples}. Conditions are joined by and."
)


class FilterBar(QWidget):
    """Takes a filter while it is typed.

    Signals
    -------
    filter_changed(str)
        The text, a moment after the last key.
    left()
        Enter or the down arrow was pressed: on to the rows.

    Parameters
    ----------
    noun : str
        What one row is, a pack for instance.
    hint : str
        An example that stands in the empty line.
    examples : str
        Conditions that show how it is done.
    """

    filter_changed = Signal(str)
    left = Signal()

    def __init__(self, noun: str, *, hint: str, examples: str) -> None:
        super().__init__()
        self._noun = noun
        self.line = _FilterLine()
        self.line.setPlaceholderText(hint)
        said = _HELP.format(examples=examples)
        self.line.setToolTip(said)
        self.line.setAccessibleName("Filter")
        self.line.setAccessibleDescription(said)
        self.line.setClearButtonEnabled(True)
        self.line.addAction(icon("filter", "second"), _FilterLine.LEADING)
        self.count = QLabel()
        set_text_role(self.count, "note")
        self.error = ErrorLabel()
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(_PAUSE_MS)
        self._pause.timeout.connect(self._on_paused)
        self.line.textEdited.connect(self._on_text_edited)
        self.line.textChanged.connect(self._on_text_changed)
        self.line.down_pressed.connect(self._on_down_pressed)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.line, 1)
        row.addWidget(self.count)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        layout.addLayout(row)
        layout.addWidget(self.error)

    def show_count(self, shown: int, total: int) -> None:
        """Say how many rows are shown of how many."""
        packs = self._noun if total == 1 else f"{self._noun}s"
        of = f"{shown} of {total}" if shown != total else str(total)
        self.count.setText(f"{of} {packs}")

    def show_error(self, sentence: str) -> None:
        """Say what is wrong with the filter, nothing with empty text."""
        self.error.show_error(sentence)

    def _on_text_edited(self) -> None:
        self._pause.start()

    def _on_text_changed(self, text: str) -> None:
        if not text:
            self._on_paused()

    def _on_paused(self) -> None:
        self._pause.stop()
        self.filter_changed.emit(self.line.text())

    def _on_down_pressed(self) -> None:
        self._on_paused()
        self.left.emit()


class _FilterLine(QLineEdit):
    LEADING = QLineEdit.ActionPosition.LeadingPosition
    down_pressed = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to the rows on Enter or the down arrow, clear on Escape."""
        if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.down_pressed.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)
