"""A brief as a text document, set on the width of a sheet."""

from __future__ import annotations

from PySide6.QtCore import QSizeF, Qt
from PySide6.QtGui import (
    QPagedPaintDevice,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextListFormat,
    QTextOption,
    QTextTable,
)

from benchpack.report.brief.blocks import (
    Block,
    Brief,
    ChartBlock,
    Figures,
    Paragraph,
    ParagraphRole,
    Section,
    Table,
)
from benchpack.ui.brief.chart_object import ChartObjects
from benchpack.ui.brief.chart_pictures import picture_of
from benchpack.ui.brief.paper import FINENESS, Paper, pixels, units
from benchpack.ui.brief.placed import PlacedHeading, PlacedTable, SetBrief
from benchpack.ui.brief.print_tables import insert_figures, insert_table
from benchpack.ui.brief.print_type import PrintRole, ink, print_block, print_format
from benchpack.ui.theme import SPACE_AROUND

CHART_SCALE = 0.8
"""Pixels of the paper per pixel of a chart: its notes are set in 7.2 pt."""
_BETWEEN_CHARTS = 12.0
"""Points."""
_INDENT = 9.0
"""Points by which the text of a caution stands to the right of its mark."""
_ROLES: dict[ParagraphRole, PrintRole] = {
    "lead": "lead",
    "body": "body",
    "note": "note",
    "caution": "cell",
}
_ABOVE: dict[ParagraphRole, float] = {
    "lead": 3.0,
    "body": 3.0,
    "note": 2.5,
    "caution": 1.0,
}
"""Points above a paragraph."""


def set_brief(brief: Brief, paper: Paper, device: QPagedPaintDevice) -> SetBrief:
    """Set a brief; charts are drawn once, on the thread of the window.

    Parameters
    ----------
    brief : Brief
        What is set.
    paper : Paper
        The sheet.
    device : QPagedPaintDevice
        Whose resolution the fonts are measured for.
    """
    document = QTextDocument()
    document.setUndoRedoEnabled(False)
    document.setDocumentMargin(0)
    document.setUseDesignMetrics(True)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    option.setTextDirection(Qt.LayoutDirection.LeftToRight)
    document.setDefaultTextOption(option)
    document.documentLayout().setPaintDevice(device)
    document.setPageSize(paper.content.size())
    return _Setter(document, paper, device).set(brief)


