"""A field to pick one pack by typing or from the list."""

from __future__ import annotations

from collections.abc import Sequence
from heapq import nlargest

from PySide6.QtCore import QSignalBlocker, QSize, QStringListModel, Qt, Signal
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QLineEdit,
    QListView,
    QSizePolicy,
)

from benchpack.ui.widgets.controls import plain_tip

_WIDEST = 18
"""Characters for which there is room in any window; a longer name may be cut."""
_BESIDE = 62
"""Pixels of a picker that its name cannot take."""
_MARGIN = 2
"""Pixels that a line keeps free beside its text."""


class NameLine(QLineEdit):
    """A line that cuts a long text in its middle while it is not edited."""

    @property
    def is_cut(self) -> bool:
        """True where the text is wider than the line."""
        return self.fontMetrics().horizontalAdvance(self.text()) > self._room

    @property
    def _room(self) -> int:
        return self.width() - 2 * _MARGIN

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the text, cut where it does not fit."""
        if self.hasFocus() or not self.is_cut:
            super().paintEvent(event)
            return
        middle = Qt.TextElideMode.ElideMiddle
        text = self.fontMetrics().elidedText(self.text(), middle, self._room)
        place = self.rect().adjusted(_MARGIN, 0, -_MARGIN, 0)
        painter = QPainter(self)
        painter.setPen(self.palette().text().color())
        painter.drawText(place, Qt.AlignmentFlag.AlignVCenter, text)


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
        self._liked = 0
        self._names = QStringListModel(self)
        self.setAccessibleName(accessible_name)
        self.edit = NameLine()
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
        self.setMinimumContentsLength(3)
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
        self._make_room(names)
        self.show_name(self._name)

    def show_name(self, name: str) -> None:
        """Show a pack as picked, without telling anyone."""
        self._name = name
        with QSignalBlocker(self):
            self.setCurrentIndex(self.findText(name, Qt.MatchFlag.MatchExactly))
            self.setEditText(name)
        # A long name shows how it begins.
        self.edit.setCursorPosition(0)
        self._show_tip()

    def _make_room(self, names: Sequence[str]) -> None:
        """Like to be so wide that the names fit, up to a limit."""
        width = self.fontMetrics().horizontalAdvance
        longest = max(map(width, nlargest(20, names, key=len)), default=0)
        self._liked = min(longest, width("n" * _WIDEST)) + _BESIDE
        self.updateGeometry()

    def _show_tip(self) -> None:
        tip = plain_tip(self._name) if self.edit.is_cut else ""
        self.setToolTip(tip)
        self.edit.setToolTip(tip)

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

    def sizeHint(self) -> QSize:
        """Give room for the names where there is any."""
        return super().sizeHint().expandedTo(QSize(self._liked, 0))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Say the whole name on hover where it is cut."""
        super().resizeEvent(event)
        self._show_tip()
