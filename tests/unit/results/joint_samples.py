"""Packs with joints that the tests of the inventory share."""

from __future__ import annotations

from typing import Any

from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.pack import Pack
from benchpack.model.study import Study
from benchpack.model.words import KnownBy
from benchpack.results.inventory import Inventory, inventory
from benchpack.results.joint_facts import JointFacts, joint_facts
from tests.unit.results.packs import library, pack

EUR = Study(subject="Heron 70", reference="Egret 80")
"""Rates 45 and 60 EUR/h, takt time 60 s, worth 1, 3, 6 EUR/kg."""
PER_S = (45 + 60) / 3600
"""Money of a second at these rates."""

PLATE = Joint(
    "Heron 70",
    "plate screws",
    count=16,
    designation="ISO 4762 M6x16 8.8",
    joins="connector plate",
)
"""16 screws hold one moulded connector plate."""


def joint(name: str = "one", **values: Any) -> Joint:
    return Joint("Heron 70", name, **values)


def facts(**values: Any) -> JointFacts:
    return joint_facts(joint(**values), EUR)


def stocked(*joints: Joint, packs: tuple[Pack, ...] = ()) -> Library:
    """Give a library with the joints of two packs, both gross and with their cells."""
    both = packs or (
        pack("Heron 70", 70, 460, cells_mass_kg=300),
        pack("Egret 80", 80, 470, cells_mass_kg=320),
    )
    return library(*both, joints=by_pack(joints))


def stock(*joints: Joint, study: Study = EUR, of: str = "Heron 70") -> Inventory:
    return inventory(stocked(*joints), study, of)


def weighed(name: str, mass_each_g: float, **values: Any) -> Joint:
    return joint(name, mass_each_g=mass_each_g, known_by=KnownBy.WEIGHED, **values)
