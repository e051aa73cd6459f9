"""What must hold for every part and tool."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.part_cost import material_cost, part_cost, process_cost
from benchpack.calc.tooling import (
    break_even_volume,
    capital_recovery_factor,
    payback_years,
    tooling_per_pack,
)

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
INF = float("inf")
RATES = {"machine_rate_per_h": 200.0, "labour_rate_per_h": 40.0}

money = st.floats(0.01, 100.0)
masses = st.floats(0.01, 200.0)
scraps = st.floats(0.0, 0.9)
shares = st.floats(0.05, 1.0)
rates = st.floats(0.0, 0.5)
years = st.floats(0.5, 30.0)
volumes = st.floats(100.0, 1e6)
sums = st.floats(100.0, 1e8)


@untimed
@given(masses, money, scraps)
def test_scrap_sold_at_what_it_cost_costs_nothing(
    mass: float, price: float, scrap: float
) -> None:
    sold = material_cost(mass, price, scrap=scrap, scrap_price_per_kg=price)
    assert float(sold) == pytest.approx(mass * price, rel=1e-9)
    thrown_away = float(material_cost(mass, price, scrap=scrap))
    assert thrown_away * (1.0 - scrap) == pytest.approx(mass * price, rel=1e-9)


@untimed
@given(st.floats(1.0, 600.0), shares, shares, st.integers(1, 16))
def test_twice_the_parts_halve_the_process(
    cycle: float, utilisation: float, good: float, cavities: int
) -> None:
    usual = {"utilisation": utilisation, "good_share": good, **RATES}
    one = float(process_cost(cycle, cavities=cavities, **usual))
    assert one > 0.0
    for others in ({"cavities": 2 * cavities}, {"utilisation": 0.5 * utilisation}):
        changed = process_cost(cycle, **{"cavities": cavities, **usual, **others})
        times = 0.5 if "cavities" in others else 2.0
        assert float(changed) == pytest.approx(times * one, rel=1e-12)


def test_nobody_at_the_machine_costs_the_machine() -> None:
    given = process_cost(3600.0, **RATES, operators=[0.0, 1.0, 2.5])
    assert_allclose(given, [200.0, 240.0, 300.0], rtol=1e-12)


def test_what_is_out_of_its_range_gives_no_cost() -> None:
    good = [True, False, False, False]
    scrap = material_cost(1.0, 1.0, scrap=[0.0, 1.0, -0.1, NAN])
    assert_array_equal(np.isfinite(scrap), good)
    mass = material_cost([0.0, -1.0, -0.5, NAN], 1.0)
    assert_array_equal(np.isfinite(mass), good)
    for name in ("utilisation", "good_share"):
        given = process_cost(1.0, **RATES, **{name: [1.0, 1.1, 0.0, NAN]})
        assert_array_equal(np.isfinite(given), good)
    few = process_cost(1.0, **RATES, cavities=[0.5, 0.0, -1.0, NAN])
    assert_array_equal(np.isfinite(few), good)
    for given in (
        process_cost([0.0, -1.0, -0.1, NAN], **RATES),
        process_cost(1.0, **RATES, operators=[0.0, -1.0, -0.1, NAN]),
    ):
        assert_array_equal(np.isfinite(given), good)


def test_steps_are_summed_and_parts_broadcast() -> None:
    steps = process_cost([[30.0, 60.0], [90.0, NAN]], **RATES)
    whole = part_cost([5.0, 6.0], steps, finishing=1.0)
    assert_allclose(whole, [5.0 + 6.0 + 1.0, NAN], rtol=1e-12)
    assert float(part_cost(5.0, 2.0)) == 7.0


@untimed
@given(rates, years)
def test_interest_and_haste_cost(rate: float, span: float) -> None:
    factor = float(capital_recovery_factor(rate, span))
    assert factor >= 1.0 / span * (1.0 - 1e-12)
    assert factor > rate
    assert factor >= float(capital_recovery_factor(rate, 2.0 * span))
    assert float(capital_recovery_factor(rate + 0.01, span)) > factor


@pytest.mark.parametrize("span", [0.5, 5.0, 40.0])
def test_interest_near_none_is_near_none(span: float) -> None:
    rates = [-1e-9, -1e-15, 0.0, 1e-300, 1e-15, 1e-9]
    assert_allclose(capital_recovery_factor(rates, span), 1.0 / span, rtol=1e-7)


def test_rates_and_years_that_are_none() -> None:
    given = capital_recovery_factor([-1.0, -2.0, NAN, -0.5], 5.0)
    assert_array_equal(np.isnan(given), [True, True, True, False])
    assert np.isnan(capital_recovery_factor(0.08, [0.0, -1.0, NAN])).all()
    assert float(capital_recovery_factor(-0.99, 400.0)) == 0.0


@untimed
@given(sums, volumes, years, rates)
def test_tooling_is_paid_back_by_all_packs(
    tooling: float, volume: float, span: float, rate: float
) -> None:
    each = float(tooling_per_pack(tooling, yearly_volume=volume, years=span, rate=rate))
    assert each * volume * span >= tooling * (1.0 - 1e-9)
    # A part that saves just this pays from just this volume, and in just these years.
    even = break_even_volume(tooling, each, years=span, rate=rate)
    assert float(even) == pytest.approx(volume, rel=1e-9)
    back = payback_years(tooling, each * volume, rate=rate)
    assert float(back) == pytest.approx(span, rel=1e-6)


def test_what_never_pays_and_what_pays_at_once() -> None:
    supply = {"years": 5.0, "rate": 0.08}
    extra, saved = [1e3, 1e3, 1e3, 0.0, -1.0, NAN], [0.0, -1.0, NAN, 1.0, 1.0, 0.0]
    volumes = break_even_volume(extra, saved, **supply)
    assert_array_equal(volumes, [INF, INF, NAN, 0.0, NAN, NAN])
    spans = payback_years(
        [1000.0, 1000.0, 1000.0, 0.0, 0.0, -1.0, NAN],
        [0.0, -1.0, NAN, 1.0, 0.0, 1.0, 0.0],
    )
    assert_array_equal(spans, [INF, INF, NAN, 0.0, 0.0, NAN, NAN])


def test_interest_can_eat_the_saving() -> None:
    spans = payback_years(1000.0, 80.0, rate=[0.0, 0.079, 0.08, 0.2, -0.1, NAN])
    assert spans[0] == pytest.approx(12.5)
    assert np.isfinite(spans[1])
    assert_array_equal(spans[2:], [INF, INF, NAN, NAN])


def test_tools_and_volumes_broadcast() -> None:
    given = tooling_per_pack(
        [[3e5], [8e5]], yearly_volume=[2e4, 5e4, 0.0], years=5.0, rate=0.0
    )
    assert_allclose(given, [[3.0, 1.2, NAN], [8.0, 3.2, NAN]], rtol=1e-12)
