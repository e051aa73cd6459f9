"""What the function needs back when a metal part becomes polymer."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from benchpack.model.ranges import Range
from benchpack.model.touches import Touch

_LIST = "usual add-back of a polymer enclosure"
_PRICE = "price from memory"


HEAT_PLATE = "heat plate"
"""Name of the plate whose wall the heat path sizes."""


class Per(StrEnum):
    """What the mass of an add-back goes by."""

    AREA = "m2"
    BOLT = "bolt"
    PACK = "pack"


@dataclass(frozen=True, slots=True)
class AddBack:
    """One thing that has to be added back.

    Parameters
    ----------
    key : str
        Its name, by which a change takes it out of the sum with a reason.
    per : Per
        What `mass_kg` is for one of.
    mass_kg : Range
        kg for a square metre, a bolt or the pack.
    price_per_kg : Range
        EUR for a kilogram of it, made and fitted.
    when : Touch
        It is needed by a change that touches this.
    rule : str
        When it is needed, as a sentence.
    pack_mass_kg : Range or None
        kg for the pack, where the area is not recorded.
    covered_by : tuple of str
        Words in the name of a part that does the same already.
    source, mark : str
        Where the masses come from, and whether they were derived or recalled.
    """

    key: str
    per: Per
    mass_kg: Range
    price_per_kg: Range
    when: Touch
    rule: str
    pack_mass_kg: Range | None = None
    covered_by: tuple[str, ...] = ()
    source: str = f"{_LIST}, recalled; {_PRICE}"
    mark: str = "from memory"


ADD_BACKS: tuple[AddBack, ...] = (
    AddBack(
        "shield foil",
        Per.AREA,
        Range(0.16, 0.27, 0.40),
        Range(10.0, 14.0, 20.0),
        Touch.POLYMER_SHELL,
        "An enclosure part that was metal no longer shields.",
        pack_mass_kg=Range(0.3, 0.5, 1.0),
        covered_by=("shield foil", "shielding"),
        source="0.1 mm of aluminium over the area, 0.06 to 0.15 mm; 0.3 to 1.0 kg a "
        f"pack recalled; {_PRICE}",
        mark="derived",
    ),
    AddBack(
        "bonding straps",
        Per.PACK,
        Range(0.1, 0.2, 0.4),
        Range(12.0, 18.0, 30.0),
        Touch.POLYMER_SHELL,
        "What an enclosure part of metal bonded needs straps and studs.",
    ),
    AddBack(
        "compression limiters",
        Per.BOLT,
        Range(0.005, 0.010, 0.020),
        Range(8.0, 15.0, 30.0),
        Touch.SCREWED_POLYMER,
        "A screw through polymer keeps its clamp load with a metal sleeve only.",
    ),
    AddBack(
        "fire barrier",
        Per.AREA,
        Range(0.9, 1.4, 1.8),
        Range(10.0, 14.0, 25.0),
        Touch.POLYMER_LID,
        "A lid that was metal no longer stops fire.",
        pack_mass_kg=Range(1.0, 2.0, 4.0),
        covered_by=("lid fire barrier", "fire barrier of the lid"),
        source="0.8 mm of mica sheet over the area, 1.5 to 3 kg on 1.7 m2, recalled; "
        f"1 to 4 kg a pack recalled; {_PRICE}",
    ),
    AddBack(
        "bottom shield",
        Per.PACK,
        Range(4.0, 8.0, 12.0),
        Range(4.0, 6.0, 9.0),
        Touch.POLYMER_FLOOR,
        "A floor that was metal no longer stops what hits it from below.",
        covered_by=("bottom shield", "skid plate", "underbody shield"),
    ),
    AddBack(
        "mount ring",
        Per.PACK,
        Range(3.0, 5.0, 8.0),
        Range(3.0, 5.0, 9.0),
        Touch.POLYMER_MOUNTS,
        "Mounts need a metal ring or frame: polymer creeps under their load.",
        covered_by=("mount ring", "mounting frame"),
    ),
    AddBack(
        HEAT_PLATE,
        Per.AREA,
        Range(2.7, 5.4, 8.1),
        Range(6.0, 8.0, 11.0),
        Touch.POLYMER_HEAT_PATH,
        "A polymer in the heat path needs a plate that spreads the heat.",
        pack_mass_kg=Range(4.3, 8.6, 13.0),
        covered_by=("heat plate", "spreading plate", "heat-spreading plate"),
        source="1, 2 and 3 mm of aluminium over the area, 2.7 kg per m2 and mm, where "
        f"the heat path does not size it; {_PRICE}",
        mark="derived",
    ),
    AddBack(
        "seal groove",
        Per.PACK,
        Range(0.3, 0.6, 1.0),
        Range(3.0, 4.0, 6.0),
        Touch.POLYMER_FLANGE,
        "A softer flange needs a groove or a stiffener to keep the seal pressed.",
    ),
)
"""All add-backs, in the order in which they are listed."""

ADD_BACK_KEYS: tuple[str, ...] = tuple(add_back.key for add_back in ADD_BACKS)
"""The names that a change may take out of the sum with a reason."""
