"""The sheet of the trend: the line through the peers, and the gap to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchpack.calc.line import LinearTrend
from benchpack.model.words import TrendKind
from benchpack.report.audit.draft import Draft, address, span
from benchpack.report.audit.packs import PackColumn, Packs
from benchpack.report.audit.record import (
    AuditSheet,
    Format,
    fixed,
    formula,
    text,
)
from benchpack.results.comparison import Comparison

_PURPOSE = (
    "The line of mass over energy through the peers, masses as weighed, and the gap of "
    "the subject to it."
)
_NAME, _X, _Y, _FITTED, _RESIDUAL = range(5)


@dataclass(frozen=True, slots=True)
class Trend:
    """The sheet, and where its results stand.

    Parameters
    ----------
    sheet : AuditSheet
        The sheet.
    gap : str
        Cell with the gap to the trend, for formulas on other sheets.
    prediction_u : str
        Cell with the standard error of prediction at the subject's energy.
    """

    sheet: AuditSheet
    gap: str
    prediction_u: str


def trend_sheet(comparison: Comparison, packs: Packs) -> Trend | None:
    """Build the sheet of the trend.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    packs : Packs
        The sheet of packs.

    Returns
    -------
    Trend or None
        None where there is no line.
    """
    trend = comparison.trend
    if trend is None:
        return None
    in_logs = trend.kind is TrendKind.POWER_LAW
    draft = Draft("Trend", _PURPOSE, (40, 14, 14, 14, 14), is_wide=False)
    draft.notes(_how(trend))
    heads = ("energy [kWh]", "mass [kg]", "on the line [kg]", "off the line [kg]")
    if in_logs:
        heads = ("ln energy", "ln mass", "ln on the line", "ln off the line")
    draft.heads("peer", *heads)
    first = draft.next_row
    rows = range(first, first + len(comparison.trend_rows))
    results = rows[-1] + 3
    _peers(draft, comparison, packs, trend, line=results)
    draft.section("The line")
    return _line(draft, comparison, packs, rows=rows)


def _how(trend: LinearTrend) -> str:
    """Say how the line is laid, and what of it does not move."""
    if trend.kind is TrendKind.THEIL_SEN:
        return (
            "Theil-Sen: the median of the slopes of all pairs of peers. Slope and "
            "intercept are values of the program and do not move."
        )
    said = "Least squares in logarithms: mass = exp(intercept) energy^slope."
    return said if trend.kind is TrendKind.POWER_LAW else "Least squares."


def _peers(
    draft: Draft,
    comparison: Comparison,
    packs: Packs,
    trend: LinearTrend,
    *,
    line: int,
) -> None:
    """Write the peers; slope and intercept stand in the rows from `line` on."""
    in_logs = trend.kind is TrendKind.POWER_LAW
    slope, intercept = f"$B${line + 1}", f"$B${line + 2}"
    form = Format.THOUSANDTH if in_logs else Format.CENT
    for library_row in comparison.trend_rows.tolist():
        row, at = packs.rows[library_row], draft.next_row
        x, y = (
            packs.draft.cells[row, column].content
            for column in (PackColumn.ENERGY, PackColumn.MASS)
        )
        values = np.array([x, y], dtype=np.float64)
        values = np.log(values) if in_logs else values
        bodies = [packs.at(row, PackColumn.ENERGY), packs.at(row, PackColumn.MASS)]
        if in_logs:
            bodies = [f"LN({body})" for body in bodies]
        on_line = trend.intercept + trend.slope * values[0]
        draft.line(
            text(str(packs.draft.cells[row, PackColumn.NAME].content)),
            formula(bodies[0], values[0], form),
            formula(bodies[1], values[1], form),
            formula(f"{intercept}+{slope}*{address(at, _X)}", on_line, form),
            formula(
                f"{address(at, _Y)}-{address(at, _FITTED)}", values[1] - on_line, form
            ),
        )


def _line(
    draft: Draft, comparison: Comparison, packs: Packs, *, rows: Sequence[int]
) -> Trend:
    """Write slope, intercept, scatter, prediction, and the gap to the trend."""
    trend, subject = comparison.trend, comparison.subject
    assert trend is not None
    first = draft.next_row
    slope, intercept, peers, scatter, mean_x, squares, on_line = (
        address(first + number, 1) for number in range(7)
    )
    x, y, off = (span(column, rows) for column in (_X, _Y, _RESIDUAL))
    in_logs = trend.kind is TrendKind.POWER_LAW
    energy = packs.at(packs.subject, PackColumn.ENERGY)
    at_x = f"LN({energy})" if in_logs else energy
    line = f"{intercept}+{slope}*{at_x}"
    spread = f"SQRT(1+1/{peers}+({at_x}-{mean_x})^2/{squares})"
    mean = np.log(trend.mean_energy_kwh) if in_logs else trend.mean_energy_kwh
    predicted = float(trend.predict_kg(subject.energy_kwh))
    fine = Format.THOUSANDTH
    written = (
        ("slope", *_given(trend, f"SLOPE({y},{x})", trend.slope)),
        ("intercept", *_given(trend, f"INTERCEPT({y},{x})", trend.intercept)),
        ("peers", f"COUNT({x})", trend.n, Format.COUNT),
        (
            "scatter about the line",
            f"SQRT(SUMSQ({off})/({peers}-2))",
            trend.residual_s,
            fine,
        ),
        ("mean of the first column", f"AVERAGE({x})", float(mean), fine),
        ("squares about that mean", f"DEVSQ({x})", trend.sxx, fine),
        (
            "mass on the line at the subject's energy [kg]",
            f"EXP({line})" if in_logs else line,
            predicted,
            Format.CENT,
        ),
        (
            "standard error of predicting it [kg]",
            f"{scatter}*{spread}" + (f"*{on_line}" if in_logs else ""),
            float(trend.prediction_uncertainty_kg(subject.energy_kwh)),
            Format.CENT,
        ),
        (
            "gap to the trend [kg]",
            f"{packs.at(packs.subject, PackColumn.MASS)}-{on_line}",
            subject.mass_kg - predicted,
            Format.CENT,
        ),
    )
    for title, body, value, form in written:
        cell = formula(body, value, form) if body else fixed(value, form)
        draft.line(text(title), cell)
    u, gap = (draft.outside(draft.next_row - back, 1) for back in (2, 1))
    return Trend(draft.sheet(), gap, u)


def _given(trend: LinearTrend, body: str, value: float) -> tuple[str, float, Format]:
    """Give a formula with its value, without the formula where it cannot be one."""
    is_formula = trend.kind is not TrendKind.THEIL_SEN
    return body if is_formula else "", value, Format.THOUSANDTH
