"""What changed parts between cells and coolant are to the heat."""

from __future__ import annotations

import math

from benchpack.model.change import ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.results.change_checks_heat import HeatCase, HeatPath, heat_path
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_state import Proposed
from benchpack.results.heat_layers import CONDUCTS_W_MK, Layers, own_filler
from benchpack.results.ledger_today import folded


def layer_of(made: PartChange, proposed: Proposed) -> tuple[Part | None, Part | None]:
    """Give the part beneath cells that changes, and the plate that lies on it.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    proposed : Proposed
        The pack before and after.

    Returns
    -------
    tuple of Part or None
        The part is None where none is in tray or cooling beneath cells; with a plate on
        the cells' side it is not in the path of the heat.
    """
    if made.change.kind is ChangeKind.MOULD_IN:
        return None, None
    parts = proposed.today.parts
    layers = Layers(parts, proposed.materials)
    lead = next((p for p in made.before if layers.beneath_cells(p)), None)
    on_tray = lead is not None and lead.subsystem is Subsystem.TRAY
    return lead, layers.plate_on(lead) if lead is not None and on_tray else None


def path_of(
    made: PartChange, lead: Part, proposed: Proposed, case: HeatCase
) -> HeatPath:
    """Give the heat path through a part before and after a change.

    Parameters
    ----------
    made : PartChange
        The part and what becomes of it.
    lead : Part
        The part in the path.
    proposed : Proposed
        The pack before and after.
    case : HeatCase
        What the path is checked with; a recorded gap filler goes before its own.
    """
    parts = proposed.today.parts
    today, after = layers_of(made, lead, proposed)
    area = math.nan if lead.area_m2 is None else lead.area_m2 * lead.count
    case = own_filler(case, parts, proposed.materials)
    return heat_path(case, today=today, after=after, area_m2=area)


def added_plate(proposed: Proposed) -> str:
    """Give the name of a plate that another change adds, empty where none does.

    Parameters
    ----------
    proposed : Proposed
        The pack before and after.
    """
    for changes in proposed.made.values():
        for made in changes:
            if made.change.kind is ChangeKind.ADD and spreads(made):
                return made.after.name
    return ""


def spreads(made: PartChange) -> bool:
    """Say whether a part that is added is a plate of the cooling that conducts well.

    Parameters
    ----------
    made : PartChange
        The part.
    """
    conductivity = None if made.new is None else made.new.conductivity_w_mk
    is_cooling = made.after.subsystem is Subsystem.COOLING
    return is_cooling and conductivity is not None and conductivity >= CONDUCTS_W_MK


def wall_and_k(part: Part, material: Material | None) -> tuple[float, float]:
    """Give the wall of a part in mm and its conductivity in W/(m K), NaN if unknown.

    Parameters
    ----------
    part : Part
        Its wall.
    material : Material or None
        Its conductivity.
    """
    conductivity = None if material is None else material.conductivity_w_mk
    return (
        math.nan if part.thickness_mm is None else part.thickness_mm,
        math.nan if conductivity is None else conductivity,
    )


def layers_of(
    made: PartChange, lead: Part, proposed: Proposed
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Give wall and conductivity of a part before and after a change.

    Parameters
    ----------
    made : PartChange
        The part and what becomes of it.
    lead : Part
        The part in the path.
    proposed : Proposed
        The pack before and after.
    """
    old = proposed.materials.get(folded(lead.material))
    return wall_and_k(lead, old), wall_and_k(made.after, made.new)
