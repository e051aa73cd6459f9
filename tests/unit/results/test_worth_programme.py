"""The value of a saving over a programme, and which saving it is."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.calc.worth import programme_npv
from benchpack.errors import DataError, Problem
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.results.change_supply import planned_volumes
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import (
    Programme,
    is_paid_back,
    product,
    year_label,
)
from tests.unit.results.worth_samples import (
    CHANGES,
    RICH,
    case_of,
    studies,
    with_assumed,
)

CASE = case_of(*CHANGES)
RANGES = st.lists(st.floats(-1e4, 1e4), min_size=3, max_size=3).map(
    lambda ends: Range(*sorted(ends))
)


def programme(case: WorthCase) -> Programme:
    assert isinstance(case.programme, Programme)
    return case.programme


def at_worth(worth: float, **more: Any) -> Programme:
    ends = {f"worth_{end}_per_kg": worth for end in ("low", "likely", "high")}
    return programme(with_assumed(CASE, **ends, **more))


@settings(max_examples=30, deadline=None)
@given(one=st.floats(0, 500), other=st.floats(0, 500), mix=st.floats(0, 1))
def test_the_value_is_linear_in_the_worth(one: float, other: float, mix: float) -> None:
    between = mix * one + (1 - mix) * other
    low, high, found = (at_worth(w).npv.likely for w in (one, other, between))
    assert_allclose(found, mix * low + (1 - mix) * high, rtol=1e-9, atol=1e-3)


@settings(max_examples=60, deadline=None)
@given(study=studies())
def test_the_sum_of_the_years_ends_in_the_net_present_value(study: Study) -> None:
    case = case_of(*CHANGES, study=study)
    if isinstance(case.programme, Problem):
        assert case.programme.what.endswith(".")
        assert case.programme.remedy
        return
    found = case.programme
    rate = study.discount_rate
    gained = programme_npv(
        found.gain_per_pack.likely, found.volumes, discount_rate=rate
    )
    scale = abs(float(gained)) + found.spend.likely
    by_hand = float(gained) - found.spend.likely
    assert_allclose(found.npv.likely, by_hand, rtol=1e-9, atol=1e-12 * scale)
    assert found.npv.ends == tuple(found.cash.cumulative[:, -1])
    assert_allclose(
        found.cash.discounted.sum(axis=1), found.npv.ends, atol=1e-9 * scale
    )
    assert found.npv.low <= found.npv.likely <= found.npv.high


def test_more_packs_of_a_loss_are_the_greater_loss() -> None:
    dear = replace(CHANGES[0], part_cost=Range(200.0, 220.0, 250.0))
    loss = programme(case_of(dear))
    assert loss.gain_per_pack.high < 0
    packs = loss.volumes[0]
    assert_allclose(loss.cash.yearly[0, 1], 1.2 * packs * loss.gain_per_pack.low)
    assert_allclose(loss.cash.yearly[2, 1], 0.8 * packs * loss.gain_per_pack.high)
    assert math.isinf(loss.payback_years)
    assert not is_paid_back(loss)


def test_volumes_by_year_take_the_place_of_an_even_one() -> None:
    plan = programme(with_assumed(CASE, volumes=(10, 0, 30), start_year=2031))
    assert plan.volumes.tolist() == [10, 0, 30]
    assert plan.packs == 40
    assert [year_label(plan, year) for year in (0, 1, 3)] == ["2030", "2031", "2033"]
    assert year_label(programme(CASE), 2) == "year 2"


def test_a_part_of_a_year_makes_that_part_of_its_packs() -> None:
    study = replace(RICH, yearly_volume=1000, programme_years=2.25)
    assert planned_volumes(study, None).tolist() == [1000, 1000, 250]
    own = replace(RICH, yearly_volume=None, programme_years=1.0)
    assert planned_volumes(own, 70.0).tolist() == [70]
    assert planned_volumes(own, None).size == 0


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"yearly_volume": None}, "No yearly volume is known"),
        ({"volumes": (0, 0, 0)}, "Every year has a volume of zero"),
    ],
)
def test_no_volume_is_answered_with_a_sentence(
    values: dict[str, Any], said: str
) -> None:
    case = with_assumed(CASE, **values)
    for found in (case.programme, case.price):
        assert isinstance(found, Problem)
        assert found.what.startswith(said)
        assert found.remedy


@pytest.mark.parametrize(
    "values", [{"programme_years": 0.0}, {"yearly_volume": 0}, {"volumes": (-1,)}]
)
def test_no_years_and_no_packs_are_refused_with_a_sentence(
    values: dict[str, Any],
) -> None:
    with pytest.raises(DataError) as caught:
        with_assumed(CASE, **values)
    assert caught.value.problems[0].remedy


def test_what_is_valued_is_what_the_study_asks_for() -> None:
    share = with_assumed(CASE, valued_mass=ValuedMass.SHARE, share_captured=0.4)
    target = with_assumed(CASE, valued_mass=ValuedMass.TARGET)
    assert CASE.proposal is not None
    assert CASE.saving.saved_kg == CASE.proposal.totals.saved_kg
    assert share.saving.saved_kg is not None
    assert_allclose(share.saving.saved_kg.likely, 0.4 * share.gap.gap_kg)
    assert target.saving.saved_kg == Range.exactly(4.0)
    for case in (share, target):
        assert case.saving.money.ends == case.saving.spend.ends == (0.0, 0.0, 0.0)
        assert case.saving.note is not None
        assert "No cost is counted" in case.saving.note.what


def test_what_is_asked_for_and_not_there_is_said() -> None:
    no_changes = case_of()
    assert no_changes.saving.valued is ValuedMass.SHARE
    assert no_changes.saving.note is not None
    assert "No change counts" in no_changes.saving.note.what
    study = replace(RICH, valued_mass=ValuedMass.TARGET, target_kg=None)
    no_target = case_of(*CHANGES, study=study)
    assert no_target.saving.note is not None
    assert "No target is set" in no_target.saving.note.what


@given(one=RANGES, other=RANGES, at=st.tuples(st.floats(0, 1), st.floats(0, 1)))
def test_a_product_holds_the_product_of_any_two(
    one: Range, other: Range, at: tuple[float, float]
) -> None:
    a = one.low + at[0] * one.width
    b = other.low + at[1] * other.width
    assume(a <= one.high)
    assume(b <= other.high)
    found = product(one, other)
    slack = 1e-9 * (1 + max(map(abs, found.ends)))
    assert found.low - slack <= a * b <= found.high + slack
    assert found.likely == one.likely * other.likely


def test_the_gain_of_the_programme_is_that_of_the_proposal() -> None:
    """Tools by capital recovery in each pack are the same money as tools in year 0."""
    assert CASE.proposal is not None
    totals, plan = CASE.proposal.totals, programme(CASE)
    rate, years = RICH.discount_rate, len(plan.volumes)
    annuity = sum((1 + rate) ** -year for year in range(1, years + 1))
    per_pack = plan.npv.likely / (annuity * plan.volumes[0])
    assert_allclose(per_pack, totals.net_worth.likely, rtol=1e-9)
    assert np.isfinite(plan.internal_rate)
