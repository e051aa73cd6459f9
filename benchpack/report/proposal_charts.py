"""The proposal as a waterfall: from today's mass to the proposed, with the target."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from benchpack.report.chart_specs import StepKind, WaterfallSpec
from benchpack.report.display import Display
from benchpack.report.proposal_text import NOTHING_KG
from benchpack.results.proposal import ProposalResults

_MOST_STEPS = 14
_ADD_BACKS = "add-backs"


def proposal_waterfall(results: ProposalResults) -> WaterfallSpec:
    """Give the steps from today's mass to the proposed one with the target's line.

    Parameters
    ----------
    results : ProposalResults
        The proposal.

    Returns
    -------
    WaterfallSpec
        One step for each change, its add-backs apart as one step; of many changes the
        smallest are one step. The axis does not start at zero, which the note says.
    """
    display, totals = Display(results.study), results.totals
    if not results.effects:
        return WaterfallSpec(
            empty_sentence="No change counts yet: there is no step from today's mass.",
            empty_action_text="",
        )
    steps = _steps(results)
    names = ["today", *(name for name, _ in steps), "proposed"]
    kinds: list[StepKind] = ["step"] * len(names)
    kinds[0] = kinds[-1] = "sum"
    values = [totals.today_kg, *(kg for _, kg in steps), totals.proposed_kg.likely]
    target_kg = totals.today_kg - totals.target_kg
    has_target = not math.isnan(target_kg)
    return WaterfallSpec(
        title=_finding(results, display),
        note=_note(results),
        explain_key="proposal mass",
        decimal_mark=results.study.decimal_mark,
        names=tuple(names),
        kinds=tuple(kinds),
        values=display.mass(np.array(values)),
        axis_label=f"Mass [{display.mass_unit}]",
        format_value=display.signed_mass_number,
        format_full=display.signed_mass_text,
        target=display.mass(target_kg) if has_target else None,
        target_text=f"target {display.mass_text(target_kg)}" if has_target else "",
        value_range=_range(values, target_kg, display),
    )


def _steps(results: ProposalResults) -> list[tuple[str, float]]:
    steps = [
        (one.name, -(one.saved_kg.likely + one.add_back_kg.likely))
        for one in results.effects
    ]
    if len(steps) > _MOST_STEPS:
        shown = sorted(steps, key=lambda step: -abs(step[1]))[: _MOST_STEPS - 1]
        rest = [step for step in steps if step not in shown]
        steps = [step for step in steps if step in shown]
        steps.append((f"{len(rest)} others", math.fsum(kg for _, kg in rest)))
    added = results.totals.add_back_kg.likely
    return [*steps, (_ADD_BACKS, added)] if added > 0 else steps


def _finding(results: ProposalResults, display: Display) -> str:
    totals = results.totals
    saved, target = totals.saved_kg.likely, totals.target_kg
    if saved < -NOTHING_KG:
        return f"{display.mass_text(-saved)} heavier than today"
    if math.isnan(target):
        return f"{display.mass_text(saved)} saved"
    if saved >= target:
        return f"{display.mass_text(saved)} saved if every change is released"
    short = display.mass_text(target - saved)
    return f"{display.mass_text(saved)} saved, {short} short of the target"


def _note(results: ProposalResults) -> str:
    notes = ["Likely masses, each change as if it were released."]
    if results.ledger.refused:
        count = len(results.ledger.refused)
        notes.append(f"{count} that {'is' if count == 1 else 'are'} refused not shown.")
    notes.append("The axis does not start at zero.")
    return " ".join(notes)


def _range(
    values: Sequence[float], target_kg: float, display: Display
) -> tuple[float, float]:
    """Give the axis: from under the lowest level to over the highest."""
    levels = list(np.cumsum(values[:-1]))
    if not math.isnan(target_kg):
        levels.append(target_kg)
    low, high = min(levels), max(levels)
    room = 0.15 * (high - low) or 1.0
    return display.mass(float(low - 2 * room)), display.mass(float(high + room))
