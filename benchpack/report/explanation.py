"""Where a figure comes from, in words and rows for a reader."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from benchpack.results.figure import Figure
from benchpack.units.formatting import (
    NumberStyle,
    format_density,
    format_energy,
    format_mass,
    format_mass_range,
    format_money,
    format_number,
    format_range,
    format_worth,
    plain,
)
from benchpack.units.number_style import labelled

_MONEY = re.compile(r"([A-Z]{3})(?:/(kg))?")
_DECIMALS, _SIGNIFICANT = 3, 5


@dataclass(frozen=True, slots=True)
class InputRow:
    """One input as it is shown.

    Parameters
    ----------
    label : str
        What it is; a symbol of the formula comes first where there is one.
    value, unit : str
        The number and its unit as text.
    source : str
        Where it comes from.
    """

    label: str
    value: str
    unit: str
    source: str


@dataclass(frozen=True, slots=True)
class Explanation:
    """A figure laid out for a reader.

    Parameters
    ----------
    label : str
        What the figure is.
    value : str
        Its value with unit and range; an en dash where there is none.
    missing : str
        Why there is no value, empty where there is one.
    formula : str
        The formula.
    inputs : tuple of InputRow
        What went in.
    range_meaning : str
        What the range means, empty where there is none.
    source : str
        Source of the formula.
    """

    label: str
    value: str
    missing: str
    formula: str
    inputs: tuple[InputRow, ...]
    range_meaning: str
    source: str


def explanation_text(figure: Figure, *, style: NumberStyle) -> Explanation:
    """Lay a figure out for a reader.

    Parameters
    ----------
    figure : Figure
        The figure.
    style : NumberStyle
        How numbers are shown.

    Returns
    -------
    Explanation
        Rounded as everywhere on screen; `explanation_table` has full precision.
    """
    ranged = not (math.isnan(figure.low) or math.isnan(figure.high))
    rows = []
    for given in figure.inputs:
        text = value_text(given.value, given.unit, style=style)
        number, _, unit = text.partition("\u00a0")
        rows.append(InputRow(given.label, number, unit, given.source))
    missing = figure.missing
    if math.isnan(figure.value) and not missing:
        missing = "One of the inputs is not known."
    return Explanation(
        label=figure.label,
        value=_figure_text(figure, style=style),
        missing=missing,
        formula=figure.formula.replace(" - ", " \u2212 "),
        inputs=tuple(rows),
        range_meaning=figure.range_meaning if ranged else "",
        source=figure.source,
    )


def _figure_text(figure: Figure, *, style: NumberStyle) -> str:
    if figure.unit == "kg":
        return format_mass_range(figure.value, figure.low, figure.high, style=style)

    def shown(value: float | None) -> str:
        value = math.nan if value is None else value
        return value_text(value, figure.unit, style=style)

    return format_range(figure.value, figure.low, figure.high, shown)


def value_text(value: float, unit: str, *, style: NumberStyle) -> str:
    """Give a value with its unit as it is shown on screen.

    Parameters
    ----------
    value : float
        The value in `unit`, NaN for an en dash.
    unit : str
        A unit label of a `Figure`; empty for a ratio or a count.
    style : NumberStyle
        How numbers are shown.
    """
    if unit == "kg":
        return format_mass(value, style=style)
    if unit == "kWh":
        return format_energy(value, style=style)
    if unit == "Wh/kg":
        return format_density(value, style=style)
    money = _MONEY.fullmatch(unit)
    if money and money[2]:
        return format_worth(value, money[1], style=style)
    if money:
        return format_money(value, money[1], style=style)
    return labelled(format_number(value, _needed_decimals(value), style=style), unit)


def _needed_decimals(value: float) -> int:
    """Give how many digits a figure needs: 0.5 and 12 stay short, 1234.567 too."""
    if math.isnan(value):
        return 0
    whole = len(f"{abs(value):.0f}")
    most = max(0, min(_DECIMALS, _SIGNIFICANT - whole))
    fraction = f"{value:.{most}f}".rstrip("0").partition(".")[2]
    return len(fraction)


def explanation_table(figure: Figure) -> list[list[str]]:
    """Give a figure as rows of cells at full precision, for the clipboard.

    Parameters
    ----------
    figure : Figure
        The figure.

    Returns
    -------
    list of list of str
        Rows of label, value, unit and source; formula and range come after the
        figure, then the inputs.
    """
    rows = [[figure.label, plain(figure.value), figure.unit, figure.source]]
    if figure.missing:
        rows.append(["why there is no value", "", "", figure.missing])
    if not (math.isnan(figure.low) or math.isnan(figure.high)):
        rows.append(["from", plain(figure.low), figure.unit, figure.range_meaning])
        rows.append(["to", plain(figure.high), figure.unit, figure.range_meaning])
    rows.append(["formula", figure.formula, "", ""])
    rows += [[i.label, plain(i.value), i.unit, i.source] for i in figure.inputs]
    return rows
