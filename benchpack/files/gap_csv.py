"""Tables for spreadsheets: CSV with a Table Schema beside it."""

from __future__ import annotations

import csv
import io
import json
import math
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from numbers import Integral
from pathlib import Path
from typing import Any

from benchpack.errors import RequestError
from benchpack.files.atomic import replacing

_INVISIBLE = "\ufeff\u200b\u200c\u200d\u200e\u200f\u2060"
# A sign that starts a formula, after whatever is not seen; or a break at the start.
_RUNS = re.compile(rf"[\s\x00-\x1f{_INVISIBLE}]*[=+\-@＝＋－＠]|[\t\r\n]")


@dataclass(frozen=True, slots=True)
class TableColumn:
    """One column of a written table.

    Parameters
    ----------
    name : str
        The column head, with its unit in brackets where it has one.
    type : str
        Type of Table Schema: string, number, integer, boolean.
    unit : str
        The unit, empty where there is none.
    description : str
        What stands in the column.
    """

    name: str
    type: str
    unit: str = ""
    description: str = ""

    def schema(self) -> dict[str, str]:
        """Give the column as a field of a Table Schema."""
        found = {"name": self.name, "type": self.type}
        if self.unit:
            found["unit"] = self.unit
        if self.description:
            found["description"] = self.description
        return found


def write_rows(
    path: Path,
    header: Sequence[str],
    rows: Iterable[Sequence[object]],
    *,
    schema: Sequence[TableColumn],
) -> None:
    """Write a table as CSV, and its Table Schema to ``NAME.schema.json``.

    UTF-8 without mark, CRLF, decimal point, full precision, empty where a value is
    unknown. Text that a spreadsheet would run as a formula gets an apostrophe in
    front; numbers stay numbers. (A Data Package keeps such text as it is: it has to
    come back equal.)

    Parameters
    ----------
    path : Path
        The CSV file.
    header : sequence of str
        Column heads, the names in `schema`.
    rows : iterable of sequence
        Cells: text, numbers, None or NaN for unknown.
    schema : sequence of TableColumn
        What the columns are.

    Raises
    ------
    RequestError
        When the heads are not those of the schema, or a row has not as many cells.
    DataError
        When the file cannot be written.
    """
    path = Path(path)
    if list(header) != [column.name for column in schema]:
        raise RequestError("The heads of the table are not those of its schema.")
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(header)
    for row in rows:
        if len(row) != len(header):
            raise RequestError(f"A row has {len(row)} cells, not {len(header)}.")
        writer.writerow([spreadsheet_cell(value) for value in row])
    fields = [column.schema() for column in schema]
    described = {"fields": fields, "missingValues": [""]}
    text = json.dumps(described, ensure_ascii=False, indent=2) + "\n"
    # Both are there before one takes its place: a full disk leaves neither.
    beside = path.with_suffix(".schema.json")
    with replacing(beside) as fresh_schema, replacing(path) as fresh:
        fresh.write_bytes(stream.getvalue().encode("utf-8"))
        fresh_schema.write_bytes(text.encode("utf-8"))


def spreadsheet_cell(value: Any) -> str:
    """Give a value as CSV text that no spreadsheet runs.

    Parameters
    ----------
    value : object
        Text, a number, True or False, or None.

    Examples
    --------
    >>> spreadsheet_cell(-1.5), spreadsheet_cell("=1+1"), spreadsheet_cell(None)
    ('-1.5', "'=1+1", '')
    """
    if value is None:
        return ""
    if isinstance(value, str):
        return harmless(str(value))
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Integral):
        return str(int(value))
    number = float(value)
    return repr(number) if math.isfinite(number) else ""


def harmless(text: str) -> str:
    """Give a text with an apostrophe in front where a spreadsheet would run it.

    Parameters
    ----------
    text : str
        The text of a cell.
    """
    # An apostrophe that is there already counts for nothing: the way back is one.
    return "'" + text if _RUNS.match(text.lstrip("'")) else text


def without_apostrophe(text: str) -> str:
    """Give the text that `harmless` made this of; other text stays.

    Parameters
    ----------
    text : str
        The text of a cell.

    Examples
    --------
    >>> without_apostrophe("'=1+1"), without_apostrophe("'tis")
    ('=1+1', "'tis")
    """
    if text[:1] == "'" and harmless(text[1:]) == text:
        return text[1:]
    return text
