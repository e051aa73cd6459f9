"""Hypothesis strategies, one for each record of the model."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any, TypeVar

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.boundary import ITEMS, UNKNOWN_BOUNDARY, Boundary, Weighed
from benchpack.model.fields import Field, Kind
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import MATERIAL_FIELDS, SOURCE_FIELDS, Material, Source
from benchpack.model.pack import PACK_FIELDS, Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis, KnownBy, Subsystem, TrendKind
from tests.strategies.assumptions import (
    assumption_strategies,
    assumptions,
    kept_sets,
)
from tests.strategies.joining import JOINING_STRATEGIES
from tests.strategies.proposals import changes, proposal_strategies, proposals

RecordT = TypeVar("RecordT")
OwnedT = TypeVar("OwnedT", Part, Joint)
NamedT = TypeVar("NamedT", Material, Source, Study)

AWKWARD_TEXTS = (
    "=1+1",
    "-2+3",
    "@cell",
    '"quoted" and "again"',
    "one\ntwo",
    "one\r\ntwo",
    "one\rtwo",
    "\ttab",
    " before and after ",
    "a,b;c|d",
    "'apostrophe",
    "电池包 一",
    "حزمة البطارية",
    "ÄÖÜß ñ é",
    "🔋",
    "nan",
    "NULL",
    "1,5",
    "007",
    "true",
    "\ufeffmark",
    "\u2028",
    "\x85",
    "\x1f",
)
"""Texts that files and spreadsheets are known to spoil."""


@cache
def texts() -> SearchStrategy[str]:
    """Texts that every file form can hold: no NUL, no lone surrogates."""
    letters = st.characters(exclude_characters="\0", exclude_categories=["Cs"])
    return st.sampled_from(AWKWARD_TEXTS) | st.text(letters, max_size=12)


@cache
def names() -> SearchStrategy[str]:
    """Texts that can be names: not blank."""
    return texts().filter(lambda text: bool(text.strip()))


def figures(field: Field) -> SearchStrategy[float]:
    """Numbers that a field accepts."""
    ceiling = min(field.ceiling, 1e9)
    if field.kind is Kind.COUNT:
        return st.integers(1 if field.positive else 0, int(ceiling))
    return st.floats(0, ceiling, exclude_min=field.positive).map(abs)


@cache
def boundaries() -> SearchStrategy[Boundary]:
    """Boundaries as they can be written down."""
    states = st.dictionaries(
        st.sampled_from(ITEMS), st.sampled_from((Weighed.IN, Weighed.OUT))
    )
    masses = st.dictionaries(st.sampled_from(ITEMS), st.floats(0, 1000).map(abs))
    return st.just(UNKNOWN_BOUNDARY) | st.builds(Boundary, states, masses)


_CHOICES: dict[str, Any] = {
    "energy_basis": EnergyBasis,
    "mass_known_by": KnownBy,
    "known_by": KnownBy,
    "subsystem": Subsystem,
}


def _attribute(field: Field) -> SearchStrategy[Any]:
    if field.kind is Kind.CHOICE:
        return st.sampled_from(_CHOICES.get(field.name, field.choices))
    if field.kind is Kind.FLAG:
        return st.booleans()
    if field.kind is Kind.BOUNDARY:
        return boundaries()
    if field.is_numeric:
        known = figures(field)
        return known if field.required or field.name == "count" else st.none() | known
    return names() if field.required else texts()


def _records(kind: type[RecordT], fields: Sequence[Field]) -> SearchStrategy[RecordT]:
    attributes = {field.name: _attribute(field) for field in fields}
    return st.fixed_dictionaries(attributes).map(lambda values: kind(**values))


@cache
def packs() -> SearchStrategy[Pack]:
    """Packs with any figures that the model accepts."""
    attributes = {field.name: _attribute(field) for field in PACK_FIELDS}
    return st.fixed_dictionaries(attributes).map(_pack)


def _pack(values: dict[str, Any]) -> Pack:
    for inner, outer in (("cells_mass_kg", "mass_kg"), ("cells_volume_l", "volume_l")):
        if values[inner] is not None and values[outer] is not None:
            values[inner] = min(values[inner], values[outer])
    return Pack(**values)


@cache
def parts() -> SearchStrategy[Part]:
    """Parts with any figures that the model accepts."""
    return _records(Part, PART_FIELDS)


@cache
def joints() -> SearchStrategy[Joint]:
    """Joints with any figures that the model accepts."""
    return _records(Joint, JOINT_FIELDS)


@cache
def materials() -> SearchStrategy[Material]:
    """Materials with any figures that the model accepts."""
    return _records(Material, MATERIAL_FIELDS)


@cache
def sources() -> SearchStrategy[Source]:
    """Sources with any texts."""
    return _records(Source, SOURCE_FIELDS)


@cache
def studies() -> SearchStrategy[Study]:
    """Studies with any assumptions that the model accepts."""
    shares = st.floats(0, 1).map(abs)
    own = st.fixed_dictionaries(
        {
            "name": names(),
            "subject": texts(),
            "reference": texts(),
            "peers": st.lists(texts(), max_size=3).map(tuple),
            "basis": st.sampled_from(Basis),
            "exponent": shares,
            "trend": st.sampled_from(TrendKind),
            "currency": st.text("ABCDEFGHIJKLMNOPQRSTUVWXYZ", min_size=3, max_size=3),
            "target_kg": st.none() | st.floats(0, math.nextafter(1e6, 0)).map(abs),
            "mass_unit": st.sampled_from(("kg", "lb")),
            "decimal_mark": st.sampled_from((".", ",")),
            "labour_rate_per_h": st.floats(0, 10_000).map(abs),
            "station_rate_per_h": st.floats(0, 100_000).map(abs),
            "takt_time_s": st.floats(0, 86_400, exclude_min=True),
            "thread_friction": st.floats(0, 1, exclude_min=True),
            "head_friction": st.floats(0, 1, exclude_min=True),
            "tooling_budget": st.none() | st.floats(0, 1e9).map(abs),
        }
    )
    return st.builds(
        lambda values, assumed: Study(**values, **assumed), own, assumptions(texts)
    )


def _by_name(record: Material | Source | Study) -> str:
    return record.name


@cache
def pack_tables() -> SearchStrategy[PackTable]:
    """Tables of a few packs."""
    rows = st.lists(packs(), max_size=3, unique_by=lambda pack: pack.name)
    return rows.map(PackTable.from_packs)


@st.composite
def _owned(
    draw: st.DrawFn, records: SearchStrategy[OwnedT], owners: Sequence[str]
) -> Mapping[str, tuple[OwnedT, ...]]:
    if not owners:
        return {}
    drawn = draw(st.lists(records, max_size=3))
    placed = [replace(r, pack=draw(st.sampled_from(owners))) for r in drawn]
    return by_pack({(r.pack, r.name): r for r in placed}.values())


@st.composite
def libraries(draw: st.DrawFn) -> Library:
    """Libraries whose parts and joints belong to packs that are there."""
    table = draw(pack_tables())
    owners = table.names.tolist()
    questions = draw(_several(studies()))
    return Library(
        packs=table,
        parts=draw(_owned(parts(), owners)),
        joints=draw(_owned(joints(), owners)),
        materials=draw(_several(materials())),
        sources=draw(_several(sources())),
        studies=questions,
        changes=draw(
            proposals(changes(texts, names), [study.name for study in questions])
        ),
        assumption_sets=draw(
            kept_sets(texts, names, [study.name for study in questions])
        ),
        title=draw(texts()),
        note=draw(texts()),
    )


def _several(records: SearchStrategy[NamedT]) -> SearchStrategy[tuple[NamedT, ...]]:
    return st.lists(records, max_size=2, unique_by=_by_name).map(tuple)


STRATEGIES: dict[type, SearchStrategy[Any]] = {
    Boundary: boundaries(),
    Joint: joints(),
    Library: libraries(),
    Material: materials(),
    Pack: packs(),
    PackTable: pack_tables(),
    Part: parts(),
    Source: sources(),
    Study: studies(),
    **JOINING_STRATEGIES,
    **proposal_strategies(texts, names),
    **assumption_strategies(texts, names),
}
"""A strategy for each record of the model."""
