"""A button of an icon alone, as charts have them."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QToolButton, QWidget

from benchpack.ui.assets import icon


def tool_button(name: str, icon_name: str, parent: QWidget) -> QToolButton:
    """Make a button of an icon alone; the name is told on hover and read aloud."""
    button = QToolButton(parent)
    button.setAutoRaise(True)
    button.setIcon(icon(icon_name, "second"))
    button.setIconSize(QSize(16, 16))
    button.setToolTip(name)
    button.setAccessibleName(name)
    return button
