"""Where window, splitters and columns were left, kept between two starts.

A window that was not told to keep its place reads and writes nothing, so that
pictures are drawn alike for everyone.
"""

from __future__ import annotations

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QWidget

from benchpack.places import config_folder

_KEEPS = "keepsPlace"


def keep_place(window: QWidget) -> None:
    """Have a window and what lies in it remember their places from now on."""
    window.setProperty(_KEEPS, "yes")


def remember(widget: QWidget, key: str, value: object) -> None:
    """Keep a value of a widget, if its window keeps its place."""
    if widget.window().property(_KEEPS):
        _file().setValue(key, value)


def remembered(widget: QWidget, key: str) -> object:
    """Give what was kept, None when there is nothing or the window keeps nothing."""
    return _file().value(key) if widget.window().property(_KEEPS) else None


def _file() -> QSettings:
    return QSettings(str(config_folder() / "window.ini"), QSettings.Format.IniFormat)
