"""Several tables, one per kind of record, as one library."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from benchpack.errors import Problem
from benchpack.files.cells import Reader
from benchpack.files.change_reading import Subjects, doubt_names
from benchpack.files.descriptor import RESOURCES, Resource
from benchpack.files.mapping import head_currency, suggest_mapping
from benchpack.files.part_reading import check_owners, check_totals, made_records
from benchpack.files.record_reading import Pace, read_rows
from benchpack.files.sheet import Sheet
from benchpack.files.tables import read_packs
from benchpack.model.change import Change
from benchpack.model.library import Library, by_pack, by_study
from benchpack.model.pack_table import PackTable


@dataclass(frozen=True, slots=True)
class Reading:
    """A library as read, and what is wrong with what was left out.

    Parameters
    ----------
    library : Library
        What was accepted.
    problems : tuple of Problem
        Errors refuse their row, warnings let it pass.
    source : str
        What it was read from.
    currency : str
        Currency of all money, empty where none is named.
    rows_read : int
        Rows of all tables; each is accepted or has an error.
    alone : tuple of str
        Of a file that holds parts or joints and no packs: the tables it holds.
    """

    library: Library
    problems: tuple[Problem, ...] = ()
    source: str = ""
    currency: str = ""
    rows_read: int = 0
    alone: tuple[str, ...] = ()


@dataclass
class _Found:
    records: dict[str, Any] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    rows_read: int = 0


def collect(
    sheets: Mapping[str, Sheet],
    *,
    source: str,
    title: str = "",
    note: str = "",
    currency: str = "",
    verbatim: bool = True,
    pace: Pace | None = None,
    without_packs: bool = False,
) -> Reading:
    """Make a library of the tables of its records.

    Parameters
    ----------
    sheets : mapping of str to Sheet
        Tables by the names in `RESOURCES`.
    source : str
        What they were read from.
    title, note : str
        Title and note of the library.
    currency : str
        Currency of all money; empty to take it from the column heads.
    verbatim : bool
        True to keep spaces at the ends of texts.
    pace : Pace or None
        Progress and stopping.
    without_packs : bool
        True where the tables are of parts or joints whose packs are elsewhere.

    Raises
    ------
    DataError
        When a table lacks a column that every record needs.
    CancelledError
        When the person stopped it.
    """
    pace = pace or Pace()
    currency = currency or _named_currency(sheets)
    reader = Reader(currency=currency or None, verbatim=verbatim)
    found = _Found()
    packs = PackTable({})
    for resource in RESOURCES:
        sheet = sheets.get(resource.name)
        if sheet is None:
            continue
        if resource.record is None:
            read = read_packs(
                sheet,
                currency=currency or None,
                verbatim=verbatim,
                progress=pace.progress,
                cancelled=pace.cancelled,
            )
            packs = read.packs
            found.problems += read.problems
            found.rows_read += read.rows_read
        else:
            names = None if without_packs else packs.names.tolist()
            _add_records(found, resource, sheet, reader, names, pace)
    library = Library(
        packs=packs,
        parts=by_pack(found.records.get("parts", ())),
        joints=by_pack(found.records.get("joints", ())),
        materials=found.records.get("materials", ()),
        sources=found.records.get("sources", ()),
        studies=found.records.get("studies", ()),
        changes=by_study(found.records.get("changes", ())),
        assumption_sets=by_study(found.records.get("assumption_sets", ())),
        title=title,
        note=note,
    )
    return Reading(
        library,
        tuple(found.problems),
        source,
        currency,
        found.rows_read,
        alone=tuple(sheets) if without_packs else (),
    )


def _add_records(
    found: _Found,
    resource: Resource,
    sheet: Sheet,
    reader: Reader,
    packs: Sequence[str] | None,
    pace: Pace,
) -> None:
    if resource.record is None:
        return
    mapping = suggest_mapping(sheet, resource.fields)
    rows = read_rows(sheet, mapping, resource.fields, reader=reader, pace=pace)
    if resource.key[0] == "pack":
        if packs is not None:
            check_owners(rows, packs)
        if not reader.verbatim:
            check_totals(rows)
    elif resource.key[0] == "study":
        studies = found.records.get("studies", ())
        check_owners(rows, [study.name for study in studies], kind="study")
        if resource.record is Change:
            parts, joints = (found.records.get(n, ()) for n in ("parts", "joints"))
            doubt_names(rows, Subjects.of(studies, parts, joints))
    records: tuple[Any, ...] = made_records(
        rows, resource.record, pace, unique=resource.key
    )
    found.records[resource.name] = records
    found.problems += rows.problems()
    found.rows_read += len(rows)


def _named_currency(sheets: Mapping[str, Sheet]) -> str:
    heads = (head for sheet in sheets.values() for head in sheet.header)
    return next(filter(None, map(head_currency, heads)), "")
