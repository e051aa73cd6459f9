"""A brief as PDF: vector charts, text that can be found, title and language."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF
from PySide6.QtGui import QPageLayout, QPainter, QPdfWriter

from benchpack.files.atomic import replacing
from benchpack.report.brief.blocks import Brief
from benchpack.ui.brief.pages import BriefPages
from benchpack.ui.brief.paper import painted_dpi
from benchpack.ui.brief.pdf_words import with_words


def write_brief_pdf(brief: Brief, path: Path, *, paper: str = "A4") -> None:
    """Write a brief as PDF.

    Parameters
    ----------
    brief : Brief
        What is written.
    path : Path
        The file; what stands there is replaced once all is written.
    paper : str
        ``A4`` or ``Letter``.

    Raises
    ------
    DataError
        When the file cannot be written.
    RequestError
        There is no such paper.
    """
    pages = BriefPages(brief, paper=paper)
    whole = pdf_bytes(pages)
    with replacing(path) as fresh:
        fresh.write_bytes(whole)


def pdf_bytes(pages: BriefPages) -> bytes:
    """Give the pages of a brief as a PDF, on the thread that made them.

    Parameters
    ----------
    pages : BriefPages
        The pages.
    """
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(painted_dpi())
    writer.setTitle(pages.brief.title)
    writer.setCreator(f"Benchpack {pages.brief.version}")
    layout = QPageLayout(
        pages.paper.page_size, QPageLayout.Orientation.Portrait, QMarginsF()
    )
    layout.setMode(QPageLayout.Mode.FullPageMode)
    writer.setPageLayout(layout)
    painter = QPainter(writer)
    for page in range(pages.page_count):
        if page:
            writer.newPage()
        pages.paint(painter, page)
    painter.end()
    buffer.close()
    return with_words(bytes(buffer.data().data()), pages)
