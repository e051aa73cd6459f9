"""Sheets of paper and their margins, and the unit in which a brief is set."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QMarginsF, QRectF, QSizeF
from PySide6.QtGui import QPageSize, QPicture

from benchpack.errors import RequestError

FINENESS = 4
"""Units of the layout per pixel of what is painted on: type is measured finer than it
would be in pixels, where the height of a line is rounded up to a whole one."""
_POINTS_PER_INCH, _MM_PER_INCH = 72.0, 25.4
_SIDE, _TOP, _BOTTOM = 14.0, 12.0, 12.0
_SIZES = {"A4": QPageSize.PageSizeId.A4, "Letter": QPageSize.PageSizeId.Letter}
PAPERS = tuple(_SIZES)
"""Names of the sheets that are offered."""


def painted_dpi() -> int:
    """Give the pixels per inch of what is painted on.

    They are those of a recorded picture, so that the texts in charts keep their size.
    """
    return QPicture().logicalDpiX()


def pixels(points: float) -> float:
    """Give the pixels of a length in points: what formats of a text are given in."""
    return points * painted_dpi() / _POINTS_PER_INCH


def units(points: float) -> float:
    """Give the units of the layout of a length in points."""
    return pixels(points) * FINENESS


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet; lengths are in units of the layout.

    Parameters
    ----------
    page_size : QPageSize
        Its size.
    """

    page_size: QPageSize

    @property
    def size(self) -> QSizeF:
        """Width and height."""
        return self.page_size.size(QPageSize.Unit.Point) * units(1.0)

    @property
    def content(self) -> QRectF:
        """Where text and charts stand."""
        millimetre = units(_POINTS_PER_INCH / _MM_PER_INCH)
        margins = QMarginsF(_SIDE, _TOP, _SIDE, _BOTTOM) * millimetre
        size = self.size
        return QRectF(0, 0, size.width(), size.height()).marginsRemoved(margins)


def paper_named(name: str) -> Paper:
    """Give a sheet by its name.

    Parameters
    ----------
    name : str
        One of `PAPERS`.

    Raises
    ------
    RequestError
        There is no such sheet.
    """
    if name not in _SIZES:
        offered = " or ".join(PAPERS)
        raise RequestError(f"there is no paper {name!r}, use {offered}")
    return Paper(QPageSize(_SIZES[name]))
