"""Check of a beam: its section and what that bears, before and after."""

from __future__ import annotations

import math

from benchpack.model.part import Part
from benchpack.results.change_checks_parts import (
    PartChange,
    design_values,
    quotient,
)
from benchpack.results.change_checks_section import LOAD_N, Beam, beams_of
from benchpack.results.change_checks_words import (
    PRACTICE,
    amount,
    modulus_input,
    record_words,
    strength_input,
)
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording

BEAM = "beam"
ENOUGH, TOO_LITTLE = 0.95, 0.5
"""Share of today's stiffness or moment that is as good, and that is not enough."""
GROWN = 1.05
"""Outer size over today's from which its room wants a look."""
_SECTION = (
    "hollow square by mass, density, length and wall; it keeps its shape as it grows"
)


def beam_check(made: PartChange, wording: Wording) -> Check | None:
    """Check what a beam bears and how much room it takes, against today's.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    wording : Wording
        How figures are written.

    Returns
    -------
    Check or None
        None for what is no beam, for several parts that become one, and for pieces
        moulded into a neighbour.
    """
    beams = beams_of(made)
    if beams is None or made.lead is None:
        return None
    today, then = beams
    if not (today.deflection_mm > 0 and then.deflection_mm > 0):
        words = "What its section bears is not known."
        remedy = record_words(_lacking(made, made.lead))
        return Check(BEAM, made.after.name, Grade.NONE, words, (), remedy)
    return _judged(made, today, then, wording)


def _judged(made: PartChange, today: Beam, then: Beam, wording: Wording) -> Check:
    stiffness = quotient(today.deflection_mm, then.deflection_mm)
    moment = quotient(
        quotient(then.strength_mpa, then.stress_mpa),
        quotient(today.strength_mpa, today.stress_mpa),
    )
    grown = quotient(then.side_mm, today.side_mm)
    grade, remedy = Grade.GOOD, ""
    if min(stiffness, moment) < TOO_LITTLE:
        grade = Grade.FAIL
        remedy = "A larger section, another material, or metal where the load runs."
    elif min(stiffness, moment) < ENOUGH:
        grade, remedy = Grade.LOOK, "See what load it bears, and let that govern too."
    elif math.isnan(moment):
        names = [m.name for m in (made.old, made.new) if m and m.strength_mpa is None]
        grade = Grade.LOOK
        remedy = record_words([f"the strength of {name}" for name in names])
    elif grown > GROWN:
        grade, remedy = Grade.LOOK, "See that there is room for the larger section."
    said = " ".join(
        (
            _bends(today, then, wording),
            _bears(moment, wording),
            _room(made, today, then, wording),
        )
    )
    figures = _figures(made, today, then)
    return Check(BEAM, made.after.name, grade, said, figures, remedy)


def _bends(today: Beam, then: Beam, wording: Wording) -> str:
    load = amount(LOAD_N / 1000.0, "kN", wording)
    after, before = (millimetres(b.deflection_mm, wording) for b in (then, today))
    return f"Bends {after} under {load} spread evenly, ends held; today {before}."


def _bears(moment: float, wording: Wording) -> str:
    if math.isnan(moment):
        return "What moment it bears is not known."
    share = wording.share(moment)
    return f"Bears {share} of today's bending moment by design strength."


def _room(made: PartChange, today: Beam, then: Beam, wording: Wording) -> str:
    side, wall, new_side, new_wall = (
        millimetres(size, wording)
        for size in (today.side_mm, today.wall_mm, then.side_mm, then.wall_mm)
    )
    said = f"Its section, taken as a hollow square of {side} with {wall}"
    if abs(quotient(then.side_mm, today.side_mm) - 1.0) < 0.005:
        return f"{said}, stays."
    verb = "grows" if then.side_mm > today.side_mm else "shrinks"
    return f"{said}, {verb} to {new_side} with {new_wall} of {made.after.material}."


def _lacking(made: PartChange, lead: Part) -> list[str]:
    found = []
    if lead.length_mm is None:
        found.append(f"the length of {lead.name}")
    if lead.thickness_mm is None:
        found.append(f"the thickness of {lead.name}")
    for material, name in ((made.old, lead.material), (made.new, made.after.material)):
        if material is None:
            found.append(f"the material {name}".rstrip())
            continue
        if material.density_kg_m3 is None:
            found.append(f"the density of {material.name}")
        if material.modulus_gpa is None:
            found.append(f"the modulus of {material.name}")
    return found


def _figures(made: PartChange, today: Beam, then: Beam) -> tuple[Input, ...]:
    figures = [
        Input("length", today.length_mm, "mm", "parts"),
        Input("load", LOAD_N, "N", f"for comparing; {PRACTICE}"),
    ]
    for when, beam, material in (("today", today, made.old), ("after", then, made.new)):
        figures += [
            Input(f"side {when}", beam.side_mm, "mm", _SECTION),
            Input(f"wall {when}", beam.wall_mm, "mm", _SECTION),
            Input(f"deflection {when}", beam.deflection_mm, "mm", "F L^3 / (384 E I)"),
            Input(f"stress {when}", beam.stress_mpa, "MPa", "F L / (12 W)"),
        ]
        if material is not None:
            values = design_values(material)
            figures += [
                modulus_input(f"E {when}", material, values),
                strength_input(f"S {when}", material, values),
            ]
    return tuple(figures)
