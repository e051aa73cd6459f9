"""The figures of a busbar in words: current, growth, short circuit."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.results.busbar_figures import (
    FINAL_DEGC,
    INITIAL_DEGC,
    BusbarFigures,
)
from benchpack.results.closure import Grade
from benchpack.results.figure import Figure
from benchpack.units.formatting import UNKNOWN, NumberStyle, format_number, format_range

CAUTION = (
    "Estimates to compare with, not a design. Sizing a conductor, its protection and "
    "its supports is for licensed practice under the codes of the place."
)
_LARGER = {"N": ("kN", 1000.0), "N/m": ("kN/m", 1000.0), "A": ("kA", 2000.0)}
_PER_LARGER = 1000.0
_WIDTHS_MM, _THICKNESSES_MM = (12.0, 200.0), (3.0, 10.0)
_HAIR = 1e-9
_NEAR = 2.0
"""Bars whose distance is under so many times their width pull otherwise than wires."""


@dataclass(frozen=True, slots=True)
class BusbarLine:
    """One figure as it is shown.

    Parameters
    ----------
    heading : str
        The group it stands in.
    label, value : str
        What it is, and the figure with its unit; an en dash where there is none.
    note : str
        What it means, as sentences; empty where nothing is to be said.
    grade : Grade
        Whether it wants a look.
    figure : Figure
        Where it comes from.
    """

    heading: str
    label: str
    value: str
    note: str
    grade: Grade
    figure: Figure


def amount(value: float, unit: str, *, style: NumberStyle) -> str:
    r"""Write an estimate with three digits, in the larger unit where it is large.

    Parameters
    ----------
    value : float
        The figure in `unit`; NaN for an en dash.
    unit : str
        Its unit as on screen.
    style : NumberStyle
        Sets the decimal mark.

    Examples
    --------
    >>> (
    ...     amount(5731.4, "N", style=NumberStyle()),
    ...     amount(1.412, "mm", style=NumberStyle()),
    ... )
    ('5.73\xa0kN', '1.41\xa0mm')
    """
    larger, least = _LARGER.get(unit, (unit, math.inf))
    if abs(value) >= least:
        value, unit = value / _PER_LARGER, larger
    return _with_digits(value, unit, 3, style)


def entered(value: float, unit: str, *, style: NumberStyle) -> str:
    r"""Write a figure as it was entered, up to six digits.

    Parameters
    ----------
    value, unit, style
        As in `amount`.

    Examples
    --------
    >>> entered(1450.5, "mm", style=NumberStyle())
    '1\u2009450.5\xa0mm'
    """
    return _with_digits(value, unit, 6, style)


def _with_digits(value: float, unit: str, digits: int, style: NumberStyle) -> str:
    if not math.isfinite(value):
        return UNKNOWN
    rounded = float(f"{value:.{digits}g}")
    decimals = len(f"{rounded:.9f}".rstrip("0").partition(".")[2])
    number = format_number(rounded, decimals, style=style)
    return f"{number}\u00a0{unit}" if unit else number


def figure_text(figure: Figure, *, style: NumberStyle) -> str:
    """Write a figure of a busbar with its unit, and its range where it has one.

    The shortest leg is rounded up, so that a leg of that length is long enough.

    Parameters
    ----------
    figure : Figure
        The figure.
    style : NumberStyle
        Sets the decimal mark.
    """

    def shown(value: float | None) -> str:
        return amount(math.nan if value is None else value, figure.unit, style=style)

    value = figure.value
    if figure.key == "least leg" and value > 0:
        step = 10.0 ** (math.floor(math.log10(value)) - 2)
        value = math.ceil(value / step * (1.0 - _HAIR)) * step
    return format_range(value, figure.low, figure.high, shown)


def busbar_lines(
    figures: BusbarFigures, *, style: NumberStyle
) -> tuple[BusbarLine, ...]:
    """Give the figures of a busbar in words, in the order they are read.

    Parameters
    ----------
    figures : BusbarFigures
        What was worked out.
    style : NumberStyle
        Sets the decimal mark.
    """
    words = _Words(figures, style)
    return (
        words.carries(),
        words.density(),
        words.grows(),
        words.pushes(),
        words.least_leg(),
        words.pushes_with_offset(),
        words.bars(),
        words.bears(),
    )


class _Words:
    """Writes the lines of one busbar."""

    def __init__(self, figures: BusbarFigures, style: NumberStyle) -> None:
        self._figures, self._trial, self._style = figures, figures.trial, style

    def carries(self) -> BusbarLine:
        figure, trial = self._figures.ampacity, self._trial
        notes = ["At 50 K over 40 °C, one bare bar on edge. Covered it carries less."]
        grade = Grade.NONE
        if not _is_tabled(trial.width_mm, trial.thickness_mm):
            notes.append("Published tables hold no bar of this size.")
        if trial.current_a > figure.value:
            grade = Grade.FAIL if trial.current_a > figure.high else Grade.LOOK
            notes.append(f"{self._entered(trial.current_a, 'A')} is more than that.")
        about = f"about {figure_text(figure, style=self._style)}"
        return self._line("Current", "Carries", figure, notes, grade, about)

    def density(self) -> BusbarLine:
        own = math.isnan(self._trial.current_a)
        said = "that current" if own else self._entered(self._trial.current_a, "A")
        notes = [f"At {said}."]
        return self._line("Current", "Current density", self._figures.density, notes)

    def grows(self) -> BusbarLine:
        notes = [f"Free, when it gets {self._entered(self._trial.rise_k, 'K')} warmer."]
        return self._line("Growth", "Grows by", self._figures.growth, notes)

    def pushes(self) -> BusbarLine:
        figures, strength = self._figures, self._trial.conductor.strength_mpa
        held, stress = figures.held_force, figures.held_stress.value
        notes = [
            f"On terminals that hold both ends fast: {self._amount(stress, 'MPa')}."
        ]
        bows = figures.bowing_force.value < min(held.value, figures.yield_force_n)
        grade = Grade.NONE
        if stress > strength:
            grade = Grade.LOOK
            force = self._amount(figures.yield_force_n, "N")
            notes.append(f"It yields at {self._amount(strength, 'MPa')}, {force}.")
        if bows:
            grade = Grade.LOOK
            force = self._amount(figures.bowing_force.value, "N")
            notes.append(f"Straight and this slender it bows out at about {force}.")
        return self._line("Growth", "Pushes, no offset", held, notes, grade)

    def least_leg(self) -> BusbarLine:
        trial = self._trial
        allowed = self._entered(trial.allowed_stress_mpa, "MPa")
        legs = "One leg takes" if trial.legs == 1 else "Two legs share"
        notes = [f"{legs} the growth; the bend stays within {allowed}."]
        return self._line("Growth", "Shortest leg", self._figures.least_leg, notes)

    def pushes_with_offset(self) -> BusbarLine:
        figures, trial = self._figures, self._trial
        stress, strength = figures.leg_stress.value, trial.conductor.strength_mpa
        grade, fate = Grade.NONE, ""
        if math.isnan(trial.leg_mm):
            shortest = figure_text(figures.least_leg, style=self._style)
            leg = f"the shortest leg, {shortest}"
        else:
            leg = f"a leg of {self._entered(trial.leg_mm, 'mm')}"
            if stress > strength:
                grade, fate = (
                    Grade.FAIL,
                    f"it yields at {self._amount(strength, 'MPa')}",
                )
            elif stress > trial.allowed_stress_mpa:
                allowed = self._entered(trial.allowed_stress_mpa, "MPa")
                grade, fate = Grade.LOOK, f"more than the {allowed} allowed"
        said = self._amount(stress, "MPa")
        notes = [f"With {leg}: {said} in the bend" + (f"; {fate}." if fate else ".")]
        figure = figures.leg_force
        return self._line("Growth", "Pushes, with offset", figure, notes, grade)

    def bars(self) -> BusbarLine:
        figures, trial = self._figures, self._trial
        whole = figures.bar_force.value
        current = self._amount(trial.fault_current_a, "A")
        apart = self._entered(trial.distance_mm, "mm")
        over = (
            "" if math.isnan(whole) else f", {self._amount(whole, 'N')} over the length"
        )
        notes = [f"At {current} in each, {apart} apart{over}."]
        if trial.distance_mm < _NEAR * trial.width_mm:
            notes.append(
                "This near for their width a shape factor is due: less with flat "
                "sides facing, more edge to edge."
            )
        figure = figures.bar_force_m
        return self._line("Short circuit", "Between parallel bars", figure, notes)

    def bears(self) -> BusbarLine:
        figure, trial = self._figures.short_time, self._trial
        notes = [f"Bare, from {INITIAL_DEGC:g} to {FINAL_DEGC:g} °C."]
        grade = Grade.NONE
        if trial.fault_current_a > figure.value:
            grade = Grade.FAIL
            current = self._amount(trial.fault_current_a, "A")
            notes.append(f"{current} is more than that.")
        label = "Bears in a short circuit"
        if not math.isnan(trial.duration_s):
            label = f"Bears for {self._entered(trial.duration_s, 's')}"
        return self._line("Short circuit", label, figure, notes, grade)

    def _line(
        self,
        heading: str,
        label: str,
        figure: Figure,
        notes: list[str],
        grade: Grade = Grade.NONE,
        value: str = "",
    ) -> BusbarLine:
        if math.isnan(figure.value):
            return BusbarLine(
                heading, label, UNKNOWN, figure.missing, Grade.NONE, figure
            )
        value = value or figure_text(figure, style=self._style)
        return BusbarLine(heading, label, value, " ".join(notes), grade, figure)

    def _amount(self, value: float, unit: str) -> str:
        return amount(value, unit, style=self._style)

    def _entered(self, value: float, unit: str) -> str:
        return entered(value, unit, style=self._style)


def _is_tabled(width_mm: float, thickness_mm: float) -> bool:
    return (
        _WIDTHS_MM[0] <= width_mm <= _WIDTHS_MM[1]
        and _THICKNESSES_MM[0] <= thickness_mm <= _THICKNESSES_MM[1]
    )
