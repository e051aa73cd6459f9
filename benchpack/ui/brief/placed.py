"""Headings and tables where they stand in a document, to break its pages well."""

from __future__ import annotations

from dataclasses import dataclass, field

from PySide6.QtGui import QTextCursor, QTextDocument, QTextTable, QTextTableCell

from benchpack.report.brief.blocks import Section
from benchpack.ui.brief.paper import FINENESS


@dataclass(slots=True)
class PlacedTable:
    """A table in a document.

    Parameters
    ----------
    table : QTextTable
        The table.
    """

    table: QTextTable

    def push_down(self, row: int, *, by: float) -> None:
        """Make the row above one so much higher that this one does not fit below it.

        Lines stand on top of rows, so that nothing shows of the room.

        Parameters
        ----------
        row : int
            The row that goes to the next page.
        by : float
            Units of the layout.
        """
        cells = [
            self.table.cellAt(row - 1, place) for place in range(self.table.columns())
        ]
        # As high as the row is the cell with most lines: room below it moves the row.
        highest = max(cells, key=_line_count)
        shape = highest.format().toTableCellFormat()
        shape.setBottomPadding(shape.bottomPadding() + by / FINENESS)
        highest.setFormat(shape)

    def end_here(self, *, room: float) -> None:
        """Repeat no head on a page that the table does not reach.

        Parameters
        ----------
        room : float
            Units of the layout by which what stands below goes down.
        """
        shape = self.table.format().toTableFormat()
        shape.setHeaderRowCount(0)
        shape.setBottomMargin(shape.bottomMargin() + room / FINENESS)
        self.table.setFormat(shape)


def _line_count(cell: QTextTableCell) -> int:
    return cell.firstCursorPosition().block().layout().lineCount()


@dataclass(slots=True)
class PlacedHeading:
    """A heading in a document.

    Parameters
    ----------
    section : Section
        What it heads.
    at : QTextCursor
        Where it stands.
    kept : QTextCursor
        The end of what must not be parted from it.
    """

    section: Section
    at: QTextCursor
    kept: QTextCursor


@dataclass(slots=True)
class SetBrief:
    """A brief that is set.

    Parameters
    ----------
    document : QTextDocument
        The text.
    placed : list of PlacedHeading or PlacedTable
        Headings and tables in their order.
    """

    document: QTextDocument
    placed: list[PlacedHeading | PlacedTable] = field(default_factory=list)
