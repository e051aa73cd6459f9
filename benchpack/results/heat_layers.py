"""Which parts of a pack lie between cells and coolant, and the gap filler on record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.results.change_checks_heat import HeatCase
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
