"""An area that hands the focus on to one of its widgets."""

from __future__ import annotations

from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QWidget


class EntryArea(QWidget):
    """Hands on the focus that it is given.

    A focus proxy would do so too, but Tab would then skip what stands before it.

    Parameters
    ----------
    parent : QWidget, optional
        Owner.

    Attributes
    ----------
    entry : QWidget or None
        What takes the focus when the area is given it.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entry: QWidget | None = None

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Hand the focus on to what is seen, else keep it: Tab goes on from here."""
        super().focusInEvent(event)
        if self.entry is not None and self.entry.isVisible():
            self.entry.setFocus(event.reason())
