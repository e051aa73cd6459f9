"""Headroom and gain are inverse, shares sum to the whole, nothing warns."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.headroom import (
    customer_gain,
    headroom_per_kg,
    price_at_gain,
    price_headroom,
    split_gain,
)
from benchpack.calc.tooling import tooling_per_pack

untimed = settings(deadline=None, max_examples=60)

NAN = float("nan")

money = st.floats(-500.0, 500.0)
prices = st.floats(0.0, 1000.0)
masses = st.floats(-50.0, 50.0)
worths = st.floats(0.0, 20.0)
shares = st.floats(0.0, 1.0)


def near(wanted: float, *sizes: float) -> object:
    """Give `wanted` within the rounding of sums of such sizes."""
    return pytest.approx(wanted, rel=1e-12, abs=1e-12 * (1 + sum(map(abs, sizes))))


@untimed
@given(worths, masses, money, prices, money)
def test_headroom_and_gain_are_inverse(
    worth: float, saved: float, removed: float, old: float, saving: float
) -> None:
    figures = {"joining_removed": removed, "old_part_cost": old}
    even = float(price_headroom(worth, saved, **figures))
    asked = float(price_headroom(worth, saved, **figures, required_saving=saving))
    assert even - asked == near(saving, even, asked)
    price = float(price_at_gain(even, saving))
    if even - saving >= 0.0:
        assert price == near(asked, even, saving)
        assert float(customer_gain(even, price)) == near(saving, even, price)
    else:
        assert np.isnan(price)


@untimed
@given(worths, worths, masses, prices)
def test_headroom_is_linear_in_worth(
    w_1: float, w_2: float, saved: float, old: float
) -> None:
    def headroom(worth: float) -> float:
        return float(price_headroom(worth, saved, old_part_cost=old))

    together = headroom(w_1 + w_2) - old
    apart = (headroom(w_1) - old) + (headroom(w_2) - old)
    assert together == near(apart, old, w_1 * saved, w_2 * saved)
    # Each unit of worth per kilogram is worth the kilograms.
    assert headroom(w_1 + 1.0) - headroom(w_1) == near(saved, old, w_1 * saved, saved)


@untimed
@given(money, prices, shares)
def test_shares_sum_to_the_whole(even: float, cost: float, share: float) -> None:
    found = split_gain(even, cost, customer_share=share)
    whole = float(found.whole)
    assert whole == near(even - cost, even, cost)
    assert float(found.customer) + float(found.supplier) == near(whole, whole)
    assert float(found.customer) == near(share * whole, whole)
    # The price pays the supplier's cost and share, and leaves the customer theirs.
    assert float(found.price) - cost == near(float(found.supplier), even, cost)
    assert even - float(found.price) == near(float(found.customer), even, cost)


@untimed
@given(money, st.floats(0.01, 100.0))
def test_a_kilogram_times_its_mass_is_the_headroom(headroom: float, kg: float) -> None:
    per_kg = float(headroom_per_kg(headroom, kg))
    assert per_kg * kg == near(headroom, headroom)


def test_every_figure_counts_with_its_sign() -> None:
    base = float(price_headroom(2.0, 10.0))
    assert base == 20.0
    for name, sign in (
        ("joining_removed", 1.0),
        ("assembly_removed", 1.0),
        ("old_part_cost", 1.0),
        ("tooling_per_pack", -1.0),
        ("required_saving", -1.0),
    ):
        changed = float(price_headroom(2.0, 10.0, **{name: 3.0}))
        assert changed - base == 3.0 * sign


def test_without_packs_or_years_there_is_no_headroom() -> None:
    """Tooling per pack is unknown there, and so is what builds on it."""
    for volume, years in ((0.0, 5.0), (1000.0, 0.0), (0.0, 0.0)):
        tooling = tooling_per_pack(1e5, yearly_volume=volume, years=years, rate=0.08)
        even = price_headroom(3.0, [10.0, 0.0], tooling_per_pack=tooling)
        assert np.isnan(even).all()
        assert np.isnan(headroom_per_kg(even, 5.0)).all()
        assert np.isnan(customer_gain(even, 50.0)).all()
        found = split_gain(even, 50.0, customer_share=0.5)
        assert np.isnan(found.price).all()


def test_nonsense_and_unknown_give_nothing() -> None:
    good = [True, False, False]
    for values in (
        price_headroom([3.0, -3.0, NAN], 10.0),
        price_headroom(3.0, 10.0, old_part_cost=[5.0, -5.0, NAN]),
        headroom_per_kg(50.0, [20.0, 0.0, NAN]),
        headroom_per_kg(50.0, [20.0, -1.0, NAN]),
        customer_gain(50.0, [20.0, -1.0, NAN]),
        price_at_gain(50.0, [20.0, 51.0, NAN]),
        split_gain(50.0, [20.0, -1.0, NAN], customer_share=0.5).price,
        split_gain(50.0, 20.0, customer_share=[0.5, 1.1, NAN]).price,
        split_gain(50.0, 20.0, customer_share=[0.0, -0.1, NAN]).supplier,
    ):
        assert_array_equal(np.isfinite(values), good)
    unknown_share = split_gain(50.0, 20.0, customer_share=[0.5, NAN])
    assert_array_equal(unknown_share.whole, [30.0, 30.0])


def test_a_loss_is_borne_by_both() -> None:
    found = split_gain(80.0, 100.0, customer_share=[0.0, 0.5, 1.0])
    assert_allclose(found.customer, [0.0, -10.0, -20.0])
    assert_allclose(found.supplier, [-20.0, -10.0, 0.0])
    assert_allclose(found.price, [80.0, 90.0, 100.0])


def test_thousands_of_samples_at_once() -> None:
    worth = np.linspace(1.0, 6.0, 4000)
    even = price_headroom(worth, [[10.0], [20.0]], old_part_cost=80.0)
    found = split_gain(even, 90.0, customer_share=worth / 6.0)
    for part in (found.whole, found.customer, found.supplier, found.price):
        assert part.shape == (2, 4000)
