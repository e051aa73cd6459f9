"""Headroom and its shares in exact fractions and against a root finder."""

from __future__ import annotations

from fractions import Fraction

import pytest
from scipy.optimize import brentq

from benchpack.calc.headroom import (
    customer_gain,
    headroom_per_kg,
    price_at_gain,
    price_headroom,
    split_gain,
)


def account(price: float, *, saved_kg: float = 12.4) -> float:
    """Give what the customer gains, as they would book it: before less after."""
    before = 83.5 + 61 * 0.11 + 7.25 + 3.2 * saved_kg
    after = price + 2 * 0.11 + 4.05 + 3.8
    return before - after


FIGURES = {
    "joining_removed": 59 * 0.11,
    "assembly_removed": 7.25 - 4.05,
    "old_part_cost": 83.5,
    "tooling_per_pack": 3.8,
}


@pytest.mark.parametrize("saving", [0.0, 15.0])
def test_headroom_against_a_root_finder(saving: float) -> None:
    """The price at which before less after is the saving: scipy.optimize.brentq."""
    exact = brentq(lambda price: account(price) - saving, 0.0, 1000.0, xtol=1e-12)
    given = price_headroom(3.2, 12.4, **FIGURES, required_saving=saving)
    assert float(given) == pytest.approx(exact, rel=1e-12)
    even = price_headroom(3.2, 12.4, **FIGURES)
    assert float(price_at_gain(even, saving)) == pytest.approx(exact, rel=1e-12)
    for price in (70.0, 140.0):
        gain = float(customer_gain(even, price))
        assert gain == pytest.approx(account(price), rel=1e-12)


def test_a_part_in_exact_fractions() -> None:
    """5 kg at 3, joints 6, assembly 4, old part 80, tools 2.50; cost 71, 20 kg."""
    even = 5 * 3 + 6 + 4 + 80 - Fraction(5, 2)
    given = price_headroom(
        3.0,
        5.0,
        joining_removed=6.0,
        assembly_removed=4.0,
        old_part_cost=80.0,
        tooling_per_pack=2.5,
    )
    assert float(given) == float(even)
    per_kg = headroom_per_kg(given, 20.0)
    assert float(per_kg) == pytest.approx(float(even / 20), rel=1e-15)
    for share in (Fraction(0), Fraction(1, 3), Fraction(1)):
        found = split_gain(given, 71.0, customer_share=float(share))
        whole = even - 71
        assert float(found.whole) == float(whole)
        assert float(found.customer) == pytest.approx(float(share * whole), rel=1e-14)
        kept = (1 - share) * whole
        assert float(found.supplier) == pytest.approx(float(kept), rel=1e-14)
        assert float(found.price) == pytest.approx(float(71 + kept), rel=1e-14)
