"""The one box for errors that nobody foresaw."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from benchpack import __version__
from benchpack.places import log_file
from benchpack.ui.widgets.controls import fit_height, named, plain_button, text_label


class UnexpectedDialog(QDialog):
    """Says that something failed, counts what follows, and gives it to be copied.

    Parameters
    ----------
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Something failed")
        named(self, "Something failed")
        self._sentences: list[str] = []
        self._traces: list[str] = []
        self._lead = text_label(
            "Something failed that should not have. Edits made before it are kept.",
            "strong",
        )
        self._sentence = text_label()
        self._more = text_label(role="note")
        log = text_label(f"Details are in the log file: {log_file()}", "note")
        self.copy_button = plain_button("Copy details")
        self.close_button = plain_button("Close", "Close (Esc)")
        self.close_button.setDefault(True)
        self.copy_button.clicked.connect(self.copy_details)
        self.close_button.clicked.connect(self.accept)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.copy_button)
        buttons.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 24, 24, 16)
        column.setSpacing(8)
        for widget in (self._lead, self._sentence, self._more, log):
            column.addWidget(widget)
        column.addSpacing(8)
        column.addLayout(buttons)
        self.close_button.setFocus()

    def add(self, sentence: str, trace: str) -> None:
        """Show an error; while the box is open another one is only counted.

        Parameters
        ----------
        sentence : str
            The error in one sentence.
        trace : str
            The traceback, which is never shown, only copied.
        """
        if not self.isVisible():
            self._sentences.clear()
            self._traces.clear()
        if trace in self._traces:
            return
        self._sentences.append(sentence)
        self._traces.append(trace)
        first = self._sentences[0]
        self._sentence.setText(first if len(first) <= 300 else first[:299] + "…")
        others = len(self._sentences) - 1
        noun = "error" if others == 1 else "errors"
        self._more.setText(f"and {others} more {noun}" if others else "")
        self._more.setVisible(bool(others))
        fit_height(self, 520)

    def copy_details(self) -> None:
        """Put the errors with their tracebacks on the clipboard."""
        text = "\n\n".join((f"Benchpack {__version__}", *self._traces))
        QGuiApplication.clipboard().setText(text)


def show_unexpected(sentence: str, trace: str, parent: QWidget) -> UnexpectedDialog:
    """Show an error in the window's one box.

    Parameters
    ----------
    sentence : str
        The error in one sentence.
    trace : str
        The traceback.
    parent : QWidget
        The window.
    """
    find = Qt.FindChildOption.FindDirectChildrenOnly
    box = parent.findChild(UnexpectedDialog, options=find) or UnexpectedDialog(parent)
    box.add(sentence, trace)
    box.open()
    return box
