"""Tables in workbooks: XLSX, XLS and ODS, read without running anything in them."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import Any

import numpy as np

from benchpack.files.delimited import header_index, trimmed, with_units
from benchpack.files.faults import check_ordinary, disk_fault, fault
from benchpack.files.sheet import Cells, Column, Sheet, number_text, without_empty
from benchpack.files.workbook_scan import check_size, scan_sheet

_SCATTERED = (
    "The workbook has cells so far apart that it cannot be loaded.",
    "Delete what stands far from the table, or save the table as CSV.",
)
_FOLLOWS = "Save it again in a spreadsheet program as XLSX or ODS."


class Workbook:
    """An open workbook.

    Parameters
    ----------
    path : Path
        The file.

    Raises
    ------
    DataError
        When it cannot be read, is damaged, or is locked by a password.
    """

    def __init__(self, path: Path) -> None:
        import python_calamine as calamine

        check_ordinary(path)
        check_size(path)
        self._path = path
        try:
            self._book = calamine.CalamineWorkbook.from_path(path)
        except calamine.PasswordError as error:
            raise fault(
                path,
                "The workbook is locked by a password.",
                "Save a copy without one and open that.",
            ) from error
        except OSError as error:
            raise disk_fault(path, error) from error
        except calamine.CalamineError as error:
            if "limit" in str(error):
                raise fault(path, *_SCATTERED) from error
            what = "The file is no workbook, or it is damaged."
            raise fault(path, what, _FOLLOWS) from error
        self._error = calamine.CalamineError
        self.names: tuple[str, ...] = tuple(self._book.sheet_names)
        seen = calamine.SheetVisibleEnum.Visible
        self.visible: tuple[str, ...] = tuple(
            sheet.name for sheet in self._book.sheets_metadata if sheet.visible == seen
        )

    def rows(self, name: str) -> list[list[Any]]:
        """Give the cells of a sheet from its first row on, text and float.

        Parameters
        ----------
        name : str
            The sheet.

        Raises
        ------
        DataError
            When there is no such sheet, or it is damaged.
        """
        if name not in self.names:
            raise fault(
                self._path,
                f"There is no sheet called {name!r}.",
                f"The workbook has: {', '.join(self.names)}.",
            )
        scan = scan_sheet(self._path, name)
        if scan.is_scattered:
            what = f"The sheet {name!r} reaches to cell {scan.corner}, nearly empty."
            raise fault(self._path, what, _SCATTERED[1])
        try:
            found = self._book.get_sheet_by_name(name).to_python(skip_empty_area=False)
        except self._error as error:
            what = f"The sheet {name!r} is damaged."
            raise fault(self._path, what, _FOLLOWS) from error
        rows = [[_cell(value) for value in row] for row in found]
        for (row, column), text in scan.errors.items():
            # The reader leaves these cells empty; a figure is missed there.
            if row < len(rows) and column < len(rows[row]) and rows[row][column] == "":
                rows[row][column] = text
        return rows

    def sheet(
        self, name: str, *, recognised: Callable[[Sequence[str]], int]
    ) -> Sheet | None:
        """Give a sheet as a table, None where it is empty.

        Parameters
        ----------
        name : str
            The sheet.
        recognised : callable
            Counts the cells of a row that are known column heads.
        """
        rows = self.rows(name)
        texts = [list(map(_text, row)) for row in rows[:400]]
        at, _ = header_index(texts, recognised)
        if at < 0:
            return None
        header = trimmed(texts[at])
        joined = with_units(header, texts[at + 1] if at + 1 < len(texts) else ())
        skip = at + (1 if joined is None else 2)
        several = len(self.names) > 1
        return Sheet(
            source=f"{self._path.name}, sheet {name}" if several else self._path.name,
            header=tuple(joined or header),
            header_row=at + 1,
            body=WorkbookBody(rows, skip, len(header)),
            name=name,
            sheet_names=self.names,
        )

    def tables(self, *, recognised: Callable[[Sequence[str]], int]) -> list[Sheet]:
        """Give the tables of all sheets, those first whose heads are known best.

        Sheets that a person sees come before those that are hidden.

        Parameters
        ----------
        recognised : callable
            Counts the cells of a row that are known column heads.

        Raises
        ------
        DataError
            When no sheet holds a table.
        """
        hidden = [name for name in self.names if name not in self.visible]
        found = [
            self.sheet(name, recognised=recognised) for name in (*self.visible, *hidden)
        ]
        filled = [table for table in found if table is not None]
        if not filled:
            what = "The workbook holds no table."
            raise fault(self._path, what, "Choose another file.")
        return sorted(filled, key=lambda table: -recognised(table.header))


class WorkbookBody:
    """The records of a sheet below its column heads."""

    def __init__(self, rows: list[list[Any]], skip: int, width: int) -> None:
        self._rows = rows
        self._skip = skip
        self._width = width

    def load(self, _numeric: Collection[int], /) -> Cells:
        """Give all records; numbers come as numbers anyway. See `Body`."""
        body = self._rows[self._skip :]
        columns = [
            _column([row[i] if i < len(row) else "" for row in body])
            for i in range(self._width)
        ]
        first = self._skip + 1
        rows = np.arange(first, first + len(body), dtype=np.int64)
        cells = without_empty(columns, rows)
        long = {
            at: len(trimmed(list(map(_text, self._rows[row - 1]))))
            for at, row in enumerate(cells.rows.tolist())
            if any(cell != "" for cell in self._rows[row - 1][self._width :])
        }
        return Cells(cells.columns, cells.rows, long)

    def texts(self, rows: Collection[int]) -> Mapping[int, list[str]]:
        """Give the cells of some rows as they are shown; see `Body`."""
        return {row: list(map(_text, self._rows[row - 1])) for row in rows}

    def head(self, count: int) -> list[list[str]]:
        """Give the first records as text; see `Body`."""
        texts = (list(map(_text, row)) for row in self._rows[self._skip :])
        return [row for row in texts if any(row)][:count]


def read_workbook_sheet(
    path: Path,
    *,
    sheet: str | None = None,
    recognised: Callable[[Sequence[str]], int],
) -> Sheet:
    """Read one sheet of a workbook.

    Parameters
    ----------
    path : Path
        The workbook.
    sheet : str or None
        Name of the sheet; by default the best as `Workbook.tables` orders them.
    recognised : callable
        Counts the cells of a row that are known column heads.

    Raises
    ------
    DataError
        When it cannot be read, or has no such sheet, or no table.
    """
    book = Workbook(path)
    if sheet is None:
        return book.tables(recognised=recognised)[0]
    table = book.sheet(sheet, recognised=recognised)
    if table is None:
        raise fault(path, f"The sheet {sheet!r} is empty.", "Choose another one.")
    return table


def _cell(value: Any) -> str | float:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return float(value)
    if isinstance(value, datetime):
        return value.isoformat(sep=" ").removesuffix(" 00:00:00")
    if isinstance(value, date | time):
        return value.isoformat()
    if isinstance(value, timedelta):
        return str(value)
    return str(value)


def _text(cell: str | float) -> str:
    return number_text(cell) if isinstance(cell, float) else cell


def _column(cells: list[str | float]) -> Column:
    if all(isinstance(cell, float) or cell == "" for cell in cells):
        return np.array([np.nan if cell == "" else cell for cell in cells], np.float64)
    column: Column = np.empty(len(cells), dtype=object)
    column[:] = cells
    return column
