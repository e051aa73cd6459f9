"""What must hold for every programme, and what one without packs or years is."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.internal_rate import internal_rate_of_return
from benchpack.calc.programme import (
    break_even_packs_per_year,
    break_even_scale,
    discounted_payback_years,
    programme_cash,
)
from benchpack.calc.tooling import payback_years
from benchpack.calc.worth import programme_npv

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
INF = float("inf")

values = st.floats(0.1, 100.0)
plans = st.lists(st.floats(1.0, 1e5), min_size=1, max_size=15)
rates = st.floats(0.0, 0.5)
spends = st.floats(1.0, 1e7)


@untimed
@given(values, plans, rates, spends)
def test_the_last_year_is_the_net_present_value(
    value: float, plan: list[float], rate: float, spend: float
) -> None:
    cash = programme_cash(value, plan, discount_rate=rate, spend=spend)
    npv = float(programme_npv(value, plan, discount_rate=rate)) - spend
    size = spend + value * sum(plan)
    assert float(cash.cumulative[-1]) == pytest.approx(npv, abs=1e-12 * size)
    assert cash.yearly.shape == (len(plan) + 1,)


@untimed
@given(values, plans, rates, spends, st.floats(0.1, 10.0))
def test_cash_is_linear_in_the_value(
    value: float, plan: list[float], rate: float, spend: float, times: float
) -> None:
    one = programme_cash(value, plan, discount_rate=rate, spend=spend)
    more = programme_cash(times * value, plan, discount_rate=rate, spend=times * spend)
    assert_allclose(more.cumulative, times * one.cumulative, rtol=1e-9, atol=1e-6)


@untimed
@given(values, plans, rates, spends)
def test_the_scale_is_the_plan_that_just_pays(
    value: float, plan: list[float], rate: float, spend: float
) -> None:
    money = {"discount_rate": rate, "spend": spend}
    scale = float(break_even_scale(value, plan, **money))
    scaled = scale * np.array(plan)
    assert float(break_even_scale(value, scaled, **money)) == pytest.approx(1.0)
    payback = float(discounted_payback_years(value, scaled, **money))
    assert payback == pytest.approx(len(plan), rel=1e-9)
    packs = float(break_even_packs_per_year(value, plan, **money))
    assert packs == pytest.approx(float(scaled.mean()), rel=1e-9)


@untimed
@given(values, plans, st.floats(0.0, 0.5), spends)
def test_at_the_internal_rate_nothing_is_gained(
    value: float, plan: list[float], rate: float, spend: float
) -> None:
    flows = programme_cash(value, plan, discount_rate=rate, spend=spend).yearly
    internal = float(internal_rate_of_return(flows))
    worth = float(programme_npv(value, plan, discount_rate=rate)) - spend
    if np.isnan(internal):
        # Out of reach: nearly nothing comes back, or nearly all of it at once.
        gained = value * sum(plan)
        assert gained < 1e-6 * spend or gained > 1e6 * spend
    elif abs(internal - rate) > 1e-6:
        # Above the rate that is asked for, it gains; below, it loses.
        assert (internal > rate) == (worth > 0.0)


@untimed
@given(st.floats(0.5, 1e4), st.integers(1, 12), st.floats(0.0, 2.0))
def test_level_plans_without_interest_pay_back_as_tools_do(
    a_year: float, years: int, part: float
) -> None:
    spend = part * a_year * years
    given_years = discounted_payback_years(
        1.0, [a_year] * years, discount_rate=0.0, spend=spend
    )
    wanted = float(payback_years(spend, a_year))
    # At the very end of the plan its last digit may decide.
    if abs(wanted - years) > 1e-9:
        wanted = wanted if wanted < years else INF
        assert float(given_years) == pytest.approx(wanted, rel=1e-9)


def test_payback_lies_within_the_year() -> None:
    plan = [1000.0, 3000.0, 0.0, 4000.0]
    spends = [0.0, 500.0, 1000.0, 2500.0, 4000.0, 6000.0, 8000.0, 8001.0]
    given_years = discounted_payback_years(1.0, plan, discount_rate=0.0, spend=spends)
    assert_allclose(given_years, [0.0, 0.5, 1.0, 1.5, 2.0, 3.5, 4.0, INF])


def test_a_pack_that_costs_more_than_it_gains_never_pays() -> None:
    plan: dict[str, ArrayLike] = {"volumes": [100.0, 200.0], "discount_rate": 0.05}
    for function, at_no_spend in (
        (discounted_payback_years, 0.0),
        (break_even_scale, 0.0),
        (break_even_packs_per_year, 0.0),
    ):
        found = function(-2.0, **plan, spend=[0.0, 100.0])
        assert_array_equal(found, [at_no_spend, INF])


@pytest.mark.parametrize("plan", [[], [0.0], [0.0, 0.0, 0.0]])
def test_no_packs_or_no_years_bring_nothing_and_never_pay(plan: list[float]) -> None:
    money: dict[str, ArrayLike] = {"discount_rate": 0.08, "spend": [0.0, 100.0]}
    assert programme_npv(5.0, plan, discount_rate=0.08) == 0.0
    cash = programme_cash(5.0, plan, **money)
    assert cash.cumulative.shape == (2, len(plan) + 1)
    assert_array_equal(cash.cumulative[:, -1], [0.0, -100.0])
    assert_array_equal(discounted_payback_years(5.0, plan, **money), [0.0, INF])
    assert_array_equal(break_even_scale(5.0, plan, **money), [0.0, INF])
    assert_array_equal(break_even_packs_per_year(5.0, plan, **money), [0.0, INF])
    assert np.isnan(internal_rate_of_return(cash.yearly)).all()


FIGURES: list[dict[str, ArrayLike]] = [
    {"value_per_pack": NAN},
    {"volumes": [100.0, NAN]},
    {"volumes": [-1.0, 200.0]},
    {"discount_rate": NAN},
    {"discount_rate": -1.0},
    {"spend": NAN},
    {"spend": -1.0},
]


@pytest.mark.parametrize("figures", FIGURES, ids=str)
def test_what_is_unknown_or_nonsense_makes_all_unknown(
    figures: dict[str, ArrayLike],
) -> None:
    usual: dict[str, ArrayLike] = {
        "value_per_pack": 2.0,
        "volumes": [100.0, 200.0],
        "discount_rate": 0.05,
        "spend": 300.0,
    }
    value, volumes, rate, spend = {**usual, **figures}.values()
    money: dict[str, ArrayLike] = {"discount_rate": rate, "spend": spend}
    assert np.isnan(programme_cash(value, volumes, **money).cumulative[-1])
    assert np.isnan(discounted_payback_years(value, volumes, **money))
    assert np.isnan(break_even_scale(value, volumes, **money))
    assert np.isnan(break_even_packs_per_year(value, volumes, **money))


def test_thousands_of_plans_at_once() -> None:
    random = np.random.default_rng(5)
    plan = random.uniform(1e3, 6e4, (3000, 7))
    value, spend = random.uniform(1.0, 9.0, 3000), random.uniform(1e5, 1e6, 3000)
    money: dict[str, ArrayLike] = {"discount_rate": 0.08, "spend": spend}
    cash = programme_cash(value, plan, **money)
    found = internal_rate_of_return(cash.yearly)
    payback = discounted_payback_years(value, plan, **money)
    assert cash.cumulative.shape == (3000, 8)
    assert found.shape == payback.shape == (3000,)
    at_root = cash.yearly / (1.0 + found[:, np.newaxis]) ** np.arange(8.0)
    assert_allclose(at_root.sum(axis=-1) / spend, 0.0, atol=1e-10)
    assert_array_equal(np.isfinite(payback), cash.cumulative[:, -1] >= 0.0)
    one = internal_rate_of_return(cash.yearly[17])
    assert float(one) == pytest.approx(float(found[17]), rel=1e-12)


def test_cash_without_a_rate() -> None:
    flows = [
        [-100.0, 50.0, 0.0, 80.0],
        [0.0, -100.0, 50.0, 80.0],
        [100.0, 50.0, 10.0, 80.0],
        [0.0, 0.0, 0.0, 0.0],
        [-100.0, 300.0, -250.0, 10.0],
        [-100.0, NAN, 20.0, 10.0],
        [-100.0, INF, 20.0, 10.0],
        [-1.0, 1e12, 0.0, 0.0],
    ]
    found = internal_rate_of_return(flows)
    assert_array_equal(np.isfinite(found), [True, True, *[False] * 6])
    for too_few in ([], [5.0], [-5.0]):
        assert np.isnan(internal_rate_of_return(too_few))
    assert internal_rate_of_return(np.zeros((3, 0))).shape == (3,)
