"""What the charts of the Changes page show, and the findings they state."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np

from benchpack.model.study import Study
from benchpack.report.chart_specs import (
    ChartSpec,
    FloatArray,
    FormatValue,
    WaterfallSpec,
    no_values,
    plain_text,
    signed_text,
)
from benchpack.report.display import Display
from benchpack.report.proposal_charts import proposal_waterfall
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_matters import Matters, Swing
from benchpack.units.formatting import format_share

_MOST_SWINGS = 12
_MOST_LETTERS = 14


def steps_from_today(results: ProposalResults) -> WaterfallSpec:
    """Give the steps of a proposal with today's mass as the zero line.

    Against the whole mass of a pack the steps would be too short to be seen, and bars
    start at zero: so the difference to today is drawn, the target with it.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    """
    spec = proposal_waterfall(results)
    if spec.is_empty:
        return spec
    display, totals = Display(results.study), results.totals
    today = display.mass(totals.today_kg)
    values = spec.values.copy()
    values[0], values[-1] = 0.0, spec.values[-1] - today
    proposed = display.mass_text(totals.proposed_kg.likely)
    return replace(
        spec,
        values=values,
        note=f"To {proposed}, each change as if released.",
        axis_label=f"Mass less today's [{display.mass_unit}]",
        target=None if spec.target is None else spec.target - today,
        target_text=f"target −{display.mass_text(totals.target_kg)}"
        if spec.target is not None
        else "",
        value_range=None,
    )


@dataclass(frozen=True, kw_only=True, eq=False)
class SwingsSpec(ChartSpec):
    """A figure when one input at a time goes to its ends, widest first, each (n,).

    `at_low` and `at_high` are the figure less what it is with all inputs likely.
    `details` are further lines of each read-out.
    """

    names: tuple[str, ...] = ()
    at_low: FloatArray = field(default_factory=no_values)
    at_high: FloatArray = field(default_factory=no_values)
    details: tuple[str, ...] = ()
    axis_label: str = "Change of the mass saved [kg]"
    format_value: FormatValue = plain_text
    format_full: FormatValue = signed_text

    @property
    def is_empty(self) -> bool:
        """Whether nothing swings."""
        return len(self.names) == 0


def swings_spec(
    matters: Matters | None, study: Study, *, of_money: bool = False
) -> SwingsSpec:
    """Give the swings of the mass saved or of the net worth.

    Parameters
    ----------
    matters : Matters or None
        What matters, None where no change counts.
    study : Study
        How figures are shown.
    of_money : bool
        True for the net worth.
    """
    what = "the net worth" if of_money else "the mass saved"
    if matters is None:
        return SwingsSpec(empty_sentence="No change counts, so nothing matters yet.")
    if not matters.swings:
        return SwingsSpec(empty_sentence=f"Nothing is uncertain about {what}.")
    display = Display(study)
    swings = matters.swings[:_MOST_SWINGS]
    low = np.array([one.at_low - matters.base for one in swings])
    high = np.array([one.at_high - matters.base for one in swings])
    left = len(matters.swings) - len(swings)
    notes = ["One input at a time, from its low to its high end."]
    if left:
        notes.append(f"{left} narrower not shown.")
    unit = study.currency if of_money else display.mass_unit
    return SwingsSpec(
        title=_finding(matters, what),
        note=" ".join(notes),
        decimal_mark=study.decimal_mark,
        explain_key="proposal net worth" if of_money else "proposal saved",
        names=tuple(map(_short, swings)),
        at_low=low if of_money else display.mass(low),
        at_high=high if of_money else display.mass(high),
        details=_details(matters),
        axis_label=f"Change [{unit}]",
        format_value=display.signed_money_number
        if of_money
        else display.signed_mass_number,
        format_full=_money(display) if of_money else display.signed_mass_text,
    )


def _finding(matters: Matters, what: str) -> str:
    """Say what makes most of the variance."""
    first = next(iter(matters.shares), None)
    if first is None or first.total != first.total:
        return f"What moves {what}"
    share = format_share(min(1.0, max(0.0, first.total)))
    return f"{share} of the variance: {first.name}"


def _short(swing: Swing) -> str:
    """Name an input so that it is told apart where there is little room."""
    if not swing.what:
        return swing.name
    name = swing.name
    if len(name) > _MOST_LETTERS:
        name = f"{name[: _MOST_LETTERS - 1].rstrip()}…"
    return f"{name}: {swing.what}"


def _details(matters: Matters) -> tuple[str, ...]:
    shares = {share.name: share.total for share in matters.shares}
    found = []
    for one in matters.swings[:_MOST_SWINGS]:
        share = shares.get(one.name, float("nan"))
        known = share == share
        percent = f"{100 * min(1.0, max(0.0, share)):.0f} %" if known else ""
        said = f", {percent} of the variance" if known else ""
        found.append(f"{one.name}{said}")
    return tuple(found)


def _money(display: Display) -> FormatValue:
    def write(value: float) -> str:
        return f"{display.signed_money_number(value)}\u00a0{display.currency}"

    return write
