"""Pictures of charts and widgets: PNG, SVG, clipboard.

A chart is recorded once as drawing commands and replayed at any scale, so
that texts, lines and symbols grow together.
"""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Protocol, runtime_checkable

from PySide6.QtCore import QBuffer, QByteArray, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QGuiApplication, QImage, QImageWriter, QPainter, QPicture
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QWidget

from benchpack.errors import BenchpackError, DataError
from benchpack.files.atomic import replacing
from benchpack.ui.palette import Roles, Scheme, roles

SCALES = (1, 2, 3, 4)
_DOTS_PER_METRE = 96 / 0.0254
_MATRIX = re.compile(r'transform="matrix\(([^)]*)\)"')
_STROKE = re.compile(r'stroke-width="([^"]*)"')
_FIXED = 'vector-effect="non-scaling-stroke"'
_CONTROLS = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
"""What XML 1.0 has no place for (its section 2.2), and what it advises against."""


@runtime_checkable
class PictureSource(Protocol):
    """What can draw itself in the colours of any scheme."""

    def record_picture(self, tokens: Roles) -> QPicture:
        """Record the drawing commands at the size on screen."""
        ...

    def size(self) -> QSize:
        """Give the size on screen."""
        ...


def picture_size(source: PictureSource | QWidget, *, scale: int) -> QSize:
    """Give the pixels of a picture.

    Parameters
    ----------
    source : PictureSource or QWidget
        A chart or any widget.
    scale : int
        Pixels of the picture per pixel of the layout.

    Raises
    ------
    BenchpackError
        The scale is not 1, 2, 3 or 4.
    """
    if scale not in SCALES:
        raise BenchpackError(f"a picture is drawn at scale 1 to 4, not {scale}")
    return source.size() * scale


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
    size = picture_size(source, scale=scale)
    image = QImage(size, QImage.Format.Format_ARGB32_Premultiplied)
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
    # Documents put the picture in at the size it has on screen, however fine it is.
    image.setDotsPerMeterX(round(scale * _DOTS_PER_METRE))
    image.setDotsPerMeterY(round(scale * _DOTS_PER_METRE))
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
    buffer = QBuffer()
    if not QImageWriter(buffer, QByteArray(b"png")).write(image):
        raise BenchpackError(f"the picture could not be written to {path}")
    _write(bytes(buffer.data().data()), path)


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
    _write(svg_text(source, title=title, scheme=scheme).encode(), path)


def svg_text(
    source: PictureSource, *, title: str = "", scheme: Scheme = Scheme.LIGHT
) -> str:
    """Give a chart as the text of an SVG file.

    Parameters
    ----------
    source : PictureSource
        The chart.
    title : str
        Title of the drawing, for readers that show one.
    scheme : Scheme
        Colours of the drawing.
    """
    size = source.size()
    picture = source.record_picture(roles(scheme))
    generator = QSvgGenerator()
    buffer = QBuffer()
    generator.setOutputDevice(buffer)
    generator.setSize(size)
    generator.setResolution(picture.logicalDpiX())
    generator.setViewBox(QRect(QPoint(0, 0), size))
    generator.setTitle(title)
    generator.setDescription("Drawn by Benchpack")
    painter = QPainter(generator)
    painter.drawPicture(QPoint(0, 0), picture)
    painter.end()
    return without_controls(with_scaled_strokes(bytes(buffer.data().data()).decode()))


def _write(content: bytes, path: Path) -> None:
    """Write a picture whole; where that fails what stands there stays."""
    try:
        with replacing(path) as fresh:
            fresh.write_bytes(content)
    except DataError as error:
        raise BenchpackError(f"the picture could not be written to {path}") from error


def without_controls(text: str) -> str:
    r"""Give a text with a mark in place of each character that no drawing may hold.

    Parameters
    ----------
    text : str
        Any text, a whole drawing or page too.

    Examples
    --------
    >>> without_controls("red \x1b[31m") == "red \ufffd[31m"
    True
    """
    return _CONTROLS.sub("\ufffd", text)


def with_scaled_strokes(svg: str) -> str:
    """Give a drawing in which lines are as wide in every viewer.

    A line that keeps its width in a scaled group relies on `vector-effect`, which
    many viewers and office programs pass over: its width is divided instead.

    Parameters
    ----------
    svg : str
        A drawing as `QSvgGenerator` writes it, one group for each pen.

    Examples
    --------
    >>> group = '<g stroke-width="1.5" transform="matrix(3,0,0,3,7,7)">'
    >>> path = '<path vector-effect="non-scaling-stroke" d="M0,0"/></g>'
    >>> with_scaled_strokes(group + path)
    '<g stroke-width="0.5" transform="matrix(3,0,0,3,7,7)"><path d="M0,0"/></g>'
    """
    head, *groups = svg.split("<g ")
    return "<g ".join([head, *map(_with_scaled_stroke, groups)])


def _with_scaled_stroke(group: str) -> str:
    matrix = _MATRIX.search(group)
    if _FIXED not in group or matrix is None:
        return group
    a, b, c, d, *_ = map(float, matrix[1].split(","))
    scale = math.sqrt(abs(a * d - b * c)) or 1.0

    def narrowed(stroke: re.Match[str]) -> str:
        return f'stroke-width="{float(stroke[1]) / scale:.6g}"'

    return _STROKE.sub(narrowed, group, count=1).replace(f"{_FIXED} ", "")
