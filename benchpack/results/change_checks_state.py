"""The subject as a proposal leaves it, for the checks of its changes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from benchpack.model.change import ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.results.change_checks_parts import PartChange, part_changes
from benchpack.results.clamp import ClampLoad, Unknown, clamp_load
from benchpack.results.clamp_nuts import NutKey, nut_key, tightening_of_nuts
from benchpack.results.clamp_plastics import PlasticParts
from benchpack.results.inventory import Inventory, inventory
from benchpack.results.joint_facts import JointFacts
from benchpack.results.ledger_record import Applied, Ledger
from benchpack.results.ledger_today import folded
from benchpack.results.seal_lines import SealLine, seal_lines
from benchpack.results.wording import Wording
from benchpack.units.number_style import NumberStyle


@dataclass(frozen=True)
class Subject:
    """A study's subject as it is today, what its checks ask for worked out once.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Names the subject; sets friction and how figures are written.
    stock : Inventory or None
        Its joints, where they were taken up already.
    """

    library: Library
    study: Study
    stock: Inventory | None = None

    @cached_property
    def wording(self) -> Wording:
        """How figures are written."""
        style = NumberStyle(self.study.decimal_mark, self.study.mass_unit)
        return Wording(style)

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """Its parts."""
        return self.library.parts_of(self.study.subject)

    @cached_property
    def materials(self) -> Mapping[str, Material]:
        """The materials of the library by folded name."""
        return {folded(material.name): material for material in self.library.materials}

    @cached_property
    def inventory(self) -> Inventory:
        """Its joints."""
        return inventory(
            self.library, self.study, self.study.subject, previous=self.stock
        )

    @cached_property
    def lines(self) -> tuple[SealLine, ...]:
        """Its seal lines."""
        return seal_lines(self.library, self.inventory)

    @cached_property
    def lines_by_name(self) -> Mapping[str, SealLine]:
        """Its seal lines by their names, of several of one name the first."""
        return {line.name: line for line in reversed(self.lines)}

    @cached_property
    def _by_nut(self) -> Mapping[NutKey, str]:
        return tightening_of_nuts(self.inventory.facts)

    def clamp(self, facts: JointFacts) -> ClampLoad | Unknown | None:
        """Give the clamp load of a screw as it or its nut is tightened.

        Parameters
        ----------
        facts : JointFacts
            One of its joints.
        """
        return _clamp(facts, self.study, self._by_nut)


@dataclass(frozen=True)
class Proposed:
    """A subject after the changes of a ledger.

    Parameters
    ----------
    today : Subject
        The subject as it is.
    ledger : Ledger
        The changes that count, and what they leave.
    """

    today: Subject
    ledger: Ledger

    @property
    def study(self) -> Study:
        """The study."""
        return self.today.study

    @property
    def wording(self) -> Wording:
        """How figures are written."""
        return self.today.wording

    @property
    def materials(self) -> Mapping[str, Material]:
        """The materials by folded name."""
        return self.today.materials

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """The parts that the changes leave."""
        return self.library.parts_of(self.ledger.pack)

    @cached_property
    def inventory(self) -> Inventory:
        """The joints that the changes leave."""
        return inventory(
            self.library, self.study, self.ledger.pack, previous=self.today.inventory
        )

    @cached_property
    def lines(self) -> tuple[SealLine, ...]:
        """The seal lines that the changes leave."""
        return seal_lines(self.library, self.inventory)

    @cached_property
    def lines_at(self) -> tuple[tuple[SealLine, frozenset[str]], ...]:
        """The seal lines, each with the folded names of its flanges and joints."""
        return tuple((line, _names_at(line)) for line in self.lines)

    @cached_property
    def parts_by_name(self) -> Mapping[str, Part]:
        """The parts that the changes leave, by folded name."""
        return {folded(part.name): part for part in self.parts}

    @cached_property
    def _joints_at(self) -> Mapping[str, tuple[JointFacts, ...]]:
        found: dict[str, list[JointFacts]] = {}
        for facts in self.inventory.facts:
            ends = (folded(facts.joint.joins), folded(facts.joint.to))
            for end in dict.fromkeys(ends):
                found.setdefault(end, []).append(facts)
        return {end: tuple(joints) for end, joints in found.items()}

    def joints_at(self, part: str) -> tuple[JointFacts, ...]:
        """Give the joints that the changes leave at a part, by its folded name."""
        return self._joints_at.get(part, ())

    def material_of(self, part: str) -> Material | None:
        """Give the material of a part that the changes leave, by its folded name."""
        found = self.parts_by_name.get(part)
        return None if found is None else self.materials.get(folded(found.material))

    @cached_property
    def plastics(self) -> PlasticParts:
        """The plastic parts that screws squeeze after the changes."""
        return PlasticParts(self.library, self.inventory)

    @cached_property
    def _by_nut(self) -> Mapping[NutKey, str]:
        return tightening_of_nuts(self.inventory.facts)

    def clamp(self, facts: JointFacts) -> ClampLoad | Unknown | None:
        """Give the clamp load of a screw as it or its nut is tightened after them.

        Parameters
        ----------
        facts : JointFacts
            One of the joints that the changes leave.
        """
        return _clamp(facts, self.study, self._by_nut)

    @cached_property
    def made(self) -> Mapping[str, tuple[PartChange, ...]]:
        """The parts that each change makes, by its name."""
        return {
            applied.change.name: part_changes(applied, self.materials)
            for applied in self.ledger.applied
        }

    @cached_property
    def library(self) -> Library:
        """The library with the parts and joints that the changes leave."""
        pack, walls, became = self.ledger.pack, self._walls(), self._became()
        parts: list[Part] = []
        for item in self.ledger.parts.values():
            part = walls.get(id(item.record), item.record)
            if isinstance(part, Part):
                inside = _followed(part.inside, became)
                moved = inside != part.inside
                parts.append(replace(part, inside=inside) if moved else part)
        joints = (item.record for item in self.ledger.joints.values())
        held = tuple(joint for joint in joints if isinstance(joint, Joint))
        records = self.today.library
        return replace(
            records,
            parts={**records.parts, pack: tuple(parts)},
            joints={**records.joints, pack: held},
        )

    def _walls(self) -> dict[int, Part]:
        """Give the parts whose wall follows from a mass that a change gives."""
        found: dict[int, Part] = {}
        for applied in self.ledger.applied:
            records = {item.name: item.record for item in applied.after}
            for made in self.made[applied.change.name]:
                record = records[made.after.name]
                if isinstance(record, Part) and record is not made.after:
                    found[id(record)] = made.after
        return found

    def _became(self) -> dict[str, str]:
        """Give what parts became that are now a piece of another, by folded name."""
        merging = (ChangeKind.INTEGRATE, ChangeKind.MOULD_IN)
        return {
            folded(name): applied.change.into
            for applied in self.ledger.applied
            if applied.change.kind in merging
            for name in applied.change.parts
            if folded(name) != folded(applied.change.into)
        }

    def applied(self, change: str) -> Applied | None:
        """Give what a change does, None where it does not count."""
        return self.ledger.applied_to(change)


def _clamp(
    facts: JointFacts, study: Study, by_nut: Mapping[NutKey, str]
) -> ClampLoad | Unknown | None:
    return clamp_load(facts, study, tightening=by_nut.get(nut_key(facts), ""))


def _names_at(line: SealLine) -> frozenset[str]:
    joints = (one.joint.name for one in (*line.joints, *line.clamps))
    flanges = (flange.part for flange in line.flanges)
    return frozenset(map(folded, (*flanges, *joints)))


def _followed(name: str, became: Mapping[str, str]) -> str:
    """Give what a part is now called that others sit in."""
    seen: set[str] = set()
    while folded(name) in became and folded(name) not in seen:
        seen.add(folded(name))
        name = became[folded(name)]
    return name
