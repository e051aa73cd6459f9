"""What comes of a busbar: its current, its growth, its forces, with their sources."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from benchpack.calc import busbar
from benchpack.results.busbar import BusbarTrial
from benchpack.results.busbar_conductors import adiabatic_figures
from benchpack.results.busbar_growth_figures import (
    bowing_force_figure,
    growth_figure,
    held_force_figure,
    held_stress_figure,
    least_leg_figure,
    leg_force_figure,
    leg_stress_figure,
)
from benchpack.results.busbar_inputs import fault, figure_of, given, section
from benchpack.results.figure import Figure, Input

INITIAL_DEGC = 70.0
FINAL_DEGC = 200.0
"""From where to where a short circuit may warm a bare bar (common practice)."""
AMPACITY_SPREAD = 0.10
"""Share by which published tables lie above or below the ampacity formula."""

_AMPACITY = "Copper Development Association, Publication 22, section 10"
_AMPERE = "SI definition of the ampere before 2019; IEC 60865-1 for busbars"
_ADIABATIC = "IEC 60949 and IEC 60364-5-54, from memory"


@dataclass(frozen=True, slots=True)
class BusbarFigures:
    """Every figure of one busbar; `missing` of a figure says why it has no value.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar.
    ampacity, density : Figure
        Steady current in still air, A, and the density at it or at the current entered.
    growth, held_force, held_stress, bowing_force : Figure
        Free growth, mm; force and stress where both ends are held, and the push at
        which the bar bows out instead, N and MPa.
    least_leg, leg_force, leg_stress : Figure
        Shortest leg of an offset, mm; force and stress of the leg that is tried, or of
        the shortest.
    bar_force_m, bar_force : Figure
        Force between parallel bars in a short circuit, N/m, and over the length, N.
    short_time : Figure
        Current that the section bears for the duration of a short circuit, A.
    """

    trial: BusbarTrial
    ampacity: Figure
    density: Figure
    growth: Figure
    held_force: Figure
    held_stress: Figure
    bowing_force: Figure
    least_leg: Figure
    leg_force: Figure
    leg_stress: Figure
    bar_force_m: Figure
    bar_force: Figure
    short_time: Figure

    def every(self) -> tuple[Figure, ...]:
        """Give all figures in the order they are shown."""
        return (
            self.ampacity,
            self.density,
            self.growth,
            self.held_force,
            self.held_stress,
            self.bowing_force,
            self.least_leg,
            self.leg_force,
            self.leg_stress,
            self.bar_force_m,
            self.bar_force,
            self.short_time,
        )

    @property
    def yield_force_n(self) -> float:
        """Push at which the whole section yields, N."""
        return self.trial.section_mm2 * self.trial.conductor.strength_mpa


def busbar_figures(trial: BusbarTrial) -> BusbarFigures:
    """Work out what a busbar carries, how it grows and what it does in a short circuit.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar; what is not known leaves the figures empty that need it.
    """
    ampacity = _ampacity(trial)
    growth = growth_figure(trial)
    least = least_leg_figure(trial, growth.value)
    leg_mm = least.value if math.isnan(trial.leg_mm) else trial.leg_mm
    return BusbarFigures(
        trial,
        ampacity,
        _density(trial, ampacity.value),
        growth,
        held_force_figure(trial),
        held_stress_figure(trial),
        bowing_force_figure(trial),
        least,
        leg_force_figure(trial, growth.value, leg_mm),
        leg_stress_figure(trial, growth.value, leg_mm),
        _bar_force_m(trial),
        _bar_force(trial),
        _short_time(trial),
    )


def _ampacity(trial: BusbarTrial) -> Figure:
    conductor = trial.conductor
    value = busbar.ampacity_a(
        trial.width_mm,
        trial.thickness_mm,
        conductivity_ms_m=conductor.conductivity_ms_m,
    )
    metal = (
        Input(
            "s, conductivity",
            conductor.conductivity_ms_m,
            "MS/m",
            conductor.conductivity_source,
        ),
        Input("s_cu, conductivity of copper", busbar.COPPER_MS_M, "MS/m", "IEC 60028"),
    )
    is_copper = conductor.conductivity_ms_m == busbar.COPPER_MS_M
    figure = figure_of(
        trial,
        "ampacity",
        label="Steady current in still air, 50 K over 40 °C",
        needs=(
            "width_mm",
            "thickness_mm",
        ),
        value=value,
        unit="A",
        formula="7.73 √(b t) (2 b + 2 t)^n" + ("" if is_copper else " √(s / s_cu)"),
        inputs=(
            *section(trial),
            Input("n, exponent", busbar.AMPACITY_EXPONENT, "", "of the formula"),
            *(() if is_copper else metal),
        ),
        source=f"{_AMPACITY}; one bare copper bar on edge, direct current, still but "
        "unconfined air"
        + ("" if is_copper else "; for this metal by its conductivity, derived"),
    )
    if math.isnan(figure.value):
        return figure
    return replace(
        figure,
        low=figure.value * (1.0 - AMPACITY_SPREAD),
        high=figure.value * (1.0 + AMPACITY_SPREAD),
        range_meaning="published tables lie within 10 % of the formula",
    )


def _density(trial: BusbarTrial, ampacity_a: float) -> Figure:
    is_own = math.isnan(trial.current_a)
    current = (
        Input("I, steady current", ampacity_a, "A", "the ampacity")
        if is_own
        else given(trial, "current_a", "I")
    )
    return figure_of(
        trial,
        "density",
        label="Current density",
        needs=(
            "width_mm",
            "thickness_mm",
        ),
        value=busbar.current_density_a_mm2(current.value, trial.section_mm2),
        unit="A/mm²",
        formula="I / (b t)",
        inputs=(current, *section(trial)),
        source="definition",
    )


def _bar_force_m(trial: BusbarTrial) -> Figure:
    fault_a = trial.fault_current_a
    return figure_of(
        trial,
        "bar force per metre",
        label="Force between parallel bars",
        needs=(
            "fault_current_a",
            "distance_mm",
        ),
        value=busbar.bar_force_n_m(fault_a, fault_a, distance_mm=trial.distance_mm),
        unit="N/m",
        formula="2·10⁻⁷ I^2 / d",
        inputs=fault(trial),
        source=_AMPERE,
    )


def _bar_force(trial: BusbarTrial) -> Figure:
    fault_a = trial.fault_current_a
    return figure_of(
        trial,
        "bar force",
        label="Force between parallel bars over the length",
        needs=(
            "fault_current_a",
            "distance_mm",
            "length_mm",
        ),
        value=busbar.bar_force_n(
            fault_a,
            fault_a,
            distance_mm=trial.distance_mm,
            length_mm=trial.length_mm,
        ),
        unit="N",
        formula="2·10⁻⁷ I^2 L / d",
        inputs=(*fault(trial), given(trial, "length_mm", "L")),
        source=_AMPERE,
    )


def _short_time(trial: BusbarTrial) -> Figure:
    metal_constant, zero_resistance_k = adiabatic_figures(trial.conductor.metal)
    constant = busbar.adiabatic_constant(
        INITIAL_DEGC,
        FINAL_DEGC,
        metal_constant=metal_constant,
        zero_resistance_k=zero_resistance_k,
    )
    said = f"{trial.conductor.metal}, {INITIAL_DEGC:g} to {FINAL_DEGC:g} °C"
    return figure_of(
        trial,
        "short-time current",
        label="Current borne in a short circuit",
        needs=(
            "width_mm",
            "thickness_mm",
            "duration_s",
        ),
        value=busbar.short_time_current_a(
            trial.section_mm2, trial.duration_s, constant=constant
        ),
        unit="A",
        formula="k b t / √T",
        inputs=(
            Input("k, constant of the metal", float(constant), "A√s/mm²", said),
            *section(trial),
            given(trial, "duration_s", "T"),
        ),
        source=f"{_ADIABATIC}; without loss of heat",
    )
