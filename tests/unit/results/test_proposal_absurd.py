"""Proposals of absurd libraries: every figure at the edge of what a record can hold."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.words import GOVERNS, Subsystem
from benchpack.report.proposal_print import proposal_print
from benchpack.report.proposal_table import ledger_rows
from benchpack.results.candidates import compare_candidates
from benchpack.results.ledger import Ledger
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_choice import suggest
from benchpack.results.proposal_matters import mass_matters, value_matters
from benchpack.results.proposal_trials import simulate
from tests.unit.results.proposal_samples import (
    COVER_IN_LID,
    LID_IN_PP,
    LONG_GLASS_PP,
    MATERIALS,
    ONE_LID,
    PARTS,
    RIM_BEAD,
    STEEL,
    STUDY,
    bench,
    change,
    joint,
    ledger_of,
    part,
    proposal_of,
)

TINY = 1e-311
LID = next(one for one in PARTS if one.name == "lid")


def refusal(ledger: Ledger) -> str:
    ((_, problem),) = ledger.refused
    return f"{problem.what} {problem.remedy}"


def with_material(old: Material, **values: Any) -> tuple[Material, ...]:
    new = replace(old, **values)
    return tuple(new if one is old else one for one in MATERIALS)


def with_lid(**values: Any) -> tuple[Part, ...]:
    new = replace(LID, **values)
    return tuple(new if one is LID else one for one in PARTS)


def test_a_piece_that_would_be_too_heavy_is_refused_with_its_mass() -> None:
    """12 kg x 1210 / 7850 x (210 / (0.45 x 1e-15))^(1/3)."""
    soft = with_material(LONG_GLASS_PP, modulus_gpa=1e-15)
    ledger = ledger_of(LID_IN_PP, materials=soft)
    said = refusal(ledger)
    assert said.startswith("lid would weigh 1.43e+06 kg a piece in PP-LGF40, and more")
    assert said.endswith("or give its mass after the change.")
    assert ledger.saved_kg == 0
    # A mass that the change gives needs no computing.
    given_kg = replace(LID_IN_PP, mass_kg=Range(6, 7, 8))
    assert not ledger_of(given_kg, materials=soft).refused


@pytest.mark.parametrize(
    "materials",
    [
        with_material(LONG_GLASS_PP, modulus_gpa=TINY),
        with_material(STEEL, density_kg_m3=TINY),
        with_material(LONG_GLASS_PP, stiffness_knock_down=TINY, modulus_gpa=TINY),
    ],
)
def test_a_mass_that_cannot_be_computed_is_refused(
    materials: tuple[Material, ...],
) -> None:
    """Warnings are errors in tests: nothing may be said of an overflow on the way."""
    said = refusal(ledger_of(LID_IN_PP, materials=materials))
    assert "lid" in said
    assert "cannot be" in said


def test_what_no_record_can_hold_is_refused_with_the_reason() -> None:
    heavy = with_lid(mass_each_kg=99_999.0)
    into = replace(COVER_IN_LID, mass_kg=Range.exactly(2.0))
    said = refusal(ledger_of(into, parts=heavy))
    assert said.startswith("lid cannot be recorded so: mass each is 100001 kg")
    two = (*with_lid(mass_each_kg=60_000.0), part("lid 2", 60_000.0, Subsystem.LID))
    both = replace(
        ONE_LID, parts=("lid", "lid 2"), material="steel", governs=("geometry only",)
    )
    two = tuple(
        replace(one, material="steel") if one.name == "lid 2" else one for one in two
    )
    said = refusal(ledger_of(both, parts=two))
    assert "whole lid cannot be recorded so" in said


def test_a_joint_that_no_record_can_hold_is_refused() -> None:
    heavy = change(
        "heavy screws",
        ChangeKind.ADJUST,
        joints=("floor screws",),
        mass_kg=Range.exactly(5_000.0),
    )
    said = refusal(ledger_of(heavy))
    assert "floor screws cannot be recorded" in said
    swapped = replace(RIM_BEAD, mass_kg=Range.exactly(5_000.0))
    assert "lid bead cannot be recorded" in refusal(ledger_of(swapped))


def test_no_record_has_a_count_of_nothing() -> None:
    for make in (
        lambda: change("x", ChangeKind.SWAP_JOINTS, count=0),
        lambda: part("x", 1.0, Subsystem.LID, count=0),
        lambda: joint("x", "lid", "floor", count=0),
    ):
        with pytest.raises(DataError, match=r"[Cc]ount"):
            make()


@pytest.mark.parametrize("kind", [k for k in ChangeKind if k is not ChangeKind.ADD])
def test_a_change_of_what_is_not_there_says_so(kind: ChangeKind) -> None:
    of_joints = kind is ChangeKind.SWAP_JOINTS
    one = change(
        "of nothing",
        kind,
        parts=() if of_joints else ("keel", "mast"),
        joints=("rivets of the keel",) if of_joints else (),
        into="lid" if kind is ChangeKind.MOULD_IN else "hull",
        material="steel",
        family="clip",
        mass_kg=Range.exactly(1.0),
    )
    ledger = ledger_of(one)
    missing = "rivets of the keel" if of_joints else "keel"
    assert f"has no {'joint' if of_joints else 'part'} {missing!r}" in refusal(ledger)
    assert ledger.saved_kg == 0


def test_a_saving_of_next_to_nothing_can_be_chosen() -> None:
    """The solver scales by the largest worth, which may not vanish."""
    light = change(
        "adjusted",
        ChangeKind.ADJUST,
        parts=("lid",),
        mass_kg=Range.exactly(12.0),
        part_cost=Range.exactly(5e-324),
    )
    assert suggest(proposal_of(light)).chosen == ()


FIGURES = st.sampled_from([5e-324, TINY, 1e-160, 1e-9, 0.5, 7.0, 900.0])
MAYBE = st.none() | FIGURES
SHARES = st.none() | st.sampled_from([5e-324, 1e-160, 0.5, 1.0])


@st.composite
def materials(draw: st.DrawFn, name: str, kind: str) -> Material:
    return Material(
        name,
        kind,
        draw(FIGURES),
        draw(FIGURES),
        draw(FIGURES),
        draw(st.sampled_from([None, 0.0, 0.3, 0.5])),
        draw(MAYBE),
        draw(MAYBE),
        draw(MAYBE),
        price_per_kg=draw(MAYBE),
        stiffness_knock_down=draw(SHARES),
        strength_knock_down=draw(SHARES),
        minimum_wall_mm=draw(MAYBE),
    )


@st.composite
def packs(draw: st.DrawFn) -> Library:
    """Give a lid and a floor in a frame, whose figures are all absurd."""

    def one(name: str, subsystem: Subsystem, **more: str) -> Part:
        return part(
            name,
            draw(FIGURES),
            subsystem,
            material=draw(st.sampled_from(["metal", "polymer"])),
            count=draw(st.sampled_from([1, 7, 1_000_000])),
            mass_tolerance_kg=draw(MAYBE),
            thickness_mm=draw(MAYBE),
            area_m2=draw(MAYBE),
            length_mm=draw(MAYBE),
            governs=draw(st.sampled_from(GOVERNS)),
            **more,
        )

    parts = (
        one("lid", Subsystem.LID),
        one("floor", Subsystem.TRAY),
        one("frame", Subsystem.FRAME),
        one("cell", Subsystem.CELLS, inside="floor"),
    )

    def held(name: str, family: str, designation: str, role: str) -> Joint:
        return joint(
            name,
            "lid",
            "frame",
            family=family,
            designation=designation,
            role=role,
            count=draw(st.sampled_from([1, 1_000_000])),
            length_mm=draw(MAYBE),
            mass_each_g=draw(MAYBE),
            property_class="8.8",
        )

    joints = (
        held("screws", "hex screw", "ISO 4017 M6x16", "clamp and seal"),
        held("gasket", "gasket", "EPDM profile 8x6", "seal"),
    )
    return bench(
        *(draw(acting(place)) for place in range(draw(st.integers(1, 4)))),
        parts=parts,
        joints=by_pack(joints),
        materials=(
            draw(materials("metal", "metal")),
            draw(materials("polymer", "thermoplastic")),
        ),
    )


@st.composite
def acting(draw: st.DrawFn, place: int) -> Change:
    kind = draw(st.sampled_from(list(ChangeKind)))
    of_joints = kind is ChangeKind.SWAP_JOINTS
    parts = draw(
        st.lists(
            st.sampled_from(["lid", "floor", "frame"]),
            min_size=1 + (kind is ChangeKind.INTEGRATE),
            max_size=3,
            unique=True,
        )
    )
    ends = st.lists(FIGURES, min_size=3, max_size=3).map(sorted)
    ranges = st.none() | ends.map(lambda found: Range(*found))
    return change(
        f"change {place}",
        kind,
        parts=() if of_joints or kind is ChangeKind.ADD else tuple(parts),
        joints=("screws",) if of_joints else (),
        into="frame" if kind is ChangeKind.MOULD_IN else f"new {place}",
        material=draw(st.sampled_from(["metal", "polymer"])),
        governs=draw(
            st.sampled_from([(), ("panel buckling", "beam bending strength")])
        ),
        family="clip" if of_joints else "",
        stiffness_shape=draw(st.sampled_from([TINY, 1.0, 1000.0])),
        mass_kg=draw(ranges),
        part_cost=draw(ranges),
        tooling=draw(ranges),
        release_chance=draw(st.sampled_from([0.0, 5e-324, 0.5, 1.0])),
    )


@settings(max_examples=60, deadline=None)
@given(packs())
def test_every_absurd_proposal_closes_and_can_be_shown(library: Library) -> None:
    results = proposal(library, STUDY)
    _closes(results)
    chance = simulate(results, trials=200)
    matters = mass_matters(results)
    value_matters(results)
    assert proposal_print(results, chance, matters=matters)
    assert len(list(ledger_rows(results))) >= len(results.changes)
    suggest(results)
    assert {check.words != "" for check in results.checks} <= {True}
    compare_candidates(library, STUDY, "lid")


def _closes(results: ProposalResults) -> None:
    ledger = results.ledger
    assert len(ledger.applied) + len(ledger.refused) == len(results.changes)
    left = ledger.today_kg - ledger.saved_kg
    sizes = [abs(entry.saved_kg) for entry in ledger.entries]
    largest = max((ledger.today_kg, abs(ledger.unaccounted_kg), *sizes))
    assert math.isclose(
        ledger.proposed_kg.likely, left, rel_tol=1e-9, abs_tol=1e-9 * largest
    )
