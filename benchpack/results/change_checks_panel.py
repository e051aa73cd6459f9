"""Check of a panel under load: how far it is pressed in, before and after."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.change_checks_parts import (
    PartChange,
    design_values,
    quotient,
)
from benchpack.results.change_checks_sag import (
    LoadCase,
    Panel,
    Sag,
    panels_of,
    sag_of,
)
from benchpack.results.change_checks_words import (
    PRACTICE,
    Sides,
    amount,
    capital,
    modulus_input,
    record_words,
    strength_input,
    wall_words,
)
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording

PANEL = "panel deflection"
MORE = 1.1
"""Deflection over today's from which it wants a look (common practice, no source)."""
_FORMULA = (
    "bending (alpha q a^4 / D) and stretching share the load; edges supported and held "
    "in the plane, Timoshenko"
)


def panel_check(
    made: PartChange, loads: Sequence[LoadCase], wording: Wording
) -> Check | None:
    """Check how far a panel is pressed in against how far it is today.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    loads : sequence of LoadCase
        The first is judged, the others are told.
    wording : Wording
        How figures are written.

    Returns
    -------
    Check or None
        None for what is no panel, and for pieces moulded into a neighbour.
    """
    panels = panels_of(made)
    if panels is None or not loads:
        return None
    sags = [
        (sag_of(panels[0], load.pressure_kpa), sag_of(panels[1], load.pressure_kpa))
        for load in loads
    ]
    if math.isnan(sags[0][1].deflection_mm):
        words = "How far it is pressed in is not known."
        remedy = record_words(_lacking(made))
        return Check(PANEL, made.after.name, Grade.NONE, words, (), remedy)
    return _judged(made, panels, (loads, sags), wording)


def _judged(
    made: PartChange,
    panels: tuple[Panel, Panel],
    loaded: tuple[Sequence[LoadCase], list[tuple[Sag, Sag]]],
    wording: Wording,
) -> Check:
    (loads, sags), after = loaded, made.after
    (today, then), load = sags[0], loads[0]
    times = quotient(then.deflection_mm, today.deflection_mm)
    strength = panels[1].strength_mpa
    words = [
        f"{load.name} presses {wall_words(after, wording)} in by {_sag(then, wording)}"
        + _today(today, times, wording),
        _how(then, wording),
        _stress(then, strength, wording),
    ]
    for one, pair in zip(loads[1:], sags[1:], strict=True):
        said = f"{one.name}: {_sag(pair[1], wording)}"
        words.append(said + _today(pair[0], math.nan, wording))
    words.append(_span(panels[1].sides, wording))
    grade, remedy = _graded(made, then, times, strength, wording)
    said = " ".join(filter(None, words))
    figures = _figures(made, panels, loaded)
    return Check(PANEL, after.name, grade, capital(said), figures, remedy)


def _graded(
    made: PartChange, then: Sag, times: float, strength_mpa: float, wording: Wording
) -> tuple[Grade, str]:
    if then.stress_mpa > strength_mpa:
        return Grade.FAIL, "Ribs, a closer span, or a stronger wall."
    remedies = []
    if math.isnan(times) and made.lead is not None:
        remedies.append(record_words(_lacking_of(made.lead, made.old)))
    elif times > MORE:
        free = _sag(then, wording)
        remedies.append(f"See that {free} are free beneath, or add ribs or a crown.")
    if math.isnan(strength_mpa):
        remedies.append(record_words([f"the strength of {made.after.material}"]))
    return (Grade.LOOK if remedies else Grade.GOOD), " ".join(remedies)


def _sag(sag: Sag, wording: Wording) -> str:
    return millimetres(sag.deflection_mm, wording)


def _today(today: Sag, times: float, wording: Wording) -> str:
    if math.isnan(today.deflection_mm):
        return "."
    said = f", today {_sag(today, wording)}"
    if math.isnan(times) or 0.995 < times < 1.005:
        return f"{said}."
    return f"{said} ({amount(times, '', wording)} times)."


