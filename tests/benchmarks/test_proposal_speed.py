"""Speed of a proposal: 300 parts, 5,000 joints, 50 changes; ratios within one run."""

from __future__ import annotations

import gc
import math
import time
from collections.abc import Callable
from dataclasses import replace

import pytest

from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.words import Subsystem
from benchpack.results.change_checks import proposal_checks
from benchpack.results.inventory import inventory
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_trials import simulate
from tests.unit.results.proposal_samples import (
    PACK,
    STIFFNESS,
    STUDY,
    bench,
    change,
    joint,
    part,
)

pytestmark = pytest.mark.benchmark
PLACES = (Subsystem.TRAY, Subsystem.LID, Subsystem.FRAME, Subsystem.COOLING)
JOINTS = (
    ("hex screw", "ISO 4017 M6x16", "clamp"),
    ("gasket", "EPDM profile 8x6", "seal"),
    ("blind rivet", "ISO 15977 4.8x12", "carry"),
    ("arc weld", "ISO 2553 fillet a3", "carry"),
)


def parts_of(count: int) -> tuple[Part, ...]:
    return tuple(
        part(
            f"part {i}",
            0.5 + i % 7,
            PLACES[i % 4],
            material=("steel", "aluminium")[i % 2],
            process="stamped",
            thickness_mm=1.5,
            area_m2=0.2,
            governs=STIFFNESS,
            count=1 + i % 3,
        )
        for i in range(count)
    )


def joints_of(count: int, parts: int) -> tuple[Joint, ...]:
    return tuple(
        joint(
            f"joint {i}",
            f"part {i % parts}",
            f"part {(i * 7 + 1) % parts}",
            family=JOINTS[i % 4][0],
            designation=JOINTS[i % 4][1],
            role=JOINTS[i % 4][2],
            count=1 + i % 9,
            length_mm=100.0 + i,
        )
        for i in range(count)
    )


def changes_of(count: int) -> list[Change]:
    def one(i: int) -> Change:
        first, name = 5 * i, f"change {i}"
        if i % 4 == 0:
            return change(
                name,
                ChangeKind.SUBSTITUTE,
                parts=(f"part {first}", f"part {first + 1}"),
                material="PP-LGF40",
                process="injection moulded",
                release_chance=0.8,
                validation_cost=Range(1e5, 2e5, 4e5),
            )
        if i % 4 == 1:
            return change(
                name,
                ChangeKind.INTEGRATE,
                parts=tuple(f"part {first + j}" for j in range(3)),
                into=f"one {i}",
                material="PP-LGF40",
                release_chance=0.7,
            )
        if i % 4 == 2:
            return change(
                name,
                ChangeKind.ADJUST,
                parts=(f"part {first}",),
                mass_kg=Range(0.3, 0.4, 0.6),
                part_cost=Range(-1, 0, 2),
            )
        return change(
            name,
            ChangeKind.SWAP_JOINTS,
            joints=(f"joint {2 * i}",),
            into=f"new {i}",
            family="clip",
            mass_kg=Range(0.001, 0.002, 0.003),
        )

    return [one(i) for i in range(count)]


def pack_of(parts: int, joints: int, changes: int) -> Library:
    return bench(
        *changes_of(changes),
        parts=parts_of(parts),
        joints=by_pack(joints_of(joints, parts)),
    )


def edited(library: Library, tick: int) -> Library:
    """Give the library after an edit of one change."""
    changes = list(library.changes_of(STUDY.name))
    changes[0] = replace(changes[0], rib_allowance=0.1 + tick / 1000)
    return replace(library, changes={STUDY.name: tuple(changes)})


def seconds(work: Callable[[int], object], *, times: int = 7) -> float:
    """Give the least time of several runs, each with a number of its own."""
    gc.collect()
    best = math.inf
    for tick in range(times):
        start = time.perf_counter()
        work(tick)
        best = min(best, time.perf_counter() - start)
    return best


def after_edit(library: Library) -> tuple[float, ProposalResults]:
    first = proposal(library, STUDY)
    edits = [edited(library, tick) for tick in range(7)]
    return seconds(lambda t: proposal(edits[t], STUDY, previous=first)), first


def test_an_edit_costs_less_than_taking_the_inventory() -> None:
    library = pack_of(300, 5_000, 50)
    ours, results = after_edit(library)
    assert len(results.effects) == 50
    bare = seconds(lambda _: inventory(library, STUDY, PACK), times=3)
    print(
        f"\nproposal of 50 changes after an edit, 300 parts and 5,000 joints: "
        f"{ours * 1e3:.0f} ms, {ours / bare:.2f} x the bare inventory"
    )
    assert ours <= 2.0 * bare


def test_checks_cost_little_more_than_taking_the_inventory() -> None:
    library = pack_of(300, 5_000, 50)
    results = proposal(library, STUDY)

    def check(_: int) -> None:
        stock = results.today.inventory
        found = proposal_checks(library, STUDY, results.ledger, inventory=stock)
        assert len(found) == 50

    ours = seconds(check)
    bare = seconds(lambda _: inventory(library, STUDY, PACK), times=3)
    print(
        f"\n{len(results.checks)} checks of 50 changes, 300 parts and 5,000 joints: "
        f"{ours * 1e3:.0f} ms, {ours / bare:.2f} x the bare inventory"
    )
    assert ours <= 6.0 * bare


def test_trials_cost_what_the_bare_simulation_costs() -> None:
    from benchpack.calc.change_ranges import (
        ChangeRanges,
        CommonFactors,
        MoneyRanges,
        Ranges,
    )
    from benchpack.calc.simulation import simulate_changes

    results = proposal(pack_of(300, 5_000, 50), STUDY)
    span = Ranges([1.0] * 50, [2.0] * 50, [4.0] * 50)
    plain = ChangeRanges(
        span, money=[MoneyRanges(span), MoneyRanges(span)], release_chance=0.8
    )
    worth = CommonFactors(Ranges(1.0, 3.0, 6.0))
    ours = seconds(lambda _: simulate(results), times=3)
    bare = seconds(lambda _: simulate_changes(plain, worth), times=3)
    print(f"\n200,000 trials of 50 changes: {ours:.2f} s, {ours / bare:.2f} x bare")
    assert ours <= 2.5 * bare


def test_cost_grows_no_faster_than_changes_and_joints() -> None:
    base, _ = after_edit(pack_of(300, 500, 5))
    by_changes, _ = after_edit(pack_of(300, 500, 50))
    by_joints, _ = after_edit(pack_of(300, 5_000, 5))
    print(
        f"\nexponent in changes {math.log10(by_changes / base):.2f}, "
        f"in joints {math.log10(by_joints / base):.2f}"
    )
    assert by_changes < 16.0 * base
    assert by_joints < 16.0 * base
