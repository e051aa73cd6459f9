"""The growth of a busbar, what it does to its terminals, and the leg that helps."""

from __future__ import annotations

import math

from benchpack.calc import busbar_growth
from benchpack.results.busbar import BusbarTrial
from benchpack.results.busbar_inputs import (
    expansion,
    figure_of,
    given,
    leg,
    modulus,
    rise,
    section,
    travel,
    travel_mm,
)
from benchpack.results.figure import Figure

_BEAM = "beam theory, guided cantilever as for expansion loops of piping"
_MECHANICS = "linear expansion and Hooke's law; common practice, no source"


def growth_figure(trial: BusbarTrial) -> Figure:
    """Give how much longer the bar gets where nothing holds it."""
    conductor = trial.conductor
    return figure_of(
        trial,
        "growth",
        label="Free growth",
        needs=(
            "length_mm",
            "rise_k",
        ),
        value=busbar_growth.free_growth_mm(
            trial.length_mm,
            expansion_1e6_k=conductor.expansion_1e6_k,
            rise_k=trial.rise_k,
        ),
        unit="mm",
        formula="α L ΔT",
        inputs=(expansion(trial), given(trial, "length_mm", "L"), rise(trial)),
        source=_MECHANICS,
    )


def held_force_figure(trial: BusbarTrial) -> Figure:
    """Give the push on rigid terminals of a bar without an offset."""
    return figure_of(
        trial,
        "held force",
        label="Push on the terminals without an offset",
        needs=(
            "width_mm",
            "thickness_mm",
            "rise_k",
        ),
        value=busbar_growth.held_force_n(
            trial.section_mm2,
            modulus_gpa=trial.conductor.modulus_gpa,
            expansion_1e6_k=trial.conductor.expansion_1e6_k,
            rise_k=trial.rise_k,
        ),
        unit="N",
        formula="E b t α ΔT",
        inputs=(modulus(trial), *section(trial), expansion(trial), rise(trial)),
        source=f"{_MECHANICS}; both ends rigid, the bar straight and elastic",
    )


def held_stress_figure(trial: BusbarTrial) -> Figure:
    """Give the stress in a bar without an offset."""
    return figure_of(
        trial,
        "held stress",
        label="Stress without an offset",
        needs=("rise_k",),
        value=busbar_growth.held_stress_mpa(
            trial.conductor.modulus_gpa,
            expansion_1e6_k=trial.conductor.expansion_1e6_k,
            rise_k=trial.rise_k,
        ),
        unit="MPa",
        formula="E α ΔT",
        inputs=(modulus(trial), expansion(trial), rise(trial)),
        source=f"{_MECHANICS}; both ends rigid",
    )


def bowing_force_figure(trial: BusbarTrial) -> Figure:
    """Give the push at which a straight bar bows out instead of pushing on."""
    return figure_of(
        trial,
        "bowing force",
        label="Push at which the straight bar bows out",
        needs=(
            "length_mm",
            "width_mm",
            "thickness_mm",
            "foils",
        ),
        value=busbar_growth.bowing_force_n(
            trial.length_mm,
            width_mm=trial.width_mm,
            thickness_mm=trial.thickness_mm,
            modulus_gpa=trial.conductor.modulus_gpa,
            foils=trial.foils,
        ),
        unit="N",
        formula="π² E b t^3 / (3 n^2 L^2)",
        inputs=(
            modulus(trial),
            *section(trial),
            given(trial, "foils", "n"),
            given(trial, "length_mm", "L"),
        ),
        source="Euler's load with both ends clamped, from memory",
    )


def least_leg_figure(trial: BusbarTrial, growth_mm: float) -> Figure:
    """Give the shortest leg of the offset that the stress allows."""
    return figure_of(
        trial,
        "least leg",
        label="Shortest leg of the offset",
        needs=(
            "length_mm",
            "thickness_mm",
            "foils",
            "rise_k",
            "allowed_stress_mpa",
        ),
        value=busbar_growth.least_leg_mm(
            travel_mm(trial, growth_mm),
            allowed_stress_mpa=trial.allowed_stress_mpa,
            thickness_mm=trial.thickness_mm,
            modulus_gpa=trial.conductor.modulus_gpa,
            foils=trial.foils,
        ),
        unit="mm",
        formula="√(3 E (t / n) x / S)",
        inputs=(
            modulus(trial),
            given(trial, "thickness_mm", "t"),
            given(trial, "foils", "n"),
            travel(trial, growth_mm),
            given(trial, "allowed_stress_mpa", "S"),
        ),
        source=_BEAM,
    )


def leg_force_figure(trial: BusbarTrial, growth_mm: float, leg_mm: float) -> Figure:
    """Give the push on the terminals with a leg of some length."""
    return figure_of(
        trial,
        "leg force",
        label="Push on the terminals with the offset",
        needs=_leg_needs(
            trial, "length_mm", "width_mm", "thickness_mm", "foils", "rise_k"
        ),
        value=busbar_growth.leg_force_n(
            travel_mm(trial, growth_mm),
            leg_mm=leg_mm,
            width_mm=trial.width_mm,
            thickness_mm=trial.thickness_mm,
            modulus_gpa=trial.conductor.modulus_gpa,
            foils=trial.foils,
        ),
        unit="N",
        formula="E b t^3 x / (n^2 l^3)",
        inputs=(
            modulus(trial),
            *section(trial),
            given(trial, "foils", "n"),
            travel(trial, growth_mm),
            leg(trial, leg_mm),
        ),
        source=_BEAM,
    )


def leg_stress_figure(trial: BusbarTrial, growth_mm: float, leg_mm: float) -> Figure:
    """Give the bending stress in a leg of some length."""
    return figure_of(
        trial,
        "leg stress",
        label="Bending stress in the leg",
        needs=_leg_needs(trial, "length_mm", "thickness_mm", "foils", "rise_k"),
        value=busbar_growth.leg_stress_mpa(
            travel_mm(trial, growth_mm),
            leg_mm=leg_mm,
            thickness_mm=trial.thickness_mm,
            modulus_gpa=trial.conductor.modulus_gpa,
            foils=trial.foils,
        ),
        unit="MPa",
        formula="3 E (t / n) x / l^2",
        inputs=(
            modulus(trial),
            given(trial, "thickness_mm", "t"),
            given(trial, "foils", "n"),
            travel(trial, growth_mm),
            leg(trial, leg_mm),
        ),
        source=_BEAM,
    )


def _leg_needs(trial: BusbarTrial, *names: str) -> tuple[str, ...]:
    """Give what a leg needs to be known; the shortest one also needs the stress."""
    return (*names, "allowed_stress_mpa") if math.isnan(trial.leg_mm) else names
