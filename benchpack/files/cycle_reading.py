"""A drive cycle from a table: time and speed, in even steps."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.cells import Reader
from benchpack.files.mapping import Mapping, suggest_mapping
from benchpack.files.pace import Cancelled, Pace, Progress
from benchpack.files.record_reading import Rows, read_rows
from benchpack.files.sheet import Sheet
from benchpack.files.tables import read_sheet
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
    meant = suggest_mapping(sheet, CYCLE_FIELDS)
    rows = read_rows(
        sheet,
        meant,
        CYCLE_FIELDS,
        reader=Reader(decimal),
        pace=Pace(progress, cancelled),
    )
    faults = [p for p in rows.problems() if p.severity is Severity.ERROR]
    if faults:
        raise DataError(*faults)
    times, speeds = rows.values["time_s"], rows.values["speed_kmh"]
    _check_cells(rows, times, speeds)
    step_s, even, notes = _even(times, speeds, sheet)
    try:
        cycle = DriveCycle(path.stem, step_s, tuple(even.round(6).tolist()))
    except DataError as error:
        raise DataError(*(p.at(source=sheet.source) for p in error.problems)) from error
    return CycleReading(cycle, len(rows), notes)


def _table(path: Path) -> Sheet:
    """Give the table of a file whose heads mean time and speed."""
    first = read_sheet(path)
    for name in (first.name, *first.sheet_names):
        sheet = first if name == first.name else read_sheet(path, sheet=name)
        if _holds_cycle(suggest_mapping(sheet, CYCLE_FIELDS)):
            return sheet
    missing = [
        field.header()
        for field in CYCLE_FIELDS
        if suggest_mapping(first, CYCLE_FIELDS).column_of(field.name) is None
    ]
    raise DataError(
        Problem(
            f"There is no column {' and none '.join(missing)}.",
            _REMEDY,
            source=first.source,
            row=first.header_row,
        )
    )


def _holds_cycle(meant: Mapping) -> bool:
    return all(meant.column_of(field.name) is not None for field in CYCLE_FIELDS)


def _check_cells(rows: Rows, times: FloatArray, speeds: FloatArray) -> None:
    """Refuse cells without a figure, and times that do not rise."""
    for name, column in (("time_s", times), ("speed_kmh", speeds)):
        for at in np.flatnonzero(np.isnan(column))[:1].tolist():
            what = f"There is no {name.partition('_')[0]} in this row."
            rows.add(at, name, Problem(what, "Fill it in, or delete the row."))
    falls = np.flatnonzero(~(np.diff(times) > 0))[:1] + 1
    if not np.isnan(times).any():
        for at in falls.tolist():
            what = f"The time {times[at]:g} s comes after {times[at - 1]:g} s."
            remedy = "Times have to rise from row to row: sort them, one row each."
            rows.add(at, "time_s", Problem(what, remedy))
    found = rows.problems()
    if found:
        raise DataError(*found)


def _even(
    times: FloatArray, speeds: FloatArray, sheet: Sheet
) -> tuple[float, FloatArray, tuple[Problem, ...]]:
    """Give step, speeds at even steps, and what had to be done to them."""
    if times.size < 2:
        what = f"The table has {times.size} rows, and a cycle two samples at least."
        raise DataError(Problem(what, _REMEDY, source=sheet.source))
    span = float(times[-1] - times[0])
    mean = span / (times.size - 1)
    if np.abs(np.diff(times) - mean).max() <= _EVEN * mean:
        _check_length(times.size, sheet)
        return float(f"{mean:.6g}"), speeds, ()
    count = int(span / EVEN_STEP_S + 1e-9) + 1
    _check_length(count, sheet)
    at = times[0] + EVEN_STEP_S * np.arange(float(count))
    note = Problem(
        f"The times are uneven; the speeds were brought to steps of {EVEN_STEP_S:g} s "
        "by linear interpolation.",
        "Give even steps to keep the speeds as they are.",
        source=sheet.source,
        column=CYCLE_FIELDS[0].header(),
        severity=Severity.WARNING,
    )
    return EVEN_STEP_S, np.interp(at, times, speeds), (note,)


def _check_length(count: int, sheet: Sheet) -> None:
    if count > MOST_SAMPLES:
        raise DataError(
            Problem(
                f"The drive cycle has {count} samples; at most {MOST_SAMPLES} are kept.",
                "Cut it, or give it in longer steps.",
                source=sheet.source,
            )
        )
