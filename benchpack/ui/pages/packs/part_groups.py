"""Parts and joints of one pack by subsystem, and the columns they are shown in."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from benchpack.model.fields import Kind
from benchpack.model.joint import Joint
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.words import Subsystem
from benchpack.results.joint_mass import joint_mass_kg
from benchpack.ui.tables.columns import TableColumn, mass_scale, recorded_columns
from benchpack.units.formatting import NumberStyle

_SHOWN = ("name", "count", "mass_each_kg", "material", "known_by", "carry_over")


@dataclass(frozen=True, slots=True)
class JointSum:
    """The joints of one subsystem as one row; mass NaN when none is known."""

    rows: int
    count: int
    mass_kg: float


@dataclass(frozen=True, slots=True)
class Group:
    """One subsystem with its parts, and its joints where it has any."""

    name: str
    parts: tuple[Part, ...]
    joints: JointSum | None

    @property
    def rows(self) -> int:
        """Number of rows below it."""
        return len(self.parts) + (self.joints is not None)

    @property
    def mass_kg(self) -> float:
        """Sum of the known masses, kg."""
        masses = [part.mass_kg for part in self.parts]
        if self.joints is not None and not math.isnan(self.joints.mass_kg):
            masses.append(self.joints.mass_kg)
        return math.fsum(mass for mass in masses if mass is not None)


def grouped(parts: Sequence[Part], joints: Sequence[Joint]) -> tuple[Group, ...]:
    """Give the subsystems that have parts or joints, in their order."""
    groups = []
    for subsystem in Subsystem:
        own = tuple(part for part in parts if part.subsystem == subsystem)
        held = [joint for joint in joints if joint.subsystem == subsystem]
        masses = [m for m in map(joint_mass_kg, held) if not math.isnan(m)]
        joined = JointSum(
            len(held),
            sum(joint.count for joint in held),
            math.fsum(masses) if masses else math.nan,
        )
        if own or held:
            groups.append(Group(str(subsystem), own, joined if held else None))
    return tuple(groups)


def part_columns(style: NumberStyle) -> tuple[TableColumn, ...]:
    """Give the columns of the tree from left to right."""
    unit, factor = mass_scale(style)
    recorded = {column.key: column for column in recorded_columns(PART_FIELDS, style)}
    mass = TableColumn(
        "mass",
        "mass",
        Kind.NUMBER,
        unit,
        decimals=2,
        factor=factor,
        help="Count times the mass of one piece.",
        reason="It needs the mass of one piece.",
    )
    share = TableColumn(
        "share",
        "share",
        Kind.NUMBER,
        "%",
        factor=100.0,
        help="Share of the mass of the pack.",
        reason="It needs the mass of one piece.",
    )
    name, count, each, material, known_by, stays = (recorded[key] for key in _SHOWN)
    return (name, mass, share, count, each, material, known_by, stays)


def group_names(
    groups: tuple[Group, ...],
) -> list[tuple[str, tuple[str, ...], bool]]:
    """Give what tells two trees apart: subsystems, parts, and whether joints follow."""
    return [
        (group.name, tuple(part.name for part in group.parts), group.joints is None)
        for group in groups
    ]
