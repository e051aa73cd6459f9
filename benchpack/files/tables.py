"""Loose tables: packs, parts and joints from CSV, TSV, XLSX and ODS files."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path
from typing import Generic

from benchpack.errors import Problem
from benchpack.files.cells import Reader
from benchpack.files.delimited import read_delimited
from benchpack.files.encodings import kind_of
from benchpack.files.faults import fault
from benchpack.files.mapping import Mapping, known_heads, suggest_mapping
from benchpack.files.pack_reading import (
    accepted_packs,
    check_hand_made,
    check_names,
    check_packs,
)
from benchpack.files.part_reading import (
    RecordT,
    check_owners,
    check_totals,
    made_records,
)
from benchpack.files.record_reading import Cancelled, Pace, Progress, read_rows
from benchpack.files.sheet import Sheet
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part

__all__ = [
    "Mapping",
    "RecordsReading",
    "Sheet",
    "TableReading",
    "read_joints",
    "read_packs",
    "read_parts",
    "read_sheet",
    "suggest_mapping",
]


@dataclass(frozen=True, slots=True)
class TableReading:
    """The packs of a table and what is wrong with the rest of it.

    Parameters
    ----------
    packs : PackTable
        The accepted packs, in the order of the file.
    problems : tuple of Problem
        Errors refuse their row, warnings let it pass.
    rows_read : int
        Rows that are not empty; each is accepted or has an error.
    replaced : int
        How many of the accepted packs have the name of an existing one.
    """

    packs: PackTable
    problems: tuple[Problem, ...]
    rows_read: int
    replaced: int = 0

    @property
    def accepted(self) -> int:
        """Number of rows that became packs."""
        return len(self.packs)

    @property
    def refused(self) -> int:
        """Number of rows that did not."""
        return self.rows_read - self.accepted


@dataclass(frozen=True, slots=True)
class RecordsReading(Generic[RecordT]):
    """The records of a table and what is wrong with the rest of it.

    Parameters
    ----------
    records : tuple
        The accepted records, in the order of the file.
    problems : tuple of Problem
        Errors refuse their row, warnings let it pass.
    rows_read : int
        Rows that are not empty; each is accepted or has an error.
    """

    records: tuple[RecordT, ...]
    problems: tuple[Problem, ...]
    rows_read: int

    @property
    def accepted(self) -> int:
        """Number of rows that became records."""
        return len(self.records)

    @property
    def refused(self) -> int:
        """Number of rows that did not."""
        return self.rows_read - self.accepted


def read_sheet(path: Path, *, sheet: str | None = None) -> Sheet:
    """Read a table as it stands, by its contents and whatever its ending.

    Parameters
    ----------
    path : Path
        A CSV, TSV or semicolon CSV file, or an XLSX, XLS or ODS workbook.
    sheet : str or None
        Name of the sheet of a workbook; the first that looks like packs by default.

    Raises
    ------
    DataError
        When it cannot be read or is no table.
    """
    path = Path(path)
    kind = kind_of(path)
    if kind == "workbook":
        from benchpack.files.workbook_reading import read_workbook_sheet

        return read_workbook_sheet(path, sheet=sheet, recognised=known_heads)
    if kind != "text":
        raise fault(
            path,
            f"This is a {kind}, not a table.",
            "Choose a CSV, XLSX or ODS file.",
        )
    return read_delimited(path, recognised=known_heads)


def read_packs(
    sheet: Sheet,
    mapping: Mapping | None = None,
    *,
    existing: Collection[str] = (),
    replace_existing: bool = False,
    decimal: str | None = None,
    currency: str | None = None,
    verbatim: bool = False,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> TableReading:
    """Make packs of a sheet; every row is accepted or reported.

    A row is refused when a mapped figure or word cannot be read or cannot be meant;
    what is only unusual draws a warning. Unmapped columns go to the note.

    Parameters
    ----------
    sheet : Sheet
        The table.
    mapping : Mapping or None
        What the columns mean, guessed from the heads by default.
    existing : collection of str
        Names of packs that the library has.
    replace_existing : bool
        True to accept packs that have the name of an existing one.
    decimal : {".", ","} or None
        The decimal mark; found column by column by default.
    currency : str or None
        The currency that money has to be in; any by default.
    verbatim : bool
        True to keep spaces at the ends of texts.
    progress : callable or None
        Told ``(done, total, words)``; a total of 0 means not known.
    cancelled : callable or None
        Gives True to stop.

    Raises
    ------
    DataError
        When the table lacks name, energy or mass.
    CancelledError
        When the person stopped it.
    """
    pace = Pace(progress, cancelled)
    meant = mapping or suggest_mapping(sheet, PACK_FIELDS)
    reader = Reader(decimal, currency, verbatim)
    rows = read_rows(sheet, meant, PACK_FIELDS, reader=reader, pace=pace)
    distinct = not verbatim and check_hand_made(rows)
    check_packs(rows, pace)
    replaced = check_names(rows, existing, replace=replace_existing, distinct=distinct)
    pace.step(len(rows), len(rows), "Done")
    return TableReading(accepted_packs(rows), rows.problems(), len(rows), replaced)


def read_parts(
    sheet: Sheet,
    mapping: Mapping | None = None,
    *,
    packs: Collection[str],
    pack: str = "",
    decimal: str | None = None,
    currency: str | None = None,
    verbatim: bool = False,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> RecordsReading[Part]:
    """Make parts of a sheet; every row is accepted or reported.

    Parameters
    ----------
    sheet, mapping
        As for `read_packs`.
    packs : collection of str
        Names of the packs there are; parts of others are refused.
    pack : str
        The pack of all parts, where no column names it.
    decimal, currency, verbatim, progress, cancelled
        As for `read_packs`.

    Raises
    ------
    DataError
        When the table lacks pack, and none is given, or part.
    CancelledError
        When the person stopped it.
    """
    pace = Pace(progress, cancelled)
    meant = mapping or suggest_mapping(sheet, PART_FIELDS)
    reader = Reader(decimal, currency, verbatim)
    rows = read_rows(sheet, meant, PART_FIELDS, reader=reader, pace=pace, pack=pack)
    check_owners(rows, packs)
    if not verbatim:
        check_totals(rows)
    records = made_records(rows, Part, pace)
    return RecordsReading(records, rows.problems(), len(rows))


def read_joints(
    sheet: Sheet,
    mapping: Mapping | None = None,
    *,
    packs: Collection[str],
    pack: str = "",
    decimal: str | None = None,
    currency: str | None = None,
    verbatim: bool = False,
    progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> RecordsReading[Joint]:
    """Make joints of a sheet; every row is accepted or reported.

    Parameters
    ----------
    sheet, mapping, packs, pack, decimal, currency, verbatim, progress, cancelled
        As for `read_parts`.

    Raises
    ------
    DataError
        When the table lacks pack, and none is given, or joint.
    CancelledError
        When the person stopped it.
    """
    pace = Pace(progress, cancelled)
    meant = mapping or suggest_mapping(sheet, JOINT_FIELDS)
    reader = Reader(decimal, currency, verbatim)
    rows = read_rows(sheet, meant, JOINT_FIELDS, reader=reader, pace=pace, pack=pack)
    check_owners(rows, packs)
    if not verbatim:
        check_totals(rows)
    records = made_records(rows, Joint, pace)
    return RecordsReading(records, rows.problems(), len(rows))
