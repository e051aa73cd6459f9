"""Entries in the cells of a table: read, handed on, kept when they are refused."""

from __future__ import annotations

from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.entry import parse_value
from benchpack.model.fields import Kind
from benchpack.ui.tables.cell_facts import Refused
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.edits import TableEdits
from benchpack.units.formatting import NumberStyle


class CellEntries:
    """Reads entries and remembers those that could not be taken.

    Parameters
    ----------
    edits : TableEdits
        Where edits go.
    """

    def __init__(self, edits: TableEdits) -> None:
        self.edits = edits
        self.style = NumberStyle()
        self.currency = "EUR"
        self._refused: dict[tuple[Any, str], Refused] = {}

    def parsed(
        self,
        column: TableColumn,
        text: str,
        *,
        decimal: str = "",
        unit: str | None = None,
    ) -> Any:
        """Give the value that a text means in a column, see `parse_value`.

        Raises
        ------
        DataError
            When it means none, or the column is derived.
        """
        if column.field is None:
            what = f"{column.title} follows from other columns."
            raise DataError(Problem(what, "Change those.", column=column.head))
        return parse_value(
            column.field,
            text if column.kind is Kind.BOUNDARY else text.strip(),
            unit=unit or column.entry_unit,
            decimal=decimal or self.style.decimal_mark,
            currency=self.currency,
        )

    def take(
        self, column: TableColumn, text: str, *, row: int, key: Any, name: str
    ) -> tuple[Problem, ...]:
        """Make the edit of one cell; gives why it cannot be made.

        Parameters
        ----------
        column : TableColumn
            The cell's column.
        text : str
            What was entered.
        row : int
            Row of the record.
        key : object
            What stays with the record.
        name : str
            Its name.
        """
        try:
            changes = [(row, {column.key: self.parsed(column, text)})]
            problems = self.edits.change(f"{column.title} of {name}", changes)
        except DataError as error:
            problems = error.problems
        if problems:
            self._refused[key, column.key] = Refused(text, problems[0])
        else:
            self.drop(column, key)
        return problems

    def drop(self, column: TableColumn, key: Any) -> None:
        """Forget what was refused in a cell."""
        self._refused.pop((key, column.key), None)

    def drop_all(self) -> None:
        """Forget everything that was refused."""
        self._refused.clear()

    def refused(self, column: TableColumn, key: Any) -> Refused | None:
        """Give what was last entered in a cell and refused."""
        return self._refused.get((key, column.key)) if self._refused else None
