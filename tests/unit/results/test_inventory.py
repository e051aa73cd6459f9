"""The inventory of a pack: sums, groups, what the line needs, taking over."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from numpy.testing import assert_allclose

from benchpack.model.joint import Joint
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem
from benchpack.results.inventory import (
    NOT_RECORDED,
    Grouping,
    Measure,
    grouped,
    inventory,
    natural_key,
    totals_of,
)
from benchpack.results.joint_facts import facts_of
from tests.unit.results.joint_samples import EUR, PER_S, joint, stock, stocked, weighed

LID = weighed(
    "lid screws",
    8.7,
    family="flange screw",
    designation="EN 1665 M6x20",
    count=84,
    time_each_s=6.0,
    cost_each=0.07,
    role="clamp and seal",
    joins="lid",
    to="flange",
)
GASKET = weighed(
    "gasket",
    106.6,
    family="gasket",
    designation="silicone foam 12x6",
    length_mm=5920.0,
    time_each_s=177.6,
    cost_each=13.02,
    role="seal",
    joins="flange",
    to="lid",
    subsystem=Subsystem.SEALS,
)
MOUNTS = weighed(
    "mount screws",
    32.0,
    family="flange screw",
    designation="EN 1665 M10x30",
    count=20,
    time_each_s=9.0,
    cost_each=0.24,
    joins="lug",
    carry_over=True,
    reason="vehicle mount",
)
CLIPS = joint("clips", family="clip", designation="edge clip", count=64)
RIVETS = joint("rivets", family="blind rivet", designation="4.8x12", count=8)
ALL = (LID, GASKET, MOUNTS, CLIPS, RIVETS)


def test_totals_are_worked_by_hand_and_say_what_they_lack() -> None:
    totals = stock(*ALL).totals
    assert (totals.rows, totals.pieces, totals.line_m) == (5, 176, 5.92)
    assert_allclose(totals.mass_kg, 84 * 0.0087 + 0.1066 + 20 * 0.032 + 8 * 0.0025)
    seconds = 84 * 6 + 177.6 + 20 * 9 + 64 * 3 + 8 * 4
    assert_allclose(totals.seconds, seconds)
    pieces = 84 * 0.07 + 13.02 + 20 * 0.24 + 64 * 0.06 + 8 * 0.06
    assert_allclose(totals.money, pieces + seconds * PER_S)
    assert (totals.unknown_mass, totals.unknown_time, totals.unknown_money) == (1, 0, 0)


def test_the_mass_uncertainty_is_in_quadrature_over_rows() -> None:
    parts = [0.002 * 84 * 0.0087, 0.002 * 0.1066, 0.002 * 0.64, 0.25 / 3**0.5 * 0.02]
    assert_allclose(stock(*ALL).totals.mass_u_kg, math.hypot(*parts))


def test_a_mass_that_does_not_say_how_it_is_known_takes_the_range_away() -> None:
    totals = stock(LID, joint("odd", mass_each_g=3.0)).totals
    assert math.isnan(totals.mass_u_kg)
    assert totals.unstated == 1
    weld = joint("weld", family="laser weld", mass_each_g=0.0)
    assert stock(LID, weld).totals.unstated == 0


def test_the_pack_comes_with_its_joints() -> None:
    held = stock(*ALL)
    assert (held.pack, held.energy_kwh, held.pack_mass_kg) == ("Heron 70", 70, 460)
    assert held.structure_kg == 160
    assert held.energy_basis is EnergyBasis.GROSS
    assert held.seal_m == 5.92
    assert held.carry_over.pieces == 20
    assert held.place("mount screws") == 2
    assert held.place("nothing") is None
    assert [problem.record for problem in held.problems] == ["clips"]


def test_sizes_and_drives_are_what_the_line_has_to_have() -> None:
    held = stock(*ALL, replace(LID, name="more", designation="EN 1665 M6x25"))
    assert held.sizes == ("4.8x12", "M6x20", "M6x25", "M10x30")
    assert held.drives == ("hex 10", "hex 16")
    assert held.tools == ("blind rivet 4.8", "gasket", "hex 10", "hex 16")


def test_stations_are_rounded_up() -> None:
    seconds = stock(*ALL).totals.seconds
    assert stock(*ALL).stations == math.ceil(seconds / 60)
    slow = replace(EUR, takt_time_s=seconds)
    assert stock(*ALL, study=slow).stations == 1
    assert stock().stations is None
    assert stock(joint("a", family="magnet")).stations is None


def test_nothing_recorded_is_nothing() -> None:
    held = stock()
    assert held.facts == ()
    assert (held.totals.rows, held.totals.mass_kg, held.totals.mass_u_kg) == (0, 0, 0)
    assert held.totals.of(Measure.MASS) == 0
    assert grouped(held, Grouping.KIND) == ()


def test_a_sum_of_nothing_known_is_unknown() -> None:
    totals = stock(CLIPS).totals
    assert math.isnan(totals.of(Measure.MASS))
    assert totals.of(Measure.COUNT) == 64
    assert totals.of(Measure.TIME) == 192
    assert totals.unknown(Measure.MASS) == 1


@pytest.mark.parametrize(
    ("grouping", "expected"),
    [
        (
            Grouping.KIND,
            {"blind rivet": 8, "clip": 64, "flange screw": 104, "gasket": 0},
        ),
        (
            Grouping.SIZE,
            {"4.8x12": 8, "12x6": 0, "M6x20": 84, "M10x30": 20, NOT_RECORDED: 64},
        ),
        (Grouping.ROLE, {"clamp and seal": 84, "seal": 0, NOT_RECORDED: 92}),
        (Grouping.SUBSYSTEM, {"joints": 176, "seals": 0}),
        (Grouping.JOINED_PAIR, {"flange and lid": 84, "lug": 20, NOT_RECORDED: 72}),
    ],
)
def test_groups_by_everything(grouping: Grouping, expected: dict[str, int]) -> None:
    found = grouped(stock(*ALL), grouping)
    assert {group.name: group.totals.pieces for group in found} == expected
    assert [group.name for group in found] == list(expected)


def test_a_pair_has_no_order_and_may_be_one_part() -> None:
    ends = [("lid", "tray"), ("tray", "lid"), ("tray", "tray"), ("a and b", "c")]
    ends.append(("a", "b and c"))
    joints = [joint(f"{i}", joins=a, to=b) for i, (a, b) in enumerate(ends)]
    found = grouped(stock(*joints), Grouping.JOINED_PAIR)
    assert [(group.name, group.members) for group in found] == [
        ("a and b and c", (3,)),
        ("a and b and c", (4,)),
        ("lid and tray", (0, 1)),
        ("tray to itself", (2,)),
    ]


def test_sizes_sort_as_numbers() -> None:
    texts = ["M10x30", "M6x20", "M6x16", "5 mm", "12x6", "a3"]
    expected = ["5 mm", "12x6", "a3", "M6x16", "M6x20", "M10x30"]
    assert sorted(texts, key=natural_key) == expected


def test_the_facts_of_joints_that_are_the_same_are_taken_over() -> None:
    old = stocked(*ALL)
    before = inventory(old, EUR, "Heron 70")
    changed = (*ALL[:2], replace(MOUNTS, count=12), *ALL[3:])
    after = inventory(stocked(*changed), EUR, "Heron 70", previous=before)
    same = [a is b for a, b in zip(before.facts, after.facts, strict=True)]
    assert same == [True, True, False, True, True]
    assert after.totals == totals_of(facts_of(changed, EUR))
    fewer = inventory(stocked(*changed[1:]), EUR, "Heron 70", previous=after)
    assert fewer.facts == after.facts[1:]


def test_other_rates_are_never_taken_over_but_another_worth_is() -> None:
    library = stocked(*ALL)
    before = inventory(library, EUR, "Heron 70")
    dear = replace(EUR, labour_rate_per_h=90.0)
    after = inventory(library, dear, "Heron 70", previous=before)
    assert after.totals.money > before.totals.money
    assert after.totals == inventory(library, dear, "Heron 70").totals
    worth = replace(EUR, worth_likely_per_kg=4.0, takt_time_s=30.0)
    kept = inventory(library, worth, "Heron 70", previous=before)
    assert kept.facts == before.facts
    assert kept.stations == math.ceil(before.totals.seconds / 30)


def test_another_pack_has_its_own_joints() -> None:
    other = Joint("Egret 80", "clips", count=3, mass_each_g=1, known_by=KnownBy.WEIGHED)
    library = stocked(*ALL, other)
    before = inventory(library, EUR, "Heron 70")
    found = inventory(library, EUR, "Egret 80", previous=before)
    assert found.totals.pieces == 3
    with pytest.raises(KeyError):
        inventory(library, EUR, "Snipe")
