"""The data of each kind of chart as rows: heads with units first, no Qt.

Each kind of spec is registered here; `chart_table` writes what these give.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from functools import singledispatch

import numpy as np

from benchpack.report.candidates_charts import CandidatesSpec
from benchpack.report.change_charts import SwingsSpec
from benchpack.report.chart_specs import (
    ChartSpec,
    ClosureSpec,
    EnergyMassSpec,
    FanSpec,
    FloatArray,
    GapBarsSpec,
    ParetoSpec,
    WaterfallSpec,
)
from benchpack.report.worth_specs import (
    ProgrammeSpec,
    SetsSpec,
    SharesSpec,
    WorthMapSpec,
)

Cell = str | float
Rows = list[list[Cell]]
SHARE = "[1]"
"""Unit of shares that are given as fractions."""
_UNIT = re.compile(r"\[[^\]]*\]\s*$")
_ENDS = ("low", "likely", "high")


def unit_of(label: str) -> str:
    """Give the unit at the end of an axis label with its brackets, "" for none.

    Parameters
    ----------
    label : str
        For instance ``Gap at equal energy [kg]``.

    Examples
    --------
    >>> unit_of("Gap at equal energy [kg]"), unit_of("Year")
    ('[kg]', '')
    """
    found = _UNIT.search(label)
    return found[0].strip() if found else ""


def _head(words: str, label: str) -> str:
    """Name a column that is measured as an axis is."""
    return f"{words} {unit_of(label)}".strip()


def _rows(heads: list[str], *columns: Iterable[Cell] | FloatArray) -> Rows:
    listed = [
        one.tolist() if isinstance(one, np.ndarray) else list(one) for one in columns
    ]
    return [list(heads), *map(list, zip(*listed, strict=True))]


@singledispatch
def chart_rows(spec: ChartSpec) -> Rows:
    """Give the data of a chart as rows of texts and numbers, the heads first.

    Parameters
    ----------
    spec : ChartSpec
        What a chart shows.

    Raises
    ------
    TypeError
        The kind of spec has no table.
    """
    raise TypeError(f"{type(spec).__name__} has no table")


@chart_rows.register
def _(spec: EnergyMassSpec) -> Rows:
    heads = ["pack", spec.x_label, spec.y_label]
    return _rows(heads, spec.names, spec.energy, spec.mass)


@chart_rows.register
def _(spec: GapBarsSpec) -> Rows:
    order = np.argsort(-spec.gap, kind="stable")
    names = [spec.names[index] for index in order.tolist()]
    heads, columns = ["pack", spec.axis_label], [spec.gap[order]]
    if spec.uncertainty is not None:
        heads.append(_head("standard uncertainty", spec.axis_label))
        columns.append(spec.uncertainty[order])
    return _rows(heads, names, *columns)


@chart_rows.register
def _(spec: WaterfallSpec) -> Rows:
    heads, columns = ["step", "kind", spec.axis_label], [spec.values]
    if spec.uncertainty is not None:
        heads.append(_head("standard uncertainty", spec.axis_label))
        columns.append(spec.uncertainty)
    rows = _rows(heads, spec.names, spec.kinds, *columns)
    if spec.target is not None:
        rest: list[Cell] = [""] * (len(heads) - 3)
        rows.append(["target", "target", spec.target, *rest])
    return rows


@chart_rows.register
def _(spec: FanSpec) -> Rows:
    heads = ["place", spec.x_label, *(f"{one}: {spec.y_label}" for one in _ENDS)]
    line = ["line"] * len(spec.saved)
    rows = _rows(heads, line, spec.saved, spec.low, spec.likely, spec.high)
    for point in spec.points:
        low, high = _ends_at(spec, point.saved)
        low = low if point.low is None else point.low
        high = high if point.high is None else point.high
        rows.append([point.name, point.saved, low, point.value, high])
    if spec.target is not None:
        low, high = _ends_at(spec, spec.target.saved)
        rows.append(["target", spec.target.saved, low, spec.target.value, high])
    return rows


def _ends_at(spec: FanSpec, saved: float) -> tuple[float, float]:
    """Give what the lines of low and high worth say of a mass saved."""
    if spec.is_empty:
        return math.nan, math.nan
    low, high = (float(np.interp(saved, spec.saved, y)) for y in (spec.low, spec.high))
    return low, high


@chart_rows.register
def _(spec: ClosureSpec) -> Rows:
    rows = _rows(["subsystem", spec.value_label], spec.names, spec.masses)
    if math.isfinite(spec.pack_mass):
        rows.append(["pack", spec.pack_mass])
    return rows


@chart_rows.register
def _(spec: ParetoSpec) -> Rows:
    heads = [
        "group",
        spec.axis_label,
        _head("has to stay", spec.axis_label),
        f"running share {SHARE}",
    ]
    return _rows(heads, spec.names, spec.values, spec.staying, spec.running)


@chart_rows.register
def _(spec: SwingsSpec) -> Rows:
    heads = ["input", *(f"at {end}: {spec.axis_label}" for end in ("low", "high"))]
    return _rows(heads, spec.names, spec.at_low, spec.at_high)


@chart_rows.register
def _(spec: CandidatesSpec) -> Rows:
    heads = [
        "material",
        *(f"{end}{spec.x_label}" for end in ("", "low: ", "high: ")),
        *(f"{end}{spec.y_label}" for end in ("", "low: ", "high: ")),
    ]
    masses = (spec.mass, spec.mass_low, spec.mass_high)
    costs = (spec.cost, spec.cost_low, spec.cost_high)
    return _rows(heads, spec.names, *masses, *costs)


@chart_rows.register
def _(spec: ProgrammeSpec) -> Rows:
    unit = unit_of(spec.y_label)
    heads = [
        spec.x_label,
        *(f"{spec.year_text}, {end} {unit}".strip() for end in _ENDS),
        f"{spec.cumulative_text} {unit}".strip(),
    ]
    columns = (spec.low, spec.likely, spec.high, spec.cumulative)
    return _rows(heads, spec.years, *columns)


@chart_rows.register
def _(spec: WorthMapSpec) -> Rows:
    across, down = np.meshgrid(spec.x, spec.y)
    heads = [spec.x_label, spec.y_label, spec.value_label]
    return _rows(heads, across.ravel(), down.ravel(), spec.values.ravel())


@chart_rows.register
def _(spec: SharesSpec) -> Rows:
    order = np.argsort(-spec.total, kind="stable")
    heads, columns = ["input"], [[spec.names[index] for index in order.tolist()]]
    found: list[FloatArray] = []
    for words, shares, errors in (
        (spec.first_text, spec.first, spec.first_error),
        (spec.total_text, spec.total, spec.total_error),
    ):
        heads.append(f"share {words} {SHARE}")
        found.append(shares[order])
        if errors is not None:
            heads.append(f"standard error of the share {words} {SHARE}")
            found.append(errors[order])
    return _rows(heads, *columns, *found)


@chart_rows.register
def _(spec: SetsSpec) -> Rows:
    use = ["in use" if name == spec.in_use else "" for name in spec.names]
    ends = [f"{end}: {spec.axis_label}" for end in _ENDS]
    heads = [spec.row_head, *ends, "use"]
    return _rows(heads, spec.names, spec.low, spec.likely, spec.high, use)
