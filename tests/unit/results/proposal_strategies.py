"""Hypothesis strategies for proposals on the pack of the samples."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.change import Change, ChangeKind
from benchpack.model.ranges import Range
from tests.unit.results.proposal_samples import JOINTS, MATERIALS, PARTS, change

MADE = ("whole lid", "plate", "new joint")
"""Names of what changes make, so that others may act on it or clash with it."""
_FREE = ("lid", "service cover", "floor", "bracket", "cooling plate", *MADE[:2])
_OFTEN = ("floor screws", "rib seams", "bracket screws", "clips", MADE[2])
PART_NAMES = (*_FREE * 6, *(part.name for part in PARTS), MADE[2], "LID", " floor")
JOINT_NAMES = (*_OFTEN * 6, *(joint.name for joint in JOINTS), "Clips ")
"""What may be acted on, many times; what has to stay, now and then."""

masses = st.lists(st.floats(0, 20).map(abs), min_size=3, max_size=3).map(
    lambda ends: Range(*sorted(ends))
)


def _names(words: tuple[str, ...], least: int) -> SearchStrategy[tuple[str, ...]]:
    most = max(least, 2)
    lists = st.lists(st.sampled_from(words), min_size=least, max_size=most, unique=True)
    return st.just(()) | lists.map(tuple) if least == 0 else lists.map(tuple)


_COMMON: dict[str, SearchStrategy[Any]] = {
    "material": st.sampled_from([material.name for material in MATERIALS]),
    "mass_kg": st.none() | masses,
    "rib_allowance": st.sampled_from((0.0, 0.3)),
    "uses_data_sheet": st.booleans(),
    "governs": st.sampled_from(((), ("geometry only",), ("panel bending strength",))),
}


def _of_kind(kind: ChangeKind) -> SearchStrategy[Change]:
    values = dict(_COMMON)
    parts, joints = _names(PART_NAMES, 1), _names(JOINT_NAMES, 1)
    if kind is ChangeKind.REMOVE:
        parts_or_joints = st.tuples(parts, st.just(())) | st.tuples(st.just(()), joints)
        return st.builds(
            lambda held: change("one", kind, parts=held[0], joints=held[1]),
            parts_or_joints,
        )
    if kind is ChangeKind.SUBSTITUTE:
        values["parts"] = parts
    elif kind is ChangeKind.INTEGRATE:
        values |= {
            "parts": _names(PART_NAMES, 2),
            "joints": _names(JOINT_NAMES, 0),
            "into": st.sampled_from((*MADE, "lid", "floor")),
        }
    elif kind is ChangeKind.MOULD_IN:
        values |= {"parts": parts, "into": st.sampled_from(PART_NAMES)}
    elif kind is ChangeKind.ADD:
        values |= {"into": st.sampled_from(MADE), "mass_kg": masses}
    elif kind is ChangeKind.SWAP_JOINTS:
        values = {
            "joints": joints,
            "into": st.sampled_from(("new joint", "floor screws")),
            "family": st.sampled_from(("", "sealant bead", "clip")),
            "count": st.none() | st.integers(1, 50),
            "mass_kg": st.none() | masses,
            "length_mm": st.none() | st.floats(1, 9000),
        }
    else:
        values = {"parts": parts, "joints": _names(JOINT_NAMES, 0), "mass_kg": masses}
    return st.fixed_dictionaries(values).map(lambda held: change("one", kind, **held))


_ONE = st.sampled_from(ChangeKind).flatmap(_of_kind)


@st.composite
def proposals(draw: st.DrawFn) -> tuple[Change, ...]:
    """Up to eight changes that may need, exclude, follow or contradict each other."""
    found = draw(st.lists(_ONE, min_size=2, max_size=8))
    names = [f"change {place}" for place in range(len(found))]
    links = st.lists(st.sampled_from(names), max_size=1).map(tuple)
    return tuple(
        replace(
            one,
            name=name,
            is_on=draw(st.integers(0, 9)) > 0,
            requires=_others(draw(links) if draw(st.integers(0, 4)) == 0 else (), name),
            release_chance=draw(st.sampled_from((1.0, 1.0, 0.7))),
        )
        for one, name in zip(found, names, strict=True)
    )


def _others(names: tuple[str, ...], own: str) -> tuple[str, ...]:
    return tuple(name for name in names if name != own)
