"""A field to pick one pack by typing or from the list."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, QStringListModel, Qt, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QLineEdit,
    QListView,
    QSizePolicy,
)


class PackPicker(QComboBox):
    """An editable list of pack names that accepts only names it knows.

    Signals
    -------
    picked(str)
        The person chose another pack.
    """

    picked = Signal(str)

    def __init__(self, accessible_name: str) -> None:
        super().__init__()
        self._name = ""
        self._names = QStringListModel(self)
        self.setAccessibleName(accessible_name)
        self.edit = QLineEdit()
        self.edit.setFrame(False)
        self.edit.setAccessibleName(accessible_name)
        self.setLineEdit(self.edit)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setModel(self._names)
        view = QListView()
        view.setUniformItemSizes(True)
        self.setView(view)
        self.setMaxVisibleItems(20)
        self.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.setMinimumContentsLength(9)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        completer = QCompleter(self._names, self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        self.setCompleter(completer)
        self.activated.connect(self._on_activated)
        self.edit.returnPressed.connect(self._on_return_pressed)

    def show_names(self, names: Sequence[str]) -> None:
        """Offer these packs."""
        with QSignalBlocker(self):
            self._names.setStringList(list(names))
        self.show_name(self._name)

    def show_name(self, name: str) -> None:
        """Show a pack as picked, without telling anyone."""
        self._name = name
        with QSignalBlocker(self):
            self.setCurrentIndex(self.findText(name, Qt.MatchFlag.MatchExactly))
            self.setEditText(name)

    def _on_activated(self, index: int) -> None:
        self._pick(self.itemText(index))

    def _on_return_pressed(self) -> None:
        typed = self.currentText().strip()
        matches = [
            name
            for name in self._names.stringList()
            if name.casefold() == typed.casefold()
        ]
        self._pick(matches[0] if matches else self._name)

    def _pick(self, name: str) -> None:
        changed = name != self._name
        self.show_name(name)
        if changed:
            self.picked.emit(name)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Put the picked name back when the typed one is none."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.show_name(self._name)
