"""The pages of a brief: where they break, and what is drawn on each."""

from __future__ import annotations

import math

from PySide6.QtCore import QBuffer, QIODevice, QRectF, Qt
from PySide6.QtGui import (
    QAbstractTextDocumentLayout,
    QColor,
    QImage,
    QPainter,
    QPalette,
    QPdfWriter,
    QTextBlock,
    QTextBlockFormat,
    QTextCursor,
    QTextFormat,
)

from benchpack.report.brief.blocks import Brief
from benchpack.ui.brief.document import set_brief
from benchpack.ui.brief.paper import FINENESS, painted_dpi, paper_named, units
from benchpack.ui.brief.placed import PlacedHeading, PlacedTable
from benchpack.ui.brief.print_type import ink, print_font

_BREAK = QTextFormat.PageBreakFlag.PageBreak_AlwaysBefore
_ROUNDING = 0.5
_LEAST_ROOM = 3.0
"""Points that are left at the foot of a page: too few for a line of any type."""
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class BriefPages:
    """A brief on sheets of paper.

    It is made, painted and let go on the thread of the window.

    Parameters
    ----------
    brief : Brief
        What is set.
    paper : str
        ``A4`` or ``Letter``.

    Raises
    ------
    RequestError
        There is no such paper.
    """

    def __init__(self, brief: Brief, *, paper: str = "A4") -> None:
        self.brief = brief
        self.paper = paper_named(paper)
        self._sink = QBuffer()
        self._sink.open(QIODevice.OpenModeFlag.WriteOnly)
        self._device = QPdfWriter(self._sink)
        self._device.setResolution(painted_dpi() * FINENESS)
        self._set = set_brief(brief, self.paper, self._device)
        self._document = self._set.document
        self._break_well()

    @property
    def page_count(self) -> int:
        """How many pages there are."""
        return self._document.pageCount()

    def section_pages(self) -> list[tuple[str, int]]:
        """Give the title of each headed section and the page on which it begins."""
        return [
            (one.section.title, self._page(self._top(one.at.block())))
            for one in self._set.placed
            if isinstance(one, PlacedHeading)
        ]

    def paint(self, painter: QPainter, page: int) -> None:
        """Paint one page.

        Parameters
        ----------
        painter : QPainter
            On a device of `paper.painted_dpi`, its origin at the corner of the sheet.
        page : int
            Number of the page from 0.
        """
        content = self.paper.content
        painter.save()
        painter.scale(1 / FINENESS, 1 / FINENESS)
        painter.translate(content.left(), content.top() - page * content.height())
        clip = QRectF(0, page * content.height(), content.width(), content.height())
        painter.setClipRect(clip)
        context = QAbstractTextDocumentLayout.PaintContext()
        # What only touches the page would be in it unseen, to be found and copied.
        context.clip = clip.adjusted(0, 2 * _ROUNDING, 0, -2 * _ROUNDING)
        palette = QPalette()
        palette.setColor(QPalette.ColorRole.Text, QColor(ink().text))
        context.palette = palette
        self._document.documentLayout().draw(painter, context)
        painter.restore()
        self._frame(painter, page)

    def image(self, page: int, *, scale: float = 1.0) -> QImage:
        """Paint one page into an image.

        Parameters
        ----------
        page : int
            Number of the page from 0.
        scale : float
            1 for an image at `paper.painted_dpi`.
        """
        size = (self.paper.size * (scale / FINENESS)).toSize()
        image = QImage(size, QImage.Format.Format_RGB32)
        image.fill(QColor(ink().panel))
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(scale, scale)
        self.paint(painter, page)
        painter.end()
        return image

    def _frame(self, painter: QPainter, page: int) -> None:
        """Write header and footer."""
        content, size = _painted(self.paper.content), self.paper.size / FINENESS
        painter.setFont(print_font("note"))
        painter.setPen(QColor(ink().second))
        height = painter.fontMetrics().height() * 1.5
        below = QRectF(
            content.left(),
            content.bottom() + (size.height() - content.bottom() - height) / 2,
            content.width(),
            height,
        )
        number = f"page {page + 1} of {self.page_count}"
        self._write(painter, below, self.brief.footer, number)
        above = QRectF(below)
        above.moveTop((content.top() - height) / 2)
        if page:
            self._write(painter, above, self.brief.header, "")

    def _write(self, painter: QPainter, box: QRectF, left: str, right: str) -> None:
        room = box.width() - painter.fontMetrics().horizontalAdvance(f"{right}    ")
        shown = painter.fontMetrics().elidedText(
            left, Qt.TextElideMode.ElideRight, int(room)
        )
        painter.drawText(box, int(_LEFT), shown)
        painter.drawText(box, int(_RIGHT), right)

    # Where pages break ---------------------------------------------------------

    def _break_well(self) -> None:
        """Part no heading from what it heads, and no row of a table that fits a page.

        From the top down: what is mended moves only what stands below it.
        """
        for one in self._set.placed:
            if isinstance(one, PlacedHeading):
                self._mend_heading(one)
            else:
                for row in range(2, one.table.rows()):
                    self._mend_row(one, row)
                self._mend_end(one)

    def _mend_heading(self, heading: PlacedHeading) -> None:
        """Send a heading to the next page where what it heads begins there."""
        top = self._top(heading.at.block())
        if self._is_parted(top, self._bottom(heading.kept.block())):
            _break_before(heading.at.block())
            self._lay_out_anew()

    def _mend_row(self, placed: PlacedTable, row: int) -> None:
        """Send a row that is parted to the next page as a whole."""
        top, end = self._extent(placed, row)
        if self._is_parted(top, end):
            placed.push_down(row, by=max(self._rest(top) - units(_LEAST_ROOM), 0.0))
            self._lay_out_anew()

    def _mend_end(self, placed: PlacedTable) -> None:
        """Mend what goes wrong where a table ends a page.

        Close to the end of a page Qt takes the table to reach the next one: its head is
        repeated there upon other text, and the line below it may be cut in two.
        """
        last = placed.table.rows() - 1
        top, end = self._extent(placed, last)
        frame = self._document.documentLayout().frameBoundingRect(placed.table)
        below = self._line(self._document.findBlock(placed.table.lastPosition() + 1), 0)
        is_cut = self._page(below.top()) < self._page(below.bottom() - 2 * _ROUNDING)
        page = self._page(end - 2 * _ROUNDING)
        if not is_cut and self._page(frame.bottom()) == page:
            return
        if self._page(self._extent(placed, 0)[0]) == page:
            placed.end_here(room=self._rest(below.top()) if is_cut else 0.0)
        elif last > 1:
            placed.push_down(last, by=max(self._rest(top) - units(_LEAST_ROOM), 0.0))
        self._lay_out_anew()

    def _rest(self, y: float) -> float:
        """Give what is left of a page below a place."""
        return (self._page(y) + 1) * self.paper.content.height() - y

    def _lay_out_anew(self) -> None:
        """Have all set once more: what only moves may be left across two pages."""
        self._document.markContentsDirty(0, self._document.characterCount())

    def _extent(self, placed: PlacedTable, row: int) -> tuple[float, float]:
        """Give where a row begins and where it ends."""
        cells = [
            placed.table.cellAt(row, column) for column in range(placed.table.columns())
        ]
        tops = [self._top(cell.firstCursorPosition().block()) for cell in cells]
        ends = [self._bottom(cell.lastCursorPosition().block()) for cell in cells]
        return min(tops), max(ends)

    def _is_parted(self, top: float, end: float) -> bool:
        fits = end - top < self.paper.content.height() / 2
        return fits and self._page(top) < self._page(end - 2 * _ROUNDING)

    def _top(self, block: QTextBlock) -> float:
        """Give the top of the first line; room above it may be on the page before."""
        return self._line(block, 0).top()

    def _bottom(self, block: QTextBlock) -> float:
        return self._line(block, block.layout().lineCount() - 1).bottom()

    def _line(self, block: QTextBlock, place: int) -> QRectF:
        """Give a line; a block begins on a page although its first line does not."""
        layout = block.layout()
        box = self._document.documentLayout().blockBoundingRect(block)
        if not 0 <= place < layout.lineCount():
            return box
        return layout.lineAt(place).rect().translated(box.topLeft())

    def _page(self, y: float) -> int:
        return math.floor((y + _ROUNDING) / self.paper.content.height())


def _painted(box: QRectF) -> QRectF:
    """Give a box of the layout in painted pixels."""
    return QRectF(box.topLeft() / FINENESS, box.size() / FINENESS)


def _break_before(block: QTextBlock) -> None:
    cursor = QTextCursor(block)
    shape = QTextBlockFormat()
    shape.setPageBreakPolicy(_BREAK)
    shape.setTopMargin(0)
    cursor.mergeBlockFormat(shape)
