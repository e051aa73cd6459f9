"""Labels, buttons and names as every dialog wants them."""

from __future__ import annotations

import html
from typing import TypeVar

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QFrame,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from benchpack.ui.theme import TextRole, set_text_role

WidgetT = TypeVar("WidgetT", bound=QWidget)


def named(widget: WidgetT, name: str) -> WidgetT:
    """Give a widget the name that a screen reader says, and the widget back."""
    widget.setAccessibleName(name)
    return widget


def text_label(text: str = "", role: TextRole = "body") -> QLabel:
    """Make a label that shows its text as it is, wraps, and can be copied from.

    Parameters
    ----------
    text : str
        The text; marks such as ``<b>`` are shown, not obeyed.
    role : str
        Text role of the theme.
    """
    label = QLabel(text)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setWordWrap(True)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    set_text_role(label, role)
    return label


def unbroken(text: str) -> str:
    """Give a text whose groups of thousands stay together where a label wraps.

    Parameters
    ----------
    text : str
        A text with thin spaces; they become those that do not break.
    """
    return text.replace("\u2009", "\u202f")


def plain_button(text: str, tip: str = "") -> QPushButton:
    """Make a button that Enter presses only while it has the focus."""
    button = QPushButton(text)
    button.setAutoDefault(False)
    if tip:
        button.setToolTip(tip)
    return button


def text_margin(spin: QAbstractSpinBox) -> None:
    """Keep the text of a spin box off its edge, which the stylesheet cannot."""
    for edit in spin.findChildren(QLineEdit):
        edit.setTextMargins(6, 0, 0, 0)


def hairline() -> QFrame:
    """Make a line across that separates two groups."""
    line = QFrame()
    line.setFixedHeight(1)
    line.setStyleSheet("background: palette(mid);")
    return line


def fit_height(widget: QWidget, width: int) -> None:
    """Make a widget as wide as told and as tall as its wrapped text then needs.

    Parameters
    ----------
    widget : QWidget
        A widget with a layout.
    width : int
        Width in pixels.
    """
    layout = widget.layout()
    if layout is not None:
        layout.activate()
        # A few pixels more: labels round their own heights down.
        widget.resize(width, layout.totalHeightForWidth(width) + 8)


def place_beside(anchor: QRect, size: QRect, screen: QRect) -> QPoint:
    """Give where a window goes so that it lies under an anchor and on the screen.

    Parameters
    ----------
    anchor, size, screen : QRect
        The anchor and the screen in global pixels, and the size of the window.
    """
    x = min(anchor.left(), screen.right() - size.width())
    y = anchor.bottom() + 8
    if y + size.height() > screen.bottom():
        y = anchor.top() - 8 - size.height()
    return QPoint(max(screen.left(), x), max(screen.top(), y))


def plain_tip(text: str) -> str:
    """Give a text for a tooltip so that marks in it are shown, not obeyed."""
    return f"<span>{html.escape(text)}</span>" if text else ""
