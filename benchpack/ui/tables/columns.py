"""What the columns of a table of records are."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from benchpack.model.fields import Field, Kind
from benchpack.units.formatting import KG_PER_LB, NumberStyle
from benchpack.units.labels import screen_label

_UNGROUPED = frozenset({"year"})


@dataclass(frozen=True, slots=True)
class TableColumn:
    """One column of a table, recorded or derived from recorded ones.

    Parameters
    ----------
    key : str
        Attribute of the record, or name of what is derived.
    title : str
        The head without its unit.
    kind : Kind
        What sort of value it holds.
    unit : str
        Unit in which it is shown.
    decimals : int
        Digits after the point.
    factor : float
        Shown value over stored value.
    grouped : bool
        Whether thousands are set apart.
    help : str
        One sentence on what it means.
    reason : str
        Why a cell may be unknown, as a sentence.
    field : Field or None
        The recorded field, None where the column is derived and cannot be edited.
    offers : tuple of str
        Texts that an editor offers to complete what is typed.
    """

    key: str
    title: str
    kind: Kind = Kind.TEXT
    unit: str = ""
    decimals: int = 1
    factor: float = 1.0
    grouped: bool = True
    help: str = ""
    reason: str = "Not recorded."
    field: Field | None = None
    offers: tuple[str, ...] = ()

    @property
    def head(self) -> str:
        """Title and unit, ``mass [kg]``."""
        return f"{self.title} [{self.unit}]" if self.unit else self.title

    @property
    def is_numeric(self) -> bool:
        """True for numbers and counts."""
        return self.kind in (Kind.NUMBER, Kind.COUNT)

    @property
    def entry_unit(self) -> str | None:
        """Unit of a number that is entered without one, None for the field's own."""
        return self.unit if self.factor != 1.0 else None


def mass_scale(style: NumberStyle) -> tuple[str, float]:
    """Give the unit label of masses and the shown mass over the mass in kg."""
    if style.mass_unit == "kg":
        return "kg", 1.0
    return style.mass_unit, 1 / KG_PER_LB


def recorded_column(
    field: Field, style: NumberStyle, *, currency: str = "CUR"
) -> TableColumn:
    """Give the column of a recorded field.

    Parameters
    ----------
    field : Field
        The field.
    style : NumberStyle
        The study's mass unit and decimal mark.
    currency : str
        Currency code that stands in for ``CUR``.
    """
    unit, factor = field.unit, 1.0
    if field.quantity == "mass" and field.unit == "kg":
        unit, factor = mass_scale(style)
    return TableColumn(
        key=field.name,
        title=field.title.replace("+-", "±"),
        kind=field.kind,
        unit=screen_label(unit, currency=currency) if unit else "",
        decimals=field.decimals,
        factor=factor,
        grouped=field.name not in _UNGROUPED,
        help=field.help,
        field=field,
    )


def recorded_columns(
    fields: Iterable[Field], style: NumberStyle, *, currency: str = "CUR"
) -> list[TableColumn]:
    """Give the columns of some recorded fields, see `recorded_column`."""
    return [recorded_column(field, style, currency=currency) for field in fields]
