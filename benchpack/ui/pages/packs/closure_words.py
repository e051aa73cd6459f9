"""Closure in words and as the bar shows it."""

from __future__ import annotations

import numpy as np

from benchpack.report.chart_specs import ClosureSpec, Verdict
from benchpack.results.closure import Closure, Grade
from benchpack.units.formatting import NumberStyle, format_mass, format_number

_VERDICTS: dict[Grade, Verdict] = {
    Grade.GOOD: "good",
    Grade.LOOK: "look",
    Grade.FAIL: "fail",
    Grade.NONE: "unknown",
}


def closure_spec(closure: Closure, style: NumberStyle) -> ClosureSpec:
    """Give what the closure bar shows."""
    held = {name: kg for name, kg in closure.masses_kg.items() if kg > 0}

    def mass_text(mass_kg: float) -> str:
        return format_mass(mass_kg, style=style)

    share = format_number(100 * closure.ratio, 1, style=style)
    verdict = _VERDICTS[closure.grade]
    return ClosureSpec(
        title="",
        names=tuple(held),
        masses=np.array(list(held.values()), dtype=np.float64),
        pack_mass=closure.pack_mass_kg,
        verdict=verdict,
        verdict_text=f"{verdict}, {share} %" if closure.is_recorded else "",
        pack_text=f"pack {mass_text(closure.pack_mass_kg)}",
        format_value=mass_text,
        empty_sentence="No parts are recorded.",
    )


def closure_sentence(closure: Closure, style: NumberStyle) -> str:
    """Say how the recorded parts and joints meet the weighed mass."""
    if not closure.is_recorded:
        return "Add a part, or start the weigh-in."
    open_kg = closure.unaccounted_kg
    rest = format_mass(abs(open_kg), style=style)
    text = f"{rest} {'unaccounted' if open_kg >= 0 else 'too much'}."
    if closure.unknown:
        are = "is" if closure.unknown == 1 else "are"
        text += f" {closure.unknown} {are} without a mass."
    if closure.assumed_kg > 0:
        assumed = format_mass(closure.assumed_kg, style=style)
        text += f" {assumed} is only assumed to close the balance."
    return text
