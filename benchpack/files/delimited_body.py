"""The records of a text file: by the csv module when small, by pandas when large."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property
from itertools import islice
from pathlib import Path
from typing import Any

import numpy as np

from benchpack.files.faults import fault
from benchpack.files.sheet import Cells, Column, without_empty

SMALL_BYTES = 1_000_000
"""Files below this are split without pandas, which takes longer to load."""

_FIGURE = re.compile(r"[+-]?\d[\d.,]*")
_UNCLOSED = (
    "A quotation mark is opened and never closed.",
    "Close it, or double it where it is part of the text.",
)


def csv_records(stream: io.TextIOBase, delimiter: str) -> Iterator[list[str]]:
    """Give the records of a text as the csv module splits them."""
    # Notes may be longer than the module's own limit of 131,072 characters.
    csv.field_size_limit(2**31 - 1)
    return csv.reader(stream, delimiter=delimiter)


class DelimitedBody:
    """The records of a text file below its column heads."""

    def __init__(
        self, path: Path, data: bytes, delimiter: str, skip: int, width: int
    ) -> None:
        self._path = path
        self._data = data
        self._delimiter = delimiter
        self._skip = skip
        self._width = width

    def load(self, numeric: Collection[int], /) -> Cells:
        """Give all records; see `Body`."""
        if len(self._data) >= SMALL_BYTES:
            # pandas takes the words true and false for the numbers 1 and 0.
            folded = self._data.lower()
            has_words = b"true" in folded or b"false" in folded
            cells = self._load_quickly(frozenset(() if has_words else numeric))
            if cells is not None:
                return cells
        return self._split

    def texts(self, rows: Collection[int]) -> Mapping[int, list[str]]:
        """Give some rows of the file as written; see `Body`."""
        wanted, found = set(rows), {}
        for row, cells in self._numbered():
            if row in wanted:
                found[row] = cells
                if len(found) == len(wanted):
                    break
        return found

    def head(self, count: int) -> list[list[str]]:
        """Give the first records as text; see `Body`."""
        filled = (cells for _, cells in self._numbered() if any(map(str.strip, cells)))
        return list(islice(filled, count))

    def _numbered(self) -> Iterator[tuple[int, list[str]]]:
        stream = io.TextIOWrapper(io.BytesIO(self._data), "utf-8", newline="")
        records = enumerate(csv_records(stream, self._delimiter), start=1)
        try:
            yield from islice(records, self._skip, None)
        except csv.Error as error:
            raise fault(self._path, f"The file cannot be split: {error}.") from error

    @cached_property
    def _split(self) -> Cells:
        """The records as the csv module splits them: slower, forgives ragged rows."""
        width = self._width
        lists: list[list[str]] = [[] for _ in range(width)]
        rows: list[int] = []
        long: dict[int, int] = {}
        swallowed: dict[int, int] = {}
        last: list[str] = []
        for row, cells in self._numbered():
            last = cells
            if not any(map(str.strip, cells)):
                continue
            if any(map(str.strip, cells[width:])):
                long[len(rows)] = len(cells)
            if any("\n" in cell or "\r" in cell for cell in cells):
                lines = swallowed_lines(cells, self._delimiter)
                swallowed.update({len(rows): lines} if lines else {})
            padded = cells[:width] + [""] * (width - len(cells))
            for column, cell in zip(lists, padded, strict=True):
                column.append(cell)
            rows.append(row)
        self._check_closed(last)
        columns = tuple(map(_column, lists))
        return Cells(columns, np.array(rows, dtype=np.int64), long, swallowed)

    def _check_closed(self, last: list[str]) -> None:
        # Text that runs to the end of the file was opened by a stray mark.
        if self._data.count(b'"') % 2 and last and len(last[-1].splitlines()) > 1:
            raise fault(self._path, *_UNCLOSED)

    def _load_quickly(self, numeric: frozenset[int]) -> Cells | None:
        """Give the records as pandas splits them, None where it finds them ragged."""
        import pandas as pd

        names = [str(i) for i in range(self._width + 1)]
        try:
            frame = self._frame(names, dict.fromkeys(map(str, numeric), "float64"))
        except pd.errors.ParserError:
            return None
        except ValueError:
            # Some column is not all numbers: leave it to pandas which.
            frame = self._frame(names, dict.fromkeys(map(str, numeric)))
        if (frame[names[-1]].to_numpy(dtype=object) != "").any():
            return None
        endless = {i for i in numeric if _is_endless(frame[names[i]])}
        if endless:
            # The text tells "inf" from a figure that is too large.
            return self._load_quickly(numeric - endless)
        columns: list[Column] = [
            _guessed(frame[name]) if i in numeric else frame[name].to_numpy()
            for i, name in enumerate(names[:-1])
        ]
        rows = np.arange(self._skip + 1, self._skip + 1 + len(frame), dtype=np.int64)
        cells = without_empty(columns, rows)
        ends = self._data.count(b"\n")
        if b"\r" in self._data:
            ends = max(ends, self._data.count(b"\r"))
        if ends <= self._skip + len(frame):
            return cells
        return replace(cells, swallowed=_swallowed(cells, self._delimiter))

    def _frame(self, names: list[str], numeric: dict[str, str | None]) -> Any:
        """Split with pandas; columns of no stated type are guessed as a whole."""
        import pandas as pd

        types: Any = {name: numeric.get(name, object) for name in names}
        return pd.read_csv(
            io.BytesIO(self._data),
            sep=self._delimiter,
            header=None,
            names=names,
            index_col=False,
            skiprows=self._skip,
            skip_blank_lines=False,
            dtype={name: kind for name, kind in types.items() if kind is not None},
            keep_default_na=False,
            na_values={name: [""] for name in numeric},
            low_memory=None not in numeric.values(),
            encoding="utf-8",
            engine="c",
        )


def swallowed_lines(record: Sequence[str], delimiter: str) -> int:
    """Give the lines of a record that a stray quotation mark made of several.

    Parameters
    ----------
    record : sequence of str
        The cells.
    delimiter : str
        What stands between them.

    Returns
    -------
    int
        0 where the record is one: no later line has as many cells as the first, and
        figures where that has them.
    """
    # Empty cells at the end may be filling of the reader's own.
    text = delimiter.join(record).rstrip(delimiter)
    first, *later = (line.split(delimiter) for line in text.splitlines())
    pattern = _figures(first)
    found = any(
        len(cells) >= len(first) and len(pattern & _figures(cells)) > 1
        for cells in later
    )
    return len(later) + 1 if found else 0


def _figures(cells: Sequence[str]) -> frozenset[int]:
    return frozenset(i for i, c in enumerate(cells) if _FIGURE.fullmatch(c.strip()))


def _swallowed(cells: Cells, delimiter: str) -> dict[int, int]:
    texts = [column for column in cells.columns if column.dtype == object]
    at = {
        i
        for column in texts
        for i, cell in enumerate(column.tolist())
        if "\n" in cell or "\r" in cell
    }
    found = {
        i: swallowed_lines([_written(c[i]) for c in cells.columns], delimiter)
        for i in sorted(at)
    }
    return {i: lines for i, lines in found.items() if lines}


def _written(cell: Any) -> str:
    return str(cell) if cell == cell else ""


def _column(cells: list[str]) -> Column:
    column: Column = np.empty(len(cells), dtype=object)
    column[:] = cells
    return column


def _is_endless(series: Any) -> bool:
    return series.dtype.kind == "f" and bool(np.isinf(series.to_numpy()).any())


def _guessed(series: Any) -> Column:
    """Give a column that pandas made what it liked of: numbers, or text again."""
    if series.dtype.kind in "iuf":
        return np.asarray(series.to_numpy(dtype=np.float64))
    texts = series.to_numpy(dtype=object).tolist()
    column: Column = np.empty(len(texts), dtype=object)
    column[:] = ["" if text != text else str(text) for text in texts]
    return column