class _Setter:
    """Sets one brief."""

    def __init__(
        self, document: QTextDocument, paper: Paper, device: QPagedPaintDevice
    ) -> None:
        self.document = document
        self.document.setIndentWidth(pixels(_INDENT))
        self.device = device
        self.room = paper.content.width()
        self.cursor = QTextCursor(document)
        self.charts = ChartObjects(document, scale=CHART_SCALE * FINENESS)
        self.done = SetBrief(document)
        self.is_fresh = True
        self.heading: PlacedHeading | None = None
        self.table_above: QTextTable | None = None

    def set(self, brief: Brief) -> SetBrief:
        self.cursor.beginEditBlock()  # or all is laid out anew with each word
        self._write(brief.title, "title", above=0)
        line: list[ChartBlock] = []
        for section in brief.sections:
            if section.is_headed:
                self._draw(line)
                self._head(section)
            for block in section.blocks:
                if isinstance(block, ChartBlock):
                    if sum(one.width for one in line) + block.width > 1:
                        self._draw(line)
                    line.append(block)
                else:
                    self._draw(line)
                    self._put(block)
        self._draw(line)
        self._end()
        self.cursor.endEditBlock()
        return self.done

    def _start(self, shape: QTextBlockFormat, letters: QTextCharFormat) -> None:
        """Begin a paragraph; one that is empty already is taken."""
        if self.table_above is not None:
            # Behind a table the room above a paragraph is that below the table.
            below = self.table_above.format().toTableFormat()
            below.setBottomMargin(shape.topMargin())
            self.table_above.setFormat(below)
            self.table_above = None
        if self.is_fresh:
            self.cursor.setBlockFormat(shape)
            self.cursor.setBlockCharFormat(letters)
        else:
            self.cursor.insertBlock(shape, letters)
        self.is_fresh = False

    def _write(
        self, text: str, role: PrintRole, *, above: float, below: float = 0
    ) -> None:
        shape = print_block(above=above, below=below)
        letters = print_format(role)
        self._start(shape, letters)
        self.cursor.insertText(text, letters)

    def _head(self, section: Section) -> None:
        self._write(section.title, "section", above=6, below=0.5)
        at = QTextCursor(self.cursor)
        at.setKeepPositionOnInsert(True)
        self.heading = PlacedHeading(section, at, at)
        self.done.placed.append(self.heading)

    def _put(self, block: Block) -> None:
        if isinstance(block, Paragraph):
            self._say(block)
        elif isinstance(block, Figures):
            self.table_above = insert_figures(self.cursor, block)
            self.done.placed.append(PlacedTable(self.table_above))
            self.is_fresh = True
        elif isinstance(block, Table):
            self._tabulate(block)
        if self.heading is not None:
            self._tie(self.heading, block)

    def _tie(self, heading: PlacedHeading, block: Block) -> None:
        """Tie the first block of a section to its heading, with a note that leads."""
        heading.kept = QTextCursor(self.document)
        heading.kept.setPosition(self.cursor.position())
        heading.kept.setKeepPositionOnInsert(True)
        if isinstance(block, Table):
            table = self.table_above
            assert table is not None
            row, place = min(1, table.rows() - 1), table.columns() - 1
            heading.kept = table.cellAt(row, place).lastCursorPosition()
        if not (isinstance(block, Paragraph) and block.role == "note"):
            self.heading = None

    def _say(self, block: Paragraph) -> None:
        if block.role == "caution":
            self._caution(block)
            return
        above = _ABOVE[block.role]
        self._write(block.text, _ROLES[block.role], above=above)

    def _caution(self, block: Paragraph) -> None:
        """Write a caution as an item of a list."""
        self._write(block.text, "cell", above=_ABOVE["caution"])
        listed = QTextListFormat()
        listed.setStyle(QTextListFormat.Style.ListDisc)
        listed.setIndent(1)
        self.cursor.createList(listed)

    def _tabulate(self, block: Table) -> None:
        if block.title:
            self._write(block.title, "strong", above=4)
        placed = insert_table(self.cursor, block, self.device, room=self.room)
        self.done.placed.append(placed)
        self.table_above = placed.table
        self.is_fresh = True

    def _draw(self, line: list[ChartBlock]) -> None:
        """Put charts beside each other, all as high as the highest."""
        if not line:
            return
        line_of_charts = QTextBlockFormat()
        line_of_charts.setTopMargin(pixels(5))
        self._start(line_of_charts, print_format("note"))
        scale = CHART_SCALE * FINENESS
        gap = units(_BETWEEN_CHARTS)
        whole = self.room - gap * (len(line) - 1) - FINENESS
        # The chart has room around it, the paper has its own margins.
        around = SPACE_AROUND * scale
        drawn = []
        for block in line:
            room = whole * block.width
            chart = picture_of(block, width=round((room + 2 * around) / scale))
            drawn.append((room, chart))
        height = max(chart.size.height() for _, chart in drawn) * scale
        for place, (room, chart) in enumerate(drawn):
            before = gap if place else 0.0
            size = QSizeF(room + before, height)
            self.charts.insert(self.cursor, chart, size, shifted_by=before - around)
        line.clear()

    def _end(self) -> None:
        """Leave no empty line at the end that could ask for a page of its own."""
        if not self.is_fresh:
            return
        shape = QTextBlockFormat()
        shape.setLineHeight(0.1, QTextBlockFormat.LineHeightTypes.FixedHeight.value)
        letters = print_format("note", colour=ink().panel)
        letters.setFontPointSize(1)
        self._start(shape, letters)
