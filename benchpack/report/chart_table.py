"""The data of any chart as a table of texts, exact or as the screen shows it. No Qt."""

from __future__ import annotations

import math
from collections.abc import Iterable

from benchpack.report.chart_rows import Cell, chart_rows
from benchpack.report.chart_specs import ChartSpec
from benchpack.units.number_style import NumberStyle, format_number, plain

_DIGITS = 4
_MOST_DECIMALS = 6


def chart_table(spec: ChartSpec) -> list[list[str]]:
    """Give the data of a chart as texts, the heads with their units first.

    Parameters
    ----------
    spec : ChartSpec
        What a chart shows.

    Returns
    -------
    list of list of str
        Rows of equal length; numbers in full precision with a decimal point, empty
        where a number is not known.

    Raises
    ------
    TypeError
        The kind of spec has no table.
    """
    return [[_exact(cell) for cell in row] for row in chart_rows(spec)]


def shown_table(spec: ChartSpec) -> list[list[str]]:
    """Give the same table for the screen: each column with decimals of its own.

    Parameters
    ----------
    spec : ChartSpec
        What a chart shows; its decimal mark is used.
    """
    heads, *rows = chart_rows(spec)
    style = NumberStyle(decimal_mark=spec.decimal_mark)
    places = [_decimals(row[place] for row in rows) for place in range(len(heads))]
    shown = [
        [
            cell
            if isinstance(cell, str)
            else format_number(cell, decimals, style=style)
            for cell, decimals in zip(row, places, strict=True)
        ]
        for row in rows
    ]
    return [[str(head) for head in heads], *shown]


def number_columns(spec: ChartSpec) -> list[bool]:
    """Tell of each column of the table whether it holds numbers.

    Parameters
    ----------
    spec : ChartSpec
        What a chart shows.
    """
    heads, *rows = chart_rows(spec)
    return [
        bool(rows) and not any(isinstance(row[place], str) for row in rows)
        for place in range(len(heads))
    ]


def _exact(cell: Cell) -> str:
    return cell if isinstance(cell, str) else plain(cell)


def _decimals(cells: Iterable[Cell]) -> int:
    """Give the decimals that a column needs, four digits of its greatest at most."""
    sizes = [
        abs(one) for one in cells if not isinstance(one, str) and math.isfinite(one)
    ]
    greatest = max(sizes, default=0.0)
    if greatest == 0:
        return 0
    before = math.floor(math.log10(greatest)) + 1
    most = min(max(_DIGITS - before, 0), _MOST_DECIMALS)
    room = 1e-12 * greatest
    exact = (
        decimals
        for decimals in range(most)
        if all(abs(round(size, decimals) - size) <= room for size in sizes)
    )
    return next(exact, most)
