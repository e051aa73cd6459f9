"""The library: all recorded packs with their parts, joints, materials and sources."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from types import MappingProxyType
from typing import Protocol, TypeVar

from benchpack.model.assumptions import AssumptionSet
from benchpack.model.change import Change
from benchpack.model.joint import Joint
from benchpack.model.material import Material, Source
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study


class _OfPack(Protocol):
    @property
    def pack(self) -> str: ...


class _OfStudy(Protocol):
    @property
    def study(self) -> str: ...


RecordT = TypeVar("RecordT", bound=_OfPack)
OfStudyT = TypeVar("OfStudyT", bound=_OfStudy)


def by_pack(records: Iterable[RecordT]) -> Mapping[str, tuple[RecordT, ...]]:
    """Group parts or joints by the pack they belong to, order kept."""
    groups: dict[str, list[RecordT]] = {}
    for record in records:
        groups.setdefault(record.pack, []).append(record)
    return MappingProxyType({name: tuple(group) for name, group in groups.items()})


def by_study(records: Iterable[OfStudyT]) -> Mapping[str, tuple[OfStudyT, ...]]:
    """Group changes or sets by the study they belong to, order kept."""
    groups: dict[str, list[OfStudyT]] = {}
    for record in records:
        groups.setdefault(record.study, []).append(record)
    return MappingProxyType({name: tuple(group) for name, group in groups.items()})


@dataclass(frozen=True)
class Library:
    """Everything that is recorded.

    Parameters
    ----------
    packs : PackTable
        The packs.
    parts, joints : mapping of str to tuple
        Parts and joints by the name of their pack.
    materials, sources : tuple
        Materials and sources.
    studies : tuple of Study
        The studies put to the library.
    changes : mapping of str to tuple
        The changes of each study's proposal, in order, by the name of the study.
    assumption_sets : mapping of str to tuple
        Named sets of assumptions of each study, likewise.
    title : str
        Name of the library for people.
    note : str
        What has to be known about it, "invented data" for instance.
    """

    packs: PackTable = field(default_factory=lambda: PackTable({}))
    parts: Mapping[str, tuple[Part, ...]] = field(default_factory=dict)
    joints: Mapping[str, tuple[Joint, ...]] = field(default_factory=dict)
    materials: tuple[Material, ...] = ()
    sources: tuple[Source, ...] = ()
    studies: tuple[Study, ...] = ()
    changes: Mapping[str, tuple[Change, ...]] = field(default_factory=dict)
    assumption_sets: Mapping[str, tuple[AssumptionSet, ...]] = field(
        default_factory=dict
    )
    title: str = ""
    note: str = ""

    def parts_of(self, pack: str) -> tuple[Part, ...]:
        """Give the parts of a pack, none where none were recorded."""
        return self.parts.get(pack, ())

    def joints_of(self, pack: str) -> tuple[Joint, ...]:
        """Give the joints of a pack, none where none were recorded."""
        return self.joints.get(pack, ())

    def changes_of(self, study: str) -> tuple[Change, ...]:
        """Give the changes of a study in order, none where it has no proposal."""
        return self.changes.get(study, ())

    def sets_of(self, study: str) -> tuple[AssumptionSet, ...]:
        """Give the named sets of assumptions of a study in order."""
        return self.assumption_sets.get(study, ())

    @cached_property
    def part_count(self) -> int:
        """Number of parts in all packs."""
        return sum(len(parts) for parts in self.parts.values())

    @cached_property
    def joint_count(self) -> int:
        """Number of joint rows in all packs."""
        return sum(len(joints) for joints in self.joints.values())

    @cached_property
    def material_names(self) -> frozenset[str]:
        """Names of all materials."""
        return frozenset(material.name for material in self.materials)

    def study(self, name: str) -> Study | None:
        """Give the study of that name, None where there is none."""
        return next((study for study in self.studies if study.name == name), None)

    def with_study(self, study: Study) -> Library:
        """Give a library in which the study of the same name is replaced or added."""
        names = [old.name for old in self.studies]
        if study.name not in names:
            return replace(self, studies=(*self.studies, study))
        at = names.index(study.name)
        studies = (*self.studies[:at], study, *self.studies[at + 1 :])
        return replace(self, studies=studies)

    def first_study(self) -> Study:
        """Give the first study, or one that compares the first two packs."""
        if self.studies:
            return self.studies[0]
        names = self.packs.names[:2].tolist()
        subject, reference = (*names, "", "")[:2]
        return Study(subject=subject, reference=reference)
