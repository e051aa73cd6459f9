"""The columns of the joints table, recorded and computed."""

from __future__ import annotations

from dataclasses import replace

from benchpack.model.families import FAMILY_NAMES
from benchpack.model.fields import Kind
from benchpack.model.joint import JOINT_FIELDS
from benchpack.ui.tables.columns import TableColumn, recorded_column
from benchpack.units.formatting import NumberStyle

_FIELD = {field.name: field for field in JOINT_FIELDS}
_ORDER = (
    "name",
    "designation",
    "count",
    "mass_all_g",
    "joins",
    "to",
    "family",
    "property_class",
    "length_mm",
    "mass_each_g",
    "known_by",
    "time_each_s",
    "time_all_s",
    "cost_each",
    "money_all",
    "carry_over",
    "reason",
    "role",
    "tightening",
    "subsystem",
    "note",
)
"""What one asks of a joint first comes first: what, how many, how heavy, where."""
_REASONS = {
    "length_mm": "A point joint has none; that of a seam or bead is not recorded.",
    "mass_each_g": "Not recorded, and not to be computed: weigh 20 and divide.",
    "time_each_s": "Not recorded, and nothing is usual for this family.",
    "cost_each": "Not recorded, and nothing is usual for this family and currency.",
}


def table_columns(
    style: NumberStyle, currency: str, *, parts: tuple[str, ...]
) -> list[TableColumn]:
    """Give the columns of the joints table from left to right.

    Parameters
    ----------
    style : NumberStyle
        The study's mass unit and decimal mark.
    currency : str
        The study's currency.
    parts : tuple of str
        Parts of the pack, offered for what a joint joins.
    """
    offers = {"family": FAMILY_NAMES, "joins": parts, "to": parts}
    computed = {column.key: column for column in _computed(currency)}
    columns = []
    for key in _ORDER:
        if key in computed:
            columns.append(computed[key])
            continue
        column = recorded_column(_FIELD[key], style, currency=currency)
        columns.append(
            replace(
                column,
                offers=offers.get(key, ()),
                reason=_REASONS.get(key, column.reason),
            )
        )
    return columns


def _computed(currency: str) -> tuple[TableColumn, ...]:
    return (
        TableColumn(
            "mass_all_g",
            "mass of all",
            Kind.NUMBER,
            "g",
            help="Count times mass each.",
            reason="It needs the mass of one.",
        ),
        TableColumn(
            "time_all_s",
            "time of all",
            Kind.NUMBER,
            "s",
            decimals=0,
            help="Count times time each.",
            reason="It needs the seconds of one.",
        ),
        TableColumn(
            "money_all",
            "money of all",
            Kind.NUMBER,
            currency,
            decimals=2,
            help="Pieces, and their time at the study's labour and station rates.",
            reason="It needs cost and seconds of one.",
        ),
    )
