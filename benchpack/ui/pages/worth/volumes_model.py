"""Packs by year as a table that can be edited."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QObject,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor

from benchpack.errors import DataError, Problem
from benchpack.model.fields import Kind
from benchpack.ui.pages.worth.volumes_block import PACKS, read_packs
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.reading_table import Index, ReadingTableModel, Role
from benchpack.ui.theme import theme
from benchpack.units.formatting import NumberStyle, format_number


class VolumesModel(ReadingTableModel):
    """The years of a programme with their packs; the even plan stands in grey.

    Signals
    -------
    entered(int, int)
        Row, and the packs that were entered.
    """

    entered = Signal(int, int)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        year = TableColumn("year", "year")
        packs = TableColumn("packs", "packs", Kind.COUNT, decimals=0, field=PACKS)
        self.columns = (year, packs)
        self.packs: tuple[float, ...] = ()
        self.start_year: int | None = None
        self.is_given = False
        self.style = NumberStyle()

    def show_volumes(
        self,
        packs: Sequence[float],
        *,
        start_year: int | None,
        given: bool,
        style: NumberStyle,
    ) -> None:
        """Show packs by year.

        Parameters
        ----------
        packs : sequence of float
            Packs of each year.
        start_year : int or None
            Calendar year of the first.
        given : bool
            True where the study has them by year, False where they follow from it.
        style : NumberStyle
            How numbers are shown.
        """
        is_other = len(packs) != len(self.packs)
        if is_other:
            self.beginResetModel()
        self.packs, self.start_year = tuple(packs), start_year
        self.is_given, self.style = given, style
        if is_other:
            self.endResetModel()
        else:
            self.tell_of_cells()

    def name_at(self, index: Index) -> str:
        """Give the name of a year."""
        return self.year_at(index.row())

    def year_at(self, row: int) -> str:
        """Give the calendar year of a row, or its number."""
        if self.start_year is None:
            return f"year {row + 1}"
        return str(self.start_year + row)

    def count(self) -> int:
        """Give the number of years."""
        return len(self.packs)

    def heads(self) -> Sequence[str]:
        """Give two: the year, and its packs."""
        return [column.title for column in self.columns]

    def data(self, index: Index, role: int = Role.DisplayRole) -> object:
        """Give the text of a cell; what only follows from the study is grey."""
        if not index.isValid():
            return None
        row, column = index.row(), index.column()
        if role == Role.DisplayRole:
            if column == 0:
                return self.year_at(row)
            return format_number(self.packs[row], 0, style=self.style)
        if role == Role.EditRole:
            return f"{self.packs[row]:.0f}"
        if role == Role.TextAlignmentRole:
            return self.alignment(column)
        if role == Role.ForegroundRole and not self.is_given:
            return QColor(theme().roles.second)
        if role == Role.ToolTipRole and not self.is_given:
            return "Even volume. Enter another figure to give volumes by year."
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Let the packs be edited."""
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() else flags

    def enter(self, index: Index, text: str) -> tuple[Problem, ...]:
        """Take an entry; gives why it cannot be taken."""
        try:
            packs = read_packs(text, decimal=self.style.decimal_mark)
        except DataError as error:
            return error.problems
        if packs != self.packs[index.row()]:
            self.entered.emit(index.row(), packs)
        return ()
