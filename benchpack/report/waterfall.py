"""The gap to the reference as steps: energy, then subsystem by subsystem."""

from __future__ import annotations

import math

import numpy as np

from benchpack.model.words import Basis
from benchpack.report.chart_specs import StepKind, WaterfallSpec
from benchpack.report.chart_words import nothing_to_compare, reason_text
from benchpack.report.display import Display
from benchpack.results.comparison import Comparison
from benchpack.results.pair_cautions import NOTHING_KG
from benchpack.results.results import Results
from benchpack.results.subsystems import SubsystemSplit
from benchpack.results.uncounted import why_no_gap


def waterfall_spec(results: Results, *, has_remedy: bool = True) -> WaterfallSpec:
    """Give the gap to the reference as steps: energy, then subsystem by subsystem.

    Parameters
    ----------
    results : Results
        The results of a study.
    has_remedy : bool
        False where the reader cannot change the study: a reason is then said alone.
    """
    comparison, place = results.comparison, results.place
    if comparison is None or place is None or results.split is None:
        why = nothing_to_compare(results, has_remedy=has_remedy)
        return WaterfallSpec(empty_sentence=why)
    emptied = why_no_gap(comparison, place, basis=Basis.AS_WEIGHED)
    if emptied is not None:
        why = reason_text(emptied, has_remedy=has_remedy)
        return WaterfallSpec(empty_sentence=why)
    display = Display(results.study)
    split = results.split
    steps = _steps(comparison, place, split)
    total = float(comparison.as_weighed_kg[place])
    names = [name for name, _, _ in steps]
    kinds = [kind for _, kind, _ in steps]
    values = [value for _, _, value in steps]
    return WaterfallSpec(
        title=_waterfall_finding(steps, display),
        note=_waterfall_note(steps, split, display),
        explain_key="density share",
        decimal_mark=results.study.decimal_mark,
        names=(*names, "gap as weighed"),
        kinds=(*kinds, "sum"),
        values=display.mass(np.array([*values, total])),
        axis_label=f"Gap to {results.study.reference} [{display.mass_unit}]",
        format_value=display.signed_mass_number,
        format_full=display.signed_mass_text,
    )


_Step = tuple[str, StepKind, float]


def _steps(comparison: Comparison, place: int, split: SubsystemSplit) -> list[_Step]:
    share = float(comparison.energy_share_kg[place])
    if math.isnan(share):
        gaps, steps = split.gaps.as_weighed_kg, list[_Step]()
    else:
        gaps, steps = split.gaps.equal_energy_kg, [_energy_step(share)]
    if not split.is_recorded:
        label = "density share" if steps else "not split"
        whole = float(comparison.as_weighed_kg[place]) - (steps[0][2] if steps else 0)
        return [*steps, (label, "step", whole)]
    masses = zip(
        split.subject.rows_kg().values(),
        split.reference.rows_kg().values(),
        strict=True,
    )
    for name, gap, pair in zip(split.names, gaps.tolist(), masses, strict=True):
        if any(pair) or gap != 0:
            steps.append((name, "step", gap))
    return steps


def _energy_step(share_kg: float) -> _Step:
    return ("energy share", "energy", share_kg)


def _waterfall_finding(steps: list[_Step], display: Display) -> str:
    placed = [step for step in steps if step[1] == "step"]
    is_split = len(placed) < len(steps)
    if len(placed) == 1:
        found = "Energy and density share of the gap"
        return found if is_split else "The gap as weighed, its energy share not known"
    name, _, value = max(placed, key=lambda step: step[2])
    if value < NOTHING_KG:
        on = "at equal energy" if is_split else "as weighed"
        return f"No subsystem is heavier {on}"
    return f"Largest excess: {name}, {display.mass_text(value)}"


def _waterfall_note(steps: list[_Step], split: SubsystemSplit, display: Display) -> str:
    is_split = steps[0][1] == "energy"
    both = (split.subject, split.reference)
    notes = []
    if not split.is_recorded:
        lacking = [closure.pack for closure in both if not closure.is_recorded]
        what = "density share" if is_split else "gap"
        notes.append(
            f"No parts are recorded for {' and '.join(lacking)}, so the {what} "
            "cannot be placed. Add them on the Packs page."
        )
    elif is_split:
        notes.append("Hatched: mass that carries the difference in energy, no saving.")
    unknown = sum(closure.unknown for closure in both)
    if unknown and split.is_recorded:
        kind = "part or joint" if unknown == 1 else "parts and joints"
        notes.append(f"Unaccounted holds {unknown} {kind} without a mass.")
    taken = [
        f"{display.mass_text(item.mass_kg)} of {item.item} ({item.pack})"
        for item in split.taken_out
    ]
    if taken:
        notes.append(f"Taken out for the boundary: {', '.join(taken)}.")
    return " ".join(notes)
