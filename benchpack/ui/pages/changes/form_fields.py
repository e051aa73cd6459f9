"""Which fields a change has by its kind, how they are shown and read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.change import CHANGE_FIELDS, RANGES, Change, ChangeKind
from benchpack.model.entry import parse_value
from benchpack.model.families import FAMILY_NAMES
from benchpack.model.fields import Field, Kind
from benchpack.model.name_lists import parse_names
from benchpack.model.process import PROCESS_NAMES
from benchpack.model.range_columns import with_ranges
from benchpack.model.ranges import Range, parse_range
from benchpack.results.proposal_effect import Effect
from benchpack.ui.tables.columns import TableColumn, recorded_column
from benchpack.units.formatting import NumberStyle, format_number
from benchpack.units.parsing import parse_number

_WHAT = ("name", "kind", "parts", "joints", "into", "subsystem")
_MADE = (
    "material",
    "process",
    "governs",
    "wall_mm",
    "stiffness_shape",
    "strength_shape",
    "rib_allowance",
    "uses_data_sheet",
)
_JOINT = ("family", "designation", "tightening", "count", "length_mm")
_RELEASE = ("release_chance", "programme", "requires", "excludes")
GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("What it does", _WHAT),
    ("How it is made", _MADE),
    ("The joint that comes", _JOINT),
    ("Figures: low, likely, high", RANGES),
    ("Release", _RELEASE),
    ("In words", ("rationale", "note")),
)
"""The groups of the form with the attributes in them."""
_LEFT_OUT: Mapping[ChangeKind, frozenset[str]] = {
    ChangeKind.REMOVE: frozenset({"into", "subsystem", "mass_kg", *_MADE, *_JOINT}),
    ChangeKind.SUBSTITUTE: frozenset({"joints", "into", "subsystem", *_JOINT}),
    ChangeKind.INTEGRATE: frozenset({"subsystem", *_JOINT}),
    ChangeKind.MOULD_IN: frozenset({"subsystem", *_JOINT}),
    ChangeKind.ADD: frozenset(
        {"parts", "joints", "governs", *_MADE[3:], *_JOINT[:3], "length_mm"}
    ),
    ChangeKind.SWAP_JOINTS: frozenset({"parts", "subsystem", *_MADE}),
    ChangeKind.ADJUST: frozenset({"into", "subsystem", *_MADE, *_JOINT}),
}
_UNITS = {"part_cost", "joining_cost", "tooling", "validation_cost"}
FIELDS = {field.name: field for field in CHANGE_FIELDS}
RANGE_FIELDS = {
    name: tuple(field for field in CHANGE_FIELDS if field.attribute == name)
    for name in RANGES
}
"""The three columns of each range."""


def is_shown(kind: ChangeKind, key: str) -> bool:
    """Tell whether a change of a kind has a field."""
    return key not in _LEFT_OUT[kind]


def form_column(
    key: str,
    style: NumberStyle,
    *,
    currency: str,
    materials: Sequence[str] = (),
) -> TableColumn:
    """Give a plain field as the form shows it.

    Parameters
    ----------
    key : str
        Attribute of a change.
    style : NumberStyle
        Decimal mark and mass unit.
    currency : str
        The study's currency.
    materials : sequence of str
        Materials of the library, offered while one is typed.
    """
    column = recorded_column(FIELDS[key], style, currency=currency)
    offers: dict[str, Sequence[str]] = {
        "material": materials,
        "process": PROCESS_NAMES,
        "family": FAMILY_NAMES,
    }
    if key == "release_chance":
        return replace(column, unit="%", factor=100.0, help="Chance of release.")
    return replace(column, offers=tuple(offers.get(key, ())))


def read_field(
    column: TableColumn, text: str, style: NumberStyle, *, currency: str
) -> Any:
    """Give the value that was entered in a plain field or a list of names.

    Raises
    ------
    DataError
        When it cannot be read.
    """
    field = FIELDS[column.key]
    if field.kind is Kind.NAMES:
        return parse_names(text, by_hand=True)
    if column.key == "release_chance":
        return _chance(text, style)
    value = parse_value(
        field,
        text.strip(),
        unit=column.entry_unit,
        decimal=style.decimal_mark,
        currency=currency,
    )
    if column.key == "kind":
        return ChangeKind(value)
    if column.key in ("stiffness_shape", "strength_shape") and value is None:
        return 1.0
    return 0.0 if column.key == "rib_allowance" and value is None else value


def _chance(text: str, style: NumberStyle) -> float:
    if not text.strip():
        return 1.0
    percent = parse_number(text.replace("%", ""), decimal=style.decimal_mark)
    if not 0 <= percent <= 100:
        what = f"The release chance is {percent:g} %."
        raise DataError(Problem(what, "It has to lie between 0 and 100 %."))
    return percent / 100


def range_unit(attribute: str, style: NumberStyle, *, currency: str) -> str:
    """Give the unit in which a range is shown."""
    if attribute in _UNITS:
        return currency
    return recorded_column(RANGE_FIELDS[attribute][0], style).unit


def range_texts(
    attribute: str, value: Range | None, style: NumberStyle, *, plain: bool = True
) -> tuple[str, str, str]:
    """Give the texts of a range for its three lines, empty where it is not given.

    Parameters
    ----------
    attribute : str
        Attribute of a change.
    value : Range or None
        The range.
    style : NumberStyle
        Decimal mark and mass unit.
    plain : bool
        True for all digits, as they are edited; else rounded as on screen.
    """
    if value is None:
        return "", "", ""
    column = recorded_column(RANGE_FIELDS[attribute][0], style)
    ends = (end * column.factor for end in value.ends)
    if plain:
        texts = [f"{end:.10g}".replace(".", style.decimal_mark) for end in ends]
    else:
        texts = [
            format_number(end, column.decimals, style=style, grouped=False)
            for end in ends
        ]
    low, likely, high = texts
    return ("", likely, "") if value.width == 0 and plain else (low, likely, high)


def read_range(
    attribute: str, texts: Sequence[str], style: NumberStyle, *, currency: str
) -> Range | None:
    """Give the range that was entered in three lines, or in the middle one alone.

    Raises
    ------
    DataError
        When it cannot be read, lacks an end, or runs the wrong way.
    """
    fields = RANGE_FIELDS[attribute]
    column = recorded_column(fields[0], style)
    low, likely, high = texts
    if likely and not low and not high and _is_range(likely):
        found = parse_range(likely, decimal=style.decimal_mark)
        texts = [repr(end).replace(".", style.decimal_mark) for end in found.ends]
    values = {
        field.name: parse_value(
            field,
            text,
            unit=column.entry_unit,
            decimal=style.decimal_mark,
            currency=currency,
        )
        for field, text in zip(fields, texts, strict=True)
    }
    value: Range | None = with_ranges(fields, values).get(attribute)
    return value


def _is_range(text: str) -> bool:
    return any(sign in text for sign in (":", "±", "+-", "+/-", "+ -"))


def computed_ranges(change: Change, effect: Effect | None) -> dict[str, Range | None]:
    """Give what is computed where a change gives no range of its own.

    Parameters
    ----------
    change : Change
        The change.
    effect : Effect or None
        What it comes to, None where it does not count.
    """
    if effect is None:
        return dict.fromkeys(RANGES)
    zero = Range.exactly(0.0)
    return {
        "mass_kg": sum((e.after_kg for e in effect.applied.entries), zero),
        "part_cost": effect.part_cost,
        "joining_cost": effect.joining_cost,
        "seconds": effect.seconds,
        "tooling": effect.tooling,
        "validation_cost": None,
        "lead_weeks": effect.lead_weeks,
    } | {name: None for name in RANGES if getattr(change, name) is not None}


def field_of(problem: Problem) -> str:
    """Give the attribute that a problem is about, empty where it is none."""
    said = problem.column
    for field in CHANGE_FIELDS:
        if said in (field.name, field.title, field.header()):
            return field.attribute or field.name
    return said if said in FIELDS or said in RANGE_FIELDS else ""


def is_listed(field: Field) -> bool:
    """Tell whether a field holds a list of names."""
    return field.kind is Kind.NAMES
