"""Check of a plate that is added to spread the heat between coolant lines."""

from __future__ import annotations

import math

from benchpack.results.change_checks_heat import HeatCase, heat_path, spread_k
from benchpack.results.change_checks_layers import spreads, wall_and_k
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_words import amount, material_source
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording
from benchpack.units.number_style import labelled

HEAT_PATH = "heat path"


def plate_check(made: PartChange, case: HeatCase, wording: Wording) -> Check | None:
    """Check whether a plate that is added spreads the heat well enough.

    Parameters
    ----------
    made : PartChange
        The part that is added.
    case : HeatCase
        Heat flux, distance of the coolant lines and the rise allowed.
    wording : Wording
        How figures are written.

    Returns
    -------
    Check or None
        None for what is no plate of the cooling.
    """
    if not spreads(made) or made.new is None:
        return None
    name, (wall, conductivity) = made.after.name, wall_and_k(made.after, made.new)
    least = heat_path(case, today=(wall, conductivity), after=(wall, conductivity))
    needed = least.plate_mm * case.plate_w_mk / conductivity
    if math.isnan(wall):
        words = "How well it spreads the heat is not known."
        remedy = f"Enter the wall of {name}; {millimetres(needed, wording)} would do."
        return Check(HEAT_PATH, name, Grade.NONE, words, (), remedy)
    rise = spread_k(case, wall, conductivity)
    flux = amount(case.flux_w_m2 / 1000.0, "kW/m²", wording)
    apart = millimetres(2.0 * case.half_pitch_mm, wording)
    words = (
        f"At {flux} and coolant lines {apart} apart it is {kelvin(rise, wording)} "
        f"warmer midway; {amount(case.allowed_rise_k, 'K', wording)} take "
        f"{millimetres(needed, wording)}."
    )
    grade, remedy = Grade.GOOD, ""
    if rise > case.allowed_rise_k:
        grade = Grade.LOOK if rise <= 2.0 * case.allowed_rise_k else Grade.FAIL
        remedy = "Make it thicker, or bring the coolant lines closer."
    figures = (
        *case_figures(case),
        Input("wall of the plate", wall, "mm", "change"),
        Input("k of the plate", conductivity, "W/(m K)", material_source(made.new)),
        Input("rise midway", rise, "K", "q L^2 / (2 k t)"),
        Input("least wall", needed, "mm", "q L^2 / (2 k dT)"),
    )
    return Check(HEAT_PATH, name, grade, words, figures, remedy)


def kelvin(value: float, wording: Wording) -> str:
    """Write a rise of temperature.

    Parameters
    ----------
    value : float
        K.
    wording : Wording
        How figures are written.
    """
    decimals = 2 if abs(value) < 0.095 else 1
    return labelled(wording.number(value, decimals=decimals), "K")


def case_figures(case: HeatCase) -> tuple[Input, ...]:
    """Give what a heat path is checked with, as inputs.

    Parameters
    ----------
    case : HeatCase
        The case.
    """
    return (
        Input("q, heat flux", case.flux_w_m2, "W/m2", case.source),
        Input("L, half the distance", case.half_pitch_mm, "mm", case.source),
        Input("dT, allowed midway", case.allowed_rise_k, "K", case.source),
    )
