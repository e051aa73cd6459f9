"""Checks of a part in another material: equal function, and its wall."""

from __future__ import annotations

import math

from benchpack.model.change import ChangeKind
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_words import (
    capital,
    design_source,
    record_words,
)
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.ledger_resizing import lacks_knock_down
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording, listed

EQUAL_FUNCTION, MINIMUM_WALL = "equal function", "minimum wall"
SAVING_ELSEWHERE = "saving would have to come from ribs, integration or deleted joints"
HEAVIER = f"heavier than today at equal function; {SAVING_ELSEWHERE}"
"""What is said of a material that does not help."""
ABOUT_AS_HEAVY = 0.01
"""Share of the mass within which a part counts as heavy as before."""
_SAME = 1e-6
_VOLUME = "geometry only"
_FORMULA = "heaviest of the mass ratios at equal function (Ashby; calculations, 5)"


def function_check(made: PartChange, wording: Wording) -> Check | None:
    """Hold the mass at equal function by design values against that of the data sheet.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    wording : Wording
        How figures are written.

    Returns
    -------
    Check or None
        None for a part that is added or keeps its material.
    """
    if not made.before or not made.becomes_other:
        return None
    name = made.name
    if len(made.resized) < len(made.before):
        return _unknown(made, name)
    design_kg = math.fsum(one.design_kg for one in made.resized)
    sheet_kg = math.fsum(one.data_sheet_kg for one in made.resized)
    figures = _figures(made, design_kg, sheet_kg)
    words = [_masses(made, design_kg, sheet_kg, wording)]
    grade, remedy = Grade.GOOD, ""
    if made.new is not None and lacks_knock_down(made.new, made.governs):
        grade = Grade.LOOK
        words.append(
            f"{made.new.name} has no knock-down: this is its data sheet, cold and "
            "short-term."
        )
        remedy = f"Record the knock-downs of {made.new.name}."
    if made.change.uses_data_sheet:
        grade = Grade.LOOK
        words.append("The proposal counts the data sheet's.")
        remedy = remedy or "Count design values, or say why they do not apply."
    given = any(one.is_overridden for one in made.resized)
    if given:
        words.append(_given(made, design_kg, wording))
        if made.after_kg < design_kg * (1 - _SAME):
            grade = Grade.LOOK
            remedy = remedy or "Say what makes it lighter than its function asks for."
    counted_kg = made.after_kg if given else design_kg
    ratio = counted_kg / made.before_kg if made.before_kg > 0 else math.nan
    if ratio > 1 + ABOUT_AS_HEAVY:
        grade = Grade.FAIL
        words.append(f"{capital(name)} is {HEAVIER}.")
    elif ratio > 1 - ABOUT_AS_HEAVY:
        grade = Grade.LOOK
        words.append(f"{capital(name)} is about as heavy as today: it saves nothing.")
    if ratio > 1 - ABOUT_AS_HEAVY:
        remedy = "Ribs, parts made one, joints that go, or another material."
    said = " ".join(words)
    return Check(EQUAL_FUNCTION, name, grade, said, figures, remedy)


def _masses(
    made: PartChange, design_kg: float, sheet_kg: float, wording: Wording
) -> str:
    lead, how = made.lead_resized, []
    if lead is not None and len(made.resized) == 1:
        wall = lead.design.wall_mm
        how += [millimetres(wall, wording)] * (wall > 0)
        word = lead.design.governing
        how.append("same volume" if word == _VOLUME else f"{word} governs")
    detail = f" ({', '.join(how)})" if how else ""
    said = (
        f"At equal function {wording.mass(design_kg)} by design values{detail}, today "
        f"{wording.mass(made.before_kg)}."
    )
    if abs(sheet_kg - design_kg) > _SAME * design_kg:
        said += f" The data sheet alone would say {wording.mass(sheet_kg)}."
    return said


def _given(made: PartChange, design_kg: float, wording: Wording) -> str:
    share = made.after_kg / design_kg - 1.0 if design_kg > 0 else math.nan
    said = f"The change gives {wording.mass(made.after_kg)}"
    if not abs(share) >= 0.005:
        return f"{said}."
    word = "less" if share < 0 else "more"
    return f"{said}, {wording.share(abs(share))} {word} than that."


