"""Programmes against numpy-financial, pyxirr and sums in print."""

from __future__ import annotations

import numpy as np
import numpy_financial as npf
import pytest
import pyxirr

from benchpack.calc.internal_rate import internal_rate_of_return
from benchpack.calc.programme import (
    break_even_packs_per_year,
    break_even_scale,
    discounted_payback_years,
    programme_cash,
)
from benchpack.calc.tooling import break_even_volume

VOLUMES = [12_000.0, 45_000.0, 60_000.0, 60_000.0, 38_000.0, 9_000.0, 500.0]
SPEND = 900_000.0


@pytest.mark.parametrize("rate", [0.0, 0.08, 0.25])
def test_cash_against_two_packages(rate: float) -> None:
    """npv of numpy-financial and of pyxirr, for each year as if it were the last."""
    cash = programme_cash(7.5, VOLUMES, discount_rate=rate, spend=SPEND)
    flows = [-SPEND, *(volume * 7.5 for volume in VOLUMES)]
    assert cash.yearly.tolist() == flows
    for last in range(1, len(flows) + 1):
        worth = npf.npv(rate, flows[:last])
        assert cash.cumulative[last - 1] == pytest.approx(worth, rel=1e-12, abs=1e-6)
        assert worth == pytest.approx(pyxirr.npv(rate, flows[:last]), abs=1e-6)
        assert cash.discounted[:last].sum() == pytest.approx(worth, abs=1e-6)


def test_cash_of_a_published_example() -> None:
    """numpy-financial documents 3065.22267 for these flows and an outlay of 40,000."""
    packs = [5_000.0, 8_000.0, 12_000.0, 30_000.0]
    cash = programme_cash(1.0, packs, discount_rate=0.08, spend=40_000.0)
    assert cash.cumulative[-1] == pytest.approx(3065.22267, abs=5e-6)


# Flows, and the rate that the documentation of numpy-financial prints.
PRINTED = [
    ([-100.0, 39.0, 59.0, 55.0, 20.0], 0.28095),
    ([-100.0, 0.0, 0.0, 74.0], -0.0955),
    ([-100.0, 100.0, 0.0, 7.0], 0.06206),
]


@pytest.mark.parametrize(("flows", "printed"), PRINTED)
def test_rates_in_print(flows: list[float], printed: float) -> None:
    given = float(internal_rate_of_return(flows))
    assert given == pytest.approx(printed, abs=5.1e-6)


def test_flows_that_turn_twice_have_more_than_one_rate() -> None:
    """numpy-financial prints -0.0833; both rates come out of numpy's polynomials."""
    flows = [-100.0, 100.0, 0.0, -7.0]
    factors = np.roots(flows[::-1])
    rates = np.sort(1.0 / factors[factors > 0.0] - 1.0)
    assert rates == pytest.approx([-0.6789, -0.0833], abs=5.1e-5)
    assert np.isnan(internal_rate_of_return(flows))
    # Without the last turn there is one rate again, and it is zero.
    single = internal_rate_of_return(flows[:3])
    assert float(single) == pytest.approx(0.0, abs=1e-12)


def test_rates_against_two_packages() -> None:
    """irr of numpy-financial and of pyxirr, 300 seeded programmes of 2 to 12 years."""
    random = np.random.default_rng(20)
    for _ in range(300):
        years = int(random.integers(2, 13))
        gained = random.uniform(0.0, 60_000.0, years)
        flows = [-float(random.uniform(0.2, 4.0)) * 60_000.0, *gained.tolist()]
        given = float(internal_rate_of_return(flows))
        assert given == pytest.approx(npf.irr(flows), rel=1e-9, abs=1e-9)
        assert given == pytest.approx(pyxirr.irr(flows), rel=1e-9, abs=1e-9)
        turned = float(internal_rate_of_return([-flow for flow in flows]))
        assert turned == pytest.approx(given, rel=1e-12)


@pytest.mark.parametrize("rate", [0.0, 0.08, 0.2])
def test_payback_is_where_the_last_year_is_cut(rate: float) -> None:
    """With that share of its last year, npv of numpy-financial is zero."""
    given = float(
        discounted_payback_years(7.5, VOLUMES, discount_rate=rate, spend=SPEND)
    )
    whole, share = int(given), given % 1.0
    flows = [-SPEND, *(7.5 * volume for volume in VOLUMES[: whole + 1])]
    flows[-1] *= share
    assert npf.npv(rate, flows) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("rate", [0.0, 0.08, 0.2])
def test_break_even_has_no_present_value(rate: float) -> None:
    """numpy-financial npv of the plan at that scale; level plans as pmt has them."""
    scale = float(break_even_scale(7.5, VOLUMES, discount_rate=rate, spend=SPEND))
    flows = [-SPEND, *(7.5 * scale * volume for volume in VOLUMES)]
    assert npf.npv(rate, flows) == pytest.approx(0.0, abs=1e-6)
    supply = {"discount_rate": rate, "spend": SPEND}
    packs = float(break_even_packs_per_year(7.5, VOLUMES, **supply))
    assert packs == pytest.approx(scale * np.mean(VOLUMES), rel=1e-12)
    level = float(break_even_packs_per_year(7.5, [40_000.0] * 6, **supply))
    assert level * 7.5 == pytest.approx(-npf.pmt(rate, 6, SPEND), rel=1e-12)
    closed = break_even_volume(SPEND, 7.5, years=6.0, rate=rate)
    assert level == pytest.approx(float(closed), rel=1e-12)
