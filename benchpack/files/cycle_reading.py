"""A drive cycle from a table: time and speed, in even steps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.cells import Reader
from benchpack.files.delimited import read_delimited
from benchpack.files.encodings import kind_of
from benchpack.files.faults import fault
from benchpack.files.mapping import field_titles, folded, suggest_mapping
from benchpack.files.pace import Cancelled, Pace, Progress
from benchpack.files.record_reading import Rows, read_rows
from benchpack.files.sheet import Sheet
from benchpack.model.drive_cycle import MOST_SAMPLES, DriveCycle
from benchpack.model.fields import Field, Kind

FloatArray = NDArray[np.float64]

CYCLE_FIELDS: tuple[Field, ...] = (
    Field(
        "time_s",
        "time",
        Kind.NUMBER,
        "time",
        "s",
        required=True,
        ceiling=1e6,
        synonyms=("t", "seconds", "elapsed time", "second"),
        help="Seconds from the start.",
    ),
    Field(
        "speed_kmh",
        "speed",
        Kind.NUMBER,
        "speed",
        "km/h",
        required=True,
        ceiling=500,
        synonyms=("v", "velocity", "vehicle speed"),
        help="Speed of the vehicle.",
    ),
)
"""The two columns of a table that holds a drive cycle."""

EVEN_STEP_S = 1.0
"""Step to which uneven times are brought."""
_EVEN = 1e-3
_LEAST = 2
_DECIMALS = (3, 2, 1)
_REMEDY = "Use a table with the columns time [s] and speed [km/h]."


@dataclass(frozen=True, slots=True)
class CycleReading:
    """A drive cycle and what has to be known about it.

    Parameters
    ----------
    cycle : DriveCycle
        The cycle, named after its file.
    rows_read : int
        Rows of the table.
    notes : tuple of Problem
        What was done to it, as warnings: another step, for instance.
    """

    cycle: DriveCycle
    rows_read: int
    notes: tuple[Problem, ...] = ()


def read_cycle(
    path: Path,
    *,
    decimal: str | None = None,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> CycleReading:
    """Read a drive cycle.

    Even steps stay as they are; uneven times are brought to 1 s by linear
    interpolation, and the notes say so.

    Parameters
    ----------
    path : Path
        A CSV, TSV or semicolon CSV file, or a workbook, with the columns time and
        speed; their heads may name units.
    decimal : {".", ","} or None
        The decimal mark; found column by column by default.
    progress : callable or None
        Told ``(done, total, words)``.
    cancelled : callable or None
        Gives True to stop.

    Raises
    ------
    DataError
        When it cannot be read, holds no cycle, or one that is too long to be kept; with
        row, column and value where one cell is at fault.
    CancelledError
        When the person stopped it.
    """
    path = Path(path)
    sheet = _table(path)
    rows = read_rows(
        sheet,
        suggest_mapping(sheet, CYCLE_FIELDS),
        CYCLE_FIELDS,
        reader=Reader(decimal),
        pace=Pace(progress, cancelled),
    )
    _check_cells(rows)
    faults = [p for p in rows.problems() if p.severity is Severity.ERROR]
    if faults:
        raise DataError(*faults)
    try:
        step_s, speeds, notes = _even(rows.values["time_s"], rows.values["speed_kmh"])
        cycle, more = _kept(path.stem, step_s, speeds)
    except DataError as error:
        placed = (problem.at(source=sheet.source) for problem in error.problems)
        raise DataError(*placed) from error
    told = tuple(note.at(source=sheet.source) for note in (*notes, *more))
    return CycleReading(cycle, len(rows), told)


def _table(path: Path) -> Sheet:
    """Give the table of a file; what is wrong with it names the file alone."""
    try:
        return _best_table(path)
    except DataError as error:
        named = (problem.at(source=path.name) for problem in error.problems)
        raise DataError(*named) from error


def _best_table(path: Path) -> Sheet:
    """Give the table of a file, of a workbook the one whose heads are known best."""
    kind = kind_of(path)
    if kind == "workbook":
        from benchpack.files.workbook_reading import read_workbook_sheet

        return read_workbook_sheet(path, recognised=_known_heads)
    if kind != "text":
        raise fault(path, f"This is a {kind}, not a table.", _REMEDY)
    return read_delimited(path, recognised=_known_heads)


def _known_heads(row: Sequence[str]) -> int:
    from benchpack.units.parsing import split_header

    titles = {title for field in CYCLE_FIELDS for title in field_titles(field)}
    texts = (str(cell).strip() for cell in row)
    return sum(folded(split_header(text)[0]) in titles for text in texts if text)


def _check_cells(rows: Rows) -> None:
    """Refuse figures that cannot be meant, and times that do not rise."""
    for column in CYCLE_FIELDS:
        values = rows.values[column.name]
        for at in np.flatnonzero((values < 0) | (values > column.ceiling)).tolist():
            refusal = column.refusal(float(values[at]))
            if refusal is not None:
                rows.add(at, column.name, refusal)
    times = rows.values["time_s"]
    for at in (np.flatnonzero(np.diff(times) <= 0)[:1] + 1).tolist():
        what = f"The time {times[at]:g} s comes after {times[at - 1]:g} s."
        remedy = "Times have to rise from row to row: sort them, one row each."
        rows.add(at, "time_s", Problem(what, remedy))


def _even(
    times: FloatArray, speeds: FloatArray
) -> tuple[float, FloatArray, tuple[Problem, ...]]:
    """Give step, speeds at even steps, and what had to be done to them."""
    if times.size < _LEAST:
        what = f"The table has {times.size} rows; a cycle has two samples at least."
        raise DataError(Problem(what, _REMEDY))
    span = float(times[-1] - times[0])
    mean = span / (times.size - 1)
    if np.abs(np.diff(times) - mean).max() <= _EVEN * mean:
        _check_length(times.size)
        return float(f"{mean:.6g}"), speeds, ()
    count = int(span / EVEN_STEP_S + _EVEN) + 1
    _check_length(count)
    at = times[0] + EVEN_STEP_S * np.arange(float(count))
    note = Problem(
        f"The times are uneven; the speeds were brought to steps of {EVEN_STEP_S:g} s "
        "by linear interpolation.",
        "Give even steps to keep the speeds as they are.",
        column=CYCLE_FIELDS[0].header(),
        severity=Severity.WARNING,
    )
    return EVEN_STEP_S, np.interp(at, times, speeds), (note,)


def _check_length(count: int) -> None:
    if count > MOST_SAMPLES:
        what = f"The drive cycle has {count} samples; {MOST_SAMPLES} at most are kept."
        raise DataError(Problem(what, "Cut it, or give it in longer steps."))


def _kept(
    name: str, step_s: float, speeds: FloatArray
) -> tuple[DriveCycle, tuple[Problem, ...]]:
    """Give the cycle with as many digits as there is room for."""
    most, *fewer = _DECIMALS
    try:
        return _rounded(name, step_s, speeds, decimals=most), ()
    except DataError:
        decimals, last = fewer
    try:
        cycle = _rounded(name, step_s, speeds, decimals=decimals)
    except DataError:
        decimals = last
        cycle = _rounded(name, step_s, speeds, decimals=decimals)
    note = Problem(
        f"The speeds were rounded to {10.0**-decimals:g} km/h, so that the whole cycle "
        "can be kept.",
        column=CYCLE_FIELDS[1].header(),
        severity=Severity.WARNING,
    )
    return cycle, (note,)


def _rounded(
    name: str, step_s: float, speeds: FloatArray, *, decimals: int
) -> DriveCycle:
    return DriveCycle(name, step_s, tuple(speeds.round(decimals).tolist()))
