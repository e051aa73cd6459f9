"""A flat part under a load spread evenly: how far it is pressed in, and how hard."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from benchpack.calc.membranes import (
    membrane_deflection_mm,
    stretch_stress_mpa,
    stretched_deflection_mm,
)
from benchpack.calc.plates import (
    deflection_mm,
    greatest_moment_n,
    is_thin_plate,
    plate_stress_mpa,
    rigidity_n_mm,
)
from benchpack.calc.seal_line import water_pressure_kpa
from benchpack.model.change import ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.change_checks_parts import PartChange, design_values
from benchpack.results.change_checks_words import PRACTICE, Sides, sides_of


@dataclass(frozen=True, slots=True)
class LoadCase:
    """A load spread evenly over a panel.

    Parameters
    ----------
    name : str
        What it is, ``1 m of water``.
    pressure_kpa : float
        Pressure, kPa.
    source : str
        Where it comes from.
    """

    name: str
    pressure_kpa: float
    source: str


LOADS = (
    LoadCase(
        "1 m of water",
        float(water_pressure_kpa(1.0)),
        "immersion, GB 38031-2025 8.2.6 method 2 (IPX7); rho g h",
    ),
    LoadCase("1 kPa spread evenly", 1.0, f"for comparing; {PRACTICE}"),
)
"""Loads that panels are checked with, the one that is judged first."""


@dataclass(frozen=True, slots=True)
class Panel:
    """A flat part between its edges, by design values; NaN where not known.

    Parameters
    ----------
    sides : Sides
        Its sides.
    thickness_mm, modulus_gpa, poisson_ratio, strength_mpa : float
        Wall and material.
    stiffness_shape, strength_shape : float
        What ribs make of bending stiffness and strength; stretching is without them.
    """

    sides: Sides
    thickness_mm: float
    modulus_gpa: float
    poisson_ratio: float
    strength_mpa: float
    stiffness_shape: float = 1.0
    strength_shape: float = 1.0


@dataclass(frozen=True, slots=True)
class Sag:
    """What a load does to a panel; NaN where not known.

    Parameters
    ----------
    deflection_mm : float
        Deflection in the middle, bending and stretching together.
    thin_plate_mm : float
        What bending alone would give.
    is_thin_plate : bool
        True where thin-plate theory holds.
    stress_mpa : float
        Bending in the middle and pull at the edge added, an upper bound.
    """

    deflection_mm: float
    thin_plate_mm: float
    is_thin_plate: bool
    stress_mpa: float


def panel_of(
    part: Part, material: Material | None, *, stiffness: float = 1, strength: float = 1
) -> Panel:
    """Give a part as a panel by its design values.

    Parameters
    ----------
    part : Part
        Its wall, area and length.
    material : Material or None
        What it is made of.
    stiffness, strength : float
        Shape factors of its ribs.
    """
    values = design_values(material)
    return Panel(
        sides_of(part),
        math.nan if part.thickness_mm is None else part.thickness_mm,
        values.modulus_gpa,
        values.poisson_ratio,
        values.strength_mpa,
        stiffness,
        strength,
    )


def panels_of(made: PartChange) -> tuple[Panel, Panel] | None:
    """Give a part as a panel before and after, None for what is no panel.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it. Parts that become one bend between the edges of
        the greatest of them; pieces moulded into a neighbour are no panel any more.
    """
    lead, change = made.lead, made.change
    if lead is None or not made.is_sized_as("panel"):
        return None
    if change.kind is ChangeKind.MOULD_IN:
        return None
    after = replace(
        made.after, area_m2=lead.area_m2, length_mm=lead.length_mm, count=lead.count
    )
    return (
        panel_of(lead, made.old),
        panel_of(
            after,
            made.new,
            stiffness=change.stiffness_shape,
            strength=change.strength_shape,
        ),
    )


def sag_of(panel: Panel, pressure_kpa: float) -> Sag:
    """Give what a load spread evenly does to a panel.

    Parameters
    ----------
    panel : Panel
        The panel.
    pressure_kpa : float
        Pressure, kPa.
    """
    span = {"length_mm": panel.sides.length_mm, "width_mm": panel.sides.width_mm}
    modulus, poisson = panel.modulus_gpa, panel.poisson_ratio
    plain = rigidity_n_mm(modulus, panel.thickness_mm, poisson_ratio=poisson)
    bent = deflection_mm(
        pressure_kpa,
        **span,
        rigidity_n_mm=plain * panel.stiffness_shape,
        edges="supported",
    )
    stretched = membrane_deflection_mm(
        pressure_kpa,
        **span,
        modulus_gpa=modulus,
        thickness_mm=panel.thickness_mm,
        poisson_ratio=poisson,
    )
    deflection = stretched_deflection_mm(bent, stretched)
    moment = greatest_moment_n(
        pressure_kpa, **span, edges="supported", poisson_ratio=poisson
    )
    bending = plate_stress_mpa(moment, panel.thickness_mm) / panel.strength_shape
    # Bending takes as much of the load as it would give of the deflection.
    share = np.divide(deflection, bent)
    pull = stretch_stress_mpa(
        deflection, **span, modulus_gpa=modulus, poisson_ratio=poisson
    )
    return Sag(
        float(deflection),
        float(bent),
        bool(is_thin_plate(bent, panel.thickness_mm)),
        float(bending * share + pull),
    )
