"""What a study needs of a library: its packs and all that belongs to them, no more."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import fields, replace
from types import MappingProxyType
from typing import Any, TypeVar

import numpy as np

from benchpack.model.library import Library
from benchpack.model.material import Material, Source
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.results.ledger_today import folded

NamedT = TypeVar("NamedT", Material, Source)

_OF_PACKS = ("parts", "joints")
_STUDY_RECORDS = tuple(
    field.name
    for field in fields(Library)
    if isinstance(getattr(Library(), field.name), Mapping)
    and field.name not in _OF_PACKS
)


def library_of_study(library: Library, study: Study) -> Library:
    """Give the part of a library that a study is answered from.

    Parameters
    ----------
    library : Library
        All records.
    study : Study
        The study; it need not be stored.

    Returns
    -------
    Library
        Subject, reference and peers (all packs, where it names no peers) in their
        order, their parts and joints, the materials and sources that these or the
        records of the study name, the study and its records; title and note.
    """
    packs = _packs(library.packs, study)
    names = set(packs.names.tolist())
    parts, joints = _owned(library.parts, names), _owned(library.joints, names)
    own = study_records(library, study)
    records = (
        *(record for group in parts.values() for record in group),
        *(record for group in own.values() for record in group),
    )
    enclosures = packs.columns["enclosure_material"].tolist()
    materials = _named(library.materials, (*_values(records, "material"), *enclosures))
    sources = _named(
        library.sources,
        (
            *packs.columns["source"].tolist(),
            *_values(materials, "source"),
            *_values((study, *records), "worth_source"),
        ),
    )
    held: dict[str, Any] = {
        name: MappingProxyType({study.name: group} if group else {})
        for name, group in own.items()
    }
    return replace(
        library,
        packs=packs,
        parts=parts,
        joints=joints,
        materials=materials,
        sources=sources,
        studies=(study,),
        **held,
    )


def study_records(library: Library, study: Study) -> dict[str, tuple[Any, ...]]:
    """Give what belongs to a study alone, its changes for instance, in order.

    Parameters
    ----------
    library : Library
        All records.
    study : Study
        The study.

    Returns
    -------
    dict of str to tuple
        Records by the attribute of the library that holds them.
    """
    return {
        name: tuple(getattr(library, name).get(study.name, ()))
        for name in _STUDY_RECORDS
    }


def _packs(packs: PackTable, study: Study) -> PackTable:
    if not study.peers:
        return packs
    wanted = {study.subject, study.reference, *study.peers}
    kept = [name in wanted for name in packs.names.tolist()]
    return packs.selected(np.array(kept, dtype=bool))


def _owned(
    groups: Mapping[str, tuple[Any, ...]], names: set[str]
) -> Mapping[str, tuple[Any, ...]]:
    kept = {name: group for name, group in groups.items() if name in names}
    return MappingProxyType(kept)


def _values(records: Iterable[object], attribute: str) -> tuple[str, ...]:
    return tuple(str(getattr(record, attribute, "") or "") for record in records)


def _named(records: tuple[NamedT, ...], names: Iterable[str]) -> tuple[NamedT, ...]:
    """Give the records of some names; capitals and outer blanks do not count."""
    wanted = {folded(name) for name in names}
    return tuple(record for record in records if folded(record.name) in wanted)
