"""Tables in text files: finding the delimiter and the column heads."""

from __future__ import annotations

import csv
import io
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from benchpack.files.delimited_body import DelimitedBody, csv_records
from benchpack.files.encodings import read_utf8
from benchpack.files.faults import fault
from benchpack.files.sheet import Sheet

DELIMITERS = (",", ";", "\t", "|")
_HEAD_ROWS = 40


def read_delimited(
    path: Path,
    *,
    recognised: Callable[[Sequence[str]], int],
    delimiter: str = "",
) -> Sheet:
    """Read a CSV, TSV or semicolon CSV file.

    Parameters
    ----------
    path : Path
        The file; its ending does not matter.
    recognised : callable
        Counts the cells of a row that are known column heads.
    delimiter : str
        What stands between cells; found by the contents when empty.

    Raises
    ------
    DataError
        When the file cannot be read or holds no table.
    """
    data, encoding = read_utf8(path)
    start = _beginning(data)
    choices = (delimiter,) if delimiter else DELIMITERS
    tried = [_try(start, mark, recognised) for mark in choices]
    best = max(tried, key=lambda attempt: attempt.score)
    if best.header_index < 0:
        raise fault(path, "The file holds no table.", "Save the table as CSV.")
    head = _whole_head(data, best) if len(start) < len(data) else best.head
    joined = with_units(head, best.below)
    skip = best.header_index + (1 if joined is None else 2)
    head = head if joined is None else joined
    body = DelimitedBody(path, data, best.delimiter, skip, len(head))
    return Sheet(
        source=path.name,
        header=tuple(head),
        header_row=best.header_index + 1,
        body=body,
        encoding=encoding,
        delimiter=best.delimiter,
    )


@dataclass(frozen=True)
class _Attempt:
    delimiter: str
    head: list[str]
    header_index: int
    score: tuple[float, ...]
    below: Sequence[str] = ()


def _beginning(data: bytes) -> str:
    """Give the first records, cut at a line end."""
    start = data[:65536]
    if len(start) < len(data):
        start = start[: max(start.rfind(b"\n"), start.rfind(b"\r")) + 1] or start
    return start.decode("utf-8", errors="ignore")


def _try(
    start: str, delimiter: str, recognised: Callable[[Sequence[str]], int]
) -> _Attempt:
    try:
        rows = list(islice(csv_records(io.StringIO(start, newline=""), delimiter), 400))
    except csv.Error:
        rows = []
    at, known = header_index(rows, recognised)
    if at < 0:
        return _Attempt(delimiter, [], -1, (-1, 0, 0))
    head = trimmed(rows[at])
    widths = Counter(len(row) for row in rows[at + 1 :] if any(row))
    usual, times = widths.most_common(1)[0] if widths else (len(head), 1)
    share = times / max(sum(widths.values()), 1) if usual >= len(head) else 0.0
    score = (known, len(head) > 1, share, len(head))
    return _Attempt(delimiter, head, at, score, next(iter(rows[at + 1 :]), ()))


def header_index(
    rows: Sequence[Sequence[str]], recognised: Callable[[Sequence[str]], int]
) -> tuple[int, int]:
    """Find the row of the column heads and how many of them are known.

    The row with most known heads among the first, else the first that has several
    cells, else the first that has any; -1 where all are empty.
    """
    counts: list[int] = []
    for row in rows[:_HEAD_ROWS]:
        counts.append(recognised(row))
        if counts[-1] >= 2 and counts[-1] == len(trimmed(row)):
            break
    best = max(counts, default=0)
    if best >= 2:
        return counts.index(best), best
    filled = [sum(bool(str(cell).strip()) for cell in row) for row in rows]
    for least in (2, 1):
        for i, number in enumerate(filled):
            if number >= least:
                return i, counts[i] if i < len(counts) else 0
    return -1, 0


def _whole_head(data: bytes, attempt: _Attempt) -> list[str]:
    """Give the heads from the file itself, for they may be longer than its start."""
    stream = io.TextIOWrapper(io.BytesIO(data), "utf-8", newline="")
    records = csv_records(stream, attempt.delimiter)
    return trimmed(next(islice(records, attempt.header_index, None)))


def with_units(head: Sequence[str], below: Sequence[str]) -> list[str] | None:
    """Give the heads with the units that stand in the row below them.

    Parameters
    ----------
    head : sequence of str
        The column heads.
    below : sequence of str
        The row below.

    Returns
    -------
    list of str or None
        ``mass [lb]`` for ``mass`` above ``lb``; None where the row is no row of units.
    """
    from benchpack.files.mapping import is_head_of_words
    from benchpack.units.parsing import split_header

    joined = list(head)
    found = 0
    for i, cell in enumerate(trimmed(below)):
        text = cell.strip().strip("[]()").strip()
        if not text.strip("-\u2013\u2014"):
            continue
        unit = split_header(f"x [{text}]")[1]
        if i >= len(joined) or unit is None or is_head_of_words(joined[i]):
            return None
        found += 1
        named = split_header(joined[i])[1]
        if named is None:
            joined[i] = f"{joined[i].strip()} [{text}]"
        elif named != unit:
            return None
    # One alone may be a short name: packs are called F or L too.
    return joined if found > 1 else None


def trimmed(row: Sequence[str]) -> list[str]:
    """Give a row of heads without empty cells at its end."""
    cells = list(row)
    while cells and not str(cells[-1]).strip():
        cells.pop()
    return cells