def _how(sag: Sag, wording: Wording) -> str:
    if sag.is_thin_plate:
        return ""
    said = "It is far beyond half the wall, where thin-plate theory ends"
    if sag.thin_plate_mm < 10 * sag.deflection_mm:
        bent = millimetres(sag.thin_plate_mm, wording)
        said = f"Thin-plate theory, which ends at half the wall, would say {bent}"
    return f"{said}: it stretches and carries as a membrane, as its rim is held."


def _stress(sag: Sag, strength_mpa: float, wording: Wording) -> str:
    said = f"At most {amount(sag.stress_mpa, 'MPa', wording)} in it"
    if math.isnan(strength_mpa):
        return f"{said}; its strength is not recorded."
    return f"{said}, design strength {amount(strength_mpa, 'MPa', wording)}."


def _span(sides: Sides, wording: Wording) -> str:
    long = wording.number(max(sides.length_mm, sides.width_mm))
    short = millimetres(min(sides.length_mm, sides.width_mm), wording)
    return (
        f"Span {long} by {short}, {sides.words}; stiffeners, beads and crowns are not "
        "in it."
    )


def _lacking(made: PartChange) -> list[str]:
    lead = made.lead
    found = [] if lead is None else _lacking_of(lead, made.old)
    if made.new is None:
        found.append(f"the material {made.after.material}".rstrip())
    elif made.new.modulus_gpa is None:
        found.append(f"the modulus of {made.new.name}")
    return found


def _lacking_of(part: Part, material: Material | None) -> list[str]:
    found = []
    if not part.area_m2:
        found.append(f"the area of {part.name}")
    if part.thickness_mm is None:
        found.append(f"the thickness of {part.name}")
    if material is None:
        found.append(f"the material of {part.name}")
    elif material.modulus_gpa is None:
        found.append(f"the modulus of {material.name}")
    return found


def _figures(
    made: PartChange,
    panels: tuple[Panel, Panel],
    loaded: tuple[Sequence[LoadCase], list[tuple[Sag, Sag]]],
) -> tuple[Input, ...]:
    loads, sags = loaded
    sides, area = panels[1].sides, "parts"
    figures = [
        Input("span, long", max(sides.length_mm, sides.width_mm), "mm", sides.words),
        Input("span, short", min(sides.length_mm, sides.width_mm), "mm", sides.words),
    ]
    for when, panel, material in (
        ("today", panels[0], made.old),
        ("after", panels[1], made.new),
    ):
        source = area if when == "today" else "at equal function, or by its mass"
        figures.append(Input(f"wall {when}", panel.thickness_mm, "mm", source))
        if material is None:
            continue
        values = design_values(material)
        poisson = f"materials, {material.name}"
        if values.is_poisson_usual:
            poisson = f"not recorded; {PRACTICE}"
        figures += [
            modulus_input(f"E {when}", material, values),
            strength_input(f"S {when}", material, values),
            Input(f"Poisson's ratio {when}", values.poisson_ratio, "", poisson),
        ]
    if panels[1].stiffness_shape != 1.0:
        shape = panels[1].stiffness_shape
        figures.append(Input("stiffness shape", shape, "", "change"))
    for load, (today, then) in zip(loads, sags, strict=True):
        figures += [
            Input(load.name, load.pressure_kpa, "kPa", load.source),
            Input(f"{load.name}, today", today.deflection_mm, "mm", _FORMULA),
            Input(f"{load.name}, after", then.deflection_mm, "mm", _FORMULA),
            Input(
                f"{load.name}, thin plate alone",
                then.thin_plate_mm,
                "mm",
                "alpha q a^4 / D, holds to half the wall",
            ),
            Input(
                f"{load.name}, stress",
                then.stress_mpa,
                "MPa",
                "bending in the middle and pull at the edge, added",
            ),
        ]
    return tuple(figures)
