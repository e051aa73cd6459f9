"""One candidate material for a part: the figures of its row."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from benchpack.calc.part_cost import material_cost
from benchpack.model.change import Change
from benchpack.model.material import Material
from benchpack.results.candidate_record import PRICE_SHARE, Candidate
from benchpack.results.change_checks import HeatCase, checks_of
from benchpack.results.change_checks_layers import layer_of, path_of
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_sag import LOADS, panels_of, sag_of
from benchpack.results.change_checks_section import beams_of
from benchpack.results.change_checks_state import Proposed, Subject
from benchpack.results.ledger import build_ledger
from benchpack.results.ledger_today import Today, folded


@dataclass(frozen=True, slots=True, eq=False)
class Bench:
    """What all candidates for a part are compared on.

    Parameters
    ----------
    subject : Subject
        The subject as it is, the part not held to stay.
    start : Today
        The same, taken up for ledgers.
    heat : HeatCase
        What heat paths are checked with.
    """

    subject: Subject
    start: Today
    heat: HeatCase

    def material(self, name: str) -> Material | None:
        """Give a material of the library, None where it is not there."""
        return self.subject.materials.get(folded(name))

    def row(self, change: Change) -> Candidate:
        """Give the row of one candidate.

        Parameters
        ----------
        change : Change
            The part in the candidate's material.
        """
        subject, material = self.subject, self.material(change.material)
        ledger = build_ledger(
            subject.library, subject.study, (change,), today=self.start
        )
        if ledger.refused:
            problem = ledger.refused[0][1]
            return Candidate(change.material, material=material, problem=problem)
        proposed = Proposed(subject, ledger)
        (made,) = proposed.made[change.name]
        mass = ledger.parts[folded(made.after.name)].mass_kg
        with np.errstate(all="ignore"):
            low, likely, high = material_range(mass.ends, material)
            resized, sag = made.lead_resized, _deflections(made)
            today_k, after_k = _rises(made, proposed, self.heat)
        return Candidate(
            change.material,
            material=material,
            mass_kg=mass.likely,
            mass_low_kg=mass.low,
            mass_high_kg=mass.high,
            sheet_mass_kg=mass.likely if resized is None else resized.data_sheet_kg,
            wall_mm=or_nan(made.after.thickness_mm),
            wall_is_minimum=resized is not None and resized.design.wall_is_minimum,
            governing="" if resized is None else resized.design.governing,
            cost=likely,
            cost_low=low,
            cost_high=high,
            deflection_mm=sag[1],
            deflection_today_mm=sag[0],
            deflection_kind=sag[2],
            heat_k=after_k,
            heat_today_k=today_k,
            checks=checks_of(ledger.applied[0], proposed, heat=self.heat),
        )


def material_range(
    ends: tuple[float, float, float], material: Material | None
) -> tuple[float, float, float]:
    """Give the cost of the material in a part, low to high; NaN without a price.

    Parameters
    ----------
    ends : tuple of float
        Mass of the part, low, likely, high, kg.
    material : Material or None
        Its price.
    """
    price = None if material is None else material.price_per_kg
    if price is None:
        return math.nan, math.nan, math.nan
    shares = (1.0 - PRICE_SHARE, 1.0, 1.0 + PRICE_SHARE)
    low, likely, high = material_cost(ends, price * np.array(shares)).tolist()
    return low, likely, high


def _deflections(made: PartChange) -> tuple[float, float, str]:
    """Give the deflection today and after in mm, and of what kind it is."""
    panels, beams = panels_of(made), beams_of(made)
    if panels is not None:
        today, then = (
            sag_of(panel, LOADS[0].pressure_kpa).deflection_mm for panel in panels
        )
        return today, then, f"under {LOADS[0].name}"
    if beams is not None:
        return beams[0].deflection_mm, beams[1].deflection_mm, "under 1 kN"
    return math.nan, math.nan, ""


def _rises(made: PartChange, proposed: Proposed, heat: HeatCase) -> tuple[float, float]:
    lead, plate = layer_of(made, proposed)
    if lead is None or plate is not None:
        return math.nan, math.nan
    path = path_of(made, lead, proposed, heat)
    return path.layer_today_k, path.layer_after_k


def or_nan(value: float | None) -> float:
    """Give a figure, NaN where it is not known."""
    return math.nan if value is None else value
