"""A place for a text that changes often, in a layout that need not be made anew."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget


class Steady(QWidget):
    """Holds a label or a button; asks for another layout only when it needs more room.

    A label asks for a layout of the whole window whenever its text changes, which
    takes longer than drawing the text. Held here, it does so when its text needs
    another number of lines, or more width than it has.

    Parameters
    ----------
    held : QWidget
        What is held; it takes the whole place.
    least_lines : int
        Lines of text for which room is kept.
    """

    def __init__(
        self, held: QWidget, *, least_lines: int = 1, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.held = held
        self._least_height = least_lines * held.fontMetrics().lineSpacing()
        held.setParent(self)
        held.move(0, 0)
        self.setSizePolicy(held.sizePolicy())
        self.setFocusProxy(held)
        self._granted = self.sizeHint()

    def hasHeightForWidth(self) -> bool:
        """Say whether the text wraps."""
        return self.held.hasHeightForWidth()

    def heightForWidth(self, width: int) -> int:
        """Give the height that the text takes at a width."""
        if not self.held.hasHeightForWidth():
            return -1
        return max(self._least_height, self.held.heightForWidth(width))

    def sizeHint(self) -> QSize:
        """Give the size that the text likes best."""
        return self.held.sizeHint().expandedTo(QSize(0, self._least_height))

    def minimumSizeHint(self) -> QSize:
        """Give the least size for the text."""
        return self.held.minimumSizeHint().expandedTo(QSize(0, self._least_height))

    def event(self, event: QEvent) -> bool:
        """Pass on a wish for another layout where the text does not fit."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._ask_for_room()
            return True
        return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the whole place to what is held."""
        super().resizeEvent(event)
        self.held.resize(self.size())

    def _ask_for_room(self) -> None:
        if self.held.hasHeightForWidth():
            if self.heightForWidth(self.width()) != self.height():
                self.updateGeometry()
            return
        wanted = self.sizeHint()
        if wanted.width() > self.width() or wanted.height() != self._granted.height():
            self._granted = wanted
            self.updateGeometry()
