"""Speed of the inventory of 5,000 joints in one pack, as ratios within one run."""

from __future__ import annotations

import gc
import math
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial

import numpy as np
import pytest

from benchpack.model.designation import read_designation
from benchpack.model.families import FAMILY_NAMES
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.model.words import KnownBy
from benchpack.results.inventory import Grouping, Inventory, grouped, inventory
from benchpack.results.joint_mass import reading_of, unit_mass
from benchpack.results.joint_nature import nature_of
from benchpack.results.joint_problems import _of_row

pytestmark = pytest.mark.benchmark
MANY, TENTH = 5_000, 500
STUDY = Study(subject="Heron 70")


def joints(count: int, *, designations: int) -> tuple[Joint, ...]:
    """Give invented joints, half of them without a mass, lengths all different."""
    random = np.random.default_rng(3)
    heads = ("ISO 4762", "ISO 4017", "EN 1665", "drawing", "")
    said = [
        (
            str(random.choice(FAMILY_NAMES)),
            f"{heads[i % 5]} M{(5, 6, 8, 10)[i % 4]}x{10 + i % 50} 8.8, {i}",
        )
        for i in range(designations)
    ]
    return tuple(
        Joint(
            "Heron 70",
            f"joint {i}",
            family=said[i % designations][0],
            designation=said[i % designations][1],
            count=int(random.integers(1, 90)),
            length_mm=float(random.uniform(100, 9000)) if i % 3 else None,
            mass_each_g=float(random.uniform(1, 40)) if i % 2 else None,
            known_by=KnownBy.WEIGHED,
            joins=f"part {random.integers(60)}",
            to=f"part {random.integers(60)}",
        )
        for i in range(count)
    )


def library(held: tuple[Joint, ...]) -> Library:
    packs = PackTable.from_packs([Pack("Heron 70", 70, 460)])
    return Library(packs, joints=by_pack(held))


def seconds(work: Callable[[], object], *, times: int = 7) -> float:
    """Give the best of several runs."""
    best = math.inf
    for _ in range(times):
        gc.collect()
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def fresh(records: Library) -> Inventory:
    """Take an inventory as the first one: nothing is remembered."""
    for remembered in (read_designation, unit_mass, reading_of, nature_of, _of_row):
        remembered.cache_clear()
    return inventory(records, STUDY, "Heron 70")


def test_the_inventory_of_a_pack_with_5000_joints() -> None:
    many = joints(MANY, designations=300)
    records = library(many)
    bare = seconds(lambda: [replace(joint) for joint in many])
    whole = seconds(lambda: fresh(records))
    warm = seconds(lambda: inventory(records, STUDY, "Heron 70"))
    unlike = library(joints(MANY, designations=MANY))
    worst = seconds(lambda: fresh(unlike), times=2)
    before = inventory(records, STUDY, "Heron 70")
    edited = library((*many[:2500], replace(many[2500], count=7), *many[2501:]))
    after = seconds(lambda: inventory(edited, STUDY, "Heron 70", previous=before))
    print(
        f"\n{MANY} joints of 300 designations: {1000 * whole:.0f} ms from scratch "
        f"({1000 * worst:.0f} ms where no two are alike), {1000 * warm:.0f} ms when "
        f"they were read before, {1000 * after:.1f} ms after one edit; making the "
        f"records {1000 * bare:.0f} ms"
    )
    assert whole <= 3 * bare
    assert after <= 0.25 * whole


def test_the_inventory_grows_with_its_joints() -> None:
    many, few = (library(joints(n, designations=300)) for n in (MANY, TENTH))
    whole, small = (
        seconds(partial(inventory, one, STUDY, "Heron 70")) for one in (many, few)
    )
    exponent = math.log10(whole / small)
    print(f"\n{TENTH} to {MANY} joints: exponent {exponent:.2f}")
    assert exponent <= 1.15


def test_groups_of_5000_joints() -> None:
    records = library(joints(MANY, designations=300))
    held = inventory(records, STUDY, "Heron 70")
    whole = seconds(partial(fresh, records))
    for by in Grouping:
        took = seconds(partial(grouped, held, by))
        print(f"\n{by}: {len(grouped(held, by))} groups in {1000 * took:.1f} ms")
        assert took <= whole
