"""What goes into the figures of a busbar, with symbol, unit and source."""

from __future__ import annotations

import math
from typing import SupportsFloat

from benchpack.calc.busbar_growth import leg_travel_mm
from benchpack.results.busbar import ENTERED, BusbarTrial
from benchpack.results.busbar_fields import TRIAL_FIELD
from benchpack.results.figure import Figure, Input


def given(trial: BusbarTrial, name: str, symbol: str) -> Input:
    """Give what was entered of a busbar as an input of a formula.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar.
    name : str
        An attribute of it, ``width_mm`` for instance.
    symbol : str
        Its letter in the formula.
    """
    column = TRIAL_FIELD[name]
    value = float(getattr(trial, name))
    return Input(f"{symbol}, {column.title}", value, column.unit, trial.source(name))


def section(trial: BusbarTrial) -> tuple[Input, Input]:
    """Give both sides of the section."""
    return given(trial, "width_mm", "b"), given(trial, "thickness_mm", "t")


def modulus(trial: BusbarTrial) -> Input:
    """Give Young's modulus."""
    conductor = trial.conductor
    return Input("E, modulus", conductor.modulus_gpa, "GPa", conductor.source)


def expansion(trial: BusbarTrial) -> Input:
    """Give the thermal expansion."""
    conductor = trial.conductor
    return Input("α, expansion", conductor.expansion_1e6_k, "10⁻⁶/K", conductor.source)


def rise(trial: BusbarTrial) -> Input:
    """Give how much warmer the bar gets than what holds it."""
    return given(trial, "rise_k", "ΔT")


def travel_mm(trial: BusbarTrial, growth_mm: float) -> float:
    """Give the travel of one leg in mm."""
    return float(leg_travel_mm(growth_mm, trial.legs))


def travel(trial: BusbarTrial, growth_mm: float) -> Input:
    """Give the travel of one leg."""
    source = "growth, one leg" if trial.legs == 1 else "half of the growth, two legs"
    return Input("x, travel of a leg", travel_mm(trial, growth_mm), "mm", source)


def leg(trial: BusbarTrial, leg_mm: float) -> Input:
    """Give the length of a leg: the one entered, else the shortest."""
    source = ENTERED
    if math.isnan(trial.leg_mm):
        source = "the shortest that the stress allows"
    return Input("l, leg", leg_mm, "mm", source)


def fault(trial: BusbarTrial) -> tuple[Input, Input]:
    """Give current and distance of two parallel bars in a short circuit."""
    current = given(trial, "fault_current_a", "I")
    return current, given(trial, "distance_mm", "d")


def figure_of(
    trial: BusbarTrial,
    key: str,
    *,
    label: str,
    value: SupportsFloat,
    unit: str,
    formula: str,
    inputs: tuple[Input, ...],
    source: str,
    needs: tuple[str, ...],
) -> Figure:
    """Give a figure that says what is not known where it has no value.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar.
    key, label, unit, formula, inputs, source
        As in `Figure`.
    value : float
        Its value, NaN where an input is not known.
    needs : tuple of str
        Attributes of the busbar that it cannot do without.
    """
    number = float(value)
    missing = ""
    if math.isnan(number):
        unknown = [n for n in needs if math.isnan(getattr(trial, n))]
        missing = "It does not come of these figures."
        if unknown:
            titles = ", ".join(TRIAL_FIELD[name].title for name in unknown)
            missing = f"Not known: {titles}."
    return Figure(key, label, number, unit, formula, inputs, source, missing=missing)
