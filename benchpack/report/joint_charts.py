"""What the pareto of the joints shows, and the finding it states."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

import numpy as np

from benchpack.calc.joining import cumulative_share
from benchpack.model.study import Study
from benchpack.report.chart_specs import FloatArray, ParetoSpec
from benchpack.report.chart_words import plural
from benchpack.report.display import Display
from benchpack.report.joint_text import measure_text
from benchpack.results.explain_joints import ONE_KEYS
from benchpack.results.explain_joints import SUM_KEYS as EXPLAIN_KEYS
from benchpack.results.inventory import (
    Group,
    Grouping,
    Inventory,
    Measure,
    grouped,
    totals_of,
)
from benchpack.units.formatting import format_number

__all__ = ["EXPLAIN_KEYS", "ONE_KEYS", "pareto_spec"]

_MOST_OF_IT = 0.8
_NOUNS = {
    Measure.COUNT: "pieces",
    Measure.MASS: "mass",
    Measure.TIME: "time",
    Measure.MONEY: "money",
}


def pareto_spec(
    inventory: Inventory, study: Study, *, grouping: Grouping, measure: Measure
) -> ParetoSpec:
    """Give the groups of a pack's joints, the greatest first.

    Parameters
    ----------
    inventory : Inventory
        The joints of the pack.
    study : Study
        How numbers are shown, and whether the pack is subject or reference.
    grouping : Grouping
        By what joints are put together.
    measure : Measure
        What of them is compared. Groups that add nothing are left out and counted in
        the note.
    """
    display = Display(study)
    groups, left_out = _ordered(grouped(inventory, grouping), measure)
    values = np.array([group.totals.of(measure) for group in groups])
    shown = _in_unit(values, measure, display)
    staying = np.array(
        [_staying(inventory, group, measure) for group in groups], dtype=np.float64
    )
    running = cumulative_share(values) if len(values) else values
    return ParetoSpec(
        title=_finding(groups, running, grouping, measure),
        note=_note(
            inventory, measure, left_out, display, hatched=bool((staying > 0).any())
        ),
        explain_key=EXPLAIN_KEYS[measure],
        empty_sentence=_nothing(inventory, measure),
        decimal_mark=study.decimal_mark,
        names=tuple(group.name for group in groups),
        values=shown,
        staying=_in_unit(staying, measure, display),
        running=np.where(np.isnan(values), np.nan, running),
        details=tuple(_detail(group) for group in groups),
        role=_role(inventory, study),
        axis_label=_axis_label(measure, display),
        format_value=_Written(measure, display).number,
        format_full=_Written(measure, display).text,
    )


class _Written:
    """Writes the figures of one measure, which are in the unit shown already."""

    def __init__(self, measure: Measure, display: Display) -> None:
        self._measure, self._display = measure, display

    def number(self, shown: float) -> str:
        decimals = 2 if self._measure in (Measure.MASS, Measure.MONEY) else 0
        return format_number(shown, decimals, style=self._display.style)

    def text(self, shown: float) -> str:
        value = shown
        if self._measure is Measure.MASS:
            value = self._display.mass_kg(shown)
        said = measure_text(value, self._measure, self._display)
        if self._measure is Measure.COUNT and not math.isnan(shown):
            said += f" {plural('piece', round(shown))}"
        return said


def _ordered(
    groups: Sequence[Group], measure: Measure
) -> tuple[list[Group], list[Group]]:
    """Give the groups from the greatest down, unknown last, and those of nothing."""
    found = [(group.totals.of(measure), group) for group in groups]
    kept = [(value, group) for value, group in found if value != 0]
    kept.sort(key=_falling)
    return [group for _, group in kept], [g for value, g in found if value == 0]


def _falling(found: tuple[float, Group]) -> tuple[bool, float]:
    return math.isnan(found[0]), -found[0]


def _staying(inventory: Inventory, group: Group, measure: Measure) -> float:
    held = [inventory.facts[place] for place in group.members]
    if not any(facts.joint.carry_over for facts in held):
        return 0.0
    return totals_of(facts for facts in held if facts.joint.carry_over).of(measure)


def _in_unit(
    values: FloatArray,
    measure: Measure,
    display: Display,
) -> FloatArray:
    return display.mass(values) if measure is Measure.MASS else values


def _axis_label(measure: Measure, display: Display) -> str:
    unit = {
        Measure.MASS: display.mass_unit,
        Measure.TIME: "s",
        Measure.MONEY: display.currency,
    }.get(measure)
    return f"{measure.capitalize()} a pack [{unit}]" if unit else "Pieces a pack"


def _role(
    inventory: Inventory, study: Study
) -> Literal["subject", "reference", "peer"]:
    if inventory.pack == study.subject:
        return "subject"
    return "reference" if inventory.pack == study.reference else "peer"


def _finding(
    groups: Sequence[Group],
    running: FloatArray,
    grouping: Grouping,
    measure: Measure,
) -> str:
    """Say how few groups make up most of it."""
    known = [group for group in groups if not math.isnan(group.totals.of(measure))]
    if not known:
        return f"The {_NOUNS[measure]} is not known"
    noun = _NOUNS[measure]
    if len(known) == 1:
        return f"{_capital(known[0].name)}: all of the {noun}"
    enough = int(np.argmax(running >= _MOST_OF_IT)) + 1
    percent = round(100 * float(running[enough - 1]))
    if enough == 1:
        return f"{_capital(known[0].name)}: {percent} % of the {noun}"
    several = plural(str(grouping), len(known))
    return f"{enough} of {len(known)} {several} make up {percent} % of the {noun}"


def _capital(name: str) -> str:
    return name[:1].upper() + name[1:]


def _note(
    inventory: Inventory,
    measure: Measure,
    left_out: Sequence[Group],
    display: Display,
    *,
    hatched: bool,
) -> str:
    said = ["Hatched: has to stay."] if hatched else []
    totals = inventory.totals
    if measure is Measure.COUNT and totals.line_m > 0:
        length = format_number(totals.line_m, 1, style=display.style)
        said.append(f"Seams and beads are lines, {length} m, not pieces.")
    elif left_out:
        names = ", ".join(group.name for group in left_out)
        said.append(f"Nothing is added by {names}.")
    unknown = totals.unknown(measure)
    if unknown:
        word = "cost or time" if measure is Measure.MONEY else str(measure)
        said.append(f"{_rows(unknown)} without a {word}: not in it.")
    worked_out = _worked_out(inventory, measure)
    if worked_out:
        how = "computed, not weighed" if measure is Measure.MASS else "usual figures"
        said.append(f"{worked_out} of {_rows(totals.rows)}: {how}.")
    return " ".join(said)


def _worked_out(inventory: Inventory, measure: Measure) -> int:
    if measure is Measure.MASS:
        return sum(f.is_mass_computed for f in inventory.facts)
    if measure is Measure.TIME:
        return sum(f.is_time_usual for f in inventory.facts)
    if measure is Measure.MONEY:
        return sum(f.is_time_usual or f.is_cost_usual for f in inventory.facts)
    return 0


def _rows(count: int) -> str:
    return f"{count} {plural('row', count)}"


def _detail(group: Group) -> str:
    return _rows(len(group.members))


def _nothing(inventory: Inventory, measure: Measure) -> str:
    if not inventory.facts:
        return f"No joints of {inventory.pack} are recorded yet."
    return f"No joint of {inventory.pack} adds any {_NOUNS[measure]}."
