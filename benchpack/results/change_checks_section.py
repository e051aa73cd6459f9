"""The section that stands for a beam, and what it does under a load of comparison."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.calc.beams import beam_deflection_mm, beam_moment_n_mm, beam_stress_mpa
from benchpack.calc.sections import Section, hollow_rectangle
from benchpack.model.change import ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.change_checks_parts import (
    PartChange,
    design_values,
    quotient,
)

LOAD_N = 1000.0
"""Load spread evenly with which beams are compared (common practice, no source)."""
_MM2_PER_KG = 1e9


@dataclass(frozen=True, slots=True, eq=False)
class Beam:
    """A beam by its design values; NaN where not known.

    Parameters
    ----------
    side_mm, wall_mm : float
        Outer side and wall of the hollow square that stands for its section.
    section : Section
        What that brings.
    length_mm, modulus_gpa, strength_mpa : float
        Length and material.
    stiffness_shape, strength_shape : float
        What a better section or ribs make of it.
    """

    side_mm: float
    wall_mm: float
    section: Section
    length_mm: float
    modulus_gpa: float
    strength_mpa: float
    stiffness_shape: float = 1.0
    strength_shape: float = 1.0

    @property
    def deflection_mm(self) -> float:
        """Deflection under the load of comparison, ends held against turning."""
        second = self.section.second_moment_mm4 * self.stiffness_shape
        return float(
            beam_deflection_mm(
                LOAD_N,
                length_mm=self.length_mm,
                modulus_gpa=self.modulus_gpa,
                second_moment_mm4=second,
                support="fixed",
                spread="uniform",
            )
        )

    @property
    def stress_mpa(self) -> float:
        """Stress at the ends under the load of comparison."""
        moment = beam_moment_n_mm(
            LOAD_N, length_mm=self.length_mm, support="fixed", spread="uniform"
        )
        modulus = self.section.modulus_mm3 * self.strength_shape
        return float(beam_stress_mpa(moment, modulus))


def section_of(part: Part, material: Material | None) -> tuple[float, float]:
    """Give outer side and wall of the hollow square that stands for a section.

    Parameters
    ----------
    part : Part
        Its mass, length and wall.
    material : Material or None
        Its density.

    Returns
    -------
    tuple of float
        mm; a wall of half the side is a solid square. NaN where one is not known.
    """
    density = None if material is None else material.density_kg_m3
    mass, length, wall = part.mass_each_kg, part.length_mm, part.thickness_mm
    if not mass or not length or not wall or not density:
        return math.nan, math.nan
    area = quotient(mass * _MM2_PER_KG, density * length)
    if area <= 4.0 * wall**2:
        side = math.sqrt(area)
        return side, side / 2.0
    return area / (4.0 * wall) + wall, wall


def beams_of(made: PartChange) -> tuple[Beam, Beam] | None:
    """Give a part as a beam before and after, None for what is no beam.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it; several parts that become one, and pieces moulded
        into a neighbour, are no beam any more.
    """
    lead = made.lead
    if lead is None or len(made.before) > 1 or not made.is_sized_as("beam"):
        return None
    if made.change.kind is ChangeKind.MOULD_IN:
        return None
    today = _beam(made, lead)
    return today, _grown(made, today)


def _beam(made: PartChange, lead: Part) -> Beam:
    values = design_values(made.old)
    side, wall = section_of(lead, made.old)
    section = hollow_rectangle(side, side, wall_mm=wall)
    length = math.nan if lead.length_mm is None else lead.length_mm
    return Beam(side, wall, section, length, values.modulus_gpa, values.strength_mpa)


def _grown(made: PartChange, today: Beam) -> Beam:
    """Give the beam after: its section grown alike in all directions to its mass."""
    values, new = design_values(made.new), made.new
    density = (
        math.nan if new is None or new.density_kg_m3 is None else new.density_kg_m3
    )
    old = math.nan if made.old is None else made.old.density_kg_m3 or math.nan
    plain_kg = made.after_kg / (1.0 + made.change.rib_allowance)
    area_ratio = quotient(plain_kg, made.before_kg) * quotient(old, density)
    grown = math.sqrt(area_ratio) if area_ratio > 0 else math.nan
    side, wall = today.side_mm * grown, today.wall_mm * grown
    return Beam(
        side,
        wall,
        hollow_rectangle(side, side, wall_mm=wall),
        today.length_mm,
        values.modulus_gpa,
        values.strength_mpa,
        made.change.stiffness_shape,
        made.change.strength_shape,
    )
