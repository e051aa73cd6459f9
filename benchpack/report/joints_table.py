"""The joints of a pack as a table: its columns, with computed masses filled in."""

from __future__ import annotations

import math
from collections.abc import Iterator

from benchpack.model.fields import Field, Kind
from benchpack.model.joint import JOINT_FIELDS
from benchpack.report.handed_column import HandedColumn
from benchpack.results.inventory import Inventory
from benchpack.results.joint_facts import JointFacts

JointCell = str | int | float | bool | None
"""A cell: text, number or yes and no; None where nothing is known."""

_TYPES = {Kind.NUMBER: "number", Kind.COUNT: "integer", Kind.FLAG: "boolean"}
_FILLED = {
    "mass_each_g": "Worked out where none was entered, see known by.",
    "known_by": "A mass that was worked out says geometry, standard table or estimate.",
    "time_each_s": "As entered.",
    "cost_each": "As entered.",
}


def joint_columns(currency: str) -> tuple[HandedColumn, ...]:
    """Give the columns, those of a joint in every file.

    Parameters
    ----------
    currency : str
        Currency code for the column of money.
    """
    return tuple(
        HandedColumn(
            name=field.header(currency=currency),
            type=_TYPES.get(field.kind, "string"),
            unit=field.unit.replace("CUR", currency),
            description=f"{field.help} {_FILLED.get(field.name, '')}".strip(),
        )
        for field in JOINT_FIELDS
    )


def joint_rows(inventory: Inventory) -> Iterator[list[JointCell]]:
    """Give one row per joint in the order of the inventory.

    Parameters
    ----------
    inventory : Inventory
        The joints of a pack.

    Yields
    ------
    list
        Cells in the order of `joint_columns`, full precision. The mass is that of one
        piece or of one whole line, worked out where none was entered; time and cost
        are as entered, so that what is usual stays to be filled in.
    """
    for facts in inventory.facts:
        yield [_cell(facts, field) for field in JOINT_FIELDS]


def _cell(facts: JointFacts, field: Field) -> JointCell:
    if field.name == "mass_each_g":
        return None if math.isnan(facts.mass_each_g) else facts.mass_each_g
    if field.name == "known_by":
        return str(facts.known_by)
    value: JointCell = getattr(facts.joint, field.name)
    return str(value) if field.kind is Kind.CHOICE else value
