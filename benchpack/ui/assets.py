"""Icons of our own, recoloured by role."""

from __future__ import annotations

from functools import cache

from PySide6.QtCore import QByteArray, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QIcon, QIconEngine, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from benchpack.errors import BenchpackError
from benchpack.places import resources_folder
from benchpack.ui.palette import mix
from benchpack.ui.theme import theme


@cache
def _drawing(name: str) -> str:
    path = resources_folder() / "icons" / f"{name}.svg"
    if not path.is_file():
        raise BenchpackError(f"there is no icon called {name!r}")
    return path.read_text(encoding="utf-8")


@cache
def _renderer(name: str, colour: str) -> QSvgRenderer:
    text = _drawing(name).replace("currentColor", colour)
    return QSvgRenderer(QByteArray(text.encode()))


def draw_icon(painter: QPainter, name: str, colour: str, rect: QRect) -> None:
    """Draw an icon in a colour (``#rrggbb``) into the middle of a rectangle."""
    side = min(rect.width(), rect.height())
    box = QRectF(0, 0, side, side)
    box.moveCenter(QRectF(rect).center())
    _renderer(name, colour).render(painter, box)


class _IconEngine(QIconEngine):
    """Draws the strokes at the size and in the colours that hold when painted."""

    def __init__(self, name: str, role: str) -> None:
        super().__init__()
        self._name = name
        self._role = role

    def paint(
        self, painter: QPainter, rect: QRect, mode: QIcon.Mode, state: QIcon.State
    ) -> None:
        """Draw into a square in the middle of a rectangle."""
        tokens = theme().roles
        colour = str(getattr(tokens, self._role, self._role))
        if mode is QIcon.Mode.Disabled:
            colour = mix(colour, tokens.panel, share=0.4)
        elif state is QIcon.State.On and self._role == "second":
            colour = tokens.text
        draw_icon(painter, self._name, colour, rect)

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        """Draw onto a transparent pixmap of a size in device pixels."""
        made = QPixmap(size)
        made.fill(Qt.GlobalColor.transparent)
        painter = QPainter(made)
        self.paint(painter, QRect(0, 0, size.width(), size.height()), mode, state)
        painter.end()
        return made

    def clone(self) -> QIconEngine:
        """Give a copy, as Qt asks for one when an icon is changed."""
        return _IconEngine(self._name, self._role)


def icon(name: str, role: str = "text") -> QIcon:
    """Give an icon in the colour of a role; it follows the scheme by itself.

    Parameters
    ----------
    name : str
        Name of a file in resources/icons, without its ending.
    role : str
        A field of `Roles`, or a colour as ``#rrggbb``.

    Returns
    -------
    QIcon
        Crisp at any size and pixel ratio.

    Raises
    ------
    BenchpackError
        There is no such icon.
    """
    _drawing(name)
    return QIcon(_IconEngine(name, role))
