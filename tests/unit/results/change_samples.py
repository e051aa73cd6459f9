"""A pack with lid, floor and frame whose changes are checked, and its materials."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import KnownBy, Subsystem
from benchpack.results.change_checks import change_checks
from benchpack.results.check import Check
from tests.unit.results.packs import library as library_of
from tests.unit.results.packs import pack

PACK = "Heron 70"
STUDY = Study("Lighter Heron", subject=PACK, reference="Egret 80")
STEEL = Material(
    "steel",
    "metal",
    density_kg_m3=7850.0,
    modulus_gpa=210.0,
    strength_mpa=210.0,
    conductivity_w_mk=50.0,
    expansion_1e6_k=12.0,
    service_temperature_degc=200.0,
    flammability="not combustible",
    price_per_kg=1.0,
    minimum_wall_mm=0.6,
)
ALUMINIUM = Material(
    "aluminium",
    "metal",
    density_kg_m3=2700.0,
    modulus_gpa=69.5,
    strength_mpa=170.0,
    conductivity_w_mk=200.0,
    expansion_1e6_k=23.4,
    service_temperature_degc=110.0,
    flammability="not combustible",
    price_per_kg=5.0,
    minimum_wall_mm=0.8,
)
SMC = Material(
    "SMC GF25",
    "thermoset",
    density_kg_m3=1880.0,
    modulus_gpa=9.5,
    strength_mpa=72.0,
    conductivity_w_mk=0.4,
    expansion_1e6_k=17.0,
    service_temperature_degc=150.0,
    flammability="V-0",
    price_per_kg=3.0,
    stiffness_knock_down=6.5 / 9.5,
    strength_knock_down=28.0 / 72.0,
    minimum_wall_mm=2.2,
)
LONG_GLASS = Material(
    "PP-LGF40",
    "thermoplastic",
    density_kg_m3=1210.0,
    modulus_gpa=8.0,
    strength_mpa=121.0,
    conductivity_w_mk=0.3,
    expansion_1e6_k=35.0,
    service_temperature_degc=115.0,
    flammability="HB",
    price_per_kg=3.4,
    stiffness_knock_down=3.6 / 8.0,
    strength_knock_down=35.0 / 121.0,
    minimum_wall_mm=2.5,
)
FILLER = Material("filler", "thermal interface", conductivity_w_mk=2.0)
MATERIALS = (STEEL, ALUMINIUM, SMC, LONG_GLASS, FILLER)


def part(name: str, mass_each_kg: float | None, **values: Any) -> Part:
    return Part(
        PACK, name, mass_each_kg=mass_each_kg, known_by=KnownBy.WEIGHED, **values
    )


LID = part(
    "lid",
    0.8e-3 * 1.7 * 7850.0,
    subsystem=Subsystem.LID,
    material="steel",
    thickness_mm=0.8,
    area_m2=1.7,
    length_mm=1700.0,
    governs="panel bending stiffness",
)
"""Steel, 0.8 mm, 1.7 m2: 10.7 kg."""
FLOOR = part(
    "floor",
    2e-3 * 1.6 * 2700.0,
    subsystem=Subsystem.TRAY,
    material="aluminium",
    thickness_mm=2.0,
    area_m2=1.6,
    length_mm=1600.0,
    governs="panel bending stiffness",
)
"""Aluminium, 2 mm, 1.6 m2: 8.6 kg."""
RAIL = part(
    "rail",
    2.0,
    subsystem=Subsystem.FRAME,
    material="aluminium",
    thickness_mm=3.0,
    length_mm=1500.0,
    governs="beam bending stiffness",
)
RIM = part(
    "rim",
    4.0,
    subsystem=Subsystem.FRAME,
    material="aluminium",
    thickness_mm=20.0,
    governs="beam bending stiffness",
)
CELL = part("cell", 2.0, count=100, inside="floor", subsystem=Subsystem.CELLS)
PARTS = (LID, FLOOR, RAIL, RIM, CELL)
GASKET = Joint(
    PACK,
    "lid gasket",
    "gasket",
    "silicone foam 12x6",
    length_mm=5950.0,
    mass_each_g=100.0,
    role="seal",
    joins="lid",
    to="rim",
)
SCREWS = Joint(
    PACK,
    "lid screws",
    "flange screw",
    "EN 1665 M6x20",
    property_class="8.8",
    count=85,
    role="clamp and seal",
    joins="lid",
    to="rim",
    tightening="torque",
)
JOINTS = (GASKET, SCREWS)


def bench(
    *,
    parts: tuple[Part, ...] = PARTS,
    joints: tuple[Joint, ...] = JOINTS,
    materials: tuple[Material, ...] = MATERIALS,
) -> Library:
    return library_of(
        pack(PACK, 70, 460, cells_mass_kg=200),
        pack("Egret 80", 80, 470, cells_mass_kg=300),
        parts=parts,
        joints=by_pack(joints),
        materials=materials,
    )


def swapped(records: tuple[Any, ...], old: Any, new: Any) -> tuple[Any, ...]:
    """Give records with one of them put in the place of another."""
    return tuple(new if one is old else one for one in records)


def change(kind: ChangeKind = ChangeKind.SUBSTITUTE, **values: Any) -> Change:
    return Change(STUDY.name, values.pop("name", "the change"), kind, **values)


def into(material: str, part: str = "lid", **values: Any) -> Change:
    return change(parts=(part,), material=material, **values)


def checked(
    one: Change, library: Library | None = None, **more: Any
) -> dict[str, Check]:
    """Give the checks of a change by their kind, the last of each."""
    records = bench() if library is None else library
    return {c.kind: c for c in change_checks(records, STUDY, one, **more)}


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u2009", "")


def without(material: Material, **values: Any) -> tuple[Material, ...]:
    """Give the materials with one changed."""
    changed = replace(material, **values)
    return tuple(changed if one is material else one for one in MATERIALS)
