"""Type and ink of the brief: always light, whatever the window wears."""

from __future__ import annotations

from functools import cache
from typing import Literal

from PySide6.QtGui import QColor, QFont, QTextBlockFormat, QTextCharFormat

from benchpack.ui.brief.paper import pixels
from benchpack.ui.palette import Roles, Scheme, roles
from benchpack.ui.theme import font

PrintRole = Literal[
    "title", "section", "lead", "body", "note", "cell", "strong", "head", "figure"
]

_PROPORTIONAL = QTextBlockFormat.LineHeightTypes.ProportionalHeight
_REGULAR, _STRONG = QFont.Weight.Normal, QFont.Weight.DemiBold
_POINTS: dict[PrintRole, tuple[float, QFont.Weight]] = {
    "title": (16.0, _STRONG),
    "section": (10.5, _STRONG),
    "lead": (10.0, _STRONG),
    "body": (9.0, _REGULAR),
    "note": (7.0, _REGULAR),
    "cell": (7.0, _REGULAR),
    "strong": (7.0, _STRONG),
    "head": (7.0, _REGULAR),
    "figure": (15.0, _STRONG),
}
_SECOND = ("note", "head")
_LINE_PERCENT = 96.0
"""Height of a line by what the font asks for: Inter is generous in small type."""


def ink() -> Roles:
    """Give the colours of print."""
    return roles(Scheme.LIGHT)


@cache
def _print_font(role: PrintRole) -> QFont:
    points, weight = _POINTS[role]
    made = font("body")
    made.setPointSizeF(points)
    made.setWeight(weight)
    # Glyphs that depend on their neighbours stand for no character in a PDF: what
    # is set with them cannot be found or copied.
    made.setFeature(QFont.Tag("calt"), 0)
    return made


def print_font(role: PrintRole) -> QFont:
    """Give the font of a role, its figures of equal width."""
    return QFont(_print_font(role))


def print_format(role: PrintRole, *, colour: str = "") -> QTextCharFormat:
    """Give font and ink of a role.

    Parameters
    ----------
    role : str
        What is written.
    colour : str
        Another ink, as ``#rrggbb``.
    """
    made = QTextCharFormat()
    made.setFont(print_font(role))
    tokens = ink()
    own = tokens.second if role in _SECOND else tokens.text
    made.setForeground(QColor(colour or own))
    return made


def print_block(*, above: float = 0.0, below: float = 0.0) -> QTextBlockFormat:
    """Give a paragraph with room above and below it.

    Parameters
    ----------
    above, below : float
        Points.
    """
    made = QTextBlockFormat()
    made.setLineHeight(_LINE_PERCENT, _PROPORTIONAL.value)
    made.setTopMargin(pixels(above))
    made.setBottomMargin(pixels(below))
    return made
