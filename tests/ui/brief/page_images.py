"""The pages of a brief as pictures, as they would be printed."""

from __future__ import annotations

from PySide6.QtGui import QImage

from benchpack.report.brief.blocks import Brief
from benchpack.ui.brief.pages import BriefPages


def page_images(brief: Brief, *, paper: str = "A4", scale: float = 1.0) -> list[QImage]:
    """Give every page as an image.

    Parameters
    ----------
    brief : Brief
        What is shown.
    paper : str
        ``A4`` or ``Letter``.
    scale : float
        1 for as many pixels as the paper has at the resolution of the screen.

    Raises
    ------
    RequestError
        There is no such paper.
    """
    pages = BriefPages(brief, paper=paper)
    return [pages.image(page, scale=scale) for page in range(pages.page_count)]
