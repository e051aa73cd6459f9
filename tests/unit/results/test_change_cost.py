"""What parts and joints cost before and after a change, and when it pays."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy_financial
import pytest
from numpy.testing import assert_allclose

from benchpack.model.change import ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.model.words import Subsystem
from benchpack.results.change_cost import (
    PartCost,
    break_even_of_parts,
    compare_costs,
    cost_of_part,
)
from benchpack.results.change_joining import compare_joining
from benchpack.results.change_supply import Supply, break_even, per_pack, supply_of
from benchpack.results.joint_facts import joint_facts, rates_of
from tests.unit.results.proposal_samples import (
    ALUMINIUM,
    JOINTS,
    LONG_GLASS_PP,
    STEEL,
    STUDY,
    joint,
    part,
)

SUPPLY = Supply(35.0, "EUR", 50_000.0, 5.0, 0.08)
MOULDED = part(
    "lid", 6.0, Subsystem.LID, process="injection moulded", material="PP-LGF40"
)


def test_a_large_moulding_by_the_worked_example() -> None:
    found = cost_of_part(MOULDED, LONG_GLASS_PP, SUPPLY)
    assert found.process == "injection moulding"
    assert found.processing is not None
    assert found.material is not None
    # Derived: 110 s at 220 + 35 per hour and 0.85 of the time is 9.2 EUR a shot.
    assert_allclose(found.processing.likely, 9.2, atol=0.05)
    assert_allclose(found.material.likely, 6.0 * 3.4 / 0.98, rtol=1e-12)
    assert found.total is not None
    assert_allclose(found.total.likely, found.material.likely + found.processing.likely)
    assert found.processing.low < 9.0 < found.processing.high


def test_ends_of_a_range_are_added_in_quadrature() -> None:
    found = cost_of_part(MOULDED, LONG_GLASS_PP, SUPPLY).processing
    assert found is not None
    per_s = (220 + 35) / 3600 / 0.85
    by_cycle, by_rate = 40 * per_s, 110 * 130 / 3600 / 0.85
    assert_allclose(found.high - found.likely, math.hypot(by_cycle, by_rate), rtol=1e-9)


def test_tools_wear_out_over_the_programme() -> None:
    cast = replace(MOULDED, process="die cast", count=2)
    found = cost_of_part(cast, ALUMINIUM, SUPPLY)
    # 500,000 castings on tools that make 115,000 each.
    assert found.tool_sets == 5
    assert found.tooling == Range(1_000_000, 2_250_000, 3_500_000)
    unknown = replace(SUPPLY, yearly_volume=math.nan)
    assert cost_of_part(cast, ALUMINIUM, unknown).tool_sets == 1


@pytest.mark.parametrize(
    ("values", "supply", "why"),
    [
        ({"mass_each_kg": None}, SUPPLY, "its mass is not recorded"),
        ({"mass_each_kg": 0.4}, SUPPLY, "it is too small for the rates of the process"),
        ({"process": "bought in"}, SUPPLY, "its process is not one with known rates"),
        (
            {},
            replace(SUPPLY, currency="USD"),
            "the rates of processes are in EUR",
        ),
    ],
)
def test_what_is_not_known_is_said(
    values: dict[str, object], supply: Supply, why: str
) -> None:
    found = cost_of_part(replace(MOULDED, **values), LONG_GLASS_PP, supply)  # type: ignore[arg-type]  # fields of a part
    assert why in found.why
    assert found.total is None


def test_a_material_without_a_price_has_no_cost() -> None:
    found = cost_of_part(MOULDED, replace(STEEL, price_per_kg=None), SUPPLY)
    assert found.material is None
    assert found.why == ("its material has no price",)


def _cost(name: str, material: float | None, processing: float | None) -> PartCost:
    def exactly(value: float | None) -> Range | None:
        return None if value is None else Range.exactly(value)

    return PartCost(name, "", exactly(material), exactly(processing))


def test_an_unknown_new_cost_is_never_a_saving() -> None:
    old = _cost("old", 20.0, 8.0)
    known = compare_costs([old], [_cost("new", 15.0, 9.0)], SUPPLY)
    assert known.part_cost == Range.exactly(-4.0)
    half = compare_costs([old], [_cost("new", 15.0, None)], SUPPLY)
    # Its making is not known, so that the making of the old one is not credited.
    assert half.part_cost == Range.exactly(-5.0)
    none = compare_costs([old], [_cost("new", None, None)], SUPPLY)
    assert none.part_cost == Range.exactly(0.0)
    assert compare_costs([old], [], SUPPLY).part_cost == Range.exactly(-28.0)


def test_a_part_on_both_sides_cancels_out() -> None:
    same = _cost("same", None, None)
    found = compare_costs([same, _cost("old", 3.0, 1.0)], [same], SUPPLY)
    assert found.part_cost == Range.exactly(-4.0)
    assert found.why == ()


def test_break_even_between_old_and_new_parts() -> None:
    old = PartCost("old", "", Range.exactly(20), Range.exactly(10), Range.exactly(3e5))
    new = PartCost("new", "", Range.exactly(15), Range.exactly(5), Range.exactly(1e6))
    running = compare_costs([old], [new], SUPPLY)
    # The published form V = (I_B - I_A) CRF / (c_A - c_B); the old tool is paid for.
    recovery = -numpy_financial.pmt(0.08, 5, 1.0)
    assert_allclose(
        break_even_of_parts(running, SUPPLY), 1e6 * recovery / 10, rtol=1e-12
    )
    new_programme = replace(SUPPLY, programme=ProgrammeKind.NEW)
    both = compare_costs([old], [new], new_programme)
    assert_allclose(
        break_even_of_parts(both, new_programme), 7e5 * recovery / 10, rtol=1e-12
    )
    # At that volume both cost the same.
    at = replace(SUPPLY, yearly_volume=break_even_of_parts(running, SUPPLY))
    shared = per_pack(running.tooling, at)
    assert shared is not None
    assert_allclose(shared.likely, 10.0, rtol=1e-12)


def test_break_even_where_nothing_is_spent_or_saved() -> None:
    assert break_even(0.0, 3.0, SUPPLY) == 0.0
    assert break_even(0.0, -3.0, SUPPLY) == math.inf
    assert break_even(1e5, -3.0, SUPPLY) == math.inf
    unknown = compare_costs([], [_cost("new", None, 1.0)], SUPPLY)
    open_cost = replace(unknown, why=("new: its material has no price",))
    assert math.isnan(break_even_of_parts(open_cost, SUPPLY))


def test_one_time_money_by_capital_recovery() -> None:
    shared = per_pack(Range(0, 800_000, 1_500_000), SUPPLY)
    assert shared is not None
    # Derived: 800,000 over 5 years of 50,000 at 8 % are 4.01 a pack, 1.5 million 7.5.
    assert_allclose(shared.ends, (0.0, 4.01, 7.51), atol=0.005)
    unknown = replace(SUPPLY, yearly_volume=math.nan)
    assert per_pack(Range.exactly(1.0), unknown) is None
    assert per_pack(Range.exactly(0.0), unknown) == Range.exactly(0.0)


def test_the_volume_of_the_study_goes_before_that_of_the_subject() -> None:
    assert supply_of(STUDY, subject_volume=7).yearly_volume == 40_000
    bare = replace(STUDY, yearly_volume=None)
    assert supply_of(bare, subject_volume=7).yearly_volume == 7
    assert math.isnan(supply_of(bare, subject_volume=None).yearly_volume)


def test_joints_by_money_and_time_with_the_ranges_of_their_family() -> None:
    rates = rates_of(STUDY)
    screws = joint_facts(JOINTS[0], STUDY)
    usual = joint_facts(joint("clips", "a", "b", family="clip", count=10), STUDY)
    found = compare_joining([screws], [usual], rates)
    assert found.why == ()
    assert_allclose(found.money.likely, usual.money - screws.money, rtol=1e-12)
    assert_allclose(found.seconds.likely, usual.seconds - screws.seconds, rtol=1e-12)
    # What was entered has no range, what is usual of a family has.
    assert compare_joining([screws], [], rates).money.width == 0.0
    assert found.money.width > 0.0
    assert found.seconds.width > 0.0


def test_a_joint_without_money_is_named_and_counts_as_nothing() -> None:
    dollars = replace(STUDY, currency="USD")
    clips = joint_facts(joint("clips", "a", "b", family="clip", count=10), dollars)
    found = compare_joining([clips], [], rates_of(dollars))
    assert found.money == Range.exactly(0.0)
    assert found.seconds.likely < 0
    assert found.why == ("time or cost of clips is not known",)
