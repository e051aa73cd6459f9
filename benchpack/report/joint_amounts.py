"""Amounts of joints in words: seconds, money, pieces and lengths."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchpack.model.families import FamilySort
from benchpack.report.display import Display
from benchpack.results.inventory import Measure, Totals, totals_of
from benchpack.results.joint_facts import JointFacts
from benchpack.units.formatting import format_mass, format_money, format_number
from benchpack.units.number_style import UNKNOWN, labelled


def seconds_text(seconds: float, display: Display) -> str:
    """Write a time: whole seconds, one decimal below ten.

    Parameters
    ----------
    seconds : float
        The time, s.
    display : Display
        How numbers are shown.
    """
    decimals = 1 if 0 < abs(seconds) < 10 and seconds != round(seconds) else 0
    return labelled(format_number(seconds, decimals, style=display.style), "s")


def joint_mass_text(mass_kg: float, display: Display) -> str:
    """Write a mass of joints: as everywhere, with a second decimal below one kg or lb.

    Parameters
    ----------
    mass_kg : float
        The mass, kg.
    display : Display
        How numbers are shown.
    """
    decimals = 2 if abs(display.mass(mass_kg)) < 0.995 else 1
    return format_mass(mass_kg, style=display.style, decimals=decimals)


def joint_money_text(value: float, display: Display) -> str:
    """Write money of joints: whole, with two decimals below ten.

    Parameters
    ----------
    value : float
        The money, in the study's currency.
    display : Display
        How numbers are shown.
    """
    decimals = 2 if 0 < abs(value) < 9.995 else 0
    return format_money(value, display.currency, style=display.style, decimals=decimals)


def measure_text(value: float, measure: Measure, display: Display) -> str:
    """Write one sum with its unit.

    Parameters
    ----------
    value : float
        Pieces, kg, s or money; NaN gives an en dash.
    measure : Measure
        Which of them.
    display : Display
        How numbers are shown.
    """
    if measure is Measure.MASS:
        return joint_mass_text(value, display)
    if measure is Measure.TIME:
        return seconds_text(value, display)
    if measure is Measure.MONEY:
        return joint_money_text(value, display)
    return format_number(value, style=display.style)


def amount_text(totals: Totals, measure: Measure, display: Display) -> str:
    """Write one sum; where rows lack it, it is at least that.

    Parameters
    ----------
    totals : Totals
        The sums.
    measure : Measure
        Which of them.
    display : Display
        How numbers are shown.
    """
    text = measure_text(totals.of(measure), measure, display)
    if text == UNKNOWN or not totals.unknown(measure):
        return text
    return f"at least {text}"


def mass_range_text(totals: Totals, display: Display) -> str:
    """Write the mass with plus and minus two standard uncertainties.

    Parameters
    ----------
    totals : Totals
        The sums.
    display : Display
        How numbers are shown.
    """
    mass_kg, u_kg = totals.of(Measure.MASS), totals.mass_u_kg
    low_kg = max(0.0, mass_kg - 2 * u_kg) if u_kg > 0 else math.nan
    return display.ranged_mass_text(mass_kg, low_kg, mass_kg + 2 * u_kg)


def counted_text(facts: Sequence[JointFacts], display: Display) -> str:
    """Say how many joints these are: ``16 screws``, ``84 pieces and 5.9 m of seal``.

    Parameters
    ----------
    facts : sequence of JointFacts
        Some joints.
    display : Display
        How numbers are shown.
    """
    totals = totals_of(facts)
    said = []
    if totals.pieces:
        number = format_number(totals.pieces, style=display.style)
        said.append(f"{number} {_noun(facts, totals.pieces)}")
    if totals.line_m > 0:
        length = labelled(format_number(totals.line_m, 1, style=display.style), "m")
        seals = all(f.is_seal_line for f in facts if f.line_mm > 0)
        said.append(f"{length} of {'seal' if seals else 'seams and beads'}")
    return " and ".join(said) or "no joints"


_NOUNS = {
    FamilySort.SCREW: "screw",
    FamilySort.NUT: "nut",
    FamilySort.INSERT: "insert",
    FamilySort.RIVET: "rivet",
}


def _noun(facts: Sequence[JointFacts], pieces: int) -> str:
    sorts = {f.family.sort if f.family else None for f in facts if f.pieces}
    noun = "piece"
    if len(sorts) == 1 and (sort := sorts.pop()) is not None:
        noun = _NOUNS.get(sort, noun)
    return noun if pieces == 1 else f"{noun}s"
