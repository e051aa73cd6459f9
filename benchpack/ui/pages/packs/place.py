"""Where on the page a problem belongs."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.model.library import Library
from benchpack.ui.pages.packs.record_panel import RecordPanel
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.view import RecordTableView


def column_key(said: str, columns: Sequence[TableColumn]) -> str:
    """Give the key of a column that a problem names by head, title or key.

    Parameters
    ----------
    said : str
        ``mass [kg]``, ``mass`` or ``mass_kg``.
    columns : sequence of TableColumn
        The columns of the table.

    Returns
    -------
    str
        Empty when no column is meant.
    """
    wanted = said.partition(" [")[0].casefold()
    for column in columns:
        titles = [column.title, column.key]
        titles += [column.field.title] if column.field else []
        if wanted in (title.casefold() for title in titles):
            return column.key
    return ""


def pack_with_part(library: Library, part: str, *, first: str) -> str:
    """Give the pack that holds a part, looking in one pack first; empty if none."""
    packs = dict.fromkeys((first, *library.parts))
    for pack in packs:
        if any(one.name == part for one in library.parts_of(pack)):
            return pack
    return ""


def go_to_cell(
    table: RecordTableView, panel: RecordPanel, *, row: int, key: str
) -> None:
    """Go to a pack's cell in the table, or to its field where the column is hidden.

    Parameters
    ----------
    table : RecordTableView
        The packs.
    panel : RecordPanel
        The selected pack, which is the one in that row.
    row : int
        Row of the pack in the library.
    key : str
        Key of the column, empty for none.
    """
    place = table.table.column_place(key)
    if place is not None and table.isColumnHidden(place):
        panel.go_to_field(key)
    else:
        table.go_to(row, key)
        table.setFocus()
