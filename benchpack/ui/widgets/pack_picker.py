"""A field to pick one pack by typing or from the list."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, QStringListModel, Qt, Signal
from PySide6.QtGui import QFocusEvent, QWheelEvent
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
        self.setMinimumContentsLength(6)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        completer = QCompleter(self._names, self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        self.setCompleter(completer)
        # A wheel that scrolls past must not change what is compared.
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
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
        # A long name shows how it begins.
        self.edit.setCursorPosition(0)

    def _on_activated(self, index: int) -> None:
        self._pick(self.itemText(index))

    def _on_return_pressed(self) -> None:
        typed = self.currentText().strip()
        names = self._names.stringList()
        folded = typed.casefold()
        same = [name for name in names if name.casefold() == folded]
        held = [name for name in names if folded and folded in name.casefold()]
        if same:
            self._pick(same[0])
        else:
            self._pick(held[0] if len(held) == 1 else self._name)

    def _pick(self, name: str) -> None:
        changed = name != self._name
        self.show_name(name)
        if changed:
            self.picked.emit(name)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the wheel pass by unless the field has the focus."""
        if self.hasFocus() or self.edit.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Put the picked name back when the typed one is none."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.show_name(self._name)
