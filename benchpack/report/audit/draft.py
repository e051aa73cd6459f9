"""An audit sheet while it is being written, and the addresses of its cells."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from benchpack.report.audit.record import AuditCell, AuditSheet, Look, text


def address(row: int, column: int) -> str:
    """Give the address of a cell on its own sheet.

    Parameters
    ----------
    row, column : int
        From 0.

    Examples
    --------
    >>> address(0, 0), address(9, 27)
    ('A1', 'AB10')
    """
    letters = ""
    left = column + 1
    while left:
        left, digit = divmod(left - 1, 26)
        letters = chr(ord("A") + digit) + letters
    return f"{letters}{row + 1}"


def span(column: int, rows: Iterable[int]) -> str:
    """Give the range of some rows that follow each other in one column."""
    numbers = list(rows)
    return f"{address(numbers[0], column)}:{address(numbers[-1], column)}"


@dataclass(slots=True)
class Draft:
    """A sheet that is being written.

    Parameters
    ----------
    title, purpose : str
        As of `AuditSheet`.
    widths : sequence of float
        Widths of its columns.
    """

    title: str
    purpose: str
    widths: Sequence[float]
    head_row: int = 0
    fixed_columns: int = 1
    is_wide: bool = True
    cells: dict[tuple[int, int], AuditCell] = field(default_factory=dict)
    next_row: int = 0

    def __post_init__(self) -> None:
        self.line(text(self.title, Look.TITLE))
        self.line(text(self.purpose, Look.NOTE))

    def put(self, row: int, column: int, cell: AuditCell) -> None:
        """Write one cell."""
        self.cells[row, column] = cell

    def line(self, *cells: AuditCell | None, start: int = 0) -> int:
        """Write the next row from a column on, and give its number.

        Parameters
        ----------
        *cells : AuditCell or None
            Its cells; None leaves one empty.
        start : int
            Column of the first.
        """
        row = self.next_row
        for column, cell in enumerate(cells, start=start):
            if cell is not None:
                self.cells[row, column] = cell
        self.next_row += 1
        return row

    def notes(self, *lines: str) -> None:
        """Write lines of notes."""
        for said in lines:
            self.line(text(said, Look.NOTE))

    def heads(self, *heads: str) -> int:
        """Write the column heads, which stay in view."""
        self.head_row = self.line(*(text(head, Look.HEAD) for head in heads))
        return self.head_row

    def section(self, title: str) -> int:
        """Write the title of a section below an empty row."""
        self.next_row += 1
        return self.line(text(title, Look.SECTION))

    def outside(self, row: int, column: int) -> str:
        """Give the address of a cell for formulas on other sheets.

        Parameters
        ----------
        row, column : int
            From 0.
        """
        letters = address(0, column)[:-1]
        quoted = f"'{self.title}'" if " " in self.title else self.title
        return f"{quoted}!${letters}${row + 1}"

    def outside_span(self, column: int, rows: Sequence[int]) -> str:
        """Give the range of some rows of one column for formulas on other sheets."""
        last = self.outside(rows[-1], column).rpartition("!")[2]
        return f"{self.outside(rows[0], column)}:{last}"

    def sheet(self) -> AuditSheet:
        """Give the sheet."""
        return AuditSheet(
            self.title,
            self.purpose,
            dict(self.cells),
            tuple(self.widths),
            self.head_row,
            self.fixed_columns,
            self.is_wide,
        )
