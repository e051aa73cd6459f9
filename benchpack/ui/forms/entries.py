"""The editors of a form, alike in how an entry is read, shown and finished."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QWidget

from benchpack.ui.tables.choice_box import ChoiceBox

_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class EntryLine(QLineEdit):
    """One line; Escape brings back what stood there."""

    entry_finished = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._kept = ""
        self.editingFinished.connect(self.entry_finished)

    def entry(self) -> str:
        """Give what was entered."""
        return self.text()

    def set_entry(self, text: str) -> None:
        """Show a value."""
        self._kept = text
        if self.text() != text:
            self.setText(text)
            self.setCursorPosition(0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Undo the entry on Escape, let it pass when there is none."""
        if event.key() == Qt.Key.Key_Escape and self.text() != self._kept:
            self.setText(self._kept)
        else:
            super().keyPressEvent(event)


class EntryText(QPlainTextEdit):
    """A few lines; Enter finishes the entry, Shift+Enter starts a new line."""

    entry_finished = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._kept = ""
        self.setTabChangesFocus(True)
        self.setFixedHeight(3 * self.fontMetrics().lineSpacing() + 16)

    def entry(self) -> str:
        """Give what was entered."""
        return self.toPlainText()

    def set_entry(self, text: str) -> None:
        """Show a value."""
        self._kept = text
        if self.toPlainText() != text:
            self.setPlainText(text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Finish on Enter, undo the entry on Escape."""
        plain = not event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if event.key() in _ENTER and plain:
            self.entry_finished.emit()
        elif event.key() == Qt.Key.Key_Escape and self.entry() != self._kept:
            self.setPlainText(self._kept)
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Finish the entry when the focus leaves."""
        super().focusOutEvent(event)
        self.entry_finished.emit()


class EntryBox(ChoiceBox):
    """A choice.

    Parameters
    ----------
    words : mapping of str to str
        What is shown, by what is entered.
    parent : QWidget
        Owner.
    """

    entry_finished = Signal()

    def __init__(self, words: Mapping[str, str], parent: QWidget) -> None:
        super().__init__(parent)
        for word, shown in words.items():
            self.addItem(shown, word)
        self.activated.connect(self.entry_finished)

    def entry(self) -> str:
        """Give what is chosen."""
        return str(self.currentData())

    def set_entry(self, text: str) -> None:
        """Show a value, the first one where it is none of them."""
        self.setCurrentIndex(max(0, self.findData(text)))
