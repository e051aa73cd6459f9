"""What the new parts may cost, and who keeps what of the gain."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.errors import Problem
from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from tests.unit.results.worth_samples import (
    CHANGES,
    COSTED,
    RICH,
    case_of,
    studies,
    with_assumed,
)

CASE = case_of(*CHANGES)
MONEY = st.floats(0, 1e4)


def price(case: WorthCase) -> Price:
    assert isinstance(case.price, Price)
    return case.price


def at(**values: Any) -> Price:
    return price(with_assumed(CASE, **values))


@settings(max_examples=30, deadline=None)
@given(asked=MONEY, worth=st.floats(0, 100))
def test_headroom_and_the_gain_are_inverse(asked: float, worth: float) -> None:
    """At the price of the headroom the customer gains just what they ask for."""
    ends = {f"worth_{end}_per_kg": worth for end in ("low", "likely", "high")}
    found = at(required_saving=asked, **ends)
    assert_allclose(found.headroom, found.even_price - asked, atol=1e-9)
    if found.headroom < 0:
        assert math.isnan(found.price_at_saving)
        return
    assert_allclose(found.price_at_saving, found.headroom, atol=1e-9)
    there = at(required_saving=asked, part_price=found.headroom, **ends)
    assert_allclose(there.customer_gain, asked, atol=1e-8)


@settings(max_examples=30, deadline=None)
@given(share=st.floats(0, 1), old=MONEY)
def test_the_shares_of_the_gain_sum_to_the_whole(share: float, old: float) -> None:
    found = at(customer_share=share, old_part_price=old)
    whole = found.whole_gain
    assert_allclose(found.customer_part + found.supplier_part, whole, atol=1e-9)
    assert_allclose(found.customer_part, share * whole, atol=1e-9)
    assert_allclose(found.shared_price - found.cost, found.supplier_part, atol=1e-8)
    split = at(
        customer_share=share, old_part_price=old, part_price=max(found.shared_price, 0)
    )
    if found.shared_price >= 0:
        assert_allclose(split.customer_gain, found.customer_part, atol=1e-8)
        assert_allclose(split.supplier_margin, found.supplier_part, atol=1e-8)


def test_the_whole_gain_is_that_of_the_proposal_at_reckoned_cost() -> None:
    case = case_of(COSTED, study=replace(RICH, old_part_price=None))
    found = price(case)
    assert not math.isnan(case.saving.old_cost)
    assert found.old_cost == case.saving.old_cost
    assert case.proposal is not None
    net = case.proposal.totals.net_worth.likely
    assert_allclose(found.whole_gain, net, rtol=1e-9)


def test_a_given_old_price_does_not_change_what_making_the_new_parts_costs() -> None:
    """What is paid for the old parts is the customer's; making the new is not."""
    reckoned = price(case_of(COSTED, study=replace(RICH, old_part_price=None)))
    given_price = price(case_of(COSTED, study=replace(RICH, old_part_price=500.0)))
    assert given_price.cost == reckoned.cost
    more = 500.0 - reckoned.old_cost
    assert_allclose(given_price.whole_gain, reckoned.whole_gain + more, rtol=1e-9)


def test_without_a_reckoned_cost_the_price_given_stands_in() -> None:
    assert math.isnan(CASE.saving.old_cost)
    found = price(CASE)
    money = CASE.saving.part_cost.likely + CASE.saving.add_back_cost.likely
    assert_allclose(found.cost, 60.0 + money)
    silent = with_assumed(CASE, old_part_price=None).price
    assert isinstance(silent, Problem)
    assert silent.column == "old part price"


def test_the_headroom_counts_what_is_asked_of_it() -> None:
    found, saving = price(CASE), CASE.saving
    assert saving.saved_kg is not None
    by_hand = 30.0 * saving.saved_kg.likely - saving.joining_cost.likely + 60.0
    by_hand -= found.once_per_pack + 10.0
    assert_allclose(found.headroom, by_hand, rtol=1e-12)
    assert_allclose(found.per_kg, found.headroom / 7.0, rtol=1e-12)


def test_without_a_proposal_no_cost_and_no_share_is_said() -> None:
    found = at(valued_mass=ValuedMass.TARGET)
    for value in (found.cost, found.shared_price, found.per_kg, found.supplier_margin):
        assert math.isnan(value)
    assert_allclose(found.even_price, 30.0 * 4.0 + 60.0)


def test_without_a_saving_there_is_no_price() -> None:
    study = Study("Heron", subject="Heron 70")
    found = case_of(study=study).price
    assert isinstance(found, Problem)
    assert "no saving" in found.what


@settings(max_examples=60, deadline=None)
@given(study=studies())
def test_any_assumptions_give_a_price_or_a_sentence(study: Study) -> None:
    found = case_of(*CHANGES, study=study).price
    if isinstance(found, Problem):
        assert found.what.endswith(".")
        return
    assert math.isfinite(found.even_price)
    assert found.headroom == pytest.approx(
        found.even_price - study.required_saving, rel=1e-9, abs=1e-6
    )
