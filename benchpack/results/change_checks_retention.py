"""Check of what keeps the clamp of screws through a part that becomes plastic."""

from __future__ import annotations

import math
from collections.abc import Iterator

from benchpack.model.change import Change
from benchpack.model.families import FamilySort
from benchpack.model.fastener_sizes import CLEARANCE_HOLES_MM
from benchpack.results.change_checks_parts import PartChange, design_values
from benchpack.results.change_checks_state import Proposed
from benchpack.results.change_checks_words import amount, material_source
from benchpack.results.check import Check
from benchpack.results.clamp_loads import ClampLoad
from benchpack.results.clamp_words import forces
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.joint_facts import JointFacts
from benchpack.results.ledger_resizing import is_polymer
from benchpack.results.ledger_today import folded
from benchpack.results.wording import Wording
from benchpack.units.number_style import labelled

CLAMP_RETENTION = "clamp retention"
LIMITERS = "compression limiters"
"""Add-back that keeps the clamp of screws through plastic."""
LIMITER_G = (5, 20)
"""Mass of a limiter from M6 to M10 (from memory)."""
_MOUNT_WORDS = ("mount", "hoist", "lift", "crash")
_LOAD_PATH = "A load path of mounts is never clamped through plastic."


def retention_checks(made: PartChange, proposed: Proposed) -> Iterator[Check]:
    """Check what keeps the clamp of screws through a part that becomes plastic.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    proposed : Proposed
        The pack before and after.

    Yields
    ------
    Check
        One for each row of screws at the part.
    """
    # Of pieces moulded in it is the neighbour that the screws go through.
    if not is_polymer(proposed.materials.get(folded(made.after.material))):
        return
    clause = f"{made.after.name} is {made.after.material}"
    for facts in proposed.joints_at(folded(made.after.name)):
        if facts.family is None or not facts.family.threaded:
            continue
        if facts.family.sort is not FamilySort.SCREW:
            continue
        squeezed = clause in proposed.plastics.squeezed_by(facts)
        found = proposed.clamp(facts)
        load = found if isinstance(found, ClampLoad) else None
        yield _retention(made, facts, load, squeezed=squeezed, wording=proposed.wording)


def _retention(
    made: PartChange,
    facts: JointFacts,
    load: ClampLoad | None,
    *,
    squeezed: bool,
    wording: Wording,
) -> Check:
    name, part = facts.joint.name, made.after
    if not squeezed:
        words = f"Metal in {part.name} takes the clamp of {name}."
        return Check(CLAMP_RETENTION, name, Grade.GOOD, words)
    strength = design_values(made.new).strength_mpa
    pressure = math.nan if load is None else head_pressure_mpa(load)
    count = wording.number(facts.joint.count)
    words = f"{count} screws clamp {part.material}, which relaxes"
    if load is None:
        words += "; their clamp load is not known"
    else:
        words += f": F_max {forces(load.greatest_n, wording)}"
    if not math.isnan(pressure):
        words += f" presses {amount(pressure, 'MPa', wording)} under each head"
        if not math.isnan(strength):
            words += f", design strength {amount(strength, 'MPa', wording)}"
    words += "."
    is_over = pressure > strength
    grade, remedy = _with_limiters(made.change, facts, wording, is_over=is_over)
    if _is_mount(facts):
        grade, words = Grade.FAIL, f"{words} {_LOAD_PATH}"
        remedy = "Keep a metal insert or ring in the load path."
    figures = (
        Input(
            "F_max",
            math.nan if load is None else load.greatest_n,
            "N",
            "clamp load of the screws",
        ),
        Input("pressure under the head", pressure, "MPa", "F / (pi D_Km (D_Km - d_h))"),
        Input(
            "design strength",
            strength,
            "MPa",
            "" if made.new is None else material_source(made.new),
        ),
    )
    return Check(CLAMP_RETENTION, name, grade, words, figures, remedy)


def _with_limiters(
    change: Change, facts: JointFacts, wording: Wording, *, is_over: bool
) -> tuple[Grade, str]:
    waived = change.waiver(LIMITERS)
    if waived:
        grade = Grade.FAIL if is_over else Grade.LOOK
        return grade, f"Limiters are taken out of the sum: {waived.rstrip('.')}."
    count, (low, high) = wording.number(facts.joint.count), LIMITER_G
    grams = labelled(f"{low} to {high}", "g")
    remedy = f"Keep the compression limiters of the add-backs, {count} of {grams}."
    return Grade.LOOK, remedy


def _is_mount(facts: JointFacts) -> bool:
    joint = facts.joint
    said = f"{joint.name} {joint.role} {joint.joins} {joint.to}".casefold()
    return any(word in said for word in _MOUNT_WORDS)


def head_pressure_mpa(load: ClampLoad) -> float:
    """Give the pressure of a screw's greatest clamp under its head, MPa.

    Parameters
    ----------
    load : ClampLoad
        The clamp load. The bearing face is a ring about the friction diameter, from
        the hole outwards; NaN where head or hole are not known.
    """
    screw = load.screw
    hole = CLEARANCE_HOLES_MM.get(screw.thread, math.nan)
    ring = screw.bearing_diameter_mm - hole
    if screw.is_bearing_usual or not ring > 0:
        return math.nan
    return load.greatest_n / (math.pi * screw.bearing_diameter_mm * ring)
