"""A busbar as it is tried out: its figures, and what a part already says of them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.part import Part
from benchpack.results.busbar_conductors import COPPER, Conductor, conductor_of
from benchpack.results.busbar_fields import TRIAL_FIELD, TRIAL_FIELDS

ASSUMED = "assumed"
ENTERED = "entered"
"""How a figure is known that no part gave."""
_MM2_PER_M2 = 1e6
_MM3_PER_M3 = 1e9


@dataclass(frozen=True, slots=True)
class BusbarTrial:
    """One busbar as it is tried out; NaN where a figure is not known.

    Parameters
    ----------
    conductor : Conductor
        Its metal.
    length_mm, width_mm, thickness_mm, foils
        The bar.
    rise_k : float
        How much warmer it gets than what holds its ends, K.
    legs : int
        Legs that share the growth: one in an offset, two in a U-loop.
    leg_mm : float
        Length of a leg, mm; NaN for the least that the stress allows.
    allowed_stress_mpa : float
        Greatest bending stress in a leg, MPa.
    current_a : float
        Steady current to compare with, A.
    fault_current_a, distance_mm, duration_s : float
        Short circuit: current in both bars, their distance, how long it lasts.
    known_by : mapping of str to str
        How a figure is known, by attribute.

    Raises
    ------
    DataError
        With one problem per figure that cannot stand.
    """

    conductor: Conductor = COPPER
    length_mm: float = math.nan
    width_mm: float = math.nan
    thickness_mm: float = math.nan
    foils: float = 1
    rise_k: float = 60.0
    legs: int = 1
    leg_mm: float = math.nan
    allowed_stress_mpa: float = COPPER.allowed_stress_mpa
    current_a: float = math.nan
    fault_current_a: float = 5000.0
    distance_mm: float = 20.0
    duration_s: float = 1.0
    known_by: Mapping[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        problems: list[Problem] = []
        for one in TRIAL_FIELDS:
            value = getattr(self, one.name)
            refusal = None if math.isnan(value) else one.refusal(value)
            if refusal is not None:
                problems.append(refusal)
        if problems:
            raise DataError(*problems)

    @property
    def section_mm2(self) -> float:
        """Width times thickness, mm2."""
        return self.width_mm * self.thickness_mm

    def source(self, name: str) -> str:
        """Say how a figure is known.

        Parameters
        ----------
        name : str
            An attribute, ``width_mm`` for instance.
        """
        return self.known_by.get(name, ASSUMED)


@dataclass(frozen=True, slots=True)
class Prefill:
    """What a part says of its busbar.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar; NaN where the part says nothing.
    notes : tuple of str
        How figures were got that the part does not hold, and what is missing.
    """

    trial: BusbarTrial
    notes: tuple[str, ...] = ()


def with_conductor(trial: BusbarTrial, conductor: Conductor) -> BusbarTrial:
    """Give a busbar of another metal, with the bending stress that goes with it.

    Parameters
    ----------
    trial : BusbarTrial
        The busbar before.
    conductor : Conductor
        The metal.
    """
    allowed = conductor.allowed_stress_mpa
    return replace(trial, conductor=conductor, allowed_stress_mpa=allowed)


def prefilled(part: Part, library: Library) -> Prefill:
    """Give what a part says of its busbar, the width from its mass where it can be.

    Parameters
    ----------
    part : Part
        A conductor.
    library : Library
        Holds its material.

    Returns
    -------
    Prefill
        The width is mass over (density, thickness, length), else area over length.
    """
    notes: list[str] = []
    conductor = conductor_of(part.material, library)
    if conductor is None:
        said = "No material is recorded"
        if part.material:
            said = f"{part.material} is neither copper nor aluminium"
        notes.append(f"{said}: the figures are those of copper.")
    width_mm, how = _width(part, conductor)
    if how:
        notes.append(f"The width is taken from {how}.")
    recorded = (part.length_mm, width_mm, part.thickness_mm)
    names = ("length_mm", "width_mm", "thickness_mm")
    missing = [
        TRIAL_FIELD[name].title
        for name, value in zip(names, recorded, strict=True)
        if value is None
    ]
    if missing:
        notes.append(f"Not recorded: {_listed(missing)}.")
    if part.area_m2 and part.length_mm is None:
        area_mm2 = part.area_m2 * _MM2_PER_M2
        notes.append(f"Its area, length times width, is {area_mm2:.0f} mm².")
    length, width, thickness = (math.nan if v is None else v for v in recorded)
    trial = BusbarTrial(
        length_mm=length,
        width_mm=width,
        thickness_mm=thickness,
        known_by=dict.fromkeys(names, "recorded with the part")
        | ({"width_mm": f"from {how}"} if how else {}),
    )
    return Prefill(with_conductor(trial, conductor or COPPER), tuple(notes))


def _width(part: Part, conductor: Conductor | None) -> tuple[float | None, str]:
    """Give the width in mm and what it was taken from, None where it cannot be."""
    mass, thick, long = part.mass_each_kg, part.thickness_mm, part.length_mm
    width, how = math.nan, ""
    if mass and thick and long and conductor is not None:
        volume_mm3 = mass / conductor.density_kg_m3 * _MM3_PER_M3
        width = volume_mm3 / (thick * long)
        how = "mass, density, thickness and length"
    elif part.area_m2 and long:
        width, how = part.area_m2 * _MM2_PER_M2 / long, "area and length"
    if TRIAL_FIELD["width_mm"].refusal(width) is not None:
        return None, ""
    return width, how


def _listed(names: list[str]) -> str:
    head = ", ".join(names[:-1])
    return f"{head} and {names[-1]}" if head else names[-1]
