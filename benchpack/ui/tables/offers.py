"""A list below a line that offers texts to complete what is typed."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtWidgets import QCompleter, QLineEdit


def offer(line: QLineEdit, texts: Iterable[str]) -> QCompleter:
    """Have a line offer texts that hold what is typed, whatever its case.

    Parameters
    ----------
    line : QLineEdit
        The line; it owns the list.
    texts : iterable of str
        What is offered.
    """
    completer = QCompleter(line)
    completer.setModel(QStringListModel(list(texts), completer))
    completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    completer.setFilterMode(Qt.MatchFlag.MatchContains)
    line.setCompleter(completer)
    popup = completer.popup()
    if popup is not None:
        popup.setAccessibleName("Offers")
        popup.setObjectName("offers")
    return completer


def is_choosing(line: QLineEdit) -> bool:
    """Tell whether a row of the list below a line is about to be taken."""
    completer: QCompleter | None = line.completer()
    popup = None if completer is None else completer.popup()
    if popup is None or not popup.isVisible():
        return False
    return popup.currentIndex().isValid()
