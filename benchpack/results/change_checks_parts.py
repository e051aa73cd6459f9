"""Parts before and after a change, as the checks of the change see them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from benchpack.calc.equal_function import wall_ratio
from benchpack.model.change import Change, ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.ledger_record import Applied, Item
from benchpack.results.ledger_resizing import Resized
from benchpack.results.ledger_today import folded

_OF_PARTS = (
    ChangeKind.SUBSTITUTE,
    ChangeKind.INTEGRATE,
    ChangeKind.MOULD_IN,
    ChangeKind.ADD,
)
_GREATEST_WALL_MM = 10_000.0
USUAL_POISSON = 0.3
"""Poisson's ratio where none is recorded (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class DesignValues:
    """A material by its design values, NaN where not known.

    Parameters
    ----------
    modulus_gpa, strength_mpa : float
        Data sheet times knock-down: for a polymer hot and in the long term.
    poisson_ratio : float
        Poisson's ratio, 0.3 where none is recorded.
    is_poisson_usual : bool
        True where that is so.
    """

    modulus_gpa: float
    strength_mpa: float
    poisson_ratio: float
    is_poisson_usual: bool


def design_values(material: Material | None) -> DesignValues:
    """Give the design values of a material; no knock-down counts as 1.

    Parameters
    ----------
    material : Material or None
        A material of the library.
    """
    if material is None:
        return DesignValues(math.nan, math.nan, USUAL_POISSON, is_poisson_usual=True)
    poisson = material.poisson_ratio
    return DesignValues(
        _times(material.modulus_gpa, material.stiffness_knock_down),
        _times(material.strength_mpa, material.strength_knock_down),
        USUAL_POISSON if poisson is None else poisson,
        is_poisson_usual=poisson is None,
    )


def _times(value: float | None, knock_down: float | None) -> float:
    return math.nan if value is None else value * (knock_down or 1.0)


@dataclass(frozen=True, slots=True, eq=False)
class PartChange:
    """One part that a change makes, and the parts that it is made of.

    Parameters
    ----------
    change : Change
        The change.
    before : tuple of Part
        What it was, the heaviest first; empty for a part that is added.
    after : Part
        What it becomes, with the wall that belongs to its mass.
    before_kg, after_kg : float
        Mass of all pieces before and after.
    resized : tuple of Resized
        How the masses at equal function come about, in the order of `before`.
    old, new : Material or None
        Material of the heaviest part before, and of the part after.
    """

    change: Change
    before: tuple[Part, ...]
    after: Part
    before_kg: float
    after_kg: float
    resized: tuple[Resized, ...]
    old: Material | None
    new: Material | None

    @property
    def name(self) -> str:
        """Name of what is looked at: the part after, or one that is moulded in."""
        is_piece = self.change.kind is ChangeKind.MOULD_IN and len(self.before) == 1
        return self.before[0].name if is_piece else self.after.name

    @property
    def lead(self) -> Part | None:
        """The heaviest of the parts before, None for a part that is added."""
        return self.before[0] if self.before else None

    @property
    def lead_resized(self) -> Resized | None:
        """How the heaviest part is resized, None where that is not known."""
        name = self.before[0].name if self.before else ""
        return next((one for one in self.resized if one.part == name), None)

    @property
    def governs(self) -> tuple[str, ...]:
        """What sizes it: as the change says, else as its parts do."""
        recorded = (part.governs for part in self.before)
        return self.change.governs or tuple(dict.fromkeys(filter(None, recorded)))

    @property
    def becomes_other(self) -> bool:
        """True where it is made of another material than before, or is new."""
        return self.old is None or self.old is not self.new

    def is_sized_as(self, word: str) -> bool:
        """Say whether any of its functions is one of a ``panel`` or of a ``beam``."""
        return any(one.startswith(word) for one in self.governs)


def part_changes(
    applied: Applied, materials: Mapping[str, Material]
) -> tuple[PartChange, ...]:
    """Give the parts that a change makes.

    Parameters
    ----------
    applied : Applied
        What a ledger says of the change.
    materials : mapping of str to Material
        The materials by folded name.

    Returns
    -------
    tuple of PartChange
        Empty for a change that removes, adjusts or swaps joints.
    """
    change = applied.change
    if change.kind not in _OF_PARTS:
        return ()
    after = [item for item in applied.after if isinstance(item.record, Part)]
    took = [item for item in applied.before if isinstance(item.record, Part)]
    if change.kind is ChangeKind.SUBSTITUTE:
        held = {folded(item.name): item for item in took}
        pairs = [([held[folded(item.name)]], item) for item in after]
    else:
        # Integrated or moulded into: all parts taken up become the one that is left.
        pairs = [(took, item) for item in after]
    return tuple(
        _part_change(applied, before, item, materials) for before, item in pairs
    )


def _part_change(
    applied: Applied,
    before: list[Item],
    after: Item,
    materials: Mapping[str, Material],
) -> PartChange:
    part, change = after.record, applied.change
    if not isinstance(part, Part):
        raise TypeError(part)
    after_kg, material = after.mass_kg.likely, part.material
    if change.kind is ChangeKind.MOULD_IN:
        # What is looked at is the pieces, not the neighbour that takes them up.
        neighbour = [item for item in before if item.name == after.name]
        before = [item for item in before if item.name != after.name]
        after_kg -= math.fsum(item.mass_kg.likely for item in neighbour)
        material = change.material or material
    items = sorted(before, key=_heaviest_first)
    records = tuple(item.record for item in items if isinstance(item.record, Part))
    found = {one.part: one for one in applied.resized}
    made = PartChange(
        change=change,
        before=records,
        after=part,
        before_kg=math.fsum(item.mass_kg.likely for item in items),
        after_kg=after_kg,
        resized=tuple(found[r.name] for r in records if r.name in found),
        old=materials.get(folded(records[0].material)) if records else None,
        new=materials.get(folded(material)),
    )
    return replace(made, after=_with_wall(made))


def _heaviest_first(item: Item) -> float:
    return -item.mass_kg.likely


def _with_wall(made: PartChange) -> Part:
    """Give the part with the wall of its mass, where that is not the computed one."""
    part, found = made.after, made.lead_resized
    if made.change.kind is ChangeKind.MOULD_IN:
        return part
    wall = math.nan
    if found is not None and found.is_overridden:
        asked_kg = math.fsum(one.after_kg for one in made.resized)
        share = made.after_kg / asked_kg if asked_kg > 0 else math.nan
        word = found.counted.governing or "geometry only"
        wall = found.counted.wall_mm * float(wall_ratio(word, share))
    elif found is None and part.thickness_mm is None:
        wall = flat_wall_mm(made)
    known = 0 < wall <= _GREATEST_WALL_MM
    return replace(part, thickness_mm=wall) if known else part


def flat_wall_mm(made: PartChange) -> float:
    """Give the wall of a flat part by mass, area and density, NaN where not known.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    """
    area, density = made.after.area_m2, made.new and made.new.density_kg_m3
    if not area or not density:
        return math.nan
    plain_kg = made.after_kg / (1.0 + made.change.rib_allowance)
    return quotient(1000.0 * plain_kg, density * area * made.after.count)


def quotient(one: float, other: float) -> float:
    """Give a quotient, NaN over nothing: sizes near zero vanish when multiplied.

    Parameters
    ----------
    one, other : float
        Any figures.
    """
    return one / other if other else math.nan
