"""What a change needs back, and what it touches."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from numpy.testing import assert_allclose

from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import by_pack
from benchpack.model.ranges import Range
from benchpack.model.touches import Touch
from benchpack.model.words import Subsystem
from benchpack.results.ledger import AddedBack, Ledger
from tests.unit.results.proposal_samples import (
    FLOOR_IN_PP,
    JOINTS,
    LID_IN_PP,
    NO_BRACKETS,
    ONE_LID,
    PARTS,
    RIM_BEAD,
    change,
    joint,
    ledger_of,
    part,
)

SIDES_IN_PP = change(
    "sides in PP", ChangeKind.SUBSTITUTE, parts=("side frame",), material="PP-LGF40"
)


def backs(ledger: Ledger, name: str) -> dict[str, AddedBack]:
    return {b.add_back.key: b for b in ledger.add_backs if b.change == name}


def touches(one: Change) -> frozenset[Touch]:
    return ledger_of(one).applied[0].touches


def test_a_lid_of_polymer_needs_foil_straps_limiters_barrier_and_groove() -> None:
    found = backs(ledger_of(LID_IN_PP), "lid in PP")
    assert list(found) == [
        "shield foil",
        "bonding straps",
        "compression limiters",
        "fire barrier",
        "seal groove",
    ]
    assert_allclose(found["shield foil"].mass_kg.likely, 0.27 * 2.0)
    assert found["shield foil"].amount == 2.0
    # 80 lid screws and 10 of the service cover.
    assert found["compression limiters"].amount == 90
    assert_allclose(found["compression limiters"].mass_kg.ends, (0.45, 0.9, 1.8))


def test_a_floor_of_polymer_needs_a_shield_below() -> None:
    found = backs(ledger_of(FLOOR_IN_PP), "floor in PP")
    assert "bottom shield" in found
    assert "fire barrier" not in found
    # The cooling plate of metal stays between cells and floor.
    assert "heat plate" not in found


def test_a_floor_in_the_heat_path_needs_a_plate() -> None:
    bare = tuple(one for one in PARTS if one.name != "cooling plate")
    found = backs(ledger_of(FLOOR_IN_PP, parts=bare), "floor in PP")
    assert_allclose(found["heat plate"].mass_kg.ends, (4.32, 8.64, 12.96))
    plate = change(
        "plate",
        ChangeKind.ADD,
        into="spreader",
        subsystem=Subsystem.COOLING,
        material="aluminium",
        mass_kg=Range(4, 5, 6),
    )
    found = backs(ledger_of(FLOOR_IN_PP, plate, parts=bare), "floor in PP")
    assert "heat plate" not in found


@pytest.mark.parametrize(
    ("size", "spreads"),
    [
        ({"mass_each_kg": 0.12}, False),
        ({"mass_each_kg": 0.9, "length_mm": 1700.0}, False),
        ({"mass_each_kg": 0.9, "area_m2": 0.01}, False),
        ({"mass_each_kg": 0.9, "area_m2": 0.01, "count": 6}, True),
        ({"mass_each_kg": 3.0}, True),
    ],
)
def test_ports_and_pipes_are_no_plate(size: dict[str, Any], *, spreads: bool) -> None:
    """A port of metal leads no heat away, and one of polymer needs no plate."""
    plate = next(one for one in PARTS if one.name == "cooling plate")
    other = replace(plate, **size)
    parts = tuple(other if one is plate else one for one in PARTS)
    found = backs(ledger_of(FLOOR_IN_PP, parts=parts), "floor in PP")
    assert ("heat plate" in found) == (not spreads)
    turned = change(
        "cooling in PP",
        ChangeKind.SUBSTITUTE,
        parts=("cooling plate",),
        material="PP-LGF40",
        governs=("geometry only",),
    )
    found = backs(ledger_of(turned, parts=parts), "cooling in PP")
    assert ("heat plate" in found) == spreads


def test_mounts_need_a_ring_where_their_carrier_is_polymer() -> None:
    found = backs(ledger_of(SIDES_IN_PP), "sides in PP")
    assert "mount ring" in found
    assert Touch.POLYMER_MOUNTS in touches(SIDES_IN_PP)
    assert "mount ring" not in backs(ledger_of(FLOOR_IN_PP), "floor in PP")


def test_add_backs_are_in_the_sum() -> None:
    ledger = ledger_of(LID_IN_PP)
    own = sum(entry.saved_kg for entry in ledger.applied[0].entries)
    added = sum(b.mass_kg.likely for b in ledger.add_backs if b.is_counted)
    assert added > 3.0
    assert_allclose(ledger.saved_kg, own - added, rtol=1e-12)
    assert_allclose(ledger.proposed_kg.likely, 460 - ledger.saved_kg, rtol=1e-12)


def test_with_a_reason_one_is_taken_out_and_stays_on_the_list() -> None:
    waived = replace(LID_IN_PP, waived=(("fire barrier", "ceramic coat tested"),))
    ledger = ledger_of(waived)
    barrier = backs(ledger, "lid in PP")["fire barrier"]
    assert not barrier.is_counted
    assert barrier.waived == "ceramic coat tested"
    assert_allclose(
        ledger_of(LID_IN_PP).proposed_kg.likely - ledger.proposed_kg.likely,
        barrier.mass_kg.likely,
        rtol=1e-9,
    )
    assert "fire barrier" not in {entry.item for entry in ledger.entries}


def test_what_is_there_already_is_not_added_again() -> None:
    barrier = part("lid fire barrier", 3.0, Subsystem.OTHER, inside="lid")
    found = backs(ledger_of(LID_IN_PP, parts=(*PARTS, barrier)), "lid in PP")
    assert found["fire barrier"].covered_by == "lid fire barrier"
    assert not found["fire barrier"].is_counted


def test_what_goes_by_the_pack_is_needed_once() -> None:
    ledger = ledger_of(LID_IN_PP, SIDES_IN_PP)
    straps = [b for b in ledger.add_backs if b.add_back.key == "bonding straps"]
    assert [b.change for b in straps] == ["lid in PP"]
    # The first that does not waive it carries it.
    waived = replace(LID_IN_PP, waived=(("bonding straps", "on the ring"),))
    ledger = ledger_of(waived, SIDES_IN_PP)
    straps = [b for b in ledger.add_backs if b.add_back.key == "bonding straps"]
    assert [(b.change, b.is_counted) for b in straps] == [
        ("lid in PP", False),
        ("sides in PP", True),
    ]


def test_each_screw_is_sleeved_once() -> None:
    ledger = ledger_of(LID_IN_PP, SIDES_IN_PP, FLOOR_IN_PP)
    sleeved = sum(
        b.amount for b in ledger.add_backs if b.add_back.key == "compression limiters"
    )
    screws = [one for one in JOINTS if "screws" in one.name]
    assert sleeved == sum(one.count for one in screws)


def test_screws_that_are_swapped_away_need_no_sleeves() -> None:
    found = backs(ledger_of(LID_IN_PP, RIM_BEAD), "lid in PP")
    assert found["compression limiters"].amount == 10
    found = backs(ledger_of(ONE_LID, RIM_BEAD), "one lid")
    assert "compression limiters" not in found


def test_a_part_without_an_area_takes_the_mass_of_a_pack() -> None:
    bare = tuple(replace(one, area_m2=None) for one in PARTS)
    foil = backs(ledger_of(LID_IN_PP, parts=bare), "lid in PP")["shield foil"]
    assert (foil.mass_kg.ends, foil.amount) == ((0.3, 0.5, 1.0), 0.0)


def test_small_parts_of_the_frame_need_no_foil() -> None:
    small = change(
        "brackets in PP",
        ChangeKind.SUBSTITUTE,
        parts=("bracket",),
        material="PP-GF30",
        governs=("geometry only",),
    )
    assert list(backs(ledger_of(small), "brackets in PP")) == ["compression limiters"]


def test_welds_at_what_is_polymer_now_are_named() -> None:
    (note,) = ledger_of(FLOOR_IN_PP).applied[0].notes
    assert note.what == "floor is polymer now, and rib seams cannot join it."


CONDUCTS = joint("links", "bus", "cell", family="hex screw", role="conduct")
STRAP = joint("bonding screws", "strap", "lid", family="hex screw", role="conduct")


@pytest.mark.parametrize(
    ("one", "expected"),
    [
        (NO_BRACKETS, {Touch.STRUCTURE, Touch.SCREWS}),
        (RIM_BEAD, {Touch.SEAL, Touch.SCREWS, Touch.JOINTS}),
        (
            change("x", ChangeKind.REMOVE, joints=("floor screws",)),
            {Touch.SCREWS, Touch.JOINTS},
        ),
        (
            change("x", ChangeKind.REMOVE, joints=("links",)),
            {Touch.SCREWS, Touch.CONDUCTORS},
        ),
        (
            change("x", ChangeKind.REMOVE, joints=("bonding screws",)),
            {Touch.SCREWS, Touch.BONDING},
        ),
        (
            change(
                "x",
                ChangeKind.SUBSTITUTE,
                parts=("lid",),
                material="aluminium",
            ),
            {Touch.LID, Touch.UNLIKE_METALS},
        ),
        (
            change("x", ChangeKind.REMOVE, parts=("cooling plate",)),
            {Touch.COOLING},
        ),
    ],
)
def test_what_a_change_touches(one: Change, expected: set[Touch]) -> None:
    ledger = ledger_of(one, joints=by_pack((*JOINTS, CONDUCTS, STRAP)))
    assert ledger.applied[0].touches == expected
