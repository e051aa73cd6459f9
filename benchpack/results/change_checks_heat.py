"""The heat path from cells to coolant, before and after, and the plate it needs."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from benchpack.calc.heat import (
    film_resistance_m2k_w,
    least_plate_mm,
    plate_mass_kg,
    series_resistance_m2k_w,
    spreading_rise_k,
    temperature_rise_k,
)
from benchpack.model.ranges import Range

_RECALLED = "usual figure, from memory"
LEAST_SHEET_MM = 0.8
"""Aluminium sheet is rolled and handled from this wall on (from memory)."""
_PLATE_SPREAD = (0.5, 1.0, 1.5)
"""A sized plate at its ends: flux and distance of the lines are usual figures, and the
wall goes with the square of the distance (working range, no source)."""


@dataclass(frozen=True, slots=True)
class HeatCase:
    """What a heat path is checked with.

    Parameters
    ----------
    flux_w_m2 : float
        Heat flux from the cells.
    filler_mm, filler_w_mk : float
        Gap filler between cells and what cools them.
    film_w_m2k : float
        Heat transfer to the coolant.
    half_pitch_mm : float
        From a coolant line to midway to the next.
    allowed_rise_k : float
        Rise midway between coolant lines that a plate may have.
    plate_w_mk, plate_density_kg_m3 : float
        The aluminium of a spreading plate.
    source, filler_source : str
        Where the figures come from.
    """

    flux_w_m2: float = 2000.0
    filler_mm: float = 1.5
    filler_w_mk: float = 3.0
    film_w_m2k: float = 1000.0
    half_pitch_mm: float = 30.0
    allowed_rise_k: float = 5.0
    plate_w_mk: float = 190.0
    plate_density_kg_m3: float = 2700.0
    source: str = _RECALLED
    filler_source: str = _RECALLED


@dataclass(frozen=True, slots=True)
class HeatPath:
    """What a layer does to a heat path; NaN where not known.

    Parameters
    ----------
    layer_today_k, layer_after_k : float
        Rise across the part that changes.
    today_k, after_k : float
        Rise from coolant to cells: filler, part and film.
    with_plate_k : float
        The same midway between coolant lines with a spreading plate of the least
        thickness on the cells' side of the part, which is then out of the path.
    plate_mm, plate_kg : float
        That plate: its thickness, and its mass over the area.
    """

    layer_today_k: float
    layer_after_k: float
    today_k: float
    after_k: float
    with_plate_k: float
    plate_mm: float
    plate_kg: float

    @property
    def added_k(self) -> float:
        """By how much more the cells rise over the coolant."""
        return self.after_k - self.today_k


def heat_path(
    case: HeatCase,
    *,
    today: tuple[float, float],
    after: tuple[float, float],
    area_m2: float = math.nan,
) -> HeatPath:
    """Work out a heat path with a part before and after a change.

    Parameters
    ----------
    case : HeatCase
        Heat flux, filler, film and plate.
    today, after : tuple of float
        Wall of the part in mm and its conductivity in W/(m K).
    area_m2 : float
        Area that the cells stand on, for the mass of the plate.
    """
    filler = (case.filler_mm, case.filler_w_mk)
    film = film_resistance_m2k_w(case.film_w_m2k)

    def rise(*layers: tuple[float, float], contact: float = 0.0) -> float:
        walls, conductivities = zip(*layers, strict=True)
        path = series_resistance_m2k_w(walls, conductivities, contact_m2k_w=contact)
        return float(temperature_rise_k(case.flux_w_m2, path))

    plate_mm = float(
        least_plate_mm(
            case.flux_w_m2,
            half_pitch_mm=case.half_pitch_mm,
            allowed_rise_k=case.allowed_rise_k,
            conductivity_w_mk=case.plate_w_mk,
        )
    )
    plate_kg = plate_mass_kg(
        plate_mm, area_m2=area_m2, density_kg_m3=case.plate_density_kg_m3
    )
    through = rise(filler, (plate_mm, case.plate_w_mk), contact=float(film))
    return HeatPath(
        layer_today_k=rise(today),
        layer_after_k=rise(after),
        today_k=rise(filler, today, contact=float(film)),
        after_k=rise(filler, after, contact=float(film)),
        with_plate_k=through + case.allowed_rise_k,
        plate_mm=plate_mm,
        plate_kg=float(plate_kg),
    )


@dataclass(frozen=True, slots=True)
class SizedPlate:
    """A plate that spreads the heat, as thick as the heat path asks for.

    Parameters
    ----------
    wall_mm : Range
        Its wall; likely is the least that keeps within the allowed rise.
    mass_kg : Range
        Its mass over the area.
    case : HeatCase
        What it is sized with.
    """

    wall_mm: Range
    mass_kg: Range
    case: HeatCase


def sized_plate(case: HeatCase, area_m2: float) -> SizedPlate:
    """Size a plate that spreads the heat over an area.

    Parameters
    ----------
    case : HeatCase
        Heat flux, distance of the coolant lines, allowed rise, aluminium.
    area_m2 : float
        Area that the cells stand on, above 0.

    Returns
    -------
    SizedPlate
        No end of it is thinner than sheet.
    """
    least_mm = least_plate_mm(
        case.flux_w_m2,
        half_pitch_mm=case.half_pitch_mm,
        allowed_rise_k=case.allowed_rise_k,
        conductivity_w_mk=case.plate_w_mk,
    )
    walls = np.maximum(LEAST_SHEET_MM, least_mm * np.array(_PLATE_SPREAD))
    masses = plate_mass_kg(
        walls, area_m2=area_m2, density_kg_m3=case.plate_density_kg_m3
    )
    return SizedPlate(Range(*walls.tolist()), Range(*masses.tolist()), case)


def spread_k(case: HeatCase, wall_mm: float, conductivity_w_mk: float) -> float:
    """Give the rise midway between coolant lines in a plate, K.

    Parameters
    ----------
    case : HeatCase
        Heat flux and distance of the lines.
    wall_mm, conductivity_w_mk : float
        The plate.
    """
    rise = spreading_rise_k(
        case.flux_w_m2,
        half_pitch_mm=case.half_pitch_mm,
        thickness_mm=wall_mm,
        conductivity_w_mk=conductivity_w_mk,
    )
    return float(rise)
