"""Writing tables of gaps, parts and joints with their schemas beside them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path

from benchpack.errors import CancelledError, DataError, Problem
from benchpack.files.gap_csv import TableColumn, write_rows
from benchpack.files.reading import write_any
from benchpack.model.library import Library
from benchpack.report.gap_table import Cell, gap_columns, gap_rows
from benchpack.report.joints_table import joint_columns, joint_rows
from benchpack.report.parts_table import part_columns, part_rows
from benchpack.results.inventory import Inventory
from benchpack.results.results import Results
from benchpack.session.state import State


def write_gap_csv(
    results: Results, path: Path, *, cancelled: Callable[[], bool] | None = None
) -> None:
    """Write the gaps of a study as CSV and its Table Schema beside it.

    Parameters
    ----------
    results : Results
        Results with a comparison.
    path : Path
        The CSV to write; the schema goes to the same name ending in
        ``.schema.json``.
    cancelled : callable, optional
        Asked between rows whether to stop; nothing is written then.

    Raises
    ------
    CancelledError
        When it was stopped.
    DataError
        When there is nothing to compare, or the file cannot be written.
    """
    if results.comparison is None:
        problem = results.missing or Problem("There is nothing to compare.")
        raise DataError(problem)
    columns = gap_columns(results.study.currency)
    schema = [
        TableColumn(
            name=column.name,
            type="number" if column.is_number else "string",
            unit=column.unit,
            description=column.description,
        )
        for column in columns
    ]
    rows = _watched(gap_rows(results), cancelled)
    write_rows(path, [c.name for c in columns], rows, schema=schema)


def _watched(
    rows: Iterable[list[Cell]], cancelled: Callable[[], bool] | None
) -> Iterator[list[Cell]]:
    for row in rows:
        if cancelled is not None and cancelled():
            raise CancelledError("the table of gaps")
        yield row


def write_joints_csv(inventory: Inventory, path: Path) -> None:
    """Write the joints of a pack as CSV and its Table Schema beside it.

    Parameters
    ----------
    inventory : Inventory
        The joints; masses that were worked out are filled in and say so.
    path : Path
        The CSV to write; the schema goes to the same name ending in
        ``.schema.json``. It reads back as a table of joints.

    Raises
    ------
    DataError
        When no joints are recorded, or the file cannot be written.
    """
    if not inventory.facts:
        raise DataError(Problem(f"No joints of {inventory.pack} are recorded."))
    columns = joint_columns(inventory.rates.currency)
    schema = [
        TableColumn(column.name, column.type, column.unit, column.description)
        for column in columns
    ]
    heads = [column.name for column in columns]
    write_rows(path, heads, joint_rows(inventory), schema=schema)


def write_parts_csv(library: Library, packs: Sequence[str], path: Path) -> None:
    """Write the parts of some packs as CSV and its Table Schema beside it.

    Parameters
    ----------
    library : Library
        The records.
    packs : sequence of str
        Names of the packs: one, or those of `study_scope.library_of_study`.
    path : Path
        The CSV to write; the schema goes to the same name ending in
        ``.schema.json``. It reads back as a table of parts.

    Raises
    ------
    DataError
        When no parts are recorded, or the file cannot be written.
    """
    if not any(library.parts_of(pack) for pack in packs):
        whose = packs[0] if len(packs) == 1 else "these packs"
        raise DataError(Problem(f"No parts of {whose} are recorded."))
    columns = part_columns()
    schema = [
        TableColumn(column.name, column.type, column.unit, column.description)
        for column in columns
    ]
    heads = [column.name for column in columns]
    write_rows(path, heads, part_rows(library, packs), schema=schema)


def write_copy(state: State, path: Path) -> None:
    """Write everything that is open in the form that the ending of a path asks for.

    Parameters
    ----------
    state : State
        What is open.
    path : Path
        ``NAME.benchpack``, ``NAME.xlsx``, ``NAME.csv`` or a Data Package.

    Raises
    ------
    BenchpackError
        When the form is not known or the file cannot be written.
    """
    write_any(state.library, path, currency=state.study.currency)