def _unknown(made: PartChange, name: str) -> Check:
    lacking = []
    for part in made.before:
        if not made.change.governs and not part.governs:
            lacking.append(f"what sizes {part.name}")
        if not part.material.strip():
            lacking.append(f"the material of {part.name}")
    for material in filter(None, (made.old, made.new)):
        if material.density_kg_m3 is None:
            lacking.append(f"the density of {material.name}")
        if "stiffness" in " ".join(made.governs) and material.modulus_gpa is None:
            lacking.append(f"the modulus of {material.name}")
        if "strength" in " ".join(made.governs) and material.strength_mpa is None:
            lacking.append(f"the strength of {material.name}")
    if made.new is None:
        lacking.append(f"the new material of {name}")
    words = "What it has to weigh at equal function is not known."
    return Check(EQUAL_FUNCTION, name, Grade.NONE, words, (), record_words(lacking))


def _figures(made: PartChange, design_kg: float, sheet_kg: float) -> tuple[Input, ...]:
    figures = [
        Input("mass today", made.before_kg, "kg", "parts"),
        Input("mass by design values", design_kg, "kg", _FORMULA),
        Input("mass by data sheet", sheet_kg, "kg", "without knock-downs"),
        Input("mass that counts", made.after_kg, "kg", "change"),
    ]
    for which, material in (("old", made.old), ("new", made.new)):
        if material is None:
            continue
        for label, value, unit, factor in (
            ("density", material.density_kg_m3, "kg/m3", None),
            ("modulus", material.modulus_gpa, "GPa", material.stiffness_knock_down),
            ("strength", material.strength_mpa, "MPa", material.strength_knock_down),
        ):
            source = design_source(material, factor)
            if label == "density":
                source = source.rpartition(",")[0]
            shown = math.nan if value is None else value
            figures.append(Input(f"{label}, {which} material", shown, unit, source))
    return tuple(figures)


def wall_check(made: PartChange, wording: Wording) -> Check | None:
    """Check the wall that a part gets against what can be made.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    wording : Wording
        How figures are written.

    Returns
    -------
    Check or None
        None where the material stays, and for pieces moulded into a neighbour.
    """
    if not made.becomes_other or made.new is None:
        return None
    if made.change.kind is ChangeKind.MOULD_IN:
        return None
    part, least = made.after, made.new.minimum_wall_mm
    lacking = []
    if part.thickness_mm is None:
        whose = made.lead.name if made.lead is not None else part.name
        lacking.append(f"the thickness of {whose}")
    if least is None:
        lacking.append(f"the minimum wall of {made.new.name}")
    if part.thickness_mm is None or least is None:
        words = "Whether its wall can be made is not known."
        remedy = record_words(lacking)
        return Check(MINIMUM_WALL, part.name, Grade.NONE, words, (), remedy)
    return _judged_wall(made, part.thickness_mm, least, wording)


def _judged_wall(
    made: PartChange, wall_mm: float, least_mm: float, wording: Wording
) -> Check:
    wall, least = millimetres(wall_mm, wording), millimetres(least_mm, wording)
    material = made.after.material
    figures = (
        Input("wall", wall_mm, "mm", "at equal function, or by the mass of the change"),
        Input("least wall that can be made", least_mm, "mm", f"materials, {material}"),
    )
    at_least = tuple(one.part for one in made.resized if one.counted.wall_is_minimum)
    grade, remedy = Grade.GOOD, ""
    if wall_mm < least_mm * (1 - _SAME):
        grade = Grade.FAIL
        words = f"{wall} of {material}; over a large part it is made from {least} on."
        remedy = "Give more mass, or take a material that is made thinner."
    elif at_least:
        grade = Grade.LOOK
        words = (
            f"Its function asks for less than {least}; {material} is made from {least} "
            "on, and the mass counts that."
        )
        if len(made.before) > 1:
            words = f"{listed(at_least, most=3)}: {words[:1].lower()}{words[1:]}"
        remedy = "A thinner-walled material would save more."
    else:
        words = f"{wall} of {material}, made from {least} on."
    return Check(MINIMUM_WALL, made.after.name, grade, words, figures, remedy)
