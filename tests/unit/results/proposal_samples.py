"""A pack with parts, joints and materials that the tests of proposals share."""

from __future__ import annotations

from typing import Any

from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack, by_study
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import KnownBy, Subsystem
from benchpack.results.ledger import Ledger, build_ledger
from benchpack.results.proposal import ProposalResults, proposal
from tests.unit.results.packs import library, pack

PACK = "Heron 70"
STUDY = Study(
    "Heron",
    subject=PACK,
    reference="Egret 80",
    yearly_volume=40_000,
    target_kg=5.0,
)

STEEL = Material("steel", "metal", 7850, 210, 210, price_per_kg=1.0)
ALUMINIUM = Material(
    "aluminium",
    "metal",
    2700,
    69.5,
    170,
    conductivity_w_mk=200,
    price_per_kg=5.0,
    stiffness_knock_down=1,
    strength_knock_down=1,
)
LONG_GLASS_PP = Material(
    "PP-LGF40",
    "thermoplastic",
    1210,
    8.0,
    121,
    conductivity_w_mk=0.3,
    price_per_kg=3.4,
    stiffness_knock_down=0.45,
    strength_knock_down=0.2893,
    minimum_wall_mm=2.5,
)
SHORT_GLASS_PP = Material(
    "PP-GF30",
    "thermoplastic",
    1120,
    6.5,
    82,
    price_per_kg=2.6,
    stiffness_knock_down=0.4462,
    strength_knock_down=0.2927,
    minimum_wall_mm=2.0,
)
BARE = Material("bare PA", "thermoplastic", 1140, 2.8, 80)
MATERIALS = (STEEL, ALUMINIUM, LONG_GLASS_PP, SHORT_GLASS_PP, BARE)

STIFFNESS = "panel bending stiffness"


def part(name: str, mass_kg: float | None, subsystem: Subsystem, **more: Any) -> Part:
    values = {"known_by": KnownBy.WEIGHED, **more}
    return Part(PACK, name, subsystem=subsystem, mass_each_kg=mass_kg, **values)


def joint(name: str, joins: str, to: str, **more: Any) -> Joint:
    values = {"known_by": KnownBy.WEIGHED, **more}
    return Joint(PACK, name, joins=joins, to=to, **values)


PARTS = (
    part(
        "lid",
        12.0,
        Subsystem.LID,
        material="steel",
        process="deep drawn",
        thickness_mm=0.8,
        area_m2=2.0,
        governs=STIFFNESS,
    ),
    part(
        "service cover",
        1.2,
        Subsystem.LID,
        material="steel",
        process="stamped",
        thickness_mm=1.0,
        area_m2=0.1,
        governs=STIFFNESS,
        inside="lid",
    ),
    part(
        "floor",
        10.0,
        Subsystem.TRAY,
        material="aluminium",
        process="extruded",
        thickness_mm=2.0,
        area_m2=1.6,
        governs=STIFFNESS,
    ),
    part(
        "side frame",
        14.0,
        Subsystem.TRAY,
        material="aluminium",
        governs="beam bending stiffness",
        length_mm=1800,
    ),
    part("cooling plate", 6.0, Subsystem.COOLING, material="aluminium", inside="floor"),
    part("mount", 4.0, Subsystem.FRAME, carry_over=True, reason="body bolt pattern"),
    part("ballast", 3.0, Subsystem.OTHER, known_by=KnownBy.ASSUMED),
    part("foam", None, Subsystem.OTHER),
    part("bracket", 0.5, Subsystem.FRAME, material="steel", count=4),
)
JOINTS = (
    joint(
        "lid screws",
        "lid",
        "side frame",
        family="flange screw",
        designation="EN 1665 M6x20",
        count=80,
        mass_each_g=8.7,
        role="clamp and seal",
        cost_each=0.07,
        time_each_s=6,
    ),
    joint(
        "lid gasket",
        "lid",
        "side frame",
        family="gasket",
        designation="silicone foam 12x6",
        length_mm=6000,
        mass_each_g=108,
        role="seal",
    ),
    joint(
        "cover screws",
        "service cover",
        "lid",
        family="button head screw",
        designation="ISO 7380-1 M6x16",
        count=10,
        mass_each_g=4.4,
        role="clamp and seal",
    ),
    joint(
        "cover gasket",
        "service cover",
        "lid",
        family="gasket",
        designation="EPDM profile 8x6",
        length_mm=800,
        mass_each_g=46,
        role="seal",
    ),
    joint(
        "floor screws",
        "floor",
        "side frame",
        family="hex screw",
        designation="ISO 4017 M8x20",
        count=20,
        mass_each_g=12.3,
        role="carry",
    ),
    joint("rib seams", "floor", "side frame", family="arc weld", length_mm=3000),
    joint(
        "mount screws",
        "mount",
        "side frame",
        family="hex screw",
        count=8,
        mass_each_g=60,
        role="carry",
        carry_over=True,
        reason="body bolt pattern",
    ),
    joint(
        "bracket screws",
        "bracket",
        "side frame",
        family="hex screw",
        designation="ISO 4017 M6x16",
        count=8,
        mass_each_g=5.5,
        role="hold",
    ),
    joint("clips", "foam", "lid", family="clip", designation="edge clip", count=12),
)


def change(name: str, kind: ChangeKind, **values: Any) -> Change:
    return Change(STUDY.name, name, kind, **values)


def bench(*changes: Change, study: Study = STUDY, **more: Any) -> Library:
    """Give a library of two packs whose first has parts, joints and changes."""
    values: dict[str, Any] = {
        "parts": PARTS,
        "joints": by_pack(JOINTS),
        "materials": MATERIALS,
        **more,
    }
    return library(
        pack(PACK, 70, 460, cells_mass_kg=300),
        pack("Egret 80", 80, 470, cells_mass_kg=320),
        studies=(study,),
        changes=by_study(changes),
        **values,
    )


def ledger_of(*changes: Change, study: Study = STUDY, **more: Any) -> Ledger:
    return build_ledger(bench(*changes, study=study, **more), study, changes)


def proposal_of(*changes: Change, study: Study = STUDY, **more: Any) -> ProposalResults:
    return proposal(bench(*changes, study=study, **more), study)


LID_IN_PP = change(
    "lid in PP",
    ChangeKind.SUBSTITUTE,
    parts=("lid",),
    material="PP-LGF40",
    process="injection moulded",
)
ONE_LID = change(
    "one lid",
    ChangeKind.INTEGRATE,
    parts=("lid", "service cover"),
    into="whole lid",
    material="PP-LGF40",
)
COVER_IN_LID = change(
    "cover in lid", ChangeKind.MOULD_IN, parts=("service cover",), into="lid"
)
RIM_BEAD = change(
    "rim bead",
    ChangeKind.SWAP_JOINTS,
    joints=("lid screws", "lid gasket"),
    into="lid bead",
    family="sealant bead",
    designation="silicone bead 5 mm",
    length_mm=6000,
)
FLOOR_IN_PP = change(
    "floor in PP", ChangeKind.SUBSTITUTE, parts=("floor",), material="PP-LGF40"
)
NO_BRACKETS = change("no brackets", ChangeKind.REMOVE, parts=("bracket",))
