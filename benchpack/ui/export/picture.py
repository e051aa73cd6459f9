"""Pictures of charts and widgets: PNG, SVG, clipboard.

A chart is recorded once as drawing commands and replayed at any scale, so
that texts, lines and symbols grow together.
"""

from __future__ import annotations

from pathlib import Path
from typing import Protocol, runtime_checkable

from PySide6.QtCore import QByteArray, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QGuiApplication, QImage, QImageWriter, QPainter, QPicture
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QWidget

from benchpack.errors import BenchpackError
from benchpack.ui.palette import Roles, Scheme, roles

MOST_SCALE = 4


@runtime_checkable
class PictureSource(Protocol):
    """What can draw itself in the colours of any scheme."""

    def record_picture(self, tokens: Roles) -> QPicture:
        """Record the drawing commands at the size on screen."""
        ...

    def size(self) -> QSize:
        """Give the size on screen."""
        ...


def image_of(
    source: PictureSource | QWidget, *, scale: int = 2, scheme: Scheme = Scheme.LIGHT
) -> QImage:
    """Draw a chart or any widget into an image.

    Parameters
    ----------
    source : PictureSource or QWidget
        A chart comes in the colours of `scheme`, another widget as it is.
    scale : int
        Pixels of the image per pixel of the layout, 1 to 4.
    scheme : Scheme
        Colours; light by default, as pictures go onto paper.

    Returns
    -------
    QImage
        `scale` times as wide and high as the source.

    Raises
    ------
    BenchpackError
        The scale is not 1, 2, 3 or 4.
    """
    if not 1 <= scale <= MOST_SCALE:
        raise BenchpackError(f"a picture is drawn at scale 1 to 4, not {scale}")
    image = QImage(source.size() * scale, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    if isinstance(source, PictureSource):
        picture = source.record_picture(roles(scheme))
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(scale, scale)
        painter.drawPicture(QPoint(0, 0), picture)
        painter.end()
    else:
        image.setDevicePixelRatio(scale)
        source.render(image)
        image.setDevicePixelRatio(1.0)
    return image


def render_png(
    source: PictureSource | QWidget,
    path: Path,
    *,
    scale: int = 2,
    scheme: Scheme = Scheme.LIGHT,
) -> None:
    """Save a chart or widget as PNG; parameters as for `image_of`.

    Raises
    ------
    BenchpackError
        The scale is out of range or the file cannot be written.
    """
    image = image_of(source, scale=scale, scheme=scheme)
    if not QImageWriter(str(path), QByteArray(b"png")).write(image):
        raise BenchpackError(f"the picture could not be written to {path}")


def copy_picture(
    source: PictureSource | QWidget, *, scale: int = 2, scheme: Scheme = Scheme.LIGHT
) -> None:
    """Put a picture onto the clipboard; parameters as for `image_of`."""
    image = image_of(source, scale=scale, scheme=scheme)
    QGuiApplication.clipboard().setImage(image)


def render_svg(
    source: PictureSource,
    path: Path,
    *,
    title: str = "",
    scheme: Scheme = Scheme.LIGHT,
) -> None:
    """Save a chart as SVG, its texts as text.

    Parameters
    ----------
    source : PictureSource
        The chart.
    path : Path
        File to write.
    title : str
        Title of the drawing, for readers that show one.
    scheme : Scheme
        Colours of the drawing.

    Raises
    ------
    BenchpackError
        The file cannot be written.
    """
    size = source.size()
    picture = source.record_picture(roles(scheme))
    generator = QSvgGenerator()
    generator.setFileName(str(path))
    generator.setSize(size)
    generator.setResolution(picture.logicalDpiX())
    generator.setViewBox(QRect(QPoint(0, 0), size))
    generator.setTitle(title)
    generator.setDescription("Drawn by Benchpack")
    painter = QPainter()
    if not painter.begin(generator):
        raise BenchpackError(f"the drawing could not be written to {path}")
    painter.drawPicture(QPoint(0, 0), picture)
    painter.end()
