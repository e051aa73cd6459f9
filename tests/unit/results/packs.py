"""Small libraries that the tests of results and report share."""

from __future__ import annotations

from typing import Any

from benchpack.model.library import Library, by_pack
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem


def pack(name: str, energy_kwh: float, mass_kg: float, **more: Any) -> Pack:
    values: dict[str, Any] = {
        "energy_basis": EnergyBasis.GROSS,
        "mass_known_by": KnownBy.WEIGHED,
        **more,
    }
    return Pack(name, energy_kwh, mass_kg, **values)


def library(*packs: Pack, parts: tuple[Part, ...] = (), **more: Any) -> Library:
    return Library(PackTable.from_packs(packs), parts=by_pack(parts), **more)


def bench(**study: Any) -> tuple[Library, Study]:
    """Give four packs and the question of the first against the second."""
    records = library(
        pack("Heron 70", 70, 460, cells_mass_kg=300),
        pack("Egret 80", 80, 470, cells_mass_kg=0.65 * 470),
        pack("Bittern 60", 60, 400, cells_mass_kg=260),
        pack("Crane 100", 100, 600, cells_mass_kg=400),
    )
    values = {"subject": "Heron 70", "reference": "Egret 80", **study}
    return records, Study(**values)


def part(pack_name: str, name: str, mass_kg: float, subsystem: Subsystem) -> Part:
    return Part(
        pack_name,
        name,
        subsystem=subsystem,
        mass_each_kg=mass_kg,
        known_by=KnownBy.WEIGHED,
    )
