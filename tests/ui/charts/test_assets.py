from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QIcon, QImage
from PySide6.QtWidgets import QApplication

from benchpack.errors import BenchpackError
from benchpack.places import resources_folder
from benchpack.ui.assets import icon
from benchpack.ui.palette import Scheme, roles
from benchpack.ui.theme import apply_theme

NAMES = [
    "open",
    "undo",
    "redo",
    "add",
    "remove",
    "export",
    "copy",
    "picture",
    "columns",
    "filter",
    "reset",
    "warning",
    "info",
    "search",
    "settings",
    "light",
    "dark",
]


def darkest_ink(image: QImage) -> str:
    """Give the colour of the most opaque pixel."""
    pixels = (
        image.pixelColor(x, y)
        for x in range(image.width())
        for y in range(image.height())
    )
    return max(pixels, key=QColor.alpha).name().upper()


@pytest.mark.parametrize("name", NAMES)
def test_every_icon_draws_in_the_colour_of_its_role(
    qapp: QApplication, name: str
) -> None:
    image = icon(name, "subject").pixmap(QSize(32, 32)).toImage()
    assert darkest_ink(image) == roles(Scheme.LIGHT).subject


@pytest.mark.parametrize("name", NAMES)
def test_every_icon_is_a_drawing_of_thin_strokes(name: str) -> None:
    path = resources_folder() / "icons" / f"{name}.svg"
    root = ET.fromstring(path.read_text(encoding="utf-8"))
    assert root.get("stroke") == "currentColor"
    assert root.get("stroke-width") == "1.5"
    assert root.get("viewBox") == "0 0 16 16"


def test_an_icon_follows_the_scheme(qapp: QApplication) -> None:
    made = icon("add")
    light = darkest_ink(made.pixmap(QSize(32, 32)).toImage())
    apply_theme(qapp, Scheme.DARK)
    dark = darkest_ink(made.pixmap(QSize(32, 32)).toImage())
    assert (light, dark) == (roles(Scheme.LIGHT).text, roles(Scheme.DARK).text)


def test_a_disabled_icon_is_paler(qapp: QApplication) -> None:
    shown = icon("add").pixmap(QSize(32, 32), QIcon.Mode.Disabled).toImage()
    assert QColor(darkest_ink(shown)).lightness() > QColor("#808080").lightness()


def test_double_density_has_double_the_pixels(qapp: QApplication) -> None:
    shown = icon("search").pixmap(QSize(16, 16), 2.0)
    assert shown.size() == QSize(32, 32)
    assert shown.devicePixelRatio() == 2.0


def test_an_unknown_icon_is_refused() -> None:
    with pytest.raises(BenchpackError, match="no icon called 'nothing'"):
        icon("nothing")
