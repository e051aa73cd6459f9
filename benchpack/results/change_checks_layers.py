"""Which parts lie between cells and coolant, and what they are to the heat."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import replace

from benchpack.model.change import ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.results.change_checks_heat import HeatCase, HeatPath, heat_path
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_state import Proposed
from benchpack.results.ledger_today import folded

CONDUCTS_W_MK = 10.0
"""Conductivity from which a layer leads heat on rather than holding it back."""
_FILLER = "thermal interface"


def own_filler(
    case: HeatCase, parts: Iterable[Part], materials: Mapping[str, Material]
) -> HeatCase:
    """Give the case with the gap filler that is recorded of a pack, where one is.

    Parameters
    ----------
    case : HeatCase
        The case.
    parts : iterable of Part
        The parts of the pack.
    materials : mapping of str to Material
        The materials by folded name.
    """
    for part in parts:
        material = materials.get(folded(part.material))
        if material is None or _FILLER not in material.kind.casefold():
            continue
        if part.thickness_mm and material.conductivity_w_mk:
            return replace(
                case,
                filler_mm=part.thickness_mm,
                filler_w_mk=material.conductivity_w_mk,
                filler_source=f"parts, {part.name}; materials, {material.name}",
            )
    return case


class Layers:
    """Which parts of a pack lie between cells and coolant.

    Parameters
    ----------
    parts : iterable of Part
        Its parts.
    materials : mapping of str to Material
        The materials by folded name.
    """

    def __init__(
        self, parts: Iterable[Part], materials: Mapping[str, Material]
    ) -> None:
        self._materials = materials
        self._inside: dict[str, list[Part]] = {}
        for part in parts:
            if part.inside.strip():
                self._inside.setdefault(folded(part.inside), []).append(part)

    def beneath_cells(self, part: Part) -> bool:
        """Say whether cells sit on a tray part, or a cooling part leads their heat.

        Parameters
        ----------
        part : Part
            A part of the pack.
        """
        if part.subsystem is Subsystem.TRAY:
            held = self._all_in(part.name)
            return any(inner.subsystem is Subsystem.CELLS for inner in held)
        if part.subsystem is not Subsystem.COOLING or not part.area_m2:
            return False
        material = self._materials.get(folded(part.material))
        leads = material is not None and _FILLER in material.kind.casefold()
        return leads or self.conducts(part)

    def plate_on(self, part: Part) -> Part | None:
        """Give the plate that leads the heat away on the cells' side of a part.

        Parameters
        ----------
        part : Part
            A part of the tray.
        """
        plates = (
            inner
            for inner in self._all_in(part.name)
            if inner.subsystem is Subsystem.COOLING and self.conducts(inner)
        )
        return next(plates, None)

    def conducts(self, part: Part) -> bool:
        """Say whether a part is a plate that conducts well."""
        material = self._materials.get(folded(part.material))
        conductivity = None if material is None else material.conductivity_w_mk
        is_flat = part.area_m2 is not None and part.thickness_mm is not None
        return is_flat and conductivity is not None and conductivity >= CONDUCTS_W_MK

    def _all_in(self, name: str) -> list[Part]:
        found: list[Part] = []
        seen = {folded(name)}
        waiting = list(self._inside.get(folded(name), ()))
        while waiting:
            part = waiting.pop()
            found.append(part)
            if folded(part.name) not in seen:
                seen.add(folded(part.name))
                waiting += self._inside.get(folded(part.name), ())
        return found


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
