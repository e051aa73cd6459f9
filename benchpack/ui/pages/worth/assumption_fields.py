"""How the rows of the panel of assumptions are shown and read."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumptions import ASSUMPTION_NAMES
from benchpack.model.entry import parse_value
from benchpack.model.fields import Field
from benchpack.model.ranges import Range, parse_range
from benchpack.model.study import Study
from benchpack.report.display import number_style
from benchpack.ui.pages.worth.assumption_sections import (
    EMPTY,
    HELP,
    PERCENT,
    SECTIONS,
    TITLES,
    UNITS,
    WORTH,
)
from benchpack.ui.tables.cell_text import edited_text
from benchpack.ui.tables.columns import TableColumn, recorded_column
from benchpack.units.formatting import KG_PER_LB, NumberStyle
from benchpack.units.parsing import parse_number

_RANGE_HELP = "Write low:likely:high, 10 +- 2, or one figure."
_FIELDS = {field.name: field for field in STUDY_FIELDS}
_ENDS = ("low", "likely", "high")


def is_range(key: str) -> bool:
    """Tell whether a row holds low, likely and high."""
    return key == WORTH or f"{key}_low" in _FIELDS


def _field(key: str) -> Field:
    if key == WORTH:
        return _FIELDS["worth_likely_per_kg"]
    return _FIELDS[f"{key}_likely" if is_range(key) else key]


def form_column(key: str, study: Study) -> TableColumn:
    """Give a row of the panel in the units and the currency of a study.

    Parameters
    ----------
    key : str
        Key of a row.
    study : Study
        The study.
    """
    field, style = _field(key), number_style(study)
    column = recorded_column(field, style, currency=study.currency)
    title = TITLES.get(key, column.title.removesuffix(" likely"))
    tip = HELP.get(key, column.help.replace(": likely.", "."))
    column = replace(column, key=key, title=title, help=tip)
    if key == WORTH:
        factor = KG_PER_LB if study.mass_unit == "lb" else 1.0
        unit = f"{study.currency}/{study.mass_unit}"
        column = replace(column, unit=unit, factor=factor)
    if key in PERCENT:
        return replace(column, unit="%", factor=100.0)
    if is_range(key):
        return replace(column, help=f"{column.help} {_RANGE_HELP}")
    return replace(column, unit=UNITS.get(key, column.unit))


def value_of(study: Study, key: str) -> Any:
    """Give what a row shows of a study.

    Parameters
    ----------
    study : Study
        The study.
    key : str
        Key of a row.
    """
    if key == WORTH:
        return Range(*study.worth_per_kg)
    return getattr(study, key)


def row_text(column: TableColumn, value: Any, style: NumberStyle) -> str:
    """Give the text of a row: at full precision, but for a range in another unit.

    Parameters
    ----------
    column : TableColumn
        The row.
    value : object
        Its value.
    style : NumberStyle
        Decimal mark.
    """
    if not isinstance(value, Range):
        return edited_text(column, value, style)
    ends = value.ends if value.width else (value.likely,)
    # What is converted has no end of digits: three figures would not fit a line.
    digits = 10 if column.factor == 1 else 4
    texts = (f"{end * column.factor:.{digits}g}" for end in ends)
    return ":".join(texts).replace(".", style.decimal_mark)


def read_row(key: str, text: str, study: Study) -> dict[str, Any]:
    """Give the attributes that were entered in a row.

    Parameters
    ----------
    key : str
        Key of a row.
    text : str
        What was entered.
    study : Study
        The study with its units and decimal mark.

    Returns
    -------
    dict
        Values by attribute of a study.

    Raises
    ------
    DataError
        When it cannot be read or cannot be meant.
    """
    column, mark = form_column(key, study), study.decimal_mark
    if is_range(key):
        return _read_range(column, text, study)
    if key in PERCENT:
        return {key: _read_percent(column, text, mark)}
    unit = column.entry_unit
    try:
        value = parse_value(
            _field(key), text.strip(), unit=unit, decimal=mark, currency=study.currency
        )
    except DataError as error:
        raise DataError(_renamed(error.problems[0], column)) from error
    if value is None and key not in EMPTY:
        raise _missing(column)
    return {key: value}


def _read_range(column: TableColumn, text: str, study: Study) -> dict[str, Any]:
    if not text.strip():
        raise _missing(column)
    mark = study.decimal_mark
    entered = parse_range(text, decimal=mark)
    before: Range = value_of(study, column.key)
    shown = parse_range(row_text(column, before, number_style(study)), decimal=mark)
    # An end that stands as it was shown keeps the digits that were not shown.
    found = Range(
        *(
            own if end == seen else end / column.factor
            for end, seen, own in zip(
                entered.ends, shown.ends, before.ends, strict=True
            )
        )
    )
    field = _field(column.key)
    for end in found.ends:
        refusal = field.refusal(end)
        if refusal is not None:
            raise DataError(_renamed(refusal, column))
    if column.key == WORTH:
        names = (f"worth_{end}_per_kg" for end in _ENDS)
        return dict(zip(names, found.ends, strict=True))
    return {column.key: found}


def _read_percent(column: TableColumn, text: str, mark: str) -> float:
    if not text.strip():
        raise _missing(column)
    percent = parse_number(text.replace("%", ""), decimal=mark)
    field = _field(column.key)
    low, high = 100 * field.floor, 100 * field.ceiling
    if not low <= percent <= high:
        what = f"{_said(column)} is {percent:g} %."
        raise DataError(Problem(what, f"It has to lie between {low:g} and {high:g} %."))
    return percent / 100


def _renamed(problem: Problem, column: TableColumn) -> Problem:
    """Call the assumption as its row does."""
    title = _field(column.key).title
    what = problem.what.replace(f"{title} is", f"{_said(column)} is", 1)
    return replace(problem, what=what)


def _missing(column: TableColumn) -> DataError:
    return DataError(Problem(f"{_said(column)} is empty.", "Fill it in."))


def _said(column: TableColumn) -> str:
    return column.title[:1].upper() + column.title[1:]


def rows() -> tuple[str, ...]:
    """Give the keys of all rows from top to bottom."""
    return tuple(key for _, keys in SECTIONS for key in keys)


def row_of(column: str) -> str:
    """Give the row that a problem's column is about, empty where it is none.

    Parameters
    ----------
    column : str
        Attribute, title or head of a column of a study.
    """
    for field in STUDY_FIELDS:
        if column in (field.name, field.title, field.header()):
            key = field.attribute or field.name
            if key.startswith("worth_") and key.endswith("_per_kg"):
                return WORTH
            return key if key in rows() else ""
    if column == "worth":
        return WORTH
    return column if column in rows() and column in ASSUMPTION_NAMES else ""
