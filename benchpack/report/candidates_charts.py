"""What the chart of candidate materials shows, and the finding it states."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from benchpack.model.study import Study
from benchpack.report.candidates_text import candidate_detail
from benchpack.report.chart_specs import (
    ChartSpec,
    FloatArray,
    FormatValue,
    Verdict,
    no_values,
    signed_text,
)
from benchpack.report.chart_words import plural
from benchpack.report.display import Display
from benchpack.results.candidate_explained import CANDIDATE_MASS
from benchpack.results.candidate_record import Candidates
from benchpack.results.closure import Grade
from benchpack.units.formatting import format_money, format_number
from benchpack.units.number_style import labelled

_LEGEND = (
    "Bars: range of computed mass and of prices. Hollow: by the data sheet alone. "
    "Material only: add-backs, process and tooling are in the proposal."
)
_VERDICTS: dict[Grade, Verdict] = {
    Grade.GOOD: "good",
    Grade.LOOK: "look",
    Grade.FAIL: "fail",
    Grade.NONE: "unknown",
}


@dataclass(frozen=True, kw_only=True, eq=False)
class CandidatesSpec(ChartSpec):
    """Candidates by mass (x) and cost of material (y) less today's, each (n,).

    Today's part lies at the origin, drawn as the subject with `subject_text`. Bars
    span `mass_low` to `mass_high` and `cost_low` to `cost_high`; at `sheet_mass` lies a
    hollow mark, what the data sheet alone would say. On the line of a worth lies
    ``cost = -worth * mass``: a candidate below it is worth its material.
    `worth_slopes` are low, likely, high per unit of x. Candidates without mass or cost
    (nan) are not drawn. `details` are further lines of each read-out.
    """

    names: tuple[str, ...] = ()
    mass: FloatArray = field(default_factory=no_values)
    mass_low: FloatArray = field(default_factory=no_values)
    mass_high: FloatArray = field(default_factory=no_values)
    sheet_mass: FloatArray = field(default_factory=no_values)
    cost: FloatArray = field(default_factory=no_values)
    cost_low: FloatArray = field(default_factory=no_values)
    cost_high: FloatArray = field(default_factory=no_values)
    verdicts: tuple[Verdict, ...] = ()
    details: tuple[str, ...] = ()
    subject_text: str = ""
    worth_slopes: tuple[float, float, float] = (math.nan, math.nan, math.nan)
    worth_text: str = ""
    x_label: str = "Mass less today's [kg]"
    y_label: str = "Cost of material less today's [EUR]"
    lighter_text: str = "lighter"
    heavier_text: str = "heavier"
    cheaper_text: str = "cheaper"
    dearer_text: str = "dearer"
    format_mass: FormatValue = signed_text
    format_cost: FormatValue = signed_text

    @property
    def is_empty(self) -> bool:
        """Whether no candidate has both mass and cost."""
        return not bool(np.any(np.isfinite(self.mass) & np.isfinite(self.cost)))


def candidates_spec(compared: Candidates, study: Study) -> CandidatesSpec:
    """Give mass against cost of the candidates, relative to the part as it is.

    Parameters
    ----------
    compared : Candidates
        The comparison.
    study : Study
        Worth, currency and how numbers are shown.
    """
    display, today = Display(study), compared.today

    def lighter(attribute: str) -> FloatArray:
        return display.mass(compared.of(attribute) - today.mass_kg)

    per_unit = display.mass_kg(1.0)
    low, likely, high = (worth * per_unit for worth in study.worth_per_kg)
    written = _Written(study)
    return CandidatesSpec(
        title=_finding(compared, study),
        note=_note(compared),
        explain_key=CANDIDATE_MASS,
        empty_sentence=_nothing(compared),
        decimal_mark=study.decimal_mark,
        names=compared.names,
        mass=lighter("mass_kg"),
        mass_low=lighter("mass_low_kg"),
        mass_high=lighter("mass_high_kg"),
        sheet_mass=lighter("sheet_mass_kg"),
        cost=compared.cost_change,
        cost_low=compared.of("cost_low") - today.cost,
        cost_high=compared.of("cost_high") - today.cost,
        verdicts=tuple(_VERDICTS[row.grade] for row in compared.rows),
        details=tuple(candidate_detail(row, study) for row in compared.rows),
        subject_text=f"{compared.part.name}, {today.name or 'material not recorded'}",
        worth_slopes=(low, likely, high),
        worth_text=display.worth_text(study.worth_likely_per_kg),
        x_label=f"Mass less today's [{display.mass_unit}]",
        y_label=f"Cost of material less today's [{compared.currency}]",
        format_mass=written.mass,
        format_cost=written.cost,
    )


class _Written:
    """Writes differences in the unit shown already, with their signs."""

    def __init__(self, study: Study) -> None:
        self._display, self._currency = Display(study), study.currency

    def mass(self, shown: float) -> str:
        number = format_number(shown, 2, style=self._display.style, signed=True)
        return labelled(number, self._display.mass_unit)

    def cost(self, value: float) -> str:
        return format_money(
            value, self._currency, style=self._display.style, decimals=2, signed=True
        )


def _finding(compared: Candidates, study: Study) -> str:
    """Say how many candidates are lighter, and how many are worth their material."""
    known = int(np.isfinite(compared.of("mass_kg")).sum())
    if not known:
        return f"What candidates for {compared.part.name} weigh is not known"
    lighter = compared.is_lighter
    count = int(lighter.sum())
    if not count:
        return f"No candidate makes {compared.part.name} lighter at equal function"
    worth = -compared.mass_change_kg * study.worth_likely_per_kg
    paying = int((lighter & (compared.cost_change <= worth)).sum())
    verb = "is" if count == 1 else "are"
    said = f"{count} of {known} {plural('candidate', known)} {verb} lighter"
    if not np.isfinite(compared.cost_change).any():
        return said
    per_kg = Display(study).worth_text(study.worth_likely_per_kg)
    return f"{said}, {paying or 'none'} worth the material at {per_kg}"


def _note(compared: Candidates) -> str:
    said = [_LEGEND]
    missing = sum(
        not (math.isfinite(row.mass_kg) and math.isfinite(row.cost))
        for row in compared.rows
    )
    if math.isnan(compared.today.cost):
        said.append(f"The price of {compared.today.name} is not recorded.")
    elif missing:
        said.append(f"{missing} without mass or price: not drawn.")
    return " ".join(said)


def _nothing(compared: Candidates) -> str:
    if not compared.rows:
        return "No candidate is chosen yet."
    problems = [row.problem for row in compared.rows if row.problem is not None]
    if problems and len(problems) == len(compared.rows):
        return f"{problems[0].what} {problems[0].remedy}".strip()
    if math.isnan(compared.today.cost):
        name = compared.today.name or f"what {compared.part.name} is made of"
        return f"Record the price of {name} to compare costs."
    return "Record the prices of the candidates to compare costs."
